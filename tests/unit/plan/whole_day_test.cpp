// The rest of the bench in a plan: defects, edges, young coats, sheen, compounds and wheels.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "levigate/plan/plan.hpp"
#include "levigate/recover/go_back.hpp"
#include "levigate/surface/sheen_bands.hpp"
#include "levigate/text/card.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/way_back.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/wheel.hpp"
#include "unit/workshop.hpp"

namespace whole_day_test {
namespace {

using namespace workshop;
using testing::ElementsAre;
using testing::HasSubstr;

const std::vector<std::string> drawer{"P400", "P600", "P800", "P1000", "P1200", "P1500", "P2000"};

/// A compound on a loose flannel wheel, as a sheet of the stack.
Sheet buff(const std::string& name, const Coating& coating) {
  const Compound compound = compound_named(name, coating);
  Sheet sheet;
  sheet.id = name;
  sheet.label = name + " compound";
  sheet.kind = Polish{.name = compound.name,
                      .size_um = compound.size_um,
                      .worn_um = compound.worn_um,
                      .wear_share = compound.wear_share,
                      .reach = ScratchReach{compound.coarsest_scratch_um},
                      .tool = wheel_named("loose flannel")};
  sheet.backing = compound_backing(compound);
  sheet.width_mm = 100;
  sheet.height_mm = 100;
  return sheet;
}

Polish& polish_in(Sheet& sheet) { return std::get<Polish>(sheet.kind); }

/// The wheel that a compound of the stack is on; null where the sheet is no compound.
Wheel* wheel_in(Sheet& sheet) {
  return polish_of(sheet) ? &std::get<Wheel>(*polish_in(sheet).tool) : nullptr;
}

Stack drawer_and_wheels() {
  Stack stack = papers(drawer);
  for (const char* name : {"cutting", "medium", "fine", "ultra-fine"}) {
    stack.sheets.push_back(buff(name, top(0).coating));
  }
  return stack;
}

Job glossy(double gloss_gu) {
  Job job = top(20);
  job.target = {.size_um = {}, .gloss_gu = gloss_gu, .label = ""};
  return job;
}

TEST(Defects, AreTakenDownBeforeTheFirstStepAndCountInMinutes) {
  Job job = top(35);
  const Plan without = plan(job, papers(drawer));
  job.zones[0].defects = {{DefectKind::run, 150, 12, 60, 3}, {DefectKind::nib, 20, 1, 1, 4}};
  const Plan with = plan(job, papers(drawer));
  ASSERT_TRUE(with.found);
  ASSERT_EQ(with.before.size(), 2U);
  EXPECT_EQ(ids(with), ids(without));
  const double local = with.before[0].work.local.minutes + with.before[1].work.local.minutes;
  EXPECT_GT(local, 0);
  EXPECT_NEAR(with.total.minutes, without.total.minutes + local, 1e-4);
  EXPECT_EQ(with.exact.depth_pm, without.exact.depth_pm);
}

TEST(Defects, ATallRunIsNeverSandedOutWithoutAWarningAndABetterWay) {
  Job job = top(35);
  job.zones[0].defects = {{DefectKind::run, 150, 12, 60, 1}};
  const Plan found = plan(job, papers(drawer));
  const Finding* finding = find(found.findings, FindingKind::tall_defect);
  ASSERT_NE(finding, nullptr);
  EXPECT_TRUE(found.before[0].work.shaved);
  EXPECT_THAT(sentence(*finding), HasSubstr("Zone top has a run of 150 um."));
  EXPECT_THAT(sentence(*finding), HasSubstr("shave down to the tape"));
  EXPECT_THAT(sentence(*finding), HasSubstr("Sanding flat"));
  job.zones[0].defects[0].height_um = 30;
  EXPECT_EQ(find(plan(job, papers(drawer)).findings, FindingKind::tall_defect), nullptr);
}

TEST(Defects, ImpossibleGeometryIsRefused) {
  Job job = top(35);
  job.zones[0].defects = {{DefectKind::run, -5, 12, 60, 1}};
  EXPECT_THROW(plan(job, papers(drawer)), OutOfRange);
  job.zones[0].defects = {{DefectKind::run, 150, 80, 60, 1}};
  EXPECT_THROW(plan(job, papers(drawer)), BadInput);
}

TEST(YoungCoat, IsCalledOutAndPlannedAsHardAsItWillBe) {
  Job job = top(35);
  job.age_h = 1000;
  EXPECT_EQ(find(plan(job, papers(drawer)).findings, FindingKind::young_coat), nullptr);
  job.age_h = 24;
  job.cure = Cure{168, 0.05, {{24, 60}, {168, 150}}};
  const Plan young = evaluate(job, papers(drawer), {"P600", "P1000", "P1500"});
  const Finding* finding = find(young.findings, FindingKind::young_coat);
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(sentence(*finding), HasSubstr("24 h old"));
  EXPECT_THAT(sentence(*finding), HasSubstr("40 % of its hardness"));
  job.age_h.reset();
  const Plan cured = evaluate(job, papers(drawer), {"P600", "P1000", "P1500"});
  EXPECT_EQ(young.steps[0].zones[0].scratch_um, cured.steps[0].zones[0].scratch_um);
}

TEST(Sheen, ASatinTargetStopsBeforeTheCompounds) {
  const SheenBand& satin = band_named("institute", "satin");
  Job job = glossy(*satin.low_gu);
  job.target.gloss_high_gu = satin.high_gu;
  job.target.label = "satin (institute)";
  Stack stack = drawer_and_wheels();
  const Plan found = plan(job, stack);
  ASSERT_TRUE(found.found) << sentence(*found.why);
  for (const std::string& id : ids(found))
    EXPECT_FALSE(polish_of(stack.sheets[sheet_index(stack, id)])) << id;
  EXPECT_GE(found.steps.back().reading_gu, *satin.low_gu);
  EXPECT_LE(found.steps.back().zones[0].reading_60.expected_gu, *satin.high_gu);
}

TEST(Sheen, MoreThanTheBandIsCalledOut) {
  Job job = glossy(20);
  job.target.gloss_high_gu = 35;
  job.target.label = "satin";
  const Plan over = evaluate(job, drawer_and_wheels(), {"P600", "P1000", "P1500", "cutting"});
  ASSERT_NE(find(over.findings, FindingKind::sheen_over), nullptr);
  EXPECT_THAT(sentence(*find(over.findings, FindingKind::sheen_over)), HasSubstr("satin"));
}

TEST(Sheen, IsToldAtThreeAngles) {
  const Plan found = plan(glossy(80), drawer_and_wheels());
  ASSERT_TRUE(found.found) << sentence(*found.why);
  const ZoneStep& last = found.steps.back().zones[0];
  EXPECT_LT(last.gloss_20_gu, last.gloss_gu);
  EXPECT_GT(last.gloss_85_gu, last.gloss_gu);
}

TEST(Compounds, ReachAGlossThatPaperDoesNot) {
  EXPECT_FALSE(plan(glossy(70), papers(drawer)).found);
  const Plan found = plan(glossy(70), drawer_and_wheels());
  ASSERT_TRUE(found.found) << sentence(*found.why);
  EXPECT_TRUE(found.steps.back().gloss_gu >= 70);
}

TEST(Compounds, MayBeAnyAmountFiner) {
  const Plan found = plan(glossy(80), drawer_and_wheels());
  ASSERT_TRUE(found.found) << sentence(*found.why);
  ASSERT_GT(*found.steps.back().size_ratio, Rules{}.max_ratio);
  for (const Finding& finding : found.findings) {
    EXPECT_NE(finding.kind, FindingKind::step_too_long) << sentence(finding);
    EXPECT_NE(finding.kind, FindingKind::gap) << sentence(finding);
  }
}

TEST(Compounds, CannotLevel) {
  Stack stack;
  stack.sheets.push_back(buff("cutting", top(0).coating));
  EXPECT_FALSE(plan(glossy(70), stack).found);
  const Plan taken = evaluate(glossy(70), stack, {"cutting"});
  ASSERT_NE(find(taken.findings, FindingKind::scratch_too_deep), nullptr);
  EXPECT_THAT(sentence(*find(taken.findings, FindingKind::scratch_too_deep)),
              HasSubstr("cannot level"));
}

TEST(Compounds, DoNotTakeOutScratchesBeyondTheirReach) {
  const Plan taken = evaluate(glossy(70), drawer_and_wheels(), {"P400", "fine"});
  ASSERT_NE(find(taken.findings, FindingKind::scratch_too_deep), nullptr);
  Stack stack = papers({"P400", "P600"});
  stack.sheets.push_back(buff("fine", top(0).coating));
  const Plan none = plan(glossy(70), stack);
  ASSERT_FALSE(none.found);
  EXPECT_EQ(none.why->blocked_by, Blocker::scratch);
  EXPECT_EQ(none.why->compound, "fine");
  EXPECT_GT(none.why->too_deep_um.value(), 0);
}

TEST(Compounds, ReachMayBeGivenAsThePaperItFollows) {
  Stack stack = drawer_and_wheels();
  const Plan by_depth = plan(glossy(80), stack);
  for (Sheet& sheet : stack.sheets) {
    if (!polish_of(sheet)) continue;
    for (const CompoundProfile& p : compound_table) {
      if (p.name == sheet.id) polish_in(sheet).reach = PaperReach{p.coarsest_paper_um.value};
    }
    EXPECT_TRUE(std::holds_alternative<PaperReach>(polish_in(sheet).reach)) << sheet.id;
  }
  EXPECT_EQ(ids(plan(glossy(80), stack)), ids(by_depth));
}

TEST(Compounds, TakingTheCoarseOneOffTheShelfChangesThePlanAndItsCost) {
  Stack stack = drawer_and_wheels();
  const Job job = glossy(85);
  const Plan all = plan(job, stack);
  ASSERT_TRUE(all.found) << sentence(*all.why);
  std::vector<std::string> compounds;
  for (const std::string& id : ids(all)) {
    if (polish_of(stack.sheets[sheet_index(stack, id)])) compounds.push_back(id);
  }
  ASSERT_FALSE(compounds.empty());
  std::erase_if(stack.sheets, [&](const Sheet& sheet) { return sheet.id == compounds.front(); });
  const Plan fewer = plan(job, stack);
  if (fewer.found) {
    EXPECT_NE(ids(fewer), ids(all));
    EXPECT_GE(fewer.exact.milliseconds, all.exact.milliseconds);
  } else {
    EXPECT_FALSE(sentence(*fewer.why).empty());
  }
}

TEST(Compounds, CoarserThanTheLastPaperIsCalledOut) {
  Stack stack = papers({"P600", "P1000", "P1500"});
  stack.sheets.push_back(buff("cutting", top(0).coating));
  polish_in(stack.sheets.back()).size_um = 16;
  const Plan taken = evaluate(glossy(70), stack, {"P600", "P1000", "P1500", "cutting"});
  const Finding* finding = find(taken.findings, FindingKind::not_finer);
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->severity, Severity::error);
  EXPECT_THAT(finding->sheets, ElementsAre("P1500", "cutting"));
}

TEST(Compounds, ACompoundCannotGrowInUse) {
  Stack stack = drawer_and_wheels();
  polish_in(stack.sheets.back()).worn_um = 5;
  EXPECT_THROW(plan(glossy(70), stack), BadInput);
}

TEST(Wheels, TooFastIsRefusedWithNumbers) {
  Stack stack = drawer_and_wheels();
  for (Sheet& sheet : stack.sheets) {
    Wheel* wheel = wheel_in(sheet);
    if (!wheel) continue;
    wheel->rated_rpm = 4000;
    wheel->rpm = 3500;
  }
  const Plan none = plan(glossy(80), stack);
  EXPECT_FALSE(none.found);
  const Finding* finding = find(none.findings, FindingKind::wheel_speed);
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->severity, Severity::error);
  EXPECT_THAT(sentence(*finding), HasSubstr("m/s"));
  EXPECT_THAT(sentence(*finding), HasSubstr("rpm"));
}

TEST(Wheels, ADwellTooLongIsRefusedWithNumbers) {
  Stack stack = drawer_and_wheels();
  for (Sheet& sheet : stack.sheets) {
    if (Wheel* wheel = wheel_in(sheet)) wheel->feed_m_s = 0.0005;
  }
  const Plan none = plan(glossy(80), stack);
  EXPECT_FALSE(none.found);
  const Finding* finding = find(none.findings, FindingKind::wheel_heat);
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->severity, Severity::error);
  EXPECT_THAT(sentence(*finding), HasSubstr(" K"));
}

/// A stack whose wheels run at 58.6 m/s at the rim.
Stack drawer_and_fast_wheels() {
  Stack stack = drawer_and_wheels();
  for (Sheet& sheet : stack.sheets) {
    Wheel* wheel = wheel_in(sheet);
    if (!wheel) continue;
    wheel->rated_rpm = 4000;
    wheel->rpm = 3147;
  }
  return stack;
}

TEST(Wheels, ACoatingIsRefusedByItsLimitsUnderAnyName) {
  Job job = glossy(80);
  EXPECT_FALSE(plan(job, drawer_and_fast_wheels()).found);
  job.coating.name = "clear, tin without a label";
  const Plan none = plan(job, drawer_and_fast_wheels());
  EXPECT_FALSE(none.found);
  const Finding* finding = find(none.findings, FindingKind::wheel_speed);
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->severity, Severity::error);
  EXPECT_THAT(sentence(*finding), HasSubstr("58.6 m/s"));
  EXPECT_THAT(sentence(*finding), HasSubstr("limits of clear, tin without a label are"));
  EXPECT_EQ(find(none.findings, FindingKind::wheel_unknown), nullptr);
}

TEST(Wheels, OnACoatingWithoutLimitsAreUsedWithAWarning) {
  Job job = glossy(80);
  job.coating.limits.reset();
  for (const char* name : {"own coating", "two-part urethane"}) {  // a name is no limit
    job.coating.name = name;
    const Plan found = plan(job, drawer_and_fast_wheels());
    ASSERT_TRUE(found.found) << sentence(*found.why);
    std::vector<std::string> wheeled;
    for (const std::string& id : ids(found)) {
      const Stack stack = drawer_and_wheels();
      if (wheel_of(stack.sheets[sheet_index(stack, id)])) wheeled.push_back(id);
    }
    ASSERT_FALSE(wheeled.empty());
    std::vector<std::string> warned;
    for (const Finding& finding : found.findings) {
      if (finding.kind != FindingKind::wheel_unknown) continue;
      EXPECT_EQ(finding.severity, Severity::warning);
      ASSERT_EQ(finding.sheets.size(), 1U);
      warned.push_back(finding.sheets.front());
      EXPECT_THAT(sentence(finding), HasSubstr("58.6 m/s"));
      EXPECT_THAT(sentence(finding),
                  HasSubstr("No limits of speed and heat are known for " + std::string(name)));
      EXPECT_THAT(sentence(finding), HasSubstr("Try it on scrap"));
    }
    EXPECT_EQ(warned, wheeled);
  }
}

TEST(Wheels, APlanWithoutAWheelSaysNothingOfThem) {
  Job job = top(20);
  job.coating.limits.reset();
  const Plan found = evaluate(job, drawer_and_fast_wheels(), {"P600", "P1000", "P1500"});
  EXPECT_EQ(find(found.findings, FindingKind::wheel_unknown), nullptr);
  EXPECT_EQ(find(found.findings, FindingKind::wheel_speed), nullptr);
}

TEST(Wheels, ACoatingThatKnowsItsLimitsHasNoWarning) {
  const Plan found = plan(glossy(80), drawer_and_wheels());
  ASSERT_TRUE(found.found) << sentence(*found.why);
  EXPECT_EQ(find(found.findings, FindingKind::wheel_unknown), nullptr);
}

TEST(YoungCoat, ACoatingCuresAsItDoesUnderAnyName) {
  Job job = top(35);
  job.age_h = 24;
  const auto young = [&] {
    const Plan taken = evaluate(job, papers(drawer), {"P600", "P1000", "P1500"});
    const Finding* finding = find(taken.findings, FindingKind::young_coat);
    return finding ? sentence(*finding) : std::string();
  };
  const std::string message = young();
  EXPECT_THAT(message, HasSubstr("24 h old. It needs 168 h to cure fully"));
  job.coating.name = "clear, tin without a label";
  EXPECT_EQ(young(), message);
  job.coating.cure = Cure{300, 0.02, {}};
  EXPECT_THAT(young(), HasSubstr("300 h to cure fully"));
  job.cure = Cure{200, 0.02, {}};  // the data sheet decides
  EXPECT_THAT(young(), HasSubstr("200 h to cure fully"));
  job.cure.reset();
  job.coating.cure.reset();
  EXPECT_EQ(young(), "");
  const Plan unknown = evaluate(job, papers(drawer), {"P600", "P1000", "P1500"});
  EXPECT_FALSE(unknown.wait);
  EXPECT_NE(find(unknown.findings, FindingKind::cure_unknown), nullptr);
  job.age_h.reset();
  EXPECT_EQ(find(evaluate(job, papers(drawer), {"P600"}).findings, FindingKind::cure_unknown),
            nullptr);
}

TEST(Wheels, AboveTheirRatingAreAnError) {
  Stack stack = drawer_and_wheels();
  Wheel& wheel = *wheel_in(stack.sheets.back());
  wheel.rpm = wheel.rated_rpm + 1;
  EXPECT_THROW(validate(stack, ""), OutOfRange);
  EXPECT_THROW(plan(glossy(80), stack), OutOfRange);
}

TEST(Edges, SayHowFewStrokesTheyCanTake) {
  Job job = top(35);
  job.zones.push_back({.name = "edge",
                       .area_cm2 = 20,
                       .block = block_named("foam pad"),
                       .film = Film{45, 3},
                       .edge = Edge{"top"}});
  const Plan found = plan(job, papers(drawer));
  ASSERT_TRUE(found.found) << sentence(*found.why);
  for (const Step& step : found.steps) {
    EXPECT_FALSE(step.zones[0].strokes_left) << "a levelled zone";
    EXPECT_TRUE(step.zones[1].strokes_left) << step.sheet;
  }
  job.zones[1].film->mean_um = 40;
  const Plan thinner = evaluate(job, papers(drawer), ids(found));
  for (std::size_t i = 0; i < found.steps.size(); ++i) {
    EXPECT_LT(*thinner.steps[i].zones[1].strokes_left, *found.steps[i].zones[1].strokes_left);
  }
}

/// A glossy top, and a sharp edge of 60 um of film with it.
Job glossy_with_edge() {
  Job job = glossy(80);
  job.zones.push_back({.name = "edge",
                       .area_cm2 = 20,
                       .block = block_named("foam pad"),
                       .film = Film{60, 3},
                       .edge = Edge{"top"}});
  return job;
}

TEST(StrokesAtAWheel, AreSecondsAndPasses) {
  const Plan found = plan(glossy_with_edge(), drawer_and_wheels());
  ASSERT_TRUE(found.found) << sentence(*found.why);
  const Step& last = found.steps.back();
  ASSERT_TRUE(last.wheel);
  const ZoneStep& edge = last.zones.back();
  EXPECT_FALSE(edge.strokes_left);
  EXPECT_FALSE(last.zones.front().left_s) << "a levelled zone";
  ASSERT_TRUE(edge.left_s && edge.passes_left);
  // A face of 50 by 60 mm under 15 N presses with 5 kPa. Its flannel of 0.05 MPa bears on a sharp edge with half of that
  // modulus, 25 kPa: 5 times as much. A pass is 60 mm at 200 mm/s, 0.3 s.
  const double left_um = edge.depth_um / *edge.film_used - edge.depth_um;
  const double edge_um_per_s = 5 * last.wheel->film_per_pass_um / 0.3;
  EXPECT_NEAR(*edge.left_s, left_um / edge_um_per_s, 1e-9 * *edge.left_s);
  EXPECT_EQ(*edge.passes_left, std::floor(*edge.left_s / 0.3));
  const std::string text = flowing(card(found));
  EXPECT_THAT(text, HasSubstr(" s more at the wheel along edge. That is "));
  const std::size_t step = text.find("Step " + std::to_string(found.steps.size()) + " of");
  const std::string at_wheel = text.substr(step, text.find("Film: ", step) - step);
  EXPECT_THAT(at_wheel, HasSubstr("Rim speed"));
  EXPECT_THAT(at_wheel, testing::Not(HasSubstr("stroke")));
}

TEST(StrokesAtAWheel, SayWhatASecondOfStandingStillCosts) {
  const Plan found = plan(glossy(80), drawer_and_wheels());
  ASSERT_TRUE(found.found) << sentence(*found.why);
  const WheelStep& wheel = *found.steps.back().wheel;
  EXPECT_NEAR(wheel.still.film_um, wheel.film_per_pass_um / 0.3, 1e-12);
  // The film that a second takes goes with the time, the warmth with its root.
  ASSERT_TRUE(wheel.still.rise_k);
  EXPECT_NEAR(*wheel.still.rise_k, *wheel.rise_k / std::sqrt(0.3), 1e-9);
  EXPECT_THAT(flowing(card(found)), HasSubstr("One second of standing still takes "));
  EXPECT_THAT(flowing(card(found)),
              HasSubstr(" um off and warms the spot by " +
                        std::to_string(static_cast<int>(std::round(*wheel.still.rise_k))) +
                        " degrees Celsius."));
}

TEST(StrokesAtAWheel, AreToldWithWhatSpeaksAgainstIt) {
  Stack stack = drawer_and_wheels();
  Wheel& wheel = *wheel_in(stack.sheets.back());
  wheel.rated_rpm = wheel.rpm = 2000;
  const Plan refused = plan(glossy(80), stack);
  const Finding* finding = find(refused.findings, FindingKind::wheel_speed);
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(sentence(*finding), HasSubstr("One second of standing still takes "));
}

TEST(StrokesAtAWheel, AreToldOnTheWayBack) {
  const Job job = glossy(80);
  const std::vector<DoneStep> done{
      {"P600", {}, 0}, {"P1000", {}, 90}, {"P1500", {}, 0}, {"cutting", {}, 90}};
  Mark mark;
  mark.kind = MarkKind::haze;
  mark.zone = job.zones.front().name;
  const WayBack way = go_back(job, drawer_and_wheels(), done, mark);
  ASSERT_TRUE(way.found);
  const TryStep& last = way.tries.front().steps.back();
  ASSERT_TRUE(last.wheel) << last.sheet;
  EXPECT_GE(last.wheel->passes, 1);
  // 50 mm wide at 200 mm/s: 100 cm2 a second.
  EXPECT_NEAR(last.wheel->pass_s, job.zones.front().area_cm2 / 100, 1e-9);
  const std::string text = flowing(way_back_card(way));
  const int seconds = static_cast<int>(std::ceil(last.wheel->pass_s));
  EXPECT_THAT(text, HasSubstr("At the wheel of cutting, a pass takes " + std::to_string(seconds) +
                              " s. One second of standing still takes "));
}

TEST(Wheels, CarryTheirCautionsWithTheStep) {
  const Plan found = plan(glossy(80), drawer_and_wheels());
  ASSERT_TRUE(found.found) << sentence(*found.why);
  EXPECT_TRUE(found.steps.front().cautions.empty());
  ASSERT_FALSE(found.steps.back().cautions.empty());
  EXPECT_THAT(found.steps.back().cautions.front().text, HasSubstr("rpm"));
}

/// A top to be levelled alone, and an edge that nothing touches: 45 +- 12 um of film, 10 um of them to stay.
Job untouched_edge() {
  Job job = top(35);
  job.target.size_um = 36;  // P400 ends it
  job.zones.push_back({.name = "edge",
                       .area_cm2 = 90,
                       .block = block_named("foam pad"),
                       .film = Film{45, 12},
                       .edge = Edge{"top"}});
  return job;
}

TEST(ThinFilm, OfAZoneThatNoStepTouchesIsNotPassedOverInSilence) {
  const Job job = untouched_edge();
  const Plan found = plan(job, papers({"P400"}));
  ASSERT_TRUE(found.found) << sentence(*found.why);
  const ZoneStep& edge = found.steps.back().zones[1];
  ASSERT_EQ(edge.depth_um, 0.0);
  ASSERT_GT(*edge.cut_through, job.rules.cut_through_limit);

  const Finding* finding = find(found.findings, FindingKind::film_too_thin);
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->severity, Severity::error);
  EXPECT_EQ(finding->zone, "edge");
  EXPECT_EQ(figure(finding->numbers, "film_um"), 45.0);
  EXPECT_EQ(figure(finding->numbers, "film_sd_um"), 12.0);
  EXPECT_EQ(figure(finding->numbers, "reserve_um"), 10.0);
  EXPECT_EQ(figure(finding->numbers, "cut_through"), edge.cut_through);
  EXPECT_EQ(figure(finding->numbers, "cut_through_limit"), 0.01);
  EXPECT_NEAR(*edge.cut_through, 0.1473005, 5e-8);  // 1 - (1 - Q(35 / 12))^90
  EXPECT_EQ(count(found.findings, FindingKind::film_too_thin), 1);
}

TEST(ThinFilm, IsToldOfASequenceAndWhereThereIsNoPlanToo) {
  Job job = untouched_edge();
  const Plan taken = evaluate(job, papers({"P400", "P600"}), {"P400", "P600"});
  EXPECT_EQ(count(taken.findings, FindingKind::film_too_thin), 1);
  EXPECT_EQ(count(taken.findings, FindingKind::film_short), 1);
  job.zones[1].edge.reset();  // to be levelled as well
  const Plan none = plan(job, papers({"P400", "P600"}));
  ASSERT_FALSE(none.found);
  EXPECT_EQ(count(none.findings, FindingKind::film_too_thin), 1);
}

TEST(ThinFilm, OfALimitThatIsJustKeptIsNoFinding) {
  Job job = untouched_edge();
  job.rules.cut_through_limit = 0.15;
  const Plan found = plan(job, papers({"P400"}));
  ASSERT_TRUE(found.found) << sentence(*found.why);
  EXPECT_GT(*found.zones[1].budget_um, 0.0);
  EXPECT_EQ(find(found.findings, FindingKind::film_too_thin), nullptr);
  job.rules.cut_through_limit = 0.146;
  EXPECT_NE(find(plan(job, papers({"P400"})).findings, FindingKind::film_too_thin), nullptr);
}

TEST(ThinFilm, ItsShareIsZeroUntouchedAndNoBudgetOnceWorked) {
  const Plan found = plan(untouched_edge(), papers({"P400"}));
  ASSERT_TRUE(found.found) << sentence(*found.why);
  EXPECT_EQ(found.zones[1].budget_um, 0.0);
  EXPECT_EQ(found.steps[0].zones[1].film_used, 0.0);
  EXPECT_NEAR(*found.total.film, *found.steps[0].zones[0].film_used, 1e-6);  // that of the top

  const Plan taken = evaluate(untouched_edge(), papers({"P400", "P600"}), {"P400", "P600"});
  EXPECT_GT(taken.steps[1].zones[1].depth_um, 0.0);
  EXPECT_EQ(taken.steps[1].zones[1].film_used, std::numeric_limits<double>::infinity());
  EXPECT_EQ(taken.total.film, std::numeric_limits<double>::infinity());
  for (const Reliance& one : taken.relies_on) {
    EXPECT_TRUE(std::isfinite(one.film_low) && std::isfinite(one.film_high) &&
                std::isfinite(one.influence))
        << one.subject << ", " << one.quantity;
  }
}

TEST(Rounds, GoingThroughTheLastOneIsAWitnessLine) {
  Job job = top(60, 25);
  job.zones[0].below_um = 80;
  const Plan taken = evaluate(job, papers(drawer), {"P400", "P800", "P1500"});
  const Finding* finding = find(taken.findings, FindingKind::round_entered);
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(sentence(*finding), HasSubstr("witness line"));
  EXPECT_THAT(sentence(*finding), HasSubstr("25.0 um"));
  EXPECT_LT(*taken.steps.back().zones[0].film_left_um, 0);
}

}  // namespace
}  // namespace whole_day_test
