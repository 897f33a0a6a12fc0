// The chi-square distribution against values that are known in closed form.
#include <gtest/gtest.h>

#include <cmath>

#include "levigate/detail/chi_square.hpp"
#include "levigate/detail/normal.hpp"

namespace chi_square_test {
namespace {

using namespace levigate;

TEST(ChiSquare, ClosedFormsOfFewDegreesOfFreedom) {
  for (const double x : {1e-8, 0.1, 1.0, 3.0, 5.0, 20.0, 300.0}) {
    const detail::ChiSquareTails one = detail::chi_square_tails(x, 1);
    EXPECT_NEAR(one.above / (2 * detail::normal_tail(std::sqrt(x))), 1, 1e-11) << x;
    const detail::ChiSquareTails two = detail::chi_square_tails(x, 2);
    EXPECT_NEAR(two.above / std::exp(-x / 2), 1, 1e-11) << x;
    EXPECT_NEAR(two.below / -std::expm1(-x / 2), 1, 1e-11) << x;
  }
}

TEST(ChiSquare, TheQuantileIsTheInverse) {
  for (const double df : {0.5, 1.0, 2.7, 9.0, 99.0, 9e5}) {
    double last = 0;
    for (const double below : {1e-9, 1e-3, 0.3, 0.5, 0.9, 1 - 1e-6}) {
      const double x = detail::chi_square_quantile(below, df);
      EXPECT_GT(x, last);
      EXPECT_NEAR(detail::chi_square_tails(x, df).below / below, 1, 1e-8) << df << ", " << below;
      last = x;
    }
  }
}

TEST(ChiSquare, VeryManyDegreesOfFreedomAreNormal) {
  const double df = 1e7;
  for (const double below : {0.01, 0.5, 0.99}) {
    const double z = -detail::normal_quantile(below);
    // The first terms of Cornish and Fisher.
    const double x = df + z * std::sqrt(2 * df) + 2.0 / 3.0 * (z * z - 1);
    EXPECT_NEAR(detail::chi_square_quantile(below, df) / x, 1, 1e-9);
  }
}

}  // namespace
}  // namespace chi_square_test
