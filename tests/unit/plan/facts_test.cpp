// What a plan says beside its figures: what it is for, strokes, signs of being done, care of the paper, and the wheel.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "levigate/faults.hpp"
#include "levigate/film/budget.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/plan/factors.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/plan/work/plan_body.hpp"
#include "levigate/wheel/limits.hpp"
#include "levigate/wheel/wheel.hpp"
#include "unit/workshop.hpp"

namespace facts_test {
namespace {

using namespace workshop;
using testing::DoubleNear;
using testing::Each;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Optional;

/// A compound of the profiles on a wheel of its own.
Sheet buff(const std::string& name, const Wheel& wheel) {
  Sheet sheet = paper(name, name);
  Polish polish;
  polish.size_um = 2;
  polish.worn_um = 1;
  polish.reach = ScratchReach{50};
  polish.tool = wheel;
  polish.basis = Basis::common_practice;
  sheet.kind = polish;
  return sheet;
}

/// 50 mm wide, 60 mm of it on the work, fed at 0.2 m/s: round numbers to work with.
Wheel wheel() {
  Wheel wheel = wheel_named("loose flannel");
  wheel.diameter_mm = 300;
  wheel.rpm = 800;
  wheel.width_mm = 50;
  wheel.contact_mm = 60;
  wheel.force_n = 15;
  wheel.feed_m_s = 0.2;
  wheel.friction = 0.4;
  wheel.heat_share = 0.5;
  return wheel;
}

Stack drawer() {
  Stack stack = papers({"P600", "P1000", "P1500"});
  stack.sheets.push_back(buff("bar", wheel()));
  return stack;
}

/// A top, a side that carries P1000, and an edge as sprayed.
Job three_zones() {
  Job job = top(20);
  job.zones.push_back(job.zones.front());
  job.zones.push_back(job.zones.front());
  job.zones[1].name = "side";
  job.zones[1].carries = Carried{grade("P1000")};
  job.zones[2].name = "edge";
  job.zones[2].area_cm2 = 50;
  job.zones[2].block = block_named("foam pad");
  job.zones[2].edge = Edge{"top"};
  return job;
}

std::vector<StrokeWay> ways(const Plan& plan) {
  std::vector<StrokeWay> result;
  for (const Step& step : plan.steps) result.push_back(step.way);
  return result;
}

std::vector<DoneSign> signs(const Plan& plan) {
  std::vector<DoneSign> result;
  for (const Step& step : plan.steps) result.push_back(step.done);
  return result;
}

std::vector<std::optional<PassedBy>> passed(const Plan& plan, std::size_t zone) {
  std::vector<std::optional<PassedBy>> result;
  for (const Step& step : plan.steps) result.push_back(step.zones[zone].passed_by);
  return result;
}

TEST(PlanFacts, SayWhatItIsForFoundOrNot) {
  Job job = three_zones();
  job.zones[0].film = Film{120, 6, 2, 3};
  job.scratched_by = grade("P320");
  const Plan found = evaluate(job, drawer(), {"P600", "P1000", "P1500"});
  job.target.size_um = 0.1;
  const Plan none = plan(job, drawer());
  ASSERT_FALSE(none.found);
  EXPECT_EQ(none.target.size_um, 0.1);
  EXPECT_EQ(found.target.size_um, 12.6);
  EXPECT_EQ(found.target.label, "P1500");
  for (const Plan* told : {&found, &none}) {
    EXPECT_EQ(told->job, "top");
    EXPECT_EQ(told->coating, "two-part urethane");
    EXPECT_EQ(told->scratched_by, "P320");
    EXPECT_EQ(told->reserve_um, Rules{}.reserve_um);
    EXPECT_EQ(told->cut_through_limit, Rules{}.cut_through_limit);
    ASSERT_EQ(told->zones.size(), 3U);
    const PlannedZone& zone = told->zones[0];
    EXPECT_EQ(zone.zone, "top");
    EXPECT_EQ(zone.area_cm2, 900.0);
    EXPECT_EQ(zone.block, "hard block");
    EXPECT_EQ(zone.film_um, 120.0);
    EXPECT_THAT(zone.film_sd_um, Optional(DoubleNear(7.0, 1e-12)));  // 36 + 4 + 9 = 49
    EXPECT_EQ(zone.stands, "P320");
    EXPECT_EQ(told->zones[1].stands, "P1000");
    EXPECT_EQ(told->zones[2].block, "foam pad");
  }
}

TEST(PlanFacts, OfAnUntouchedJobStandAsSprayedOnEveryPointOfTheTradeoff) {
  const Plan found = plan(top(35), drawer());
  ASSERT_TRUE(found.found);
  ASSERT_FALSE(found.tradeoff.empty());
  EXPECT_EQ(found.scratched_by, "");
  EXPECT_EQ(found.zones[0].stands, "");
  for (const Plan& point : found.tradeoff) {
    EXPECT_EQ(point.job, found.job);
    ASSERT_EQ(point.zones.size(), found.zones.size());
    EXPECT_EQ(point.zones[0].stands, "");
    EXPECT_EQ(point.zones[0].budget_um, found.zones[0].budget_um);
    EXPECT_EQ(point.target.size_um, found.target.size_um);
  }
}

TEST(PlanFacts, ABudgetIsThatOfItsFormulaAndIsUsedUpByDepth) {
  const Job job = top(20);
  const Plan found = plan(job, drawer());
  const double budget_um = depth_budget_um({.mean_um = 120,
                                            .sd_um = 6,
                                            .removed_cv = job.rules.removed_cv,
                                            .reserve_um = job.rules.reserve_um,
                                            .spots = 900,
                                            .cut_through_limit = job.rules.cut_through_limit,
                                            .common = {.peel_um = 20, .peel_factor = 1.4}});
  EXPECT_EQ(found.zones[0].budget_um, budget_um);
  for (const Step& step : found.steps)
    EXPECT_EQ(step.zones[0].film_used, step.zones[0].depth_um / budget_um);
  // The search counts in whole picometres.
  EXPECT_THAT(found.steps.back().zones[0].film_used, Optional(DoubleNear(*found.total.film, 1e-6)));
}

TEST(PlanFacts, AFilmThatAffordsNothingIsNotUsedWhereNothingWasDone) {
  Job job = three_zones();
  job.zones[2].film = Film{40, 30};
  const Plan taken = evaluate(job, drawer(), {"P600", "P1000"});
  ASSERT_EQ(taken.zones[2].budget_um, 0.0);
  EXPECT_EQ(taken.steps[0].zones[2].film_used, 0.0);
  EXPECT_EQ(taken.steps[1].zones[2].film_used, std::numeric_limits<double>::infinity());
}

TEST(PlanFacts, OfASolidKnowNoFilm) {
  Job job = top(20);
  job.coating = coating_named("acrylic sheet");
  job.zones[0].film.reset();
  const Plan found = evaluate(job, drawer(), {"P600", "P1000"});
  EXPECT_EQ(found.zones[0].film_um, std::nullopt);
  EXPECT_EQ(found.zones[0].film_sd_um, std::nullopt);
  EXPECT_EQ(found.zones[0].budget_um, std::nullopt);
  EXPECT_EQ(found.steps[0].zones[0].film_used, std::nullopt);
}

TEST(PlanFacts, StrokesCrossTheStepBefore) {
  Job job = top(20);
  EXPECT_THAT(ways(evaluate(job, drawer(), {"P600", "P1000", "bar"})),
              ElementsAre(StrokeWay::one_way, StrokeWay::across_before, StrokeWay::across_before));
  job.scratched_by = grade("P320");
  EXPECT_THAT(ways(evaluate(job, drawer(), {"P600", "P1000"})),
              ElementsAre(StrokeWay::across_scratches, StrokeWay::across_before));
}

TEST(PlanFacts, StrokesEndAlongTheGrainWhereTheSheenShowsScratches) {
  Job job = top(20);
  job.target = {.size_um = {}, .gloss_gu = 20, .label = "satin", .gloss_high_gu = 35};
  const Plan sanded = evaluate(job, drawer(), {"P600", "P1000", "P1500"});
  EXPECT_THAT(ways(sanded),
              ElementsAre(StrokeWay::along_grain, StrokeWay::across_grain, StrokeWay::along_grain));
  EXPECT_THAT(signs(sanded), ElementsAre(DoneSign::no_shiny_spot, DoneSign::scratches_one_way,
                                         DoneSign::scratches_one_way));
  const Plan polished = evaluate(job, drawer(), {"P600", "P1000", "bar"});
  EXPECT_THAT(ways(polished),
              ElementsAre(StrokeWay::one_way, StrokeWay::across_before, StrokeWay::across_before));
}

TEST(PlanFacts, AStepTakesOutTheScratchesItFinds) {
  const Plan taken = evaluate(three_zones(), drawer(), {"P600", "P1500"});
  EXPECT_TRUE(taken.steps[0].levels);
  EXPECT_FALSE(taken.steps[1].levels);
  EXPECT_THAT(taken.steps[0].takes_out, IsEmpty());
  EXPECT_THAT(taken.steps[1].takes_out, ElementsAre("P600", "P1000"));
  const Plan alike = evaluate(three_zones(), drawer(), {"P600", "P1000", "P1500"});
  EXPECT_THAT(alike.steps[2].takes_out, ElementsAre("P1000"));  // said once
  Job job = three_zones();
  job.scratched_by = grade("P320");
  const Plan scratched = evaluate(job, drawer(), {"P600", "P1500"});
  EXPECT_FALSE(scratched.steps[0].levels);
  EXPECT_THAT(scratched.steps[0].takes_out, ElementsAre("P320"));
}

TEST(PlanFacts, OneSeesWhenAStepIsDone) {
  Job job = top(20);
  job.target = {.size_um = {}, .gloss_gu = 20, .label = "", .gloss_high_gu = 95};
  const Plan taken = evaluate(job, drawer(), {"P600", "P1000", "bar"});
  EXPECT_THAT(signs(taken), ElementsAre(DoneSign::no_shiny_spot, DoneSign::scratches_your_way,
                                        DoneSign::even_sheen));
  EXPECT_EQ(taken.steps[0].done_gloss_gu, std::nullopt);
  EXPECT_EQ(taken.steps[1].done_gloss_gu, std::nullopt);
  EXPECT_EQ(taken.steps[2].done_gloss_gu, 20.0);
  EXPECT_EQ(taken.steps[2].done_gloss_high_gu, 95.0);
  EXPECT_EQ(evaluate(top(20), drawer(), {"P600", "P1500"}).steps[1].done_gloss_gu, std::nullopt);
}

TEST(PlanFacts, ZonesArePassedByForAReason) {
  const Plan taken = evaluate(three_zones(), drawer(), {"P600", "P1000", "P1500"});
  EXPECT_THAT(passed(taken, 0), Each(std::nullopt));
  EXPECT_THAT(passed(taken, 1),
              ElementsAre(PassedBy::fine_already, PassedBy::fine_already, std::nullopt));
  EXPECT_THAT(passed(taken, 2), ElementsAre(PassedBy::not_levelled, std::nullopt, std::nullopt));
  for (const Step& step : taken.steps) {
    for (const ZoneStep& zone : step.zones) EXPECT_EQ(zone.worked, !zone.passed_by);
  }
}

TEST(PlanFacts, NameTheToolInEachZoneTheMakerAndWhatASizeRestsOn) {
  Stack stack = drawer();
  stack.sheets[0].maker = "Maker A";
  stack.sheets[1].size_um = 17;
  stack.sheets.push_back(pad("pad", "P3000"));
  const Plan taken = evaluate(three_zones(), stack, {"P600", "P1000", "pad", "bar"});
  EXPECT_EQ(taken.steps[0].zones[0].tool, "hard block");
  EXPECT_EQ(taken.steps[0].zones[2].tool, "foam pad");
  EXPECT_EQ(taken.steps[2].zones[0].tool, "foam pad");
  EXPECT_EQ(taken.steps[3].zones[2].tool, "loose flannel");
  EXPECT_EQ(taken.steps[0].maker, "Maker A");
  EXPECT_EQ(taken.steps[1].maker, "");
  EXPECT_EQ(taken.steps[0].size_basis, grade("P600").basis());
  EXPECT_EQ(taken.steps[1].size_basis, Basis::user);
  EXPECT_EQ(taken.steps[2].size_basis, Basis::extrapolated);
  EXPECT_EQ(taken.steps[3].size_basis, Basis::common_practice);
}

TEST(PlanFacts, PaperIsRinsedAndChangedByTravel) {
  Job job = top(20);
  job.zones[0].block.speed_m_s = 0.5;
  job.zones[0].block.duty = 0.6;
  Stack stack = drawer();
  stack.sheets[0].backing.clean_every_m = 12;
  stack.sheets[0].backing.life_m = 60;
  const Step paper = evaluate(job, stack, {"P600", "bar"}).steps[0];
  EXPECT_THAT(paper.rinse_every_strokes, Optional(DoubleNear(80, 1e-9)));  // of 150 mm
  EXPECT_THAT(paper.rinse_every_minutes, Optional(DoubleNear(2.0 / 3.0, 1e-12)));
  EXPECT_THAT(paper.change_every_minutes, Optional(DoubleNear(10.0 / 3.0, 1e-12)));
  const Step polish = evaluate(job, stack, {"P600", "bar"}).steps[1];
  EXPECT_EQ(polish.rinse_every_strokes, std::nullopt);
  EXPECT_EQ(polish.rinse_every_minutes, std::nullopt);
  EXPECT_EQ(polish.change_every_minutes, std::nullopt);
  EXPECT_EQ(paper.wheel, std::nullopt);

  Factors quick;
  quick.duty = 2;  // a hand that does twice as much in a minute
  const Step half = evaluate(workings(job, stack, quick), {"P600", "bar"}).steps[0];
  EXPECT_EQ(half.rinse_every_strokes, paper.rinse_every_strokes);
  EXPECT_THAT(half.change_every_minutes, Optional(DoubleNear(5.0 / 3.0, 1e-12)));
  EXPECT_THAT(half.rinse_every_minutes, Optional(DoubleNear(1.0 / 3.0, 1e-12)));
}

TEST(PlanFacts, AWheelHasItsPassesAndItsHeat) {
  const Job job = three_zones();
  const Step step = evaluate(job, drawer(), {"P600", "P1500", "bar"}).steps[2];
  ASSERT_TRUE(step.wheel);
  const WheelStep& at = *step.wheel;
  EXPECT_NEAR(at.rim_m_s, std::numbers::pi * 0.3 * 800 / 60, 1e-12);
  EXPECT_EQ(at.rpm, 800.0);
  EXPECT_EQ(at.feed_m_s, 0.2);
  EXPECT_NEAR(at.dwell_s, 0.3, 1e-15);  // 60 mm at 200 mm/s
  // 15 N on 50 by 60 mm are 5000 Pa; half of the friction's heat enters the work.
  const double flux_w_m2 = 0.5 * 0.4 * 5000 * at.rim_m_s;
  const WheelLimits limits = wheel_limits_named("two-part urethane");
  const double rise_k = 2 * flux_w_m2 * std::sqrt(0.3 / std::numbers::pi) / limits.effusivity;
  EXPECT_THAT(at.rise_k, Optional(DoubleNear(rise_k, 1e-9)));
  EXPECT_THAT(at.dwell_limit_s,
              Optional(DoubleNear(0.3 * std::pow(limits.rise_k / rise_k, 2), 1e-9)));
  for (std::size_t i = 0; i < step.zones.size(); ++i) {
    const ZoneStep& zone = step.zones[i];
    EXPECT_THAT(zone.pass_s, Optional(DoubleNear(job.zones[i].area_cm2 / 100.0, 1e-12)));
    EXPECT_GE(*zone.passes * at.film_per_pass_um, zone.removal_um);
    EXPECT_LT((*zone.passes - 1) * at.film_per_pass_um, zone.removal_um);
    // Film off over film of a pass, times a pass, is the travel of the rim over its speed.
    EXPECT_NEAR(zone.removal_um / at.film_per_pass_um * *zone.pass_s, zone.travel_m / at.rim_m_s,
                1e-9 * zone.travel_m);
  }
  EXPECT_EQ(evaluate(job, drawer(), {"P600", "P1500"}).steps[1].zones[0].passes, std::nullopt);
}

TEST(PlanFacts, AWheelPassesNothingOverAZoneThatItPassesBy) {
  const Plan taken = evaluate(three_zones(), drawer(), {"bar", "P1500"});
  EXPECT_EQ(taken.steps[0].zones[2].passed_by, PassedBy::not_levelled);
  EXPECT_EQ(taken.steps[0].zones[2].passes, 0.0);
}

TEST(PlanFacts, WhatACoatingStandsMayNotBeKnown) {
  Job job = top(20);
  const Step known = evaluate(job, drawer(), {"P600", "P1500", "bar"}).steps[2];
  job.coating.limits.reset();
  const Step unknown = evaluate(job, drawer(), {"P600", "P1500", "bar"}).steps[2];
  ASSERT_TRUE(known.wheel && unknown.wheel);
  EXPECT_EQ(unknown.wheel->rise_k, std::nullopt);
  EXPECT_EQ(unknown.wheel->dwell_limit_s, std::nullopt);
  EXPECT_EQ(unknown.wheel->film_per_pass_um, known.wheel->film_per_pass_um);
  EXPECT_EQ(unknown.zones[0].passes, known.zones[0].passes);
}

TEST(PlanFacts, AreDescribed) {
  const Plan taken = evaluate(three_zones(), drawer(), {"P600", "bar"});
  for (const PlannedZone& zone : taken.zones) EXPECT_NO_THROW(validate(zone));
  EXPECT_NO_THROW(validate(*taken.steps[1].wheel));
  EXPECT_EQ(description_of<WheelStep>().find("rise_k")->unit, "K");
  EXPECT_EQ(description_of<PlannedZone>().find("budget_um")->unit, "um");
  EXPECT_EQ(choices<StrokeWay>.size(), 6U);
  EXPECT_EQ(to_string(choices<StrokeWay>[2]), "across the step before");
  EXPECT_EQ(to_string(choices<DoneSign>[0]), "no shiny spot");
  EXPECT_EQ(to_string(choices<PassedBy>[1]), "fine already");
}

}  // namespace
}  // namespace facts_test
