#include "levigate/surface/removal.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace removal_test {
namespace {

using namespace levigate;

// rho = K sqrt(d / 100 um) P / H, Archard and Preston: 0.02 sqrt(0.183) 0.0017 / 150 1e6.
TEST(Removal, CheckValueOfTheRate) {
  EXPECT_NEAR(removal_rate_um_per_m(0.02, 18.3, 1.7, 150.0), 0.0969646, 5e-8);
}

TEST(Removal, IsLinearInWearPressureAndSoftness) {
  const double base = removal_rate_um_per_m(0.01, 50.0, 2.0, 150.0);
  EXPECT_DOUBLE_EQ(removal_rate_um_per_m(0.03, 50.0, 2.0, 150.0), 3 * base);
  EXPECT_DOUBLE_EQ(removal_rate_um_per_m(0.01, 50.0, 6.0, 150.0), 3 * base);
  EXPECT_DOUBLE_EQ(removal_rate_um_per_m(0.01, 50.0, 2.0, 450.0), base / 3);
}

// Sydor et al., Appl. Sci. 11(6):2860 (2021): times to sand a block away with belts of 269, 125 and
// 82 um give exponents of 0.65 on softwood and 0.41 on hardwood; the one in use lies between.
TEST(Removal, SizeEffectLiesBetweenThePublishedWoods) {
  const double exponent = std::log(size_effect(80.0) / size_effect(40.0)) / std::log(2.0);
  EXPECT_GT(exponent, 0.41);
  EXPECT_LT(exponent, 0.65);
}

TEST(Removal, SizeEffectSaturates) {
  EXPECT_DOUBLE_EQ(size_effect(25.0), 0.5);
  EXPECT_EQ(size_effect(100.0), 1.0);
  EXPECT_EQ(size_effect(5000.0), 1.0);
}

TEST(Removal, SizeEffectSaturatesWhereTheModelSays) {
  EXPECT_DOUBLE_EQ(size_effect_with(15.0, 0.5, 60.0), 0.5);
  EXPECT_EQ(size_effect_with(60.0, 0.5, 60.0), 1.0);
  EXPECT_LT(size_effect_with(60.0, 0.5, 150.0), 1.0);
  EXPECT_EQ(size_effect_with(18.3, 0.5, 100.0), size_effect(18.3));
}

// 0.4 + 0.6 (1 - 1/e).
TEST(Removal, CheckValueOfTheCloggingShare) {
  EXPECT_NEAR(clogging_share(5.0, 5.0, 0.4), 0.779272, 5e-7);
}

TEST(Removal, CloggingShareFallsFromOneToItsFloor) {
  EXPECT_EQ(clogging_share(0.0, 5.0, 0.4), 1.0);
  EXPECT_NEAR(clogging_share(1e-9, 5.0, 0.4), 1.0, 1e-9);
  EXPECT_NEAR(clogging_share(1e9, 1e-6, 0.4), 0.4, 1e-14);
  double last = 1.0;
  for (double every = 0.5; every < 100.0; every *= 1.5) {
    const double share = clogging_share(every, 5.0, 0.4);
    EXPECT_LT(share, last);
    EXPECT_GT(share, 0.4);
    last = share;
  }
}

TEST(Removal, CloggingShareIsTheMeanOfTheDecay) {
  double sum = 0;
  const int steps = 1000;
  for (int i = 0; i < steps; ++i) sum += 0.3 + 0.7 * std::exp(-(i + 0.5) / steps * 8.0 / 5.0);
  EXPECT_NEAR(clogging_share(8.0, 5.0, 0.3), sum / steps, 1e-6);
}

TEST(Removal, NanIn) {
  const double nan = std::nan("");
  EXPECT_TRUE(std::isnan(size_effect(nan)));
  EXPECT_TRUE(std::isnan(size_effect_with(18.3, nan, 100.0)));
  EXPECT_TRUE(std::isnan(size_effect_with(18.3, 0.5, nan)));
  EXPECT_TRUE(std::isnan(removal_rate_um_per_m(nan, 18.3, 1.7, 150.0)));
  EXPECT_TRUE(std::isnan(removal_rate_um_per_m(0.02, nan, 1.7, 150.0)));
  EXPECT_TRUE(std::isnan(removal_rate_um_per_m(0.02, 18.3, nan, 150.0)));
  EXPECT_TRUE(std::isnan(removal_rate_um_per_m(0.02, 18.3, 1.7, nan)));
  EXPECT_TRUE(std::isnan(clogging_share(nan, 5.0, 0.4)));
  EXPECT_TRUE(std::isnan(clogging_share(5.0, nan, 0.4)));
  EXPECT_TRUE(std::isnan(clogging_share(5.0, 5.0, nan)));
}

TEST(Removal, RejectsWhatIsOutOfRange) {
  EXPECT_THROW(size_effect(0.001), OutOfRange);
  EXPECT_THROW(size_effect(10001.0), OutOfRange);
  EXPECT_THROW(size_effect_with(18.3, 0.5, 0.9), OutOfRange);
  EXPECT_THROW(size_effect_with(18.3, 0.5, 10001.0), OutOfRange);
  EXPECT_THROW(removal_rate_um_per_m(0.0, 18.3, 1.7, 150.0), OutOfRange);
  EXPECT_THROW(removal_rate_um_per_m(0.02, 0.0, 1.7, 150.0), OutOfRange);
  EXPECT_THROW(removal_rate_um_per_m(0.02, 18.3, -1.0, 150.0), OutOfRange);
  EXPECT_THROW(removal_rate_um_per_m(0.02, 18.3, 1.7, 0.5), OutOfRange);
  EXPECT_THROW(clogging_share(-1.0, 5.0, 0.4), OutOfRange);
  EXPECT_THROW(clogging_share(5.0, 0.0, 0.4), OutOfRange);
  EXPECT_THROW(clogging_share(5.0, 5.0, 1.1), OutOfRange);
}

}  // namespace
}  // namespace removal_test
