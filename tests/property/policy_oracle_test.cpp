// The policy of least expected minutes against every policy there is, on small problems.
#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/recover/policy.hpp"
#include "property/policy_problem.hpp"

namespace policy_oracle_test {
namespace {

using namespace levigate;
using namespace policy_problem;

/// Expected minutes of a fixed list of tries, from its meaning: each need in turn meets the tries in order.
double expected_minutes(const Problem& problem, const std::vector<Attempt>& attempts) {
  double expected = 0;
  for (const Need& truth : problem.needs) {
    double minutes = 0;
    double off_um = 0;
    bool gone = false;
    for (const Attempt& attempt : attempts) {
      const Climb& climb = problem.climbs[attempt.climb];
      const double to_um = problem.needs[attempt.need].need_um;
      const double here_um = to_um - off_um;
      const bool last = attempt.need + 1 == problem.needs.size();
      const double taken_um = std::max(here_um, climb.above_um);  // what comes after takes as much
      if (here_um > climb.reach_um || off_um + taken_um > problem.film_um) return infinity;
      if (to_um > problem.film_um || (taken_um > here_um && !last)) return infinity;
      minutes += climb.fixed_minutes + climb.minutes_per_um * (taken_um - climb.above_um);
      off_um = to_um;
      gone = truth.need_um <= to_um;
      if (gone) break;
    }
    expected += truth.probability * (gone ? minutes : minutes + problem.stop_minutes);
  }
  return expected;
}

/// The least over all lists of tries whose depths ascend, the empty one among them.
void try_all(const Problem& problem, std::vector<Attempt>& attempts, double& best, long& policies) {
  ++policies;
  best = std::min(best, expected_minutes(problem, attempts));
  const std::size_t from = attempts.empty() ? 0 : attempts.back().need + 1;
  for (std::size_t need = from; need < problem.needs.size(); ++need) {
    for (std::size_t climb = 0; climb < problem.climbs.size(); ++climb) {
      attempts.push_back({climb, need});
      try_all(problem, attempts, best, policies);
      attempts.pop_back();
    }
  }
}

TEST(PolicyOracle, NoPolicyIsBetter) {
  std::mt19937_64 random(20260301);
  long policies = 0;
  int with_tries = 0;
  int given_up = 0;
  int several = 0;
  for (int i = 0; i < 2000; ++i) {
    const Problem problem = random_problem(random);
    const Policy policy =
        best_policy(problem.needs, problem.climbs, problem.film_um, problem.stop_minutes);
    double best = infinity;
    std::vector<Attempt> attempts;
    try_all(problem, attempts, best, policies);
    EXPECT_NEAR(policy.expected_minutes, best, 1e-12 * best) << "problem " << i;
    EXPECT_NEAR(expected_minutes(problem, policy.attempts), best, 1e-12 * best) << "problem " << i;
    double gone = 0;
    for (const Need& need : problem.needs) {
      if (!policy.attempts.empty() &&
          need.need_um <= problem.needs[policy.attempts.back().need].need_um)
        gone += need.probability;
    }
    EXPECT_NEAR(policy.gone_chance, gone, 1e-12);
    with_tries += !policy.attempts.empty();
    given_up += policy.attempts.empty();
    several += policy.attempts.size() > 1;
  }
  EXPECT_GT(policies, 100'000);
  EXPECT_GT(with_tries, 500);
  EXPECT_GT(given_up, 50);
  EXPECT_GT(several, 200);
}

/// Amounts between two needs are part of no better policy: a grid of amounts finds none.
TEST(PolicyOracle, AmountsBetweenNeedsDoNotHelp) {
  std::mt19937_64 random(7);
  for (int i = 0; i < 500; ++i) {
    Problem problem = random_problem(random);
    for (Climb& climb : problem.climbs) climb.reach_um = infinity;
    const Policy policy =
        best_policy(problem.needs, problem.climbs, problem.film_um, problem.stop_minutes);
    Problem finer = problem;  // amounts that meet no further need, as needs of no chance
    finer.needs.clear();
    double before_um = 0;
    for (const Need& need : problem.needs) {
      for (const double part : {0.25, 0.5, 0.75})
        finer.needs.push_back({before_um + part * (need.need_um - before_um), 1e-280});
      finer.needs.push_back(need);
      before_um = need.need_um;
    }
    EXPECT_NEAR(
        best_policy(finer.needs, finer.climbs, finer.film_um, finer.stop_minutes).expected_minutes,
        policy.expected_minutes, 1e-9 * policy.expected_minutes);
  }
}

/// A compound that does not reach what is needed leaves a coarser sheet, though that one takes off more than is needed.
TEST(PolicyOracle, TheLastNeedMayBePassed) {
  const std::vector<Climb> climbs{{.fixed_minutes = 20, .minutes_per_um = 10, .above_um = 0.7},
                                  {.fixed_minutes = 5, .minutes_per_um = 10, .reach_um = 0.5}};
  const Policy policy = best_policy({{0.6, 1.0}}, climbs, infinity, 240);
  EXPECT_EQ(policy.attempts, (std::vector<Attempt>{{0, 0}}));
  EXPECT_EQ(policy.expected_minutes, 20);
  EXPECT_TRUE(best_policy({{0.6, 1.0}}, climbs, 0.65, 240).attempts.empty());  // the film
}

TEST(PolicyOracle, BadNumbersAreNamed) {
  const std::vector<Climb> climbs{{.fixed_minutes = 1, .minutes_per_um = 1}};
  EXPECT_THROW(best_policy({}, climbs, 1, 1), BadInput);
  EXPECT_THROW(best_policy({{1, 0.5}, {1, 0.5}}, climbs, 1, 1), BadInput);
  EXPECT_THROW(best_policy({{1, 1}}, climbs, -1, 1), OutOfRange);
  EXPECT_THROW(best_policy({{1, 1}}, climbs, std::nan(""), 1), OutOfRange);
  EXPECT_THROW(best_policy({{std::nan(""), 1}}, climbs, 1, 1), OutOfRange);
}

}  // namespace
}  // namespace policy_oracle_test
