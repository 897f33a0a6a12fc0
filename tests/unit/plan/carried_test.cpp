// Zones that differ in where they stand: which sheets work them, what that takes, and what is told of it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/grade/label.hpp"
#include "levigate/grade/sized.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/surface/sheen.hpp"
#include "levigate/text/card.hpp"
#include "unit/workshop.hpp"

namespace carried_test {
namespace {

using namespace workshop;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

const std::vector<std::string> drawer{"P600", "P800", "P1000", "P1200", "P1500"};

/// A top and a side alike, each as it stands; none as sprayed.
Job two_zones(std::optional<Carried> first, std::optional<Carried> second) {
  Job job = top(20);
  job.zones.push_back(job.zones.front());
  job.zones[1].name = "side";
  job.zones[0].carries = first;
  job.zones[1].carries = second;
  return job;
}

Carried carrying(const std::string& label) { return Carried{grade(label)}; }

std::vector<bool> worked(const Plan& plan, std::size_t zone) {
  std::vector<bool> result;
  for (const Step& step : plan.steps) result.push_back(step.zones[zone].worked);
  return result;
}

TEST(Carried, AZoneIsTakenUpByTheFirstSheetThatIsFinerByMinRatio) {
  const Job job = two_zones(std::nullopt, carrying("P1000"));
  const Plan found = evaluate(job, papers(drawer), {"P600", "P1000", "P1200", "P1500"});
  EXPECT_THAT(worked(found, 0), ElementsAre(true, true, true, true));
  EXPECT_THAT(worked(found, 1), ElementsAre(false, false, true, true));
  for (const std::size_t passed : {0U, 1U}) {
    const ZoneStep& side = found.steps[passed].zones[1];
    EXPECT_EQ(side.removal_um, 0);
    EXPECT_EQ(side.minutes, 0);
    EXPECT_EQ(side.sheets_used, 0);
    EXPECT_EQ(side.depth_um, side.scratch_um);
  }
  // Both zones then stand at P1000 by the same paper on the same block.
  EXPECT_EQ(found.steps[1].zones[0].scratch_um, found.steps[1].zones[1].scratch_um);
  EXPECT_EQ(found.steps[1].zones[0].gloss_gu, found.steps[1].zones[1].gloss_gu);
  EXPECT_EQ(found.steps[2].zones[0].removal_um, found.steps[2].zones[1].removal_um);
  EXPECT_GT(found.steps[2].zones[1].removal_um, 0);
}

TEST(Carried, ExactlyAtMinRatioOnPaperIsTakenUp) {
  Job job = two_zones(std::nullopt, Carried{sized_grade("own", 18.3)});
  Stack stack = papers(drawer);
  stack.sheets[3].size_um = 12.2;
  job.rules.min_ratio = 1.5;
  job.rules.max_ratio = 2.5;
  EXPECT_THAT(worked(evaluate(job, stack, {"P800", "P1200"}), 1), ElementsAre(false, true));
  job.rules.min_ratio = 1.5001;
  EXPECT_THAT(worked(evaluate(job, stack, {"P800", "P1200"}), 1), ElementsAre(false, false));
}

TEST(Carried, AStateOnEveryZoneIsAStartOfTheJob) {
  Job job = two_zones(std::nullopt, std::nullopt);
  job.scratched_by = grade("P600");
  const Plan started = plan(job, papers(drawer));
  const Plan carried = plan(two_zones(carrying("P600"), carrying("P600")), papers(drawer));
  ASSERT_TRUE(started.found);
  EXPECT_EQ(carried.exact.sheets, started.exact.sheets);
  EXPECT_EQ(carried.exact.milliseconds, started.exact.milliseconds);
  EXPECT_EQ(carried.exact.depth_pm, started.exact.depth_pm);
  job.zones[1].carries = carrying("P1000");
  EXPECT_LT(plan(job, papers(drawer)).exact.milliseconds, started.exact.milliseconds);
}

TEST(Carried, TheRatioRuleCountsFromTheZoneThatASheetTakesUp) {
  // From P320 (46.2 um) to P600 (25.8 um) is 1.79, above max_ratio.
  const Job coarse = two_zones(std::nullopt, carrying("P320"));
  const Plan none = plan(coarse, papers(drawer));
  ASSERT_FALSE(none.found);
  EXPECT_EQ(none.why->blocked_by, Blocker::ratio);
  ASSERT_EQ(none.why->gaps.size(), 1U);
  EXPECT_EQ(none.why->gaps[0].coarse, "P320");
  EXPECT_EQ(none.why->gaps[0].fine, "P600");
  const Plan taken = evaluate(coarse, papers(drawer), {"P600", "P1000", "P1500"});
  const Finding* finding = find(taken.findings, FindingKind::step_too_long);
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(sentence(*finding), HasSubstr("step from P320 (46.2 um) to P600 (25.8 um)"));
  EXPECT_THAT(finding->sheets, ElementsAre("P600"));
  EXPECT_TRUE(plan(two_zones(std::nullopt, carrying("P600")), papers(drawer)).found);
}

TEST(Carried, AStepThatWouldWorkNoZoneIsNotTaken) {
  const Job job = two_zones(carrying("P1000"), carrying("P1200"));
  const Plan found = plan(job, papers(drawer));
  ASSERT_TRUE(found.found) << sentence(*found.why);
  for (const Step& step : found.steps) {
    EXPECT_TRUE(step.zones[0].worked || step.zones[1].worked) << step.sheet;
  }
  const Plan needless = evaluate(job, papers(drawer), {"P800", "P1200", "P1500"});
  ASSERT_NE(find(needless.findings, FindingKind::not_finer), nullptr);
  EXPECT_THAT(worked(needless, 1), ElementsAre(false, false, true));
}

TEST(Carried, WhereNothingIsLeftToLevelTheFirstStepTakesTheEdgesAlong) {
  Job job = two_zones(carrying("P1000"), std::nullopt);
  job.zones[1].levelled = false;
  const Plan found = plan(job, papers(drawer));
  ASSERT_TRUE(found.found) << sentence(*found.why);
  EXPECT_TRUE(found.steps[0].zones[1].worked);
  EXPECT_EQ(found.steps[0].zones[1].removal_um, 0);
  job.zones[0].carries.reset();
  EXPECT_FALSE(plan(job, papers(drawer)).steps[0].zones[1].worked);
}

TEST(Carried, AGivenDepthStandsAboveThatOfTheGradeAndScalesItsRoughness) {
  Job job = two_zones(std::nullopt, carrying("P1000"));
  const Plan usual = evaluate(job, papers(drawer), {"P800", "P1200"});
  const ZoneStep& side = usual.steps[0].zones[1];
  job.zones[1].carries->scratch_um = 2 * side.scratch_um;
  const Plan deeper = evaluate(job, papers(drawer), {"P800", "P1200"});
  EXPECT_DOUBLE_EQ(deeper.steps[1].zones[1].removal_um, 2 * usual.steps[1].zones[1].removal_um);
  const double rq_um =
      workings(two_zones(std::nullopt, carrying("P1000")), papers(drawer)).starts[1]->rq_um;
  EXPECT_DOUBLE_EQ(deeper.steps[0].zones[1].gloss_gu,
                   gloss_gu(job.coating.refractive_index, 60, 2 * rq_um));
  job.zones[1].carries->rq_um = 0.05;
  const Plan measured = evaluate(job, papers(drawer), {"P800", "P1200"});
  EXPECT_EQ(measured.steps[0].zones[1].gloss_gu, gloss_gu(job.coating.refractive_index, 60, 0.05));
}

TEST(Carried, AZoneBeyondTheTargetCountsAsItStands) {
  const Plan found = plan(two_zones(std::nullopt, carrying("P2000")), papers(drawer));
  ASSERT_TRUE(found.found) << sentence(*found.why);
  EXPECT_EQ(found.steps.back().sheet, "P1500");
  for (const Step& step : found.steps) EXPECT_FALSE(step.zones[1].worked) << step.sheet;
  EXPECT_EQ(find(found.findings, FindingKind::target_missed), nullptr);
}

TEST(Carried, AZoneTooNearToTheLastSheetToBeWorkedMissesTheTarget) {
  const Job job = two_zones(std::nullopt, Carried{sized_grade("own", 13.0)});
  const Plan none = plan(job, papers(drawer));
  ASSERT_FALSE(none.found);
  EXPECT_EQ(none.why->blocked_by, Blocker::target);
  EXPECT_THAT(sentence(*none.why), HasSubstr("P1500 with 13.0 um in zone side"));
}

TEST(Carried, NothingToDoIsSaid) {
  const Job job = two_zones(carrying("P1500"), carrying("P2000"));
  const Plan none = plan(job, papers({"P600", "P2000", "P2500"}));
  ASSERT_FALSE(none.found);
  EXPECT_EQ(none.why->blocked_by, Blocker::done);
  EXPECT_THAT(sentence(*none.why), HasSubstr("Nothing to do. Every zone already meets the target"));
  EXPECT_THAT(card(none), Not(HasSubstr("What would help")));
  EXPECT_TRUE(plan(two_zones(carrying("P1000"), carrying("P2000")), papers(drawer)).found);
}

TEST(Carried, ACompoundMeetsTheScratchesOfTheZoneThatItTakesUp) {
  Job job = two_zones(carrying("P1500"), carrying("P600"));
  Stack stack = papers({"P1200"});
  Sheet bar = paper("bar", "bar");
  bar.kind = Polish{.size_um = 3, .worn_um = 2, .reach = ScratchReach{0.5}};
  stack.sheets.push_back(bar);
  job.target = {.size_um = 3, .gloss_gu = {}, .label = ""};
  const Plan taken = evaluate(job, stack, {"bar"});
  const Finding* finding = find(taken.findings, FindingKind::scratch_too_deep);
  ASSERT_NE(finding, nullptr);
  EXPECT_THAT(sentence(*finding), HasSubstr("Scratches of P600 (25.8 um)"));
}

TEST(Carried, SequencesThatDoNotFallKeepWhatASheetTookUp) {
  const Job job = two_zones(std::nullopt, carrying("P1000"));
  const Plan back = evaluate(job, papers(drawer), {"P1500", "P800", "P1500"});
  EXPECT_THAT(worked(back, 1), ElementsAre(true, true, true));
  EXPECT_EQ(back.steps[2].zones[0].removal_um, back.steps[2].zones[1].removal_um);
}

TEST(Carried, ReliancesDoNotChangeWhichZonesAreWorked) {
  // P1000 to P1200 is 1.196: at the ends of the band of P1200 it is below and above this min_ratio.
  Job job = two_zones(std::nullopt, carrying("P1000"));
  job.rules.min_ratio = 1.19;
  const Plan found = evaluate(job, papers(drawer), {"P800", "P1200", "P1500"});
  ASSERT_TRUE(found.steps[1].zones[1].worked);
  const double side_minutes = found.steps[1].zones[1].minutes;
  for (const Reliance& r : found.relies_on) {
    if (r.subject != "grade P1200" || r.quantity != "median_um") continue;
    EXPECT_LT(std::abs(r.minutes_low), side_minutes);
    EXPECT_LT(std::abs(r.minutes_high), side_minutes);
    return;
  }
  FAIL() << "P1200 is not among the inputs";
}

TEST(Carried, TheCardSaysWhereZonesStandAndWhichArePassedBy) {
  const Job job = two_zones(std::nullopt, carrying("P1000"));
  const Stack stack = papers(drawer);
  const std::string text =
      workshop::flowing(card(evaluate(job, stack, {"P600", "P1000", "P1500"})));
  EXPECT_THAT(text, HasSubstr("zones in different states"));
  EXPECT_THAT(text, HasSubstr("at P1000"));
  EXPECT_THAT(text, HasSubstr("as sprayed"));
  EXPECT_THAT(text, HasSubstr("pass by"));
  EXPECT_THAT(text, HasSubstr("Done when no shiny low spot is left."));
  EXPECT_THAT(text, HasSubstr("Done when the scratches of P1000 are gone"));
  const Job worked = two_zones(carrying("P600"), carrying("P800"));
  const std::string on = workshop::flowing(card(evaluate(worked, stack, {"P1000", "P1500"})));
  EXPECT_THAT(on, HasSubstr("Done when the scratches of P600 and P800 are gone"));
  EXPECT_THAT(on, Not(HasSubstr("Level the orange peel")));
}

TEST(Carried, StatesOutsideTheirRangesAreRefused) {
  const auto refused = [](const Carried& carried) {
    EXPECT_THROW(plan(two_zones(std::nullopt, carried), papers(drawer)), OutOfRange);
  };
  refused(Carried{grade("P800"), -0.1});
  refused(Carried{grade("P800"), std::nan("")});
  refused(Carried{grade("P800"), {}, 1001});
  refused(Carried{Grade{}});
  refused(Carried{grade("P800"), {}, {}, 30});
}

}  // namespace
}  // namespace carried_test
