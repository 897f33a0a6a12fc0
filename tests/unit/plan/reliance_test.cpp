// What a plan says it relies on.
#include "levigate/plan/reliance.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <tuple>

#include "levigate/plan/work/knobs.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/text/sentences.hpp"
#include "unit/workshop.hpp"

namespace reliance_test {
namespace {

using namespace workshop;

const Reliance& relied(const Plan& plan, const std::string& subject, const std::string& quantity) {
  for (const Reliance& one : plan.relies_on) {
    if (one.subject == subject && one.quantity == quantity) return one;
  }
  throw std::runtime_error("no " + subject + ", " + quantity);
}

Plan demo() { return plan(top(35), papers({"P400", "P600", "P800", "P1000", "P1500"})); }

TEST(Reliance, EveryInputHasABandAndASource) {
  for (const Reliance& one : demo().relies_on) {
    EXPECT_LE(one.low, one.value) << one.subject << one.quantity;
    EXPECT_GE(one.high, one.value) << one.subject << one.quantity;
    EXPECT_FALSE(one.citation.empty()) << one.subject << one.quantity;
  }
}

TEST(Reliance, TheMostInfluentialStandsFirst) {
  const Plan found = demo();
  for (std::size_t i = 1; i < found.relies_on.size(); ++i) {
    EXPECT_GE(found.relies_on[i - 1].influence, found.relies_on[i].influence);
  }
  EXPECT_EQ(found.relies_on.front().quantity, "cutting_efficiency");
}

TEST(Reliance, SandingTimeGoesAsOneOverTheCuttingEfficiency) {
  const Plan found = demo();
  const Reliance& wear = relied(found, "coating two-part urethane", "cutting_efficiency");
  double sanding = 0;
  for (const Step& step : found.steps) sanding += step.zones[0].minutes;
  EXPECT_NEAR(wear.minutes_low, sanding * (0.3 / 0.15 - 1), 0.001);
  EXPECT_NEAR(wear.minutes_high, sanding * (0.3 / 0.6 - 1), 0.001);
  EXPECT_EQ(wear.film_low, 0);
}

TEST(Reliance, ReserveTouchesFilmAloneAndChangesTouchMinutesAlone) {
  const Plan found = demo();
  const Reliance& reserve = relied(found, "rule", "reserve_um");
  EXPECT_EQ(reserve.minutes_low, 0);
  EXPECT_LT(reserve.film_low, 0);
  EXPECT_GT(reserve.film_high, 0);
  const Reliance& change = relied(found, "rule", "change_minutes");
  EXPECT_EQ(change.film_high, 0);
  EXPECT_NEAR(change.minutes_high, 3.0 * static_cast<double>(found.total.steps), 0.001);
}

// What hangs on none of the moved inputs is taken over: it must be what working it out gives, to the bit.
TEST(Reliance, WhatIsTakenOverIsWhatWouldBeWorkedOut) {
  Job job = top(35);
  job.zones.push_back(job.zones[0]);
  job.zones[1].name = "side";
  job.zones[1].block = block_named("foam pad");
  Stack stack = papers({"P400", "P800"});
  stack.sheets.push_back(pad("pad", "P1500"));
  const levigate::Setup given = setup(job, stack);
  const Workings like = workings(given);
  for (const detail::Knob& knob : detail::knobs(given)) {
    levigate::Setup moved = given;
    knob.set(moved, knob.input.high);
    Workings with = workings_without_budgets(moved, &like);
    find_budgets(with, &like);
    const Workings without = workings(moved);
    EXPECT_EQ(with.budget_um, without.budget_um) << knob.subject << knob.quantity;
    for (std::size_t sheet = 0; sheet < 3; ++sheet) {
      for (std::size_t zone = 0; zone < 2; ++zone) {
        const SheetInZone &a = with.work[sheet][zone], &b = without.work[sheet][zone];
        EXPECT_EQ(std::tuple(a.scratch_um, a.ra_um, a.rq_um, a.reading_gu, a.rate_um_per_m),
                  std::tuple(b.scratch_um, b.ra_um, b.rq_um, b.reading_gu, b.rate_um_per_m))
            << knob.subject << knob.quantity;
        EXPECT_EQ(a.tool, b.tool) << knob.subject << knob.quantity;
      }
    }
  }
}

TEST(Reliance, AUsersNumberHasNoBand) {
  Job job = top(35);
  job.coating.hardness_mpa = 140;
  const Plan found = plan(job, papers({"P400", "P800", "P1500"}));
  const Reliance& hardness = relied(found, "coating two-part urethane", "hardness_mpa");
  EXPECT_EQ(hardness.basis, Basis::user);
  EXPECT_EQ(hardness.influence, 0);
  EXPECT_EQ(relied(found, "coating two-part urethane", "cutting_efficiency").basis,
            Basis::from_memory);
}

TEST(Reliance, AGradeMovesWithItsTolerance) {
  const Plan found = demo();
  const Reliance& median = relied(found, "grade P1500", "median_um");
  EXPECT_DOUBLE_EQ(median.low, 11.6);
  EXPECT_DOUBLE_EQ(median.high, 13.6);
  EXPECT_NE(median.film_low, 0);
}

// CAMI has no published tolerance: its two published series differ by up to 3 %. An extrapolation leaves 12 % open.
TEST(Reliance, AGradeWithoutAToleranceHasABandAllTheSame) {
  const Plan found = evaluate(top(35), papers({"CAMI 400", "P3000"}), {"CAMI 400", "P3000"});
  const Reliance& cami = relied(found, "grade CAMI 400", "median_um");
  EXPECT_DOUBLE_EQ(cami.low, 0.97 * 23.6);
  EXPECT_DOUBLE_EQ(cami.high, 1.03 * 23.6);
  const Reliance& fine = relied(found, "grade P3000", "median_um");
  EXPECT_DOUBLE_EQ(fine.low, 0.88 * fine.value);
  EXPECT_DOUBLE_EQ(fine.high, 1.12 * fine.value);
  const Reliance& spread = relied(found, "grade CAMI 400", "log_spread");
  EXPECT_DOUBLE_EQ(spread.low, 0.75 * 0.30);
  EXPECT_DOUBLE_EQ(spread.high, 1.25 * 0.30);
}

// A reserve of 36 um on 45 um of film leaves no budget: that is much, but a number one can read.
TEST(Reliance, AnEndWithoutABudgetCountsAsTenTimesOverIt) {
  Job job = top(5, 45);
  job.zones[0].area_cm2 = 50;
  const Plan found = plan(job, papers({"P400", "P600", "P800", "P1000", "P1500"}));
  ASSERT_TRUE(found.found) << sentence(*found.why);
  const Reliance& reserve = relied(found, "rule", "reserve_um");
  EXPECT_NEAR(reserve.film_high, 10 - *found.total.film, 1e-9);
}

}  // namespace
}  // namespace reliance_test
