// The chance of cutting through with errors that all spots share, against zones sanded spot by spot and against simulate().

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "levigate/detail/chi_square.hpp"
#include "levigate/film/budget.hpp"
#include "levigate/film/cut_through.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/simulate.hpp"
#include "property/simulation.hpp"
#include "unit/workshop.hpp"

namespace common_errors_simulation_test {
namespace {

using namespace levigate;
using namespace levigate_tests;

/// A film as it may have been, of which these readings are a sample: by the definition of the t and the chi-square distribution,
/// with as many normal numbers as there are degrees of freedom.
struct Truth {
  double mean_um, sd_um;
};

Truth true_film(const CutThroughInput& zone, int readings, double gauge_um, Random& random) {
  if (readings == 0) return {zone.mean_um + gauge_um * random.normal(), zone.sd_um};
  double chi_square = 0;
  for (int i = 1; i < readings; ++i) {
    const double one = random.normal();
    chi_square += one * one;
  }
  const double sd_um = zone.sd_um * std::sqrt((readings - 1) / chi_square);
  const double mean_um = zone.mean_um + sd_um / std::sqrt(readings) * random.normal();
  return {mean_um + gauge_um * random.normal(), sd_um};
}

/// Film that levelling takes, from its own formula: crests under a hard face, by the logarithm once a soft one touches all over.
double taken_um(const CommonErrors& errors, double peel_um) {
  const double a = peel_um / 2, stays = errors.residual_um / 2, soft = errors.critical_um;
  if (a <= stays) return 0;
  if (soft <= stays) return a - stays;
  return a <= soft ? soft * std::log(a / stays) : a - soft + soft * std::log(soft / stays);
}

bool cut_once(const CutThroughInput& zone, int readings, double gauge_um, Random& random) {
  const Truth film = true_film(zone, readings, gauge_um, random);
  const CommonErrors& errors = zone.common;
  const double peel_um = errors.peel_um * std::pow(errors.peel_factor, random.normal());
  const double depth_um =
      std::max(0.0, zone.depth_um + taken_um(errors, peel_um) - taken_um(errors, errors.peel_um));
  for (int spot = 0; spot < static_cast<int>(zone.spots); ++spot) {
    const double film_um = film.mean_um + film.sd_um * random.normal();
    const double off_um = depth_um * (1 + zone.removed_cv * random.normal());
    if (film_um - off_um < zone.reserve_um) return true;
  }
  return false;
}

// Films from 3, 5 and 10 readings and from coats, with and without peel, levelled by hard and soft faces: all intervals hold at once
// with 99 %, and the mean square of the errors lies where a chi-square distribution has 99 % of its values.
TEST(CommonErrorsSimulation, AgreesInAllZones) {
  constexpr int zones = 96, trials = 6000;
  const double allowed = detail::normal_quantile(0.01 / zones / 2.0);
  Random random(20250203);
  double squares = 0;
  for (int i = 0; i < zones; ++i) {
    const int readings = std::vector<int>{0, 3, 5, 10}[static_cast<std::size_t>(i % 4)];
    CutThroughInput zone{};
    double gauge_um = 0, chance = 0;
    while (chance < 0.02 || chance > 0.98) {
      zone = {.depth_um = random.uniform(15.0, 40.0),
              .mean_um = random.uniform(40.0, 120.0),
              .sd_um = random.uniform(1.0, 8.0),
              .removed_cv = random.uniform(0.0, 0.3),
              .reserve_um = random.uniform(0.0, 15.0),
              .spots = std::floor(random.log_uniform(1.0, 60.0))};
      gauge_um = readings == 0 ? 0.15 * zone.mean_um / std::sqrt(3.0) : random.uniform(0.0, 5.0);
      if (readings > 0) {
        zone.common.readings = readings;
        zone.common.sd_se_um = zone.sd_um / std::sqrt(2.0 * (readings - 1));
      }
      const double sampled_um = readings > 0 ? zone.sd_um / std::sqrt(readings) : 0.0;
      zone.common.mean_se_um = std::hypot(sampled_um, gauge_um);
      if (i % 3 != 0) {
        zone.common.peel_um = random.uniform(10.0, 30.0);
        zone.common.peel_factor = i % 3 == 1 ? 1.4 : 1.2;
        zone.common.critical_um = i % 2 == 0 ? 0.0 : random.uniform(0.1, 6.0);
      }
      chance = cut_through(zone);
    }
    int cut = 0;
    for (int trial = 0; trial < trials; ++trial)
      cut += cut_once(zone, readings, gauge_um, random) ? 1 : 0;
    const double error = (cut - trials * chance) / std::sqrt(trials * chance * (1.0 - chance));
    EXPECT_LT(std::abs(error), allowed)
        << readings << " readings: " << chance << " against " << cut << " of " << trials;
    squares += error * error;
  }
  const double df = zones;
  EXPECT_GT(squares, detail::chi_square_quantile(0.005, df));
  EXPECT_LT(squares, detail::chi_square_quantile(0.995, df));
}

/// One zone with peel told by eye, whose plan and simulation are to agree.
Job one_zone(const Film& film) {
  Job job = workshop::top(30);
  job.zones[0].area_cm2 = 200;
  job.zones[0].film = film;
  return job;
}

Film of_readings(int readings, double mean_um) {
  std::vector<double> all;
  for (int i = 0; i < readings; ++i) all.push_back(mean_um + 6.0 * (2.0 * i / (readings - 1) - 1));
  return film_from_readings(all);
}

// 36 cases of 99.9 %: of right chances all hold with 96 %.
TEST(CommonErrorsSimulation, TheCardAgreesWithSimulate) {
  constexpr std::int64_t draws = 4000;
  const Stack stack = workshop::papers({"P400", "P800", "P1500"});
  for (const double mean_um : {60.0, 75.0, 95.0}) {
    for (const Film& film : {of_readings(3, mean_um), of_readings(5, mean_um),
                             of_readings(10, mean_um), film_from_coats(1, mean_um, 6)}) {
      for (const PeelHow how : choices<PeelHow>) {
        Job job = one_zone(film);
        job.zones[0].peel_how = how;
        const Plan plan = evaluate(job, stack, {"P400", "P800", "P1500"});
        const double chance = *plan.steps.back().zones[0].cut_through;
        const SimulatedZone zone =
            simulate(job, stack, plan, {.draws = draws, .bands = false}).zones[0];
        const auto hits = std::llround(zone.cut_through.share * draws);
        const Share share = exact_share(hits, draws, 0.999);
        EXPECT_LE(share.low, chance) << mean_um << " um, " << film.readings << " readings";
        EXPECT_GE(share.high, chance) << mean_um << " um, " << film.readings << " readings";
      }
    }
  }
}

// Between the closed form and common errors that are hardly there is no step.
TEST(CommonErrorsSimulation, VanishingErrorsAreNoErrors) {
  Random random(8);
  for (int i = 0; i < 60; ++i) {
    CutThroughInput zone{.depth_um = random.uniform(10.0, 50.0),
                         .mean_um = random.uniform(50.0, 90.0),
                         .sd_um = random.uniform(2.0, 9.0),
                         .removed_cv = random.uniform(0.0, 0.3),
                         .reserve_um = 10.0,
                         .spots = std::floor(random.log_uniform(1.0, 2000.0))};
    const double chance = cut_through(zone);
    if (chance < 1e-9) continue;
    zone.common = {.mean_se_um = 1e-4,
                   .sd_se_um = 1e-4,
                   .peel_um = 20,
                   .peel_factor = 1.00001,
                   .critical_um = random.uniform(0.0, 20.0)};
    EXPECT_NEAR(cut_through(zone) / chance, 1.0, 1e-3);
  }
}

TEST(CommonErrorsSimulation, TheBudgetIsTheDepthOfTheLimit) {
  Random random(9);
  int inside = 0;
  for (int i = 0; i < 120; ++i) {
    const int readings = i % 2 == 0 ? 0 : 4 + i % 9;
    const double sd_um = random.uniform(2.0, 9.0);
    BudgetInput input{.mean_um = random.uniform(60.0, 120.0),
                      .sd_um = sd_um,
                      .removed_cv = random.uniform(0.0, 0.3),
                      .reserve_um = 10.0,
                      .spots = std::floor(random.log_uniform(1.0, 2000.0)),
                      .cut_through_limit = random.log_uniform(1e-4, 0.3),
                      .common = {.mean_se_um = random.uniform(0.5, 9.0)}};
    if (readings > 0) {
      input.common.readings = readings;
      input.common.sd_se_um = sd_um / std::sqrt(2.0 * (readings - 1));
    }
    if (i % 3 == 0) {
      input.common.peel_um = 25;
      input.common.peel_factor = 1.4;
      input.common.critical_um = i % 4;
    }
    CutThroughInput at{.depth_um = 0,
                       .mean_um = input.mean_um,
                       .sd_um = sd_um,
                       .removed_cv = input.removed_cv,
                       .reserve_um = input.reserve_um,
                       .spots = input.spots,
                       .common = input.common};
    at.depth_um = depth_budget_um(input);
    if (at.depth_um == 0.0) {
      EXPECT_GT(cut_through(at), input.cut_through_limit);
      continue;
    }
    ++inside;
    EXPECT_NEAR(cut_through(at) / input.cut_through_limit, 1.0, 1e-7);
    double last = 0;  // and the chance never falls on the way down
    for (double depth_um = 0; depth_um < 150; depth_um += 5) {
      at.depth_um = depth_um;
      const double chance = cut_through(at);
      EXPECT_GE(chance, last);
      last = chance;
    }
  }
  EXPECT_GT(inside, 60);
}

}  // namespace
}  // namespace common_errors_simulation_test
