// What the learned factors do to a plan, and that a factor of one does nothing.
#include <gtest/gtest.h>

#include <cmath>

#include "levigate/bench/bench.hpp"
#include "levigate/plan/work/plan_body.hpp"
#include "unit/workshop.hpp"

namespace learned_factors_test {
namespace {

using namespace workshop;

const Stack stack = papers({"P400", "P600", "P800", "P1000", "P1500"});
const std::vector<std::string> all{"P400", "P600", "P800", "P1000", "P1500"};

Factors on_all(const SheetFactors& each) {
  return {.sheets = std::vector<SheetFactors>(stack.sheets.size(), each)};
}

Plan evaluated(const Factors& factors = {}, const Job& job = top(30)) {
  return evaluate(workings(job, stack, factors), all);
}

TEST(LearnedFactors, PaceDividesMinutesAndNothingElse) {
  const Plan as_is = evaluated();
  const Plan plan = evaluated({.duty = 0.5});
  for (std::size_t i = 0; i < all.size(); ++i) {
    EXPECT_EQ(plan.steps[i].zones[0].minutes, 2.0 * as_is.steps[i].zones[0].minutes);
    EXPECT_EQ(plan.steps[i].zones[0].travel_m, as_is.steps[i].zones[0].travel_m);
    EXPECT_EQ(plan.steps[i].sheets_used, as_is.steps[i].sheets_used);
    EXPECT_EQ(plan.steps[i].zones[0].removal_um, as_is.steps[i].zones[0].removal_um);
  }
}

TEST(LearnedFactors, ARateDividesTravelMinutesAndPaper) {
  const Plan as_is = evaluated();
  const Plan plan = evaluated(on_all({.rate = 4}));
  for (std::size_t i = 0; i < all.size(); ++i) {
    const ZoneStep& zone = plan.steps[i].zones[0];
    EXPECT_DOUBLE_EQ(zone.travel_m, as_is.steps[i].zones[0].travel_m / 4);
    EXPECT_DOUBLE_EQ(zone.minutes, as_is.steps[i].zones[0].minutes / 4);
    EXPECT_DOUBLE_EQ(plan.steps[i].sheets_used, as_is.steps[i].sheets_used / 4);
    EXPECT_EQ(zone.scratch_um, as_is.steps[i].zones[0].scratch_um);
    EXPECT_EQ(zone.film_left_um, as_is.steps[i].zones[0].film_left_um);
  }
}

TEST(LearnedFactors, AScratchFactorDeepensWhatTheNextSheetRemoves) {
  const Factors deeper = on_all({.scratch = 2});
  const Plan as_is = evaluated();
  const Plan plan = evaluated(deeper);
  EXPECT_EQ(plan.steps[0].zones[0].removal_um, as_is.steps[0].zones[0].removal_um);
  for (std::size_t i = 1; i < all.size(); ++i) {
    EXPECT_EQ(plan.steps[i].zones[0].removal_um, 2 * as_is.steps[i].zones[0].removal_um);
    EXPECT_EQ(plan.steps[i].zones[0].scratch_um, 2 * as_is.steps[i].zones[0].scratch_um);
    EXPECT_LT(plan.steps[i].gloss_gu, as_is.steps[i].gloss_gu);
  }
  const Workings one = workings(top(30), stack), two = workings(top(30), stack, deeper);
  EXPECT_EQ(two.work[0][0].ra_um, 2 * one.work[0][0].ra_um);
  EXPECT_EQ(two.work[0][0].rq_um, 2 * one.work[0][0].rq_um);
  EXPECT_EQ(two.work[0][0].rate_um_per_m, one.work[0][0].rate_um_per_m);
}

TEST(LearnedFactors, PaceSlowsWorkOnDefectsToo) {
  Job job = top(30);
  job.zones[0].defects = {{DefectKind::run, 150, 6, 35, 2}};
  const LocalWork as_is = evaluated({}, job).before[0].work;
  const LocalWork slow = evaluated({.duty = 0.5}, job).before[0].work;
  EXPECT_DOUBLE_EQ(slow.block_minutes, 2 * as_is.block_minutes);
  EXPECT_DOUBLE_EQ(slow.local.minutes - slow.block_minutes,
                   as_is.local.minutes - as_is.block_minutes);
  EXPECT_EQ(slow.flat.film_um, as_is.flat.film_um);
}

TEST(LearnedFactors, OutsideTheirRangeTheyAreRefused) {
  const auto refused = [](const Shop& shop) {
    EXPECT_THROW(factors_of(shop, top(30), stack), OutOfRange);
    EXPECT_THROW(Bench(top(30), stack, shop), OutOfRange);
  };
  Shop shop;
  shop.person = {0.009, 0.001, 1, 1};
  refused(shop);
  shop = {};
  shop.rates = {{"two-part urethane", "latex paper", {101, 50, 200, 1}}};
  refused(shop);
  shop = {};
  shop.scratches = {{"two-part urethane", "latex paper", {0, 1e-9, 1, 1}}};
  EXPECT_THROW(Bench(top(30), stack, shop), Error);
  shop.scratches[0].learned.factor = std::nan("");
  EXPECT_THROW(Bench(top(30), stack, shop), Error);
}

}  // namespace
}  // namespace learned_factors_test
