// The chance of cutting through, by sanding zones spot by spot: the film that stands there, less the
// depth that the hand happens to reach, against the reserve.

#include <gtest/gtest.h>

#include <cmath>

#include "levigate/film/cut_through.hpp"
#include "property/simulation.hpp"

namespace cut_through_simulation_test {
namespace {

using namespace levigate;
using namespace levigate_tests;

/// A zone whose chance is neither so small nor so large that few trials tell nothing of it.
CutThroughInput random_zone(Random& random) {
  while (true) {
    CutThroughInput zone{.depth_um = random.uniform(5.0, 60.0),
                         .mean_um = 0.0,
                         .sd_um = random.uniform(1.0, 15.0),
                         .removed_cv = random.uniform(0.0, 0.4),
                         .reserve_um = random.uniform(0.0, 20.0),
                         .spots = std::floor(random.log_uniform(1.0, 40.0))};
    const double spread = std::hypot(zone.sd_um, zone.removed_cv * zone.depth_um);
    zone.mean_um = zone.depth_um + zone.reserve_um + random.uniform(0.0, 3.5) * spread;
    const double chance = cut_through(zone);
    if (chance > 0.02 && chance < 0.98) return zone;
  }
}

bool cut_once(const CutThroughInput& zone, Random& random) {
  for (int spot = 0; spot < static_cast<int>(zone.spots); ++spot) {
    const double film = zone.mean_um + zone.sd_um * random.normal();
    const double depth = zone.depth_um * (1.0 + zone.removed_cv * random.normal());
    if (film - depth < zone.reserve_um) return true;
  }
  return false;
}

// Score intervals of 120 zones, all of which hold at once with 99 % (Bonferroni: each at
// 1 - 0.01 / 120, so 3.93 standard errors).
TEST(CutThroughSimulation, AgreesInAllZones) {
  constexpr int zones = 120, trials = 3000;
  const double allowed = detail::normal_quantile(0.01 / zones / 2.0);
  Random random(20240611);
  double squares = 0;
  for (int i = 0; i < zones; ++i) {
    const CutThroughInput zone = random_zone(random);
    const double chance = cut_through(zone);
    int cut = 0;
    for (int trial = 0; trial < trials; ++trial) cut += cut_once(zone, random) ? 1 : 0;
    const double error = (cut - trials * chance) / std::sqrt(trials * chance * (1.0 - chance));
    EXPECT_LT(std::abs(error), allowed) << chance << " against " << cut << " of " << trials;
    squares += error * error;
  }
  // Errors of the closed form too small for any one zone would show in their mean square: 120 times it
  // has a chi-square distribution of 120 degrees of freedom, whose 0.5 and 99.5 % quantiles these
  // are. (A normal law of the same variance is too narrow above.)
  constexpr double low = 83.8516 / zones, high = 163.648 / zones;
  const double mean_square = squares / zones;
  EXPECT_GT(mean_square, low);
  EXPECT_LT(mean_square, high);
  expect_committed("cut_through", {mean_square, low, high});
}

// One case of 42 spots with a standard error small enough to see 1 % of the chance.
TEST(CutThroughSimulation, AgreesInOneZoneToOnePercent) {
  const CutThroughInput zone{.depth_um = 38.0,
                             .mean_um = 73.0,
                             .sd_um = 9.0,
                             .removed_cv = 0.15,
                             .reserve_um = 10.0,
                             .spots = 42.0};
  constexpr int trials = 200000;
  Random random(5);
  int cut = 0;
  for (int trial = 0; trial < trials; ++trial) cut += cut_once(zone, random) ? 1 : 0;
  const double share = cut / static_cast<double>(trials);
  const double half = detail::normal_quantile(0.005) * std::sqrt(share * (1.0 - share) / trials);
  ASSERT_LT(half, 0.012 * share);
  EXPECT_NEAR(cut_through(zone), share, half);
  expect_committed("cut_through_42_spots", {share, share - half, share + half});
}

}  // namespace
}  // namespace cut_through_simulation_test
