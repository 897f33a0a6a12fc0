// Hand-held machines in a plan: where the hand works in their place, what curls mean, heat, and pieces too heavy for a wheel.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "levigate/io/json.hpp"
#include "levigate/plan/handling_table.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/plan/work/findings.hpp"
#include "levigate/plan/work/knobs.hpp"
#include "levigate/plan/work/plan_body.hpp"
#include "levigate/recover/diagnose.hpp"
#include "levigate/surface/sheen_bands.hpp"
#include "levigate/text/card.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/machine.hpp"
#include "levigate/wheel/wheel.hpp"
#include "unit/plan/machine_workshop.hpp"

namespace plan_machine_test {
namespace {

using namespace machine_workshop;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

/// A compound on a tool of its own.
Sheet polish(const std::string& name, const Tool& tool) {
  Sheet sheet;
  sheet.id = name;
  sheet.label = name + " compound";
  Polish compound = polish_named(name);
  compound.tool = tool;
  sheet.backing = buff_of(compound);
  sheet.kind = compound;
  sheet.width_mm = sheet.height_mm = 1000;
  return sheet;
}

/// The top with an edge, and a small flat beside it.
Job sideboard() {
  Job job = top(25);
  job.zones.front().area_cm2 = 6300;
  job.zones.front().film = Film{200, 6};  // a pad that nobody measured levels as a soft one
  job.zones.push_back({.name = "rim",
                       .area_cm2 = 120,
                       .block = block_named("foam pad"),
                       .film = Film{80, 6},
                       .edge = Edge{"top"}});
  job.zones.push_back({.name = "drawer front",
                       .area_cm2 = 200,
                       .block = block_named("cork block"),
                       .film = Film{120, 6},
                       .peel_um = 25});
  return job;
}

std::vector<std::string> zones_of(const std::vector<Finding>& findings, FindingKind kind) {
  std::vector<std::string> result;
  for (const Finding& finding : findings) {
    if (finding.kind == kind) result.push_back(finding.zone);
  }
  return result;
}

TEST(MachineStep, TakesWhatItsPadAndSpeedTake) {
  const Job job = top(25);
  const Machine machine = machine_named(sander);
  const Workings by_machine = workings(job, discs({"P400"}));
  const SheetInZone& work = by_machine.work[0][0];
  EXPECT_TRUE(work.machine);
  EXPECT_EQ(work.tool, face_of(machine));
  const Effort one = effort(10, work, job.zones[0], by_machine.stack.sheets[0], 1.0);
  const double pad_cm2 = std::numbers::pi / 4 * 225;
  EXPECT_NEAR(one.minutes,
              10 / work.rate_um_per_m * 900 / pad_cm2 / machine.speed_m_s() / machine.duty / 60,
              1e-9 * one.minutes);
  EXPECT_NEAR(one.travel_m, 10 / work.rate_um_per_m * 900 / pad_cm2, 1e-9 * one.travel_m);
}

TEST(MachineStep, LeavesEdgesAndSmallZonesToTheHandAndSaysSo) {
  const Stack stack = discs({"P400", "P600", "P800", "P1200", "P1500"});
  const Plan found = plan(sideboard(), stack);
  ASSERT_TRUE(found.found);
  const Step& step = found.steps[1];
  EXPECT_EQ(step.zones[0].tool, sander);
  EXPECT_EQ(step.zones[1].tool, "foam pad");
  EXPECT_EQ(step.zones[2].tool, "cork block");
  EXPECT_GT(step.zones[2].minutes, 0.0);
  EXPECT_THAT(zones_of(found.findings, FindingKind::machine_by_hand),
              ElementsAre("rim", "drawer front"));
  const Finding& small = found.findings.at(static_cast<std::size_t>(
      std::find_if(found.findings.begin(), found.findings.end(),
                   [](const Finding& f) { return f.zone == "drawer front"; }) -
      found.findings.begin()));
  EXPECT_EQ(
      sentence(small),
      "Zone drawer front has 200 cm2. The random-orbit sander needs 227 cm2. Work the zone by "
      "hand with the same grade on cork block");
  EXPECT_EQ(sentence(*find(found.findings, FindingKind::machine_by_hand)),
            "Zone rim is an edge. The random-orbit sander keeps off it. Work the zone by hand with "
            "the same grade on foam pad");
  EXPECT_EQ(sentence(*find(found.findings, FindingKind::machine_strip)),
            "Keep the random-orbit sander 10 mm off every edge. The strip there stays hand work. "
            "Its minutes are not in the plan");
}

TEST(MachineStep, AZoneThatJustHoldsThePadWithItsDistanceIsWorked) {
  Job job = top(25);
  const Machine machine = machine_named(sander);
  job.zones[0].area_cm2 = machine.room_cm2(machine.keep_off_mm);
  EXPECT_TRUE(workings(job, discs({"P400"})).work[0][0].machine);
  job.zones[0].area_cm2 *= 0.999;
  EXPECT_FALSE(workings(job, discs({"P400"})).work[0][0].machine);
}

TEST(MachineStep, HandWorkInItsPlaceIsThatOfTheSamePaperByHand) {
  Stack both = discs({"P400"});
  both.sheets.push_back(paper("hand", "P400"));
  const Workings all = workings(sideboard(), both);
  for (const std::size_t zone : {1U, 2U}) {
    EXPECT_EQ(all.work[0][zone].tool, all.work[1][zone].tool);
    EXPECT_EQ(all.work[0][zone].rate_um_per_m, all.work[1][zone].rate_um_per_m);
    EXPECT_EQ(all.work[0][zone].scratch_um, all.work[1][zone].scratch_um);
  }
  EXPECT_NE(all.work[0][0].tool, all.work[1][0].tool);
}

TEST(Curls, HaveNoWayAndNothingCrossesThem) {
  Stack stack = papers({"P400"});
  for (const char* label : {"P600", "P800"}) stack.sheets.push_back(disc(label));
  for (const char* label : {"P1000", "P1200", "P1500"}) stack.sheets.push_back(paper(label, label));
  const Plan found =
      evaluate(workings(top(25), stack), {"P400", "disc-P600", "disc-P800", "P1200", "P1500"});
  ASSERT_EQ(found.steps.size(), 5U);
  EXPECT_EQ(found.steps[1].way, StrokeWay::curls);
  EXPECT_EQ(found.steps[1].done, DoneSign::even_curls);
  EXPECT_EQ(found.steps[2].way, StrokeWay::curls);
  EXPECT_EQ(found.steps[3].way, StrokeWay::one_way);
  EXPECT_EQ(found.steps[3].done, DoneSign::scratches_your_way);
  EXPECT_EQ(found.steps[4].way, StrokeWay::across_before);
  const std::string text = flowing(card(found));
  EXPECT_THAT(text, HasSubstr("Guide the random-orbit sander in slow overlapping lanes. Go over "
                              "them once more crosswise."));
  EXPECT_THAT(text, HasSubstr("Curls have no direction. Crossing strokes does not show old "
                              "scratches here."));
  EXPECT_THAT(text, HasSubstr("Done when the scratches of P400 are gone and only even curls are "
                              "left under a low light."));
}

TEST(Curls, ThatEndASheenAreCalledOut) {
  Job job = top(25);
  const Target& satin = job.target = {.gloss_gu = 20, .label = "satin", .gloss_high_gu = 35};
  EXPECT_TRUE(satin.gloss_high_gu);
  Stack stack = papers({"P400"});
  stack.sheets.push_back(disc("P600"));
  const Workings all = workings(job, stack);
  const Plan curled = evaluate(all, {"P400", "disc-P600"});
  const Finding* show = find(curled.findings, FindingKind::curls_show);
  ASSERT_TRUE(show);
  EXPECT_EQ(show->severity, Severity::warning);
  EXPECT_EQ(sentence(*show),
            "disc-P600 (25.8 um) on the random-orbit sander comes last and leaves curls. A sheen "
            "shows them. Rub the last grade by hand along the grain");
  stack.sheets.push_back(paper("P600", "P600"));
  EXPECT_FALSE(
      find(evaluate(workings(job, stack), {"P400", "P600"}).findings, FindingKind::curls_show));
}

TEST(Curls, AreNoWayToRubOut) {
  Job job = top(25);
  job.target.rub_out = "disc-P1500";
  EXPECT_THROW(plan(job, discs({"P400", "P600", "P1000", "P1500"})), BadInput);
}

TEST(Curls, HaveNoDirectionInAMark) {
  const Job job = top(25);
  const Stack stack = discs({"P400", "P600"});
  Mark mark;
  mark.kind = MarkKind::swirl;
  mark.zone = "top";
  std::vector<DoneStep> done{{.sheet = "disc-P400"}, {.sheet = "disc-P600"}};
  EXPECT_NO_THROW(diagnose(job, stack, done, mark));
  done[1].direction_deg = 30;
  EXPECT_THROW(diagnose(job, stack, done, mark), BadInput);
}

TEST(Polisher, IsCheckedForHeatAsAWheelIs) {
  Job job = top(25);
  Machine machine = machine_named("rotary polisher");
  Stack stack = papers({"P400", "P600", "P1000", "P1500", "P2000"});
  stack.sheets.push_back(polish("medium", machine));
  const auto with = [&](const Machine& changed) {
    std::get<Polish>(stack.sheets.back().kind).tool = changed;
    return workings(job, stack);
  };
  EXPECT_FALSE(with(machine).refused.back());
  machine.rated_rpm = machine.rpm = 2500;  // 23.6 m/s at the rim
  const Workings fast = with(machine);
  EXPECT_TRUE(fast.refused.back());
  const std::vector<Finding> too_fast = job_findings(fast);
  const Finding& speed = *find(too_fast, FindingKind::wheel_speed);
  EXPECT_EQ(speed.severity, Severity::error);
  // 17.03 m/s on 180 mm is 1806.9 turns a minute.
  EXPECT_THAT(sentence(speed),
              HasSubstr("Machine 'rotary polisher' reaches 23.6 m/s at the pad. The limit of "
                        "two-part urethane is 17.0 m/s. Set it to at most 1806 rpm"));
  machine = machine_named("rotary polisher");
  machine.force_n = 200;
  machine.feed_m_s = 0.02;
  const Workings hot = with(machine);
  EXPECT_TRUE(hot.refused.back());
  const std::vector<Finding> too_hot = job_findings(hot);
  EXPECT_THAT(sentence(*find(too_hot, FindingKind::wheel_heat)),
              HasSubstr("s under machine 'rotary polisher' and warms by"));
}

TEST(Polisher, StandingStillCountsAtItsFastestPoint) {
  const Machine machine = machine_named("rotary polisher");
  const WheelLimits limits{11, 17, 450, 40};
  const StandingStill still = standing_still(machine, limits, 0.01);
  const double rim = surface_speed_m_s(machine.pad_mm, machine.rpm);
  EXPECT_DOUBLE_EQ(still.film_um, 0.01 * rim);
  const double flux = 0.5 * 0.4 * 1e3 * machine.pressure_kpa() * rim;
  EXPECT_NEAR(still.rise_k.value(), 2 * flux / std::sqrt(std::numbers::pi) / 450, 1e-9);
  EXPECT_FALSE(standing_still(machine_named(sander), limits, 0.01).rise_k);
}

TEST(Polisher, OnACoatingWithoutLimitsIsUsedWithAWarning) {
  Job job = top(0);
  job.coating.name = "own";
  job.coating.limits.reset();
  job.scratched_by = grade("P2000");
  job.target = {.size_um = 5, .label = "5 um"};
  Stack stack;
  stack.sheets.push_back(polish("medium", machine_named("dual-action polisher")));
  const Plan found = plan(job, stack);
  ASSERT_TRUE(found.found);
  EXPECT_THAT(sentence(*find(found.findings, FindingKind::wheel_unknown)),
              HasSubstr("Try it on scrap first"));
  EXPECT_THAT(flowing(card(found)), HasSubstr("no limits of speed and heat are known"));
}

TEST(Machine, CautionsStandOnceAndDeferToTheManual) {
  const Plan found = evaluate(workings(top(25), discs({"P400", "P600", "P800"})),
                              {"disc-P400", "disc-P600", "disc-P800"});
  ASSERT_EQ(found.steps.size(), 3U);
  const std::string text = flowing(card(found));
  const std::string shock =
      "Water and a machine on mains power can kill. Work dry with it, or "
      "follow its manual and local codes.";
  EXPECT_THAT(text, HasSubstr(shock));
  EXPECT_EQ(text.find(shock), text.rfind(shock));
  EXPECT_THAT(flowing(card(plan(top(25), papers({"P400", "P600", "P1000", "P1500"})))),
              Not(HasSubstr("mains power")));
}

TEST(Machine, ItsBandsAreItsOwnAndNotThoseOfAHand) {
  bool rpm = false;
  for (const detail::Knob& knob : detail::knobs(setup(top(25), discs({"P400"})))) {
    if (knob.subject != "machine " + sander) continue;
    EXPECT_NE(knob.quantity, "friction");  // a sander has none: nobody gave it
    rpm = rpm || (knob.quantity == "rpm" && knob.input.low == 4000 && knob.input.high == 12000);
  }
  EXPECT_TRUE(rpm);
  auto moved = setup(top(25), discs({"P400"}));
  for (const detail::Knob& knob : detail::knobs(moved)) {
    if (knob.subject == "machine " + sander && knob.quantity == "rpm") knob.set(moved, 6000);
  }
  EXPECT_EQ(machine_of(moved.stack.sheets[0])->rpm, 6000);
}

TEST(Piece, TooHeavyForTwoHandsIsNotHeldToAWheel) {
  Job job = top(25);
  Stack stack = papers({"P400", "P600", "P1000", "P1500", "P2000"});
  stack.sheets.push_back(polish("medium", wheel_named("loose muslin")));
  stack.sheets.push_back(polish("fine", machine_named("dual-action polisher")));
  const double most_kg = handling_table[0].most_kg.value;
  job.weight_kg = most_kg;
  EXPECT_FALSE(find(job_findings(workings(job, stack)), FindingKind::piece_too_heavy));
  job.weight_kg = 40;
  const Workings heavy = workings(job, stack);
  EXPECT_TRUE(heavy.refused[5]);
  EXPECT_FALSE(heavy.refused[6]);  // a machine goes to the piece
  const std::vector<Finding> findings = job_findings(heavy);
  const Finding& finding = *find(findings, FindingKind::piece_too_heavy);
  EXPECT_EQ(finding.severity, Severity::error);
  EXPECT_EQ(sentence(finding),
            "The piece weighs 40.0 kg. Two hands hold up to 5.0 kg to a wheel. The plan refuses "
            "medium. Use a hand-held polisher");
  stack.sheets.pop_back();
  job.target = {.size_um = 5, .label = "5 um"};
  const Plan none = plan(job, stack);
  EXPECT_FALSE(none.found);
  EXPECT_THAT(sentence(none.why.value()), HasSubstr("The piece is too heavy to hold to its wheel"));
  EXPECT_THAT(sentence(none.why.value()), Not(HasSubstr("too fast")));
}

TEST(Piece, LargeAndOfUnknownWeightIsWarnedOfAtTheStep) {
  Job job = top(0);
  job.zones[0].area_cm2 = 6300;
  job.scratched_by = grade("P2000");
  job.target = {.size_um = 5, .label = "5 um"};
  Stack stack;
  stack.sheets.push_back(polish("medium", wheel_named("loose muslin")));
  const Plan found = plan(job, stack);
  ASSERT_TRUE(found.found);
  const std::string warning =
      "Warning: Zone top has 6300 cm2, and weight_kg is not told. Two hands hold up to 5.0 kg to a "
      "wheel. Weigh the piece before you use medium.";
  EXPECT_THAT(flowing(card(found)), HasSubstr(warning));
  job.weight_kg = 4;
  const Plan weighed = plan(job, stack);
  EXPECT_THAT(flowing(card(weighed)), Not(HasSubstr("Weigh the piece")));
  job.weight_kg.reset();
  job.zones[0].area_cm2 = handling_table[0].unweighed_cm2.value;
  EXPECT_FALSE(find(plan(job, stack).findings, FindingKind::piece_unweighed));
}

TEST(Machine, StandsInAFileByNameOrByItsNumbers) {
  const std::string head = R"({"format": "levigate.stack/1", "sheets": [{"id": "d", "label": "P400",
    "backing": "latex paper", "width_mm": 150, "height_mm": 150, )";
  const Stack named = stack_from_json(head + R"("machine": "random-orbit sander"}]})");
  EXPECT_EQ(*machine_of(named.sheets[0]), machine_named(sander));
  EXPECT_EQ(stack_from_json(to_json(named)), named);
  EXPECT_THAT(to_json(named), HasSubstr(R"("machine": "random-orbit sander")"));
  const Stack own = stack_from_json(head + R"("machine": {"name": "mine", "pad_mm": 125,
    "orbit_mm": 5, "rpm": 8000, "rated_rpm": 10000, "force_n": 20, "feed_m_s": 0.05,
    "modulus_mpa": 0.5, "duty": 0.7, "keep_off_mm": 15}}]})");
  EXPECT_EQ(machine_of(own.sheets[0])->free_rpm, 0.0);
  EXPECT_EQ(stack_from_json(to_json(own)), own);
  EXPECT_THROW(
      stack_from_json(head + R"("machine": "random-orbit sander", "block": "foam pad"}]})"),
      BadInput);
  EXPECT_THROW(stack_from_json(head + R"("machine": "rotary polisher"}]})"), BadInput);
  EXPECT_EQ(stack_from_json(head + R"("machine": "Random orbit sander"}]})"),
            stack_from_json(head + R"("machine": "random-orbit sander"}]})"));
  EXPECT_THROW(stack_from_json(head + R"("machine": "random sander"}]})"), BadInput);
}

TEST(Machine, APlanWithItReadsBackAndOneWithoutSaysNothingOfIt) {
  const Plan with = plan(top(25), discs({"P400", "P600", "P800", "P1200", "P1500"}));
  EXPECT_THAT(to_json(with), HasSubstr(R"("way": "curls")"));
  EXPECT_THAT(to_json(with), HasSubstr(R"("machine": {)"));
  EXPECT_THAT(to_json(plan(top(25), papers({"P400", "P600", "P800", "P1200", "P1500"}))),
              Not(HasSubstr("machine")));
}

}  // namespace
}  // namespace plan_machine_test
