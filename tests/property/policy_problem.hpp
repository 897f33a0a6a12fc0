// Small random problems of where to go back to, for the tests that try out every way.
#pragma once

#include <limits>
#include <random>
#include <vector>

#include "levigate/recover/need.hpp"
#include "levigate/recover/policy.hpp"

namespace policy_problem {

using namespace levigate;

inline constexpr double infinity = std::numeric_limits<double>::infinity();

struct Problem {
  std::vector<Need> needs;
  std::vector<Climb> climbs;
  double film_um;
  double stop_minutes;
};

inline Problem random_problem(std::mt19937_64& random) {
  const auto uniform = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  const auto count = [&](int low, int high) {
    return std::uniform_int_distribution<int>(low, high)(random);
  };
  Problem problem;
  double total = 0;
  double need_um = 0;
  for (int i = count(1, 5); i > 0; --i) {
    need_um += uniform(0.05, 1.0);
    problem.needs.push_back({need_um, uniform(0.05, 1.0)});
    total += problem.needs.back().probability;
  }
  for (Need& need : problem.needs) need.probability /= total;
  // From the finest sheet on: a coarser one climbs through all finer ones.
  double above_um = 0;
  double fixed_minutes = 3;
  for (int i = count(1, 3); i > 0; --i) {
    const double minutes_per_um = uniform(1, 20);
    const double climbed_um = uniform(0, 1.0);
    problem.climbs.push_back({.fixed_minutes = fixed_minutes,
                              .minutes_per_um = minutes_per_um,
                              .above_um = above_um,
                              .reach_um = count(0, 3) == 0 ? uniform(0.1, 2) : infinity});
    above_um += climbed_um;
    fixed_minutes += minutes_per_um * climbed_um + uniform(0, 10);
  }
  problem.film_um = count(0, 2) == 0 ? uniform(0, 4) : infinity;
  problem.stop_minutes = uniform(5, 120);
  return problem;
}

}  // namespace policy_problem
