// Student's t against values that are known in closed form.
#include <gtest/gtest.h>

#include <numbers>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/student.hpp"

namespace student_test {
namespace {

using namespace levigate;

TEST(Student, ClosedFormsOfFewDegreesOfFreedom) {
  for (const double t : {0.0, 0.01, 0.3, 1.0, 2.5, 10.0, 1e3}) {
    const double one = std::atan(1 / t) / std::numbers::pi;
    EXPECT_NEAR(detail::student_tail(t, 1) / one, 1, 1e-12) << t;
    const double root = std::sqrt(2 + t * t);
    EXPECT_NEAR(detail::student_tail(t, 2) * (root * (root + t)), 1, 1e-12) << t;
    const double y = 4 / (4 + t * t), s = std::sqrt(1 - y);  // df 4
    const double four = 0.5 * (1 - s * (1 + 0.5 * y));
    EXPECT_NEAR(detail::student_tail(t, 4), four, 1e-13) << t;  // four cancels far out
  }
}

TEST(Student, ManyDegreesOfFreedomAreTheNormal) {
  for (const double t : {0.5, 1.0, 2.0}) {
    EXPECT_NEAR(detail::student_tail(t, 1e8) / detail::normal_tail(t), 1, 1e-6) << t;
  }
}

TEST(Student, TheQuantileOfVeryManyIsThatOfTheNormal) {
  for (const double tail : {0.4, 0.05, 0.005, 1e-6}) {
    const double x = detail::normal_quantile(tail);
    const double shift = (x * x + 1) / 4;  // of itself, over df
    EXPECT_NEAR(detail::student_quantile(tail, 1e5) / x, 1 + shift / 1e5, 1e-8) << tail;
    EXPECT_NEAR(detail::student_quantile(tail, 1e7) / x, 1 + shift / 1e7, 1e-7) << tail;
    EXPECT_EQ(detail::student_quantile(tail, 1.1e7), x);
    EXPECT_EQ(detail::student_quantile(tail, 1e9), x);
  }
}

TEST(Student, TheQuantileIsTheInverse) {
  for (const double df : {1.0, 3.5, 4.0, 40.0, 1e4}) {
    for (const double tail : {0.4, 0.05, 0.005, 1e-6}) {
      EXPECT_NEAR(detail::student_tail(detail::student_quantile(tail, df), df) / tail, 1, 1e-11);
    }
  }
}

}  // namespace
}  // namespace student_test
