// The legs of least expected minutes against every list of legs there is, and against the policy without their limits.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/recover/leg_policy.hpp"
#include "property/policy_problem.hpp"

namespace leg_policy_oracle_test {
namespace {

using namespace levigate;
using namespace policy_problem;

constexpr double saved = 1.5;  // minutes that going on with the finest sheet after a look saves

double look_minutes(const Climb& climb, double from_um, double to_um) {
  return climb.fixed_minutes + climb.minutes_per_um * (to_um - from_um - climb.above_um);
}

/// The same with what going on saves. The finest climb is the first.
double look_minutes(const Problem& problem, std::size_t climb, double from_um, double to_um) {
  return look_minutes(problem.climbs[climb], from_um, to_um) -
         (climb == 0 && from_um > 0 ? saved : 0);
}

struct TriedLeg {
  std::size_t climb;
  std::size_t to;
  int looks;
};

/// Expected minutes of a list of legs, from its meaning: each need in turn meets the looks in order. Infinite where a leg breaks a
/// rule.
double expected_minutes(const Problem& problem, const std::vector<TriedLeg>& legs,
                        double worth_share) {
  struct Told {
    double off_um, minutes;
  };
  std::vector<Told> looks;
  double from_um = 0;
  for (const TriedLeg& leg : legs) {
    const Climb& climb = problem.climbs[leg.climb];
    const double to_um = problem.needs[leg.to].need_um;
    double step_um = (to_um - from_um) / leg.looks;
    if (to_um - from_um > climb.reach_um || to_um > problem.film_um) return infinity;
    if (step_um < climb.above_um) {
      if (leg.looks > 1 || leg.to + 1 < problem.needs.size()) return infinity;
      step_um = climb.above_um;
      if (from_um + step_um > problem.film_um) return infinity;
    }
    double there = 0, found = 0;
    for (const Need& need : problem.needs) {
      if (need.need_um > from_um) there += need.probability;
      if (need.need_um > from_um && need.need_um <= from_um + step_um * (1 + 1e-12))
        found += need.probability;
    }
    if (found / there < worth_share) return infinity;
    for (int i = 0; i < leg.looks; ++i) {
      const double until_um =
          i + 1 < leg.looks ? from_um + step_um : std::max(to_um, from_um + step_um);
      looks.push_back({until_um, look_minutes(problem, leg.climb, from_um, until_um)});
      from_um = until_um;
    }
    from_um = to_um;
  }
  double expected = 0;
  for (const Need& truth : problem.needs) {
    double minutes = 0;
    bool gone = false;
    for (const Told& look : looks) {
      minutes += look.minutes;
      gone = truth.need_um <= look.off_um * (1 + 1e-12);
      if (gone) break;
    }
    expected += truth.probability * (gone ? minutes : minutes + problem.stop_minutes);
  }
  return expected;
}

void try_all(const Problem& problem, const LegLimits& limits, std::vector<TriedLeg>& legs,
             double& best) {
  best = std::min(best, expected_minutes(problem, legs, limits.worth_share));
  if (legs.size() == limits.legs) return;
  const std::size_t from = legs.empty() ? 0 : legs.back().to + 1;
  for (std::size_t to = from; to < problem.needs.size(); ++to) {
    for (std::size_t climb = 0; climb < problem.climbs.size(); ++climb) {
      for (int looks = 1; looks <= static_cast<int>(limits.looks); ++looks) {
        legs.push_back({climb, to, looks});
        try_all(problem, limits, legs, best);
        legs.pop_back();
      }
    }
  }
}

TEST(LegPolicyOracle, NoLegsAreBetter) {
  std::mt19937_64 random(20260517);
  int several_legs = 0, several_looks = 0, given_up = 0;
  for (int i = 0; i < 1000; ++i) {
    const Problem problem = random_problem(random);
    const LegLimits limits{.legs = 2, .looks = 3, .worth_share = i % 2 == 0 ? 0.0 : 0.3};
    const LegPolicy policy = best_legs(
        problem.needs, problem.climbs,
        [&](std::size_t climb, double from_um, double to_um) {
          return look_minutes(problem, climb, from_um, to_um);
        },
        problem.film_um, problem.stop_minutes, limits);
    double best = infinity;
    std::vector<TriedLeg> legs;
    try_all(problem, limits, legs, best);
    EXPECT_NEAR(policy.expected_minutes, best, 1e-9 * best) << "problem " << i;
    double gone = 0;
    for (const Need& need : problem.needs) {
      if (!policy.legs.empty() && need.need_um <= policy.legs.back().off_um.back())
        gone += need.probability;
    }
    EXPECT_NEAR(policy.gone_chance, gone, 1e-12);
    several_legs += policy.legs.size() > 1;
    given_up += policy.legs.empty();
    several_looks += std::any_of(policy.legs.begin(), policy.legs.end(),
                                 [](const PlannedLeg& leg) { return leg.off_um.size() > 1; });
  }
  EXPECT_GT(several_legs, 100);
  EXPECT_GT(several_looks, 50);
  EXPECT_GT(given_up, 20);
}

/// Without limits, and with looks that cost the same each time, legs are tries.
TEST(LegPolicyOracle, WithoutLimitsItIsThePolicy) {
  std::mt19937_64 random(99);
  for (int i = 0; i < 1000; ++i) {
    Problem problem = random_problem(random);
    if (i % 2 == 0) {
      for (Climb& climb : problem.climbs) climb.reach_um = infinity;
    }
    const auto minutes = [&](std::size_t climb, double from_um, double to_um) {
      return look_minutes(problem.climbs[climb], from_um, to_um);
    };
    const auto legs = [&](std::size_t most) {
      return best_legs(problem.needs, problem.climbs, minutes, problem.film_um,
                       problem.stop_minutes, {problem.needs.size(), most, 0.0})
          .expected_minutes;
    };
    const double policy =
        best_policy(problem.needs, problem.climbs, problem.film_um, problem.stop_minutes)
            .expected_minutes;
    EXPECT_NEAR(legs(1), policy, 1e-12 * policy) << "problem " << i;
    const double looking = i % 2 == 0 ? legs(4) : policy;
    EXPECT_NEAR(looking, policy, 1e-12 * policy) << "problem " << i;
  }
}

TEST(LegPolicyOracle, BadNumbersAreNamed) {
  const std::vector<Climb> climbs{{.fixed_minutes = 1, .minutes_per_um = 1}};
  const auto minutes = [](std::size_t, double, double) { return 1.0; };
  EXPECT_THROW(best_legs({}, climbs, minutes, 1, 1), BadInput);
  EXPECT_THROW(best_legs({{1, 0.5}, {1, 0.5}}, climbs, minutes, 1, 1), BadInput);
  EXPECT_THROW(best_legs({{1, 1}}, climbs, minutes, -1, 1), OutOfRange);
}

}  // namespace
}  // namespace leg_policy_oracle_test
