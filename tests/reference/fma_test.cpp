// A product is rounded before it is added to, also where the machine can do both in one.
#include <gtest/gtest.h>

namespace fma_test {
namespace {

#if defined(__x86_64__)
[[gnu::target("fma"), gnu::noinline]]
#else
[[gnu::noinline]]
#endif
double
product_less(double a, double b, double c) {
  return a * b - c;
}

TEST(Fma, IsNotUsed) {
#if defined(__x86_64__)
  if (!__builtin_cpu_supports("fma")) GTEST_SKIP() << "no such instruction here";
#endif
  const volatile double a = 1 + 0x1p-27, b = 1 - 0x1p-27, one = 1;
  EXPECT_EQ(product_less(a, b, one), 0.0) << "1 - 2^-54 rounds to 1; rounded once it is less";
}

}  // namespace
}  // namespace fma_test
