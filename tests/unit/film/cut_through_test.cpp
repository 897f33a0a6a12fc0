#include "levigate/film/cut_through.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <random>

namespace cut_through_test {
namespace {

using namespace levigate;

constexpr CutThroughInput coat{.depth_um = 38.0,
                               .mean_um = 105.0,
                               .sd_um = 9.0,
                               .removed_cv = 0.15,
                               .reserve_um = 10.0,
                               .spots = 1200.0};

// Normal film and depth, 60-digit arithmetic.
TEST(CutThrough, CheckValue) { EXPECT_NEAR(cut_through(coat), 5.26194960783e-5, 1e-15); }

TEST(CutThrough, KeepsItsAccuracyFarOut) {
  CutThroughInput even = coat;
  even.removed_cv = 0.0;
  even.sd_um = 1.8;  // 60-digit arithmetic: 2.6830...e-217, and 2.8644...e-293 at 1.55
  EXPECT_NEAR(cut_through(even) / 2.68305275667433913e-217, 1.0, 1e-12);
  even.sd_um = 1.55;
  EXPECT_NEAR(cut_through(even) / 2.8644620017437622584e-293, 1.0, 1e-12);
}

TEST(CutThrough, OneSpotIsTheNormalTail) {
  CutThroughInput spot = coat;
  spot.spots = 1.0;
  spot.removed_cv = 0.0;
  spot.sd_um = 57.0;  // one standard deviation is left
  EXPECT_NEAR(cut_through(spot), 0.15865525393145705, 1e-15);
  spot.depth_um = 95.0;
  EXPECT_DOUBLE_EQ(cut_through(spot), 0.5);
  spot.spots = 10.0;
  EXPECT_DOUBLE_EQ(cut_through(spot), 1.0 - std::exp2(-10.0));
}

TEST(CutThrough, WithoutSpreadTheReserveDecides) {
  CutThroughInput even = coat;
  even.sd_um = even.removed_cv = 0.0;
  even.depth_um = 95.0;
  EXPECT_EQ(cut_through(even), 0.0);
  even.depth_um = std::nextafter(95.0, 100.0);
  EXPECT_EQ(cut_through(even), 1.0);
}

TEST(CutThrough, GrowsWithEveryRisk) {
  const auto more = [](double CutThroughInput::*member, double value) {
    CutThroughInput input = coat;
    input.*member = value;
    return cut_through(input);
  };
  const double base = cut_through(coat);
  EXPECT_GT(more(&CutThroughInput::depth_um, 39.0), base);
  EXPECT_GT(more(&CutThroughInput::sd_um, 9.1), base);
  EXPECT_GT(more(&CutThroughInput::removed_cv, 0.16), base);
  EXPECT_GT(more(&CutThroughInput::reserve_um, 10.1), base);
  EXPECT_GT(more(&CutThroughInput::spots, 1300.0), base);
  EXPECT_LT(more(&CutThroughInput::mean_um, 106.0), base);
}

// Spots drawn one by one: normal film less normal depth, a pair by Box and Muller's transform.
TEST(CutThrough, AgreesWithASimulation) {
  CutThroughInput zone = coat;
  zone.depth_um = 68.0;
  zone.spots = 20.0;
  std::mt19937_64 engine(20240229);
  const auto uniform = [&] { return (static_cast<double>(engine() >> 11) + 0.5) * 0x1p-53; };
  constexpr int zones = 50000;
  int cut = 0;
  for (int i = 0; i < zones; ++i) {
    bool through = false;
    for (int spot = 0; spot < 20; ++spot) {
      const double radius = std::sqrt(-2.0 * std::log(uniform()));
      const double angle = 2.0 * 3.14159265358979 * uniform();
      const double film = zone.mean_um + zone.sd_um * radius * std::cos(angle);
      const double depth = zone.depth_um * (1.0 + zone.removed_cv * radius * std::sin(angle));
      through = through || film - depth < zone.reserve_um;
    }
    cut += through;
  }
  const double chance = cut_through(zone);
  const double standard_error = std::sqrt(chance * (1.0 - chance) / zones);
  EXPECT_GT(chance, 0.1);
  EXPECT_NEAR(static_cast<double>(cut) / zones, chance, 4.0 * standard_error);
}

constexpr double CutThroughInput::*members[] = {
    &CutThroughInput::depth_um,   &CutThroughInput::mean_um,    &CutThroughInput::sd_um,
    &CutThroughInput::removed_cv, &CutThroughInput::reserve_um, &CutThroughInput::spots};

TEST(CutThrough, NanInAndOutOfRange) {
  for (const auto member : members) {
    CutThroughInput input = coat;
    input.*member = std::nan("");
    EXPECT_TRUE(std::isnan(cut_through(input)));
    input.*member = -1.0;
    EXPECT_THROW(cut_through(input), OutOfRange);
    input.*member = HUGE_VAL;
    EXPECT_THROW(cut_through(input), OutOfRange);
  }
}

}  // namespace
}  // namespace cut_through_test
