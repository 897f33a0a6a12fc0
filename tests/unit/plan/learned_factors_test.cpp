// What the learned factors do to a plan, and that a factor of one does nothing.
#include <gtest/gtest.h>

#include "unit/workshop.hpp"

namespace {

using namespace workshop;

const Stack stack = papers({"P400", "P600", "P800", "P1000", "P1500"});
const std::vector<std::string> all{"P400", "P600", "P800", "P1000", "P1500"};

Stack with_backing(double Backing::*factor, double value) {
  Stack changed = stack;
  for (Sheet& sheet : changed.sheets) sheet.backing.*factor = value;
  return changed;
}

TEST(LearnedFactors, PaceDividesMinutesAndNothingElse) {
  Job slow = top(30);
  slow.duty_factor = 0.5;
  const Plan as_is = evaluate(top(30), stack, all);
  const Plan plan = evaluate(slow, stack, all);
  for (std::size_t i = 0; i < all.size(); ++i) {
    EXPECT_EQ(plan.steps[i].zones[0].minutes, 2.0 * as_is.steps[i].zones[0].minutes);
    EXPECT_EQ(plan.steps[i].zones[0].travel_m, as_is.steps[i].zones[0].travel_m);
    EXPECT_EQ(plan.steps[i].sheets_used, as_is.steps[i].sheets_used);
    EXPECT_EQ(plan.steps[i].zones[0].removal_um, as_is.steps[i].zones[0].removal_um);
  }
}

TEST(LearnedFactors, ARateDividesTravelMinutesAndPaper) {
  const Plan as_is = evaluate(top(30), stack, all);
  const Plan plan = evaluate(top(30), with_backing(&Backing::rate_factor, 4), all);
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
  const Stack deeper = with_backing(&Backing::scratch_factor, 2);
  const Plan as_is = evaluate(top(30), stack, all);
  const Plan plan = evaluate(top(30), deeper, all);
  EXPECT_EQ(plan.steps[0].zones[0].removal_um, as_is.steps[0].zones[0].removal_um);
  for (std::size_t i = 1; i < all.size(); ++i) {
    EXPECT_EQ(plan.steps[i].zones[0].removal_um, 2 * as_is.steps[i].zones[0].removal_um);
    EXPECT_EQ(plan.steps[i].zones[0].scratch_um, 2 * as_is.steps[i].zones[0].scratch_um);
    EXPECT_LT(plan.steps[i].gloss_gu, as_is.steps[i].gloss_gu);
  }
  const Workings one = workings(top(30), stack), two = workings(top(30), deeper);
  EXPECT_EQ(two.work[0][0].ra_um, 2 * one.work[0][0].ra_um);
  EXPECT_EQ(two.work[0][0].rq_um, 2 * one.work[0][0].rq_um);
  EXPECT_EQ(two.work[0][0].rate_um_per_m, one.work[0][0].rate_um_per_m);
}

TEST(LearnedFactors, PaceSlowsWorkOnDefectsToo) {
  Job job = top(30);
  job.zones[0].defects = {{DefectKind::run, 150, 6, 35, 2}};
  const LocalWork as_is = evaluate(job, stack, all).before[0].work;
  job.duty_factor = 0.5;
  const LocalWork slow = evaluate(job, stack, all).before[0].work;
  EXPECT_DOUBLE_EQ(slow.block_minutes, 2 * as_is.block_minutes);
  EXPECT_DOUBLE_EQ(slow.local.minutes - slow.block_minutes,
                   as_is.local.minutes - as_is.block_minutes);
  EXPECT_EQ(slow.flat.film_um, as_is.flat.film_um);
}

TEST(LearnedFactors, OutsideTheirRangeTheyAreRefused) {
  Job job = top(30);
  job.duty_factor = 0;
  EXPECT_THROW(plan(job, stack), OutOfRange);
  EXPECT_THROW(plan(top(30), with_backing(&Backing::rate_factor, 101)), OutOfRange);
  EXPECT_THROW(plan(top(30), with_backing(&Backing::scratch_factor, std::nan(""))), OutOfRange);
}

}  // namespace
