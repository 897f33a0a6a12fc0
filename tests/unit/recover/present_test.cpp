// The job as it stands after what was done, zone by zone.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/grade/label.hpp"
#include "levigate/recover/present.hpp"
#include "levigate/surface/sheen.hpp"
#include "levigate/text/sentences.hpp"
#include "unit/workshop.hpp"

namespace present_test {
namespace {

using namespace workshop;
using testing::ElementsAre;
using testing::HasSubstr;

const std::vector<std::string> drawer{"P600", "P800", "P1000", "P1200", "P1500"};

/// A top and a side to be levelled, and an edge that is not.
Job clock_case() {
  Job job = top(20);
  job.zones.push_back({.name = "side",
                       .area_cm2 = 300,
                       .block = block_named("cork block"),
                       .film = Film{90, 5},
                       .peel_um = 15});
  job.zones.push_back({.name = "edge",
                       .area_cm2 = 30,
                       .block = block_named("foam pad"),
                       .film = Film{60, 5},
                       .edge = Edge{"top"},
                       .peel_um = 15});
  return job;
}

template <typename Failure>
std::string failure(const Job& job, const std::vector<DoneStep>& done,
                    const std::map<std::string, Film>& films = {}) {
  try {
    present(job, papers(drawer), done, films);
  } catch (const Failure& error) {
    return error.what();
  }
  return "nothing was thrown";
}

TEST(Present, WithNothingDoneItIsTheJob) {
  const Job job = clock_case();
  const Job now = present(job, papers(drawer), {});
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    EXPECT_EQ(now.zones[i].carries, job.zones[i].carries);
    EXPECT_EQ(now.zones[i].film->mean_um, job.zones[i].film->mean_um);
    EXPECT_EQ(now.zones[i].film->sd_um, job.zones[i].film->sd_um);
    EXPECT_EQ(now.zones[i].peel_um, job.zones[i].peel_um);
  }
}

TEST(Present, AZoneCarriesWhatItsLastSheetLeftAndItsFilmIsLower) {
  Job job = clock_case();
  job.zones[0].film->mean_se_um = 1.5;
  job.zones[0].defects = {{DefectKind::nib, 20, 1, 1, 2}};
  const Stack stack = papers(drawer);
  const Plan whole = evaluate(job, stack, {"P600", "P1000", "P1500"});
  const Job now = present(job, stack, {{"P600"}, {"P1000"}});
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    const ZoneStep& last = whole.steps[1].zones[i];
    const double removed_um = whole.steps[0].zones[i].removal_um + last.removal_um;
    const Zone& zone = now.zones[i];
    EXPECT_EQ(zone.carries->grade, grade("P1000"));
    EXPECT_EQ(zone.carries->scratch_um, last.scratch_um);
    EXPECT_EQ(gloss_gu(job.coating.refractive_index, 60, *zone.carries->rq_um), last.gloss_gu);
    EXPECT_DOUBLE_EQ(zone.film->mean_um, job.zones[i].film->mean_um - removed_um);
    EXPECT_DOUBLE_EQ(zone.film->sd_um,
                     std::hypot(job.zones[i].film->sd_um, job.rules.removed_cv * removed_um));
    EXPECT_EQ(zone.film->mean_se_um, job.zones[i].film->mean_se_um);
    EXPECT_EQ(zone.levelled_peel_um, zone.edge ? 0 : job.zones[i].peel_um);
    EXPECT_TRUE(zone.defects.empty());
  }
  EXPECT_EQ(now.zones[0].peel_um, job.rules.residual_peel_um);
  EXPECT_EQ(now.zones[2].peel_um, 15) << "an edge keeps its peel";
}

TEST(Present, TheLevellingStepPassesEdgesByUnlessToldOtherwise) {
  const Stack stack = papers(drawer);
  const Job now = present(clock_case(), stack, {{"P600"}});
  EXPECT_TRUE(now.zones[0].carries && now.zones[1].carries);
  EXPECT_FALSE(now.zones[2].carries);
  EXPECT_EQ(now.zones[2].film->mean_um, 60);
  const Job told = present(clock_case(), stack, {{"P600", {"top", "edge"}}});
  EXPECT_TRUE(told.zones[0].carries && told.zones[2].carries);
  EXPECT_FALSE(told.zones[1].carries);
  EXPECT_EQ(told.zones[1].peel_um, 15);
  EXPECT_EQ(told.zones[2].film->mean_um, 60) << "a light pass";
}

TEST(Present, ZonesMayBeOutOfStep) {
  const Stack stack = papers(drawer);
  const Job now = present(clock_case(), stack, {{"P600"}, {"P1000", {"top"}}, {"P1500", {"top"}}});
  EXPECT_EQ(now.zones[0].carries->grade.label, "P1500");
  EXPECT_EQ(now.zones[1].carries->grade.label, "P600");
  const Plan rest = plan(now, stack);
  ASSERT_TRUE(rest.found) << sentence(*rest.why);
  EXPECT_THAT(ids(rest), ElementsAre("P1200", "P1500"));
  for (const Step& step : rest.steps) {
    EXPECT_FALSE(step.zones[0].worked) << step.sheet;
    EXPECT_TRUE(step.zones[1].worked && step.zones[2].worked) << step.sheet;
  }
}

// The error of a peel that was judged by eye stays in the film until it is read. What is won is that unevenness counts once.
TEST(Present, AStepThatNobodyMeasuredWinsHardlyAnyBudget) {
  const Job job = clock_case();
  const Stack stack = papers(drawer);
  const Plan whole = evaluate(job, stack, {"P600", "P1000"});
  const Job now = present(job, stack, {{"P600"}});
  int moves = 0;
  for (std::size_t i = 0; i < 2; ++i) {
    const double left_um = *whole.zones[i].budget_um - whole.steps[0].zones[i].removal_um;
    const Plan rest = evaluate(now, stack, {"P1000"});
    EXPECT_EQ(rest.zones[i].levelled_peel_um, job.zones[i].peel_um);
    EXPECT_FALSE(rest.zones[i].peel_um);
    const auto peel =
        std::find_if(rest.relies_on.begin(), rest.relies_on.end(), [&](const Reliance& one) {
          return one.subject == "zone " + job.zones[i].name && one.quantity == "levelled_peel_um";
        });
    ASSERT_NE(peel, rest.relies_on.end()) << i;
    moves += peel->film_low < 0 && peel->film_high > 0 ? 1 : 0;
    const double uneven_um = job.rules.removed_cv * whole.steps[0].zones[i].removal_um;
    constexpr double deviations = 3;  // of the thinnest of some hundred spots
    EXPECT_GE(*rest.zones[i].budget_um, left_um) << i;
    EXPECT_LE(*rest.zones[i].budget_um, left_um + deviations * uneven_um) << i;
    EXPECT_GT(*rest.steps[0].zones[i].cut_through, 0.4 * *whole.steps[1].zones[i].cut_through);
  }
  EXPECT_EQ(moves, 1) << "the film share is that of the worst zone";
}

TEST(Present, WhenAllIsDoneNothingIsLeftToDo) {
  const Stack stack = papers(drawer);
  Job job = clock_case();
  job.target.size_um = 13;
  const Plan whole = plan(job, stack);
  ASSERT_TRUE(whole.found) << sentence(*whole.why);
  ASSERT_GE(whole.steps.size(), 2U);  // the first one keeps off the edge
  std::vector<DoneStep> done;
  for (const std::string& id : ids(whole)) done.push_back({id});
  const Plan rest = plan(present(job, stack, done), stack);
  ASSERT_FALSE(rest.found);
  EXPECT_EQ(rest.why->blocked_by, Blocker::done);
}

TEST(Present, AGlossReachedByACompoundCountsAsReached) {
  Job job = top(20);
  Stack stack = papers(drawer);
  Sheet bar = paper("bar", "cutting bar");
  bar.kind = Polish{.size_um = 6,
                    .worn_um = 2,
                    .wear_share = 0.2,
                    .reach = ScratchReach{2},
                    .tool = block_named("foam pad")};
  bar.backing = backing_named("foam-backed");
  stack.sheets.push_back(bar);
  const std::vector<DoneStep> done{{"P600"}, {"P1000"}, {"P1500"}, {"bar"}};
  job.target = {.size_um = {}, .gloss_gu = 1, .label = ""};
  job.target.gloss_gu =
      evaluate(job, stack, {"P600", "P1000", "P1500", "bar"}).steps.back().gloss_gu;
  const Job now = present(job, stack, done);
  EXPECT_EQ(now.zones[0].carries->grade.median_um, 6);
  EXPECT_EQ(now.zones[0].carries->worn_um, 2);
  EXPECT_EQ(plan(now, stack).why->blocked_by, Blocker::done);
}

TEST(Present, AReadingStandsAboveWhatWasComputed) {
  const Job now = present(clock_case(), papers(drawer), {{"P600"}},
                          {{"side", Film{71, 4, 1, 0.5, 12}}, {"edge", Film{55, 5}}});
  EXPECT_EQ(now.zones[1].film->mean_um, 71);
  EXPECT_EQ(now.zones[1].film->sd_um, 4);
  EXPECT_EQ(now.zones[1].film->readings, 12U);
  EXPECT_EQ(now.zones[2].film->mean_um, 55) << "read where nothing was done";
  EXPECT_FALSE(now.zones[2].carries);
}

TEST(Present, AGaugeReadsAllRounds) {
  Job job = clock_case();
  job.zones[0].film = Film{75, 5};
  job.zones[0].below_um = 60;
  const Film read{120.5, 1.2, 0.4, 0.3, 6};
  const Film now = *present(job, papers(drawer), {{"P600"}}, {{"top", read}}).zones[0].film;
  EXPECT_DOUBLE_EQ(now.mean_um, 60.5);
  EXPECT_EQ(now.sd_um, read.sd_um);
  EXPECT_EQ(now.sd_se_um, read.sd_se_um);
  EXPECT_EQ(now.readings, 6U);
  EXPECT_DOUBLE_EQ(now.mean_se_um, std::hypot(0.4, (5 + 0.1 * 60) / std::sqrt(3.0)));
  for (const double mean_um : {40.0, 60.0, 60 + job.rules.reserve_um}) {
    EXPECT_THAT(failure<BadInput>(job, {{"P600"}}, {{"top", Film{mean_um, 1}}}),
                testing::AllOf(HasSubstr("zone 'top' reads"),
                               HasSubstr("The rounds below the last hold 60 um"),
                               HasSubstr("nothing may be removed")));
  }
  EXPECT_NO_THROW(present(job, papers(drawer), {{"P600"}}, {{"top", Film{70.5, 1}}}));
}

TEST(Present, WhatAStepTookOffStandsAboveWhatItShouldHave) {
  const Job job = clock_case();
  const Job now =
      present(job, papers(drawer), {{"P600", {"top"}, {}, 12.5}, {"P1000", {"top"}, {}, 0}});
  EXPECT_DOUBLE_EQ(now.zones[0].film->mean_um, 120 - 12.5);
  EXPECT_EQ(now.zones[0].carries->grade.label, "P1000");
}

TEST(Present, GoingBackToCoarserGrainNeedsToBeMeasured) {
  const std::vector<DoneStep> back{{"P600"}, {"P1000"}, {"P800", {"top"}}};
  EXPECT_THAT(failure<BadInput>(clock_case(), back),
              testing::AllOf(HasSubstr("not finer than the 18.3 um that zone 'top' carried"),
                             HasSubstr("done step 3 ('P800')")));
  const Job read = present(clock_case(), papers(drawer), back, {{"top", Film{100, 7}}});
  EXPECT_EQ(read.zones[0].carries->grade.label, "P800");
  EXPECT_EQ(read.zones[1].carries->grade.label, "P1000");
  const Job told =
      present(clock_case(), papers(drawer), {{"P600"}, {"P1000"}, {"P800", {"top"}, {}, 3}});
  const Job before = present(clock_case(), papers(drawer), {{"P600"}, {"P1000"}});
  EXPECT_DOUBLE_EQ(told.zones[0].film->mean_um, before.zones[0].film->mean_um - 3);
}

TEST(Present, TheSameSheetAgainIsTheSameStepAfterAPause) {
  const Job once = present(clock_case(), papers(drawer), {{"P600"}});
  const Job paused = present(clock_case(), papers(drawer), {{"P600"}, {"P600"}});
  EXPECT_EQ(paused.zones[0].film->mean_um, once.zones[0].film->mean_um);
  EXPECT_EQ(paused.zones[0].carries, once.zones[0].carries);
}

TEST(Present, CountsFromWhatAZoneAlreadyCarried) {
  Job job = clock_case();
  job.zones[1].carries = Carried{grade("P1000"), 1.0};
  const Job now = present(job, papers(drawer), {{"P800"}, {"P1200"}});
  EXPECT_DOUBLE_EQ(now.zones[1].film->mean_um, 90 - 1.0 * overcut_of(job.rules));
  const Job passed = present(job, papers(drawer), {{"P800"}});
  EXPECT_EQ(passed.zones[1].carries, job.zones[1].carries);
}

TEST(Present, BadInput) {
  const Job job = clock_case();
  EXPECT_THAT(failure<BadInput>(job, {{"P60"}}), HasSubstr("the nearest is 'P600'"));
  EXPECT_THAT(failure<BadInput>(job, {{"P600", {"topp"}}}), HasSubstr("the nearest is 'top'"));
  EXPECT_THAT(failure<BadInput>(job, {{"P600", {"top", "top"}}}), HasSubstr("'top' is repeated"));
  EXPECT_THAT(failure<BadInput>(job, {}, {{"sid", Film{50, 5}}}),
              HasSubstr("the nearest is 'side'"));
  EXPECT_THAT(failure<BadInput>(job, {}, {{"side", Film{9, 1}}}),
              HasSubstr("nothing may be removed"));
  EXPECT_THAT(failure<BadInput>(job, {{"P600", {"edge"}, {}, 55}}),
              testing::AllOf(HasSubstr("zone 'edge' has 5 um of film left of 60 um"),
                             HasSubstr("nothing may be removed")));
  EXPECT_THAT(failure<OutOfRange>(job, {{"P600", {}, {}, -1}}),
              HasSubstr("removal_um = -1 um is outside"));
  EXPECT_THAT(failure<OutOfRange>(job, {{"P600", {}, {}, std::nan("")}}), HasSubstr("removal_um"));
  EXPECT_THAT(failure<OutOfRange>(job, {}, {{"side", Film{std::nan(""), 1}}}),
              HasSubstr("mean_um"));
  Job solid = job;
  solid.coating = coating_named("acrylic sheet");
  for (Zone& zone : solid.zones) zone.film.reset();
  EXPECT_THAT(failure<BadInput>(solid, {{"P600"}}, {{"top", Film{50, 5}}}),
              HasSubstr("zone 'top' is solid"));
  EXPECT_EQ(present(solid, papers(drawer), {{"P1000"}, {"P600", {"top"}}}).zones[0].carries->grade,
            grade("P600"));
}

}  // namespace
}  // namespace present_test
