// What the sun shows of a sequence, and what the plan makes of it.
#include "levigate/plan/work/sun.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "levigate/plan/plan.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/sunlight.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/diagnose.hpp"
#include "unit/workshop.hpp"

namespace sun_test {
namespace {

using namespace levigate;
using namespace workshop;

const std::vector<std::string> labels{"P400", "P800", "P1500", "P2000"};

Workings of_top() { return workings(top(11), papers(labels)); }

TEST(Sun, ScratchesThatNothingTookOffShowOnEverySpot) {
  const Workings w = of_top();
  Sun sun(w);
  EXPECT_NEAR(sun.spot_chance(0, 0, 3, 0.0, 0.0), 1, 1e-12);
}

TEST(Sun, WhatCameOffSinceHeals) {
  const Workings w = of_top();
  Sun sun(w);
  double before = 1;
  for (const double since_um : {0.2, 0.6, 1.2, 2.0, 4.0}) {
    const double now = sun.spot_chance(0, 0, 3, 0.0, since_um);
    EXPECT_LT(now, before) << since_um;
    before = now;
  }
  EXPECT_LT(before, 1e-9);
}

/// Where a step takes off far more than the scratches are deep, only spots that it missed show them: those where the share w of its
/// work fell short. With u = 1 that is missed_share times what is needed over what it takes off.
TEST(Sun, OnlyMissedSpotsShowWhatALongStepShouldHaveTakenOut) {
  Job job = top(11);
  job.rules.removed_cv = 0;
  job.rules.overcut = 2;
  const Workings w = workings(job, papers(labels));
  Sun sun(w);
  double deepest_um = 0;  // the depth beyond which a spot is as likely to show one as not
  for (double depth_um = 0.01; sun.spot_chance(0, 0, 3, 0.0, depth_um) > 0.5; depth_um += 1e-4)
    deepest_um = depth_um;
  for (const double own_um : {4.0, 8.0, 16.0}) {
    EXPECT_NEAR(sun.spot_chance(0, 0, 3, own_um, 0.0), 0.02 * deepest_um / own_um,
                0.1 * 0.02 * deepest_um / own_um);
  }
}

TEST(Sun, AStrayShowsOnAsManySpotsAsThereAreStrays) {
  const Workings w = of_top();
  Sun sun(w);
  const double chance = sun.stray_chance(0, 0, 3);
  EXPECT_GT(chance, 0.5e-4);  // one on a square metre; most of them are deep
  EXPECT_LE(chance, 1e-4);
}

TEST(Marks, FewerAreLeftTheMoreAStepTakesOff) {
  const Workings w = of_top();
  Sun sun(w);
  Sequence sequence = summed_in_sun(w, sun, {0, 1, 2, 3});
  const double least = marks_of(w, sun, sequence).steps[3][0].spots;
  sequence.overcuts[3] *= 2;
  const double longer = marks_of(w, sun, sequence).steps[3][0].spots;
  EXPECT_LT(longer, 0.7 * least);
  EXPECT_GT(longer, 0.3 * least);
}

TEST(Marks, ASequenceOfTheSearchIsSummedUpAlike) {
  Job job = top(100, 250);
  job.zones[0].area_cm2 = 100;  // so small that sanding longer can save going back
  const Workings w =
      workings(job, papers({"P320", "P400", "P600", "P800", "P1000", "P1200", "P1500"}));
  Sun sun(w);
  const std::vector<Sequence> found = sequences_of(w, sun);
  ASSERT_GT(found.size(), 3U);
  int longer = 0;
  for (const Sequence& sequence : found) {
    std::int64_t back = 0;
    for (const GoingBack& zone : marks_of(w, sun, sequence).zones) back += zone.back_milliseconds;
    EXPECT_EQ(back, sequence.back_milliseconds);
    const Sequence again = summed(w, sequence.sheets, sequence.overcuts);
    EXPECT_EQ(again.milliseconds, sequence.milliseconds);
    EXPECT_EQ(again.depth_pm, sequence.depth_pm);
    EXPECT_EQ(again.fragile, sequence.fragile);
    for (const double overcut : sequence.overcuts) longer += overcut > w.overcuts.front() ? 1 : 0;
  }
  EXPECT_GT(longer, 0);
}

TEST(Marks, AStatedOvercutLeavesNoChoice) {
  Job job = top(11);
  job.rules.overcut = 1.5;
  const Plan found = plan(job, papers(labels));
  ASSERT_TRUE(found.found);
  for (const Plan& point : found.tradeoff) {
    for (const double overcut : point.exact.overcuts) EXPECT_EQ(overcut, 1.5);
  }
}

/// The whole zone goes back once, to the coarsest step that failed.
TEST(Marks, GoingBackIsOneClimbOfTheZone) {
  const GoingBack none{180'000, 0};
  const GoingBack last = none.before(600'000, 5'000);
  EXPECT_EQ(last.climb_milliseconds, 780'000);
  EXPECT_EQ(last.back_milliseconds, 390'000);
  const GoingBack both = last.before(1'200'000, 10'000);
  EXPECT_EQ(both.back_milliseconds,
            1'980'000);  // it is certain to start at the first: 20, 10 and 3 min
}

/// diagnose() looks for one mark, of one scratch or of two and more on a spot. Summed up, they are the marks of the plan, but for strays
/// and for how two misses of one spot are counted: (1 - 0.98^4) / 4 a step there, 0.02 here.
TEST(Marks, AreThoseThatGoingBackLooksFor) {
  const Job job = top(11);
  const Stack stack = papers(labels);
  const Plan taken = evaluate(job, stack, labels);
  std::vector<DoneStep> done;
  for (const std::string& id : labels) done.push_back({id});
  double expected = 0;  // scratches of P1500, which the last step should have taken out
  for (const MarkKind kind : {MarkKind::scratch, MarkKind::cluster}) {
    for (const Seen seen : {Seen::sunlight, Seen::lamp}) {
      Mark mark;
      mark.kind = kind;
      mark.zone = job.zones[0].name;
      mark.seen = seen;
      if (kind == MarkKind::cluster) mark.count = 2;
      for (const Cause& cause : diagnose(job, stack, done, mark).causes) {
        if (cause.step == 2 && !cause.stray) expected += cause.expected;
      }
    }
  }
  const double strays = 1e-4 * job.zones[0].area_cm2 * 2;  // of the last step and the one before
  const double marks = taken.steps[3].zones[0].marks;
  ASSERT_GT(expected, 0.5);
  EXPECT_GT(marks, expected);
  EXPECT_LT(marks - strays, 1.05 * expected);
}

TEST(Fragile, IsAStepThatASizeAtTheEndOfItsBandWouldBreak) {
  Job job = top(11);
  job.rules.max_ratio = 35.0 / 21.8 * 1.001;  // P400 to P800, as printed
  const Plan edge = evaluate(job, papers(labels), {"P400", "P800"});
  EXPECT_TRUE(edge.steps[1].fragile);
  EXPECT_EQ(edge.exact.fragile, 1);
  job.rules.max_ratio = 2;
  const Plan well = evaluate(job, papers(labels), {"P400", "P800"});
  EXPECT_FALSE(well.steps[1].fragile);
  EXPECT_EQ(well.exact.fragile, 0);
}

}  // namespace
}  // namespace sun_test
