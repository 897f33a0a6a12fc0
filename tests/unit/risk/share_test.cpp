// Exact intervals of a share.
#include "levigate/risk/share.hpp"
#include "levigate/error.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace share_test {
namespace {

using namespace levigate;

// Closed forms at the ends: no hit in n has the chance (1 - p)^n.
TEST(ExactShare, NoneOrAll) {
  const Share none = exact_share(0, 1000);
  EXPECT_EQ(none.share, 0.0);
  EXPECT_EQ(none.low, 0.0);
  EXPECT_NEAR(none.high, 1.0 - std::pow(0.05, 1e-3), 1e-12);
  const Share all = exact_share(1000, 1000);
  EXPECT_EQ(all.share, 1.0);
  EXPECT_EQ(all.high, 1.0);
  EXPECT_NEAR(all.low, std::pow(0.05, 1e-3), 1e-12);
}

// One hit in two: P(X >= 1) = 1 - (1 - p)^2 and P(X <= 1) = 1 - p^2, each 1/40 at the ends of a 95 % interval.
TEST(ExactShare, OneOfTwo) {
  const Share one = exact_share(1, 2, 0.95);
  EXPECT_NEAR(one.low, 1.0 - std::sqrt(0.975), 1e-12);
  EXPECT_NEAR(one.high, std::sqrt(0.975), 1e-12);
}

// Exact means: whatever the chance, at least nine of ten intervals hold it. Summed over all outcomes, not sampled.
TEST(ExactShare, HoldsTheChanceNineTimesInTen) {
  constexpr int cases = 25;
  for (int step = 1; step < 60; ++step) {
    const double p = step / 60.0;
    double held = 0;
    for (int hits = 0; hits <= cases; ++hits) {
      const Share share = exact_share(hits, cases);
      const double ways =
          std::exp(std::lgamma(cases + 1) - std::lgamma(hits + 1) - std::lgamma(cases - hits + 1));
      if (share.low <= p && p <= share.high)
        held += ways * std::pow(p, hits) * std::pow(1 - p, cases - hits);
    }
    EXPECT_GE(held, 0.9) << p;
  }
}

TEST(ExactShare, RefusesWhatIsNoShare) {
  EXPECT_THROW(exact_share(-1, 10), OutOfRange);
  EXPECT_THROW(exact_share(11, 10), OutOfRange);
  EXPECT_THROW(exact_share(0, 0), OutOfRange);
  EXPECT_THROW(exact_share(1, 10, 1.0), OutOfRange);
  EXPECT_THROW(exact_share(1, 10, std::nan("")), OutOfRange);
}

}  // namespace
}  // namespace share_test
