#include "levigate/detail/normal.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "levigate/detail/quadrature.hpp"

namespace normal_test {
namespace {

using levigate::detail::normal_density;
using levigate::detail::normal_quantile;
using levigate::detail::normal_tail;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double ulp = std::numeric_limits<double>::epsilon();

struct TailRow {
  double x;
  double tail;
};

// erfc(x / sqrt 2) / 2 in 60-digit arithmetic.
constexpr TailRow tail_rows[] = {
    {0.5, 0.30853753872598689636},    {1, 0.15865525393145705141},
    {3, 0.0013498980316300945267},    {8, 6.2209605742717841235e-16},
    {20, 2.7536241186062336951e-89},  {37, 5.7255712225245768227e-300},
    {-1, 1 - 0.15865525393145705141}, {-8, 1.0},
};

TEST(Normal, TailKeepsItsAccuracyFarOut) {
  for (const auto& row : tail_rows) {
    EXPECT_NEAR(normal_tail(row.x) / row.tail, 1.0, (4 + row.x * row.x) * ulp) << row.x;
  }
}

// Bisection of the tail in 60-digit arithmetic.
constexpr TailRow quantile_rows[] = {
    {37.047096299361199237, 1e-300}, {21.273453560965324294, 1e-100},
    {6.3613409024040561991, 1e-10},  {2.3263478740408410931, 0.01},
    {0.52440051270804081597, 0.3},   {0, 0.5},
};

TEST(Normal, QuantileInvertsTheTail) {
  for (const auto& row : quantile_rows) {
    EXPECT_NEAR(normal_quantile(row.tail), row.x, 4 * ulp * std::fmax(1.0, row.x)) << row.tail;
  }
  for (double x = 0.0; x < 37.0; x += 0.37) {
    EXPECT_NEAR(normal_quantile(normal_tail(x)), x, 4 * ulp * std::fmax(1.0, x)) << x;
  }
}

TEST(Normal, QuantileAtAndBeyondTheEnds) {
  EXPECT_EQ(normal_quantile(0.0), infinity);
  EXPECT_EQ(normal_quantile(1.0), -infinity);
  EXPECT_TRUE(std::isnan(normal_quantile(-0.1)));
  EXPECT_TRUE(std::isnan(normal_quantile(1.1)));
  EXPECT_TRUE(std::isnan(normal_quantile(std::nan(""))));
  EXPECT_EQ(normal_quantile(0.25), -normal_quantile(0.75));
}

TEST(Normal, DensityIsTheSlopeOfTheTail) {
  for (const double x : {-3.0, -0.5, 0.0, 1.0, 4.0}) {
    const double h = 1e-5;
    const double slope = (normal_tail(x - h) - normal_tail(x + h)) / (2 * h);
    EXPECT_NEAR(slope, normal_density(x), 1e-10) << x;
  }
}

TEST(Quadrature, IsExactUpToDegree31) {
  for (int degree = 0; degree <= 31; ++degree) {
    double sum = 0;
    levigate::detail::for_each_node(
        0.0, 1.0, 1, [&](double x, double weight) { sum += weight * std::pow(x, degree); });
    EXPECT_NEAR(sum * (degree + 1), 1.0, 20 * ulp) << degree;
  }
}

TEST(Quadrature, PanelsCoverTheIntervalOnce) {
  double length = 0;
  double moment = 0;
  levigate::detail::for_each_node(-2.0, 5.0, 7, [&](double x, double weight) {
    length += weight;
    moment += weight * x;
  });
  EXPECT_NEAR(length, 7.0, 1e-14);
  EXPECT_NEAR(moment, 10.5, 1e-14);
}

}  // namespace
}  // namespace normal_test
