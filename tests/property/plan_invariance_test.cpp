// What must not change a plan: the order of the drawer, the scale of lengths, forces or areas, and paper that cannot be used.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "levigate/plan/plan.hpp"
#include "levigate/plan/work/search.hpp"
#include "property/random.hpp"

namespace plan_invariance_test {
namespace {

using namespace levigate;

using random_numbers::Random;

/// A job of two zones and a drawer of ten papers whose sizes the user gives, so that they can be scaled.
struct Case {
  Job job;
  Stack stack;
};

Case random_case(Random& random) {
  Case one;
  one.job.name = "case";
  one.job.coating = coating_named("two-part urethane");
  for (const char* name : {"hard block", "cork block"}) {
    one.job.zones.push_back({.name = name,
                             .area_cm2 = random.between(100, 1500),
                             .block = block_named(name),
                             .film = Film{random.between(60, 140), random.between(2, 8)},
                             .peel_um = random.between(3, 40),
                             .peel_wavelength_mm = random.between(1, 6)});
  }
  one.job.target.size_um = 12;
  for (std::size_t i = 0; i < 10; ++i) {
    Sheet sheet;
    sheet.id = "s" + std::to_string(i);
    sheet.label = "own";
    sheet.size_um = random.between(6, 45);
    sheet.backing = backing_named(random.below(2) == 0 ? "latex paper" : "film");
    sheet.width_mm = 230;
    sheet.height_mm = 280;
    sheet.price = random.between(0.5, 3);
    one.stack.sheets.push_back(sheet);
  }
  return one;
}

std::vector<std::string> ids(const Plan& plan) {
  std::vector<std::string> result;
  for (const Step& step : plan.steps) result.push_back(step.sheet);
  return result;
}

std::vector<std::vector<std::string>> front(const Plan& plan) {
  std::vector<std::vector<std::string>> result;
  for (const Plan& point : plan.tradeoff) result.push_back(ids(point));
  return result;
}

/// Calls check(case, plan) on random cases that have a plan.
template <typename Check>
void on_cases(Check check) {
  Random random(20261125);
  int solved = 0;
  for (int round = 0; round < 60; ++round) {
    Case one = random_case(random);
    const Plan found = plan(one.job, one.stack);
    if (!found.found) continue;
    ++solved;
    check(one, found, random);
  }
  EXPECT_GT(solved, 40);
}

TEST(PlanInvariance, OrderOfTheStack) {
  on_cases([](Case one, const Plan& found, Random& random) {
    std::shuffle(one.stack.sheets.begin(), one.stack.sheets.end(), random.engine());
    const Plan again = plan(one.job, one.stack);
    ASSERT_EQ(ids(again), ids(found));
    ASSERT_EQ(again.exact.milliseconds, found.exact.milliseconds);
    ASSERT_EQ(front(again), front(found));
  });
}

TEST(PlanInvariance, OrderOfTheZones) {
  on_cases([](Case one, const Plan& found, Random&) {
    std::reverse(one.job.zones.begin(), one.job.zones.end());
    const Plan again = plan(one.job, one.stack);
    ASSERT_EQ(ids(again), ids(found));
    ASSERT_EQ(front(again), front(found));
  });
}

TEST(PlanInvariance, PaperThatCannotBeUsed) {
  on_cases([](Case one, const Plan& found, Random& random) {
    Sheet useless = one.stack.sheets[random.below(10)];
    useless.id = "useless";
    useless.size_um = random.between(4, 60);
    useless.on_hand = 0;
    one.stack.sheets.insert(
        one.stack.sheets.begin() + static_cast<std::ptrdiff_t>(random.below(10)), useless);
    const Plan again = plan(one.job, one.stack);
    ASSERT_EQ(ids(again), ids(found));
    ASSERT_EQ(again.exact.milliseconds, found.exact.milliseconds);
    ASSERT_EQ(again.exact.depth_pm, found.exact.depth_pm);
    ASSERT_EQ(front(again), front(found));
  });
}

// Pressures and stiffnesses enter as ratios only.
TEST(PlanInvariance, ScaleOfForcesAndStiffnesses) {
  on_cases([](Case one, const Plan& found, Random& random) {
    const double scale = random.between(0.6, 1.7);
    one.job.coating.hardness_mpa *= scale;
    for (Zone& zone : one.job.zones) {
      zone.block.force_n *= scale;
      zone.block.modulus_mpa *= scale;
    }
    for (Sheet& sheet : one.stack.sheets) sheet.backing.modulus_mpa *= scale;
    const Plan again = plan(one.job, one.stack);
    ASSERT_EQ(ids(again), ids(found));
    ASSERT_NEAR(again.total.minutes, found.total.minutes, 1e-3);
    ASSERT_NEAR(*again.total.film, *found.total.film, 1e-6);
  });
}

// Depths go as lengths, rates as the square root of the grain size; so minutes go as the square root.
TEST(PlanInvariance, ScaleOfLengths) {
  on_cases([](Case one, const Plan&, Random& random) {
    one.job.rules.change_minutes = 0;
    one.job.prefer = Objective::film;  // what the sun shows does not go as a length
    const Plan found = plan(one.job, one.stack);
    const double scale = random.between(0.5, 2);
    for (Zone& zone : one.job.zones) {
      zone.peel_um *= scale;
      zone.peel_wavelength_mm *= scale;
      zone.film->mean_um *= scale;
      zone.film->sd_um *= scale;
    }
    for (Sheet& sheet : one.stack.sheets) *sheet.size_um *= scale;
    *one.job.target.size_um *= scale;
    one.job.rules.reserve_um *= scale;
    one.job.rules.residual_peel_um *= scale;
    const Plan again = plan(one.job, one.stack);
    ASSERT_EQ(ids(again), ids(found));
    ASSERT_NEAR(again.total.minutes / (found.total.minutes * std::sqrt(scale)), 1, 1e-5);
    ASSERT_NEAR(*again.total.film, *found.total.film, 1e-6);
    ASSERT_NEAR(again.total.depth_um, found.total.depth_um * scale, 1e-4);
  });
}

// A larger block on a larger zone under the same pressure takes the same time; the risk, and so the film share,
// grows with the number of spots.
TEST(PlanInvariance, ScaleOfAreas) {
  on_cases([](Case one, const Plan& found, Random& random) {
    const double scale = random.between(1.1, 3);
    for (Zone& zone : one.job.zones) {
      zone.area_cm2 *= scale;
      zone.block.area_cm2 *= scale;
      zone.block.force_n *= scale;
    }
    const Plan again = evaluate(one.job, one.stack, ids(found));
    ASSERT_NEAR(again.total.minutes, found.total.minutes, 1e-3);
    ASSERT_NEAR(again.total.depth_um, found.total.depth_um, 1e-5);
    ASSERT_GT(*again.total.film, *found.total.film);
  });
}

void expect_no_worse(const Plan& plan, const Plan& before) {
  const std::int64_t most = before.exact.expected_milliseconds();
  ASSERT_LE(plan.exact.expected_milliseconds(), most + most / 100 * equal_minutes_percent);
}

// More film, or a sheet more, never makes the best worse by more than what counts as equal.
TEST(PlanInvariance, MoreNeverHurts) {
  on_cases([](Case one, const Plan& found, Random& random) {
    Case richer = one;
    for (Zone& zone : richer.job.zones) zone.film->mean_um += random.between(0, 30);
    ASSERT_NO_FATAL_FAILURE(expect_no_worse(plan(richer.job, richer.stack), found));
    richer = one;
    Sheet more = one.stack.sheets[0];
    more.id = "more";
    more.size_um = random.between(6, 45);
    richer.stack.sheets.push_back(more);
    ASSERT_NO_FATAL_FAILURE(expect_no_worse(plan(richer.job, richer.stack), found));
    richer = one;
    richer.job.rules.max_ratio += random.between(0, 1);
    ASSERT_NO_FATAL_FAILURE(expect_no_worse(plan(richer.job, richer.stack), found));
  });
}

}  // namespace
}  // namespace plan_invariance_test
