#include "levigate/surface/sheen.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace sheen_test {
namespace {

using namespace levigate;

struct Row {
  double refractive_index;
  double gloss_20, gloss_60, gloss_85;
  double r_20, r_60, r_85;
};

// Gloss of smooth glass and its reflectance at 20, 60 and 85 degrees. Computed from Fresnel's
// equations apart from this library; ISO 2813:1997 assigns 100 GU to n = 1.567 and derives such a
// table.
constexpr Row rows[] = {
    // clang-format off
    {1.400, 57.0, 71.9, 96.6, 0.02800, 0.07198, 0.59832},
    {1.410, 59.4, 73.7, 96.9, 0.02917, 0.07376, 0.60012},
    {1.420, 61.8, 75.5, 97.2, 0.03035, 0.07552, 0.60183},
    {1.430, 64.3, 77.2, 97.5, 0.03155, 0.07727, 0.60345},
    {1.440, 66.7, 79.0, 97.7, 0.03276, 0.07901, 0.60500},
    {1.450, 69.2, 80.7, 98.0, 0.03398, 0.08074, 0.60646},
    {1.460, 71.8, 82.4, 98.2, 0.03522, 0.08245, 0.60786},
    {1.470, 74.3, 84.1, 98.4, 0.03646, 0.08416, 0.60919},
    {1.480, 76.9, 85.8, 98.6, 0.03772, 0.08584, 0.61045},
    {1.490, 79.4, 87.5, 98.8, 0.03899, 0.08752, 0.61166},
    {1.500, 82.0, 89.1, 99.0, 0.04027, 0.08919, 0.61280},
    {1.510, 84.7, 90.8, 99.2, 0.04156, 0.09084, 0.61389},
    {1.520, 87.3, 92.4, 99.3, 0.04285, 0.09248, 0.61492},
    {1.530, 90.0, 94.1, 99.5, 0.04416, 0.09411, 0.61591},
    {1.540, 92.7, 95.7, 99.6, 0.04548, 0.09573, 0.61684},
    {1.550, 95.4, 97.3, 99.8, 0.04681, 0.09734, 0.61773},
    {1.560, 98.1, 98.9, 99.9, 0.04814, 0.09894, 0.61858},
    {1.567, 100.0, 100.0, 100.0, 0.04908, 0.10006, 0.61915},
    {1.570, 100.8, 100.5, 100.0, 0.04948, 0.10053, 0.61939},
    {1.580, 103.6, 102.1, 100.2, 0.05083, 0.10211, 0.62015},
    {1.590, 106.3, 103.6, 100.3, 0.05219, 0.10368, 0.62087},
    {1.600, 109.1, 105.2, 100.4, 0.05355, 0.10524, 0.62156},
    {1.610, 111.9, 106.7, 100.5, 0.05493, 0.10679, 0.62221},
    {1.620, 114.7, 108.3, 100.6, 0.05630, 0.10833, 0.62283},
    {1.630, 117.5, 109.8, 100.7, 0.05769, 0.10986, 0.62342},
    {1.640, 120.4, 111.3, 100.8, 0.05908, 0.11138, 0.62397},
    {1.650, 123.2, 112.8, 100.9, 0.06048, 0.11289, 0.62449},
    {1.660, 126.1, 114.3, 100.9, 0.06188, 0.11440, 0.62499},
    {1.670, 128.9, 115.8, 101.0, 0.06328, 0.11590, 0.62546},
    {1.680, 131.8, 117.3, 101.1, 0.06470, 0.11738, 0.62589},
    {1.690, 134.7, 118.8, 101.2, 0.06611, 0.11886, 0.62631},
    {1.700, 137.6, 120.3, 101.2, 0.06754, 0.12034, 0.62670},
    // clang-format on
};

TEST(Sheen, TableOfIndices) {
  for (const auto& row : rows) {
    const double n = row.refractive_index;
    EXPECT_NEAR(gloss_gu(n, 20.0, 0.0), row.gloss_20, 0.05001) << n;
    EXPECT_NEAR(gloss_gu(n, 60.0, 0.0), row.gloss_60, 0.05001) << n;
    EXPECT_NEAR(gloss_gu(n, 85.0, 0.0), row.gloss_85, 0.05001) << n;
    EXPECT_NEAR(fresnel_reflectance(n, 20.0), row.r_20, 5.001e-6) << n;
    EXPECT_NEAR(fresnel_reflectance(n, 60.0), row.r_60, 5.001e-6) << n;
    EXPECT_NEAR(fresnel_reflectance(n, 85.0), row.r_85, 5.001e-6) << n;
  }
}

// Fresnel's equations and the loss of Bennett & Porteus (1961) in independent arithmetic.
TEST(Sheen, CheckValuesOfARoughCoat) {
  EXPECT_NEAR(gloss_gu(1.5, 60.0, 0.05), 64.3221, 5e-5);
  EXPECT_NEAR(gloss_gu(1.5, 20.0, 0.05), 25.9161, 5e-5);
}

struct LossRow {
  double angle_deg, rq_um, share, tolerance;
};

// Rq at which the share of the light of a smooth surface is left, 550 nm: lambda / (4 pi cos i)
// sqrt(-ln share), printed to 0.1 nm (85 degrees, half: to 1 nm). The tolerance is that rounding.
constexpr LossRow loss_rows[] = {
    {0, 0.0364, 0.5, 0.002},  {20, 0.0388, 0.5, 0.002}, {60, 0.0729, 0.5, 0.001},
    {85, 0.418, 0.5, 0.001},  {0, 0.0142, 0.9, 0.001},  {20, 0.0151, 0.9, 0.001},
    {60, 0.0284, 0.9, 0.001}, {85, 0.163, 0.9, 0.001},
};

TEST(Sheen, RoughnessAtHalfAndTenPercentLoss) {
  for (const auto& row : loss_rows) {
    EXPECT_NEAR(gloss_gu(1.5, row.angle_deg, row.rq_um) / gloss_gu(1.5, row.angle_deg, 0.0),
                row.share, row.tolerance)
        << row.angle_deg;
  }
}

TEST(Sheen, ReferenceGlassHas100AtEveryAngle) {
  for (const double angle_deg : {0.0, 20.0, 45.0, 60.0, 75.0, 85.0, 89.0}) {
    EXPECT_DOUBLE_EQ(gloss_gu(1.567, angle_deg, 0.0), 100.0);
  }
}

TEST(Sheen, LimitsOfTheReflectance) {
  EXPECT_NEAR(fresnel_reflectance(1.5, 0.0), 0.04, 1e-15);  // ((n - 1) / (n + 1))^2
  EXPECT_NEAR(fresnel_reflectance(1.0, 60.0), 0.0, 1e-30);
  EXPECT_NEAR(fresnel_reflectance(1.5, 89.999), 1.0, 1e-3);
  // At Brewster's angle only the s wave is left: its reflectance is ((n^2 - 1) / (n^2 + 1))^2.
  const double brewster_deg = std::atan(1.5) * 180.0 / std::numbers::pi;
  EXPECT_NEAR(fresnel_reflectance(1.5, brewster_deg), 0.5 * std::pow(1.25 / 3.25, 2), 1e-15);
}

TEST(Sheen, FallsWithRoughnessAndGrowsWithIndex) {
  for (const double angle_deg : {20.0, 60.0, 85.0}) {
    for (double rq_um = 0.0; rq_um < 0.5; rq_um += 0.02) {
      EXPECT_GT(gloss_gu(1.5, angle_deg, rq_um), gloss_gu(1.5, angle_deg, rq_um + 0.02));
      EXPECT_LT(gloss_gu(1.5, angle_deg, rq_um), gloss_gu(1.51, angle_deg, rq_um));
    }
  }
  EXPECT_EQ(gloss_gu(1.5, 20.0, 1000.0), 0.0);
}

TEST(Sheen, NanIn) {
  const double nan = std::nan("");
  EXPECT_TRUE(std::isnan(gloss_gu(nan, 60.0, 0.1)));
  EXPECT_TRUE(std::isnan(gloss_gu(1.5, nan, 0.1)));
  EXPECT_TRUE(std::isnan(gloss_gu(1.5, 60.0, nan)));
  EXPECT_TRUE(std::isnan(fresnel_reflectance(nan, 60.0)));
  EXPECT_TRUE(std::isnan(fresnel_reflectance(1.5, nan)));
}

TEST(Sheen, RejectsWhatIsOutOfRange) {
  EXPECT_THROW(fresnel_reflectance(0.99, 60.0), OutOfRange);
  EXPECT_THROW(fresnel_reflectance(4.1, 60.0), OutOfRange);
  EXPECT_THROW(fresnel_reflectance(1.5, -1.0), OutOfRange);
  EXPECT_THROW(fresnel_reflectance(1.5, 90.0), OutOfRange);
  EXPECT_THROW(gloss_gu(0.99, 60.0, 0.1), OutOfRange);
  EXPECT_THROW(gloss_gu(1.5, 90.0, 0.1), OutOfRange);
  EXPECT_THROW(gloss_gu(1.5, 60.0, -0.1), OutOfRange);
  EXPECT_THROW(gloss_gu(1.5, 60.0, std::numeric_limits<double>::infinity()), OutOfRange);
}

}  // namespace
}  // namespace sheen_test
