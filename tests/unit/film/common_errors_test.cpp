// Errors that all spots of a zone share: against plain sums over all of them, and at their ends.
#include "levigate/film/common_errors.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "levigate/film/budget.hpp"
#include "levigate/film/cut_through.hpp"
#include "levigate/surface/levelling.hpp"

namespace common_errors_test {
namespace {

using namespace levigate;

constexpr CutThroughInput coat{
    .depth_um = 18, .mean_um = 84, .sd_um = 7, .removed_cv = 0.15, .reserve_um = 10, .spots = 1450};

struct Weighed {
  double value, weight;
};

std::vector<Weighed> normals() {
  std::vector<Weighed> all;
  for (double z = -7; z <= 7; z += 0.125) all.push_back({z, 0.125 * detail::normal_density(z)});
  return all;
}

/// The chance as its definition has it: a sum over a grid of every error, spots in closed form.
double by_sums(CutThroughInput zone) {
  const CommonErrors errors = zone.common;
  zone.common = {};
  std::vector<Weighed> spreads{{zone.sd_um, 1}};
  const double df = errors.sd_se_um > 0 ? 0.5 * std::pow(zone.sd_um / errors.sd_se_um, 2) : 0;
  if (df > 0) {
    spreads.clear();
    for (double y = 0.02; y < 40; y += 0.04) {  // chi-square numbers y^2
      const double log_density = (df - 1) * std::log(y) - 0.5 * y * y - std::lgamma(0.5 * df) -
                                 (0.5 * df - 1) * std::log(2.0);
      spreads.push_back({zone.sd_um * std::sqrt(df) / y, 0.04 * std::exp(log_density)});
    }
  }
  const std::vector<Weighed> none{{0, 1}}, all = normals();
  const double nominal_um =
      detail::levelled_um(0.5 * errors.peel_um, errors.critical_um, 0.5 * errors.residual_um);
  double chance = 0;
  for (const Weighed& peel : errors.peel_um > 0 ? all : none) {
    CutThroughInput at = zone;
    const double peel_um = errors.peel_um * std::pow(errors.peel_factor, peel.value);
    at.depth_um = std::max(
        0.0, zone.depth_um - nominal_um +
                 detail::levelled_um(0.5 * peel_um, errors.critical_um, 0.5 * errors.residual_um));
    for (const Weighed& spread : spreads) {
      if (peel.weight * spread.weight < 1e-12) continue;
      at.sd_um = spread.value;
      const double sampled2 = errors.readings > 0 ? zone.sd_um * zone.sd_um / errors.readings : 0;
      const double error_um = std::sqrt(errors.mean_se_um * errors.mean_se_um - sampled2 +
                                        sampled2 * std::pow(spread.value / zone.sd_um, 2));
      for (const Weighed& mean : errors.mean_se_um > 0 ? all : none) {
        at.mean_um = std::max(0.0, zone.mean_um + error_um * mean.value);
        at.sd_um = std::min(2e4, spread.value);
        chance += peel.weight * spread.weight * mean.weight * cut_through(at);
      }
    }
  }
  return chance;
}

CommonErrors of_readings(int readings, double sd_um, double gauge_um) {
  return {.mean_se_um = std::hypot(sd_um / std::sqrt(readings), gauge_um),
          .sd_se_um = sd_um / std::sqrt(2.0 * (readings - 1)),
          .readings = static_cast<double>(readings)};
}

TEST(CommonErrors, IsTheMeanOverThem) {
  CutThroughInput zone = coat;
  zone.common = {.mean_se_um = 10};
  EXPECT_NEAR(cut_through(zone) / by_sums(zone), 1, 1e-3);
  zone.common = {.peel_um = 30, .peel_factor = 1.4};
  EXPECT_NEAR(cut_through(zone) / by_sums(zone), 1, 1e-3);
  zone.common = {.mean_se_um = 10, .peel_um = 30, .peel_factor = 1.4};
  EXPECT_NEAR(cut_through(zone) / by_sums(zone), 1, 1e-3);
  EXPECT_NEAR(cut_through(zone), 0.012, 0.006) << "not 9e-11, as without errors";
  zone.common = {.mean_se_um = 2, .peel_um = 30, .peel_factor = 1.4, .critical_um = 5};
  EXPECT_NEAR(cut_through(zone) / by_sums(zone), 1, 1e-3);
  for (const int readings : {3, 5, 12}) {
    zone.common = of_readings(readings, 7, 0);
    EXPECT_NEAR(cut_through(zone) / by_sums(zone), 1, 1e-3) << readings;
  }
  for (const double factor : {1.8, 3.0}) {
    zone.common = of_readings(12, 7, 0);
    zone.common.peel_um = 40;
    zone.common.peel_factor = factor;
    EXPECT_NEAR(cut_through(zone) / by_sums(zone), 1, 1e-3) << factor;
  }
  zone.common = of_readings(5, 7, 3);
  zone.common.peel_um = 20;
  zone.common.peel_factor = 1.2;
  EXPECT_NEAR(cut_through(zone) / by_sums(zone), 1, 1e-3);
}

TEST(CommonErrors, WithoutAnyNothingChanges) {
  CutThroughInput zone = coat;
  const double chance = cut_through(zone);
  zone.common = {.readings = 12, .peel_um = 30, .critical_um = 4};
  EXPECT_EQ(cut_through(zone), chance) << "the peel is known";
  zone.common = {.peel_factor = 1.4};
  EXPECT_EQ(cut_through(zone), chance) << "there is none";
}

TEST(CommonErrors, EachTakesFilm) {
  const auto budget = [](const CommonErrors& errors) {
    return depth_budget_um({84, 7, 0.15, 10, 1450, 0.01, errors});
  };
  const double known = budget({});
  for (const CommonErrors& errors : {CommonErrors{.mean_se_um = 5}, CommonErrors{.sd_se_um = 1},
                                     CommonErrors{.peel_um = 30, .peel_factor = 1.4}}) {
    EXPECT_LT(budget(errors), known);
  }
  EXPECT_LT(budget(of_readings(5, 7, 0)), budget(of_readings(12, 7, 0)));
  EXPECT_EQ(budget(of_readings(2, 7, 0)), 0) << "two readings tell next to nothing of the spread";
}

TEST(CommonErrors, OfASpreadThatIsHardlyKnownNoNumberOverflows) {
  for (const double sd_um : {0.0, 1e-6, 3.0}) {
    CutThroughInput zone = coat;
    zone.sd_um = sd_um;
    zone.common = {.mean_se_um = 1, .sd_se_um = 50, .readings = 2};
    const double chance = cut_through(zone);
    EXPECT_GT(chance, 0.5);
    EXPECT_LE(chance, 1);
  }
}

TEST(CommonErrors, RangesAreKept) {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  for (double CommonErrors::*member :
       {&CommonErrors::mean_se_um, &CommonErrors::sd_se_um, &CommonErrors::readings,
        &CommonErrors::peel_um, &CommonErrors::peel_factor, &CommonErrors::critical_um,
        &CommonErrors::residual_um}) {
    CutThroughInput zone = coat;
    BudgetInput budget{84, 7, 0.15, 10, 1450, 0.01};
    zone.common.*member = budget.common.*member = nan;
    EXPECT_TRUE(std::isnan(cut_through(zone)));
    EXPECT_TRUE(std::isnan(depth_budget_um(budget)));
    for (const double bad : {-1.0, 2e9}) {
      zone.common.*member = budget.common.*member = bad;
      EXPECT_THROW(cut_through(zone), OutOfRange);
      EXPECT_THROW(depth_budget_um(budget), OutOfRange);
    }
  }
}

}  // namespace
}  // namespace common_errors_test
