// The fastest step ratio. A sheet must remove the scratch of the one before it, d_(i-1) in depth, at
// a rate in proportion to d_i^p. With p = 1, no change time and grades without a gap the time of a
// step depends on its ratio r alone, and r / ln r is least at e. For other p, from a size d down to
// nothing the fastest time goes as d^(1 - p), and the first ratio solves
// p (1 - r^(p - 1)) = (1 - p) r^(p - 1): r = p^(-1 / (1 - p)), 4 for the size effect p = 1/2.

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

#include "levigate/plan/work/search.hpp"
#include "levigate/surface/removal.hpp"
#include "levigate/surface/scratch.hpp"
#include "property/simulation.hpp"

namespace step_ratio_simulation_test {
namespace {

using namespace levigate;
using namespace levigate_tests;

std::vector<double> sizes(double coarsest, double fineness, std::size_t steps) {
  std::vector<double> result;
  for (std::size_t i = 0; i <= steps; ++i) {
    result.push_back(coarsest *
                     std::pow(fineness, -static_cast<double>(i) / static_cast<double>(steps)));
  }
  return result;
}

/// Ratios of the fastest sequence from the coarsest size to the finest, by the library's search.
/// `time` of a step from one size to another, in any unit.
template <typename Time>
std::vector<double> fastest_ratios(const std::vector<double>& size, Time time) {
  const std::size_t count = size.size();
  const double unit = 1e12 / time(size.front(), size.back());
  Ladder ladder;
  ladder.first = {{0, {0, 0, {0}}}};  // work that the coarsest size has scratched
  ladder.budget_pm = {std::nullopt};
  for (std::size_t i = 0; i < count; ++i) {
    ladder.coarse_to_fine.push_back(i);
    Rung rung{{0}, {}, i + 1 == count};
    for (std::size_t j = i + 1; j < count; ++j) {
      rung.next.push_back({j, {std::llround(unit * time(size[i], size[j])), 0, {0}}});
    }
    ladder.as_first.push_back(rung);
    ladder.later.push_back(rung);
  }
  const std::vector<Sequence> found = search(ladder);
  const Sequence* fastest = &found.at(0);
  for (const Sequence& s : found) {
    if (s.milliseconds < fastest->milliseconds) fastest = &s;
  }
  std::vector<double> ratios;
  for (std::size_t i = 1; i < fastest->sheets.size(); ++i) {
    ratios.push_back(size[fastest->sheets[i - 1]] / size[fastest->sheets[i]]);
  }
  return ratios;
}

TEST(StepRatioSimulation, IsEWhereRatesGoAsTheSize) {
  const auto time = [](double from, double to) { return from / to; };
  const std::vector<double> ratios = fastest_ratios(sizes(100.0, std::exp(5.0), 250), time);
  ASSERT_EQ(ratios.size(), 5U);
  for (const double ratio : ratios) EXPECT_NEAR(ratio, std::numbers::e, 1e-9);
}

// Where e does not divide the way, all steps are equal and one of the two next numbers of them wins.
TEST(StepRatioSimulation, ScattersAboutEByTheNumberOfSteps) {
  const auto time = [](double from, double to) { return from / to; };
  for (const double way : {3.3, 4.4, 5.7, 6.6}) {  // ln of fineness
    const std::vector<double> ratios = fastest_ratios(sizes(100.0, std::exp(way), 330), time);
    const auto total = [&](double steps) { return steps * std::exp(way / steps); };
    const double below = std::floor(way);
    const double steps = total(below) < total(below + 1) ? below : below + 1;
    ASSERT_EQ(static_cast<double>(ratios.size()), steps);
    for (const double ratio : ratios) EXPECT_NEAR(std::log(ratio), way / steps, way / 330);
  }
}

// Against the condition that each size between two others is the best: p r_k = r_(k+1)^p.
void expect_best(const std::vector<double>& ratios, double p, double grid) {
  ASSERT_GE(ratios.size(), 4U);
  EXPECT_NEAR(std::log(ratios.front()), -std::log(p) / (1.0 - p), 0.05);
  for (std::size_t k = 0; k + 1 < ratios.size(); ++k) {
    EXPECT_NEAR(std::log(p * ratios[k]), p * std::log(ratios[k + 1]), 1.5 * std::log(grid)) << k;
  }
}

TEST(StepRatioSimulation, FollowsTheExponentOfTheRate) {
  for (const double p : {0.4, 0.5, 0.65}) {
    const double fineness = 1e5;
    constexpr std::size_t steps = 360;
    const auto time = [p](double from, double to) { return from / std::pow(to, p); };
    expect_best(fastest_ratios(sizes(1.0, fineness, steps), time), p,
                std::pow(fineness, 1.0 / steps));
  }
}

// Depth and rate from the library, sheets of equal spread from 90 um down.
TEST(StepRatioSimulation, IsFourForTheSizeEffect) {
  const auto time = [](double from_um, double to_um) {
    const Contact before = contact({.size_um = from_um,
                                    .log_spread = 0.28,
                                    .tip_spread = 0.15,
                                    .modulus_mpa = 20.0,
                                    .pressure_kpa = 1.7,
                                    .hardness_mpa = 150.0});
    return scratch_depth_um(before, 0.99) / removal_rate_um_per_m(0.02, to_um, 1.7, 150.0);
  };
  constexpr std::size_t steps = 270;
  const double fineness = 9000.0;
  const std::vector<double> ratios = fastest_ratios(sizes(90.0, fineness, steps), time);
  const double grid = std::pow(fineness, 1.0 / steps);
  expect_best(ratios, 0.5, grid);
  expect_committed("fastest_ratio", {ratios.front(), ratios.front() / grid, ratios.front() * grid});
}

}  // namespace
}  // namespace step_ratio_simulation_test
