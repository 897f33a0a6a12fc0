// What a hand-held machine may cost in film, and that the card says so: pads of unknown stiffness, edges, zones that may be narrow.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/plan/work/levelling_of.hpp"
#include "levigate/plan/work/plan_body.hpp"
#include "levigate/recover/go_back.hpp"
#include "levigate/recover/work/film_walk.hpp"
#include "levigate/stack/machine_table.hpp"
#include "levigate/surface/shrink_back.hpp"
#include "levigate/text/card.hpp"
#include "levigate/text/comparison.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/way_back.hpp"
#include "unit/plan/machine_workshop.hpp"

namespace machine_film_test {
namespace {

using namespace machine_workshop;
using testing::HasSubstr;
using testing::Not;

/// What levelling the first zone of a job takes with a pad of that modulus.
double levelled_at(const Job& job, double modulus_mpa) {
  Machine machine = machine_named(sander);
  machine.modulus_mpa = modulus_mpa;
  return levelling_of(job.zones[0], face_of(machine), job.zones[0].peel_um,
                      job.rules.residual_peel_um) *
         with_shrink_back(job.coating.shrink_back);
}

/// A top with its edge.
Job with_edge() {
  Job job = top(25);
  job.zones[0].area_cm2 = 5000;
  job.zones[0].film = Film{250, 6};
  job.zones.push_back({.name = "edges",
                       .area_cm2 = 800,
                       .block = block_named("foam pad"),
                       .film = Film{80, 6},
                       .edge = Edge{"top"}});
  return job;
}

TEST(MachinePad, LevellingCountsTheSoftEndOfAPadThatNobodyMeasured) {
  const Job job = top(20);
  const Machine machine = machine_named(sander);
  const double soft_mpa = 0.1;  // the low end of the profile
  const Plan usual = evaluate(job, discs({"P400"}), {"disc-P400"});
  EXPECT_NEAR(usual.steps[0].zones[0].removal_um, levelled_at(job, soft_mpa), 1e-9);
  EXPECT_GT(levelled_at(job, soft_mpa), 1.5 * levelled_at(job, machine.modulus_mpa));
  Machine measured = machine;
  measured.modulus_mpa = 0.6;
  const Plan told = evaluate(job, discs({"P400"}, measured), {"disc-P400"});
  EXPECT_NEAR(told.steps[0].zones[0].removal_um, levelled_at(job, 0.6), 1e-9);
  // Minutes are those of a pad as stiff as usual.
  const double per_um = told.steps[0].zones[0].minutes / levelled_at(job, 0.6);
  EXPECT_NEAR(usual.steps[0].zones[0].minutes, per_um * levelled_at(job, machine.modulus_mpa),
              1e-9);
}

TEST(MachinePad, FilmThatItsUsualStiffnessAffordsAndItsSoftEndDoesNotIsShort) {
  const Job job = top(20, 75);
  const Plan soft = evaluate(job, discs({"P400"}), {"disc-P400"});
  Machine measured = machine_named(sander);
  measured.modulus_mpa = 0.51;
  const Plan told = evaluate(job, discs({"P400"}, measured), {"disc-P400"});
  ASSERT_FALSE(find(told.findings, FindingKind::film_short));
  EXPECT_TRUE(find(soft.findings, FindingKind::film_short));
}

TEST(MachinePad, OfUnknownStiffnessIsSaidOnTopOfTheCard) {
  const std::string said =
      "Nobody measured how stiff the pad of the random-orbit sander is. The film is counted for a "
      "soft one of 0.1 MPa.";
  const std::string text = flowing(card(evaluate(top(20), discs({"P400"}), {"disc-P400"})));
  EXPECT_THAT(text, HasSubstr(said));
  EXPECT_LT(text.find(said), text.find("Goal:"));
  EXPECT_EQ(text.find(said), text.rfind(said));
  Machine measured = machine_named(sander);
  measured.modulus_mpa = 0.6;
  EXPECT_THAT(flowing(card(evaluate(top(20), discs({"P400"}, measured), {"disc-P400"}))),
              Not(HasSubstr("Nobody measured")));
}

TEST(MachinePad, AReadingAfterItLevelledAsUsualContradictsNothing) {
  const Job job = top(20, 200);
  const Workings all = workings(job, discs({"P400"}));
  const double usual_um = levelled_at(job, machine_named(sander).modulus_mpa);
  const double left_um = 200 - usual_um;
  const detail::Standing standing = detail::standing_of(
      all, job, {{.sheet = "disc-P400"}},
      {{.after_steps = 1, .zone = 0, .readings_um = {left_um - 1, left_um, left_um + 1}}});
  EXPECT_FALSE(standing.films[0]->doubt());
  EXPECT_NEAR(standing.films[0]->now().mean_um, left_um, 1e-9);
  const Plan planned = evaluate(all, {"disc-P400"});
  EXPECT_NEAR(standing.sheets_used[0], planned.steps[0].sheets_used, 1e-9);
}

TEST(MachineWayBack, OnAnEdgeSaysThatTheHandWorksIt) {
  const Stack stack = discs({"P400", "P600", "P800"});
  const std::vector<DoneStep> done{
      {.sheet = "disc-P400"}, {.sheet = "disc-P600"}, {.sheet = "disc-P800"}};
  Mark mark;
  mark.kind = MarkKind::swirl;
  mark.seen = Seen::sunlight;
  mark.zone = "edges";
  const WayBack edge = go_back(with_edge(), stack, done, mark);
  ASSERT_TRUE(edge.found);
  const Finding* hand = find(edge.findings, FindingKind::machine_by_hand);
  ASSERT_TRUE(hand);
  EXPECT_FALSE(find(edge.findings, FindingKind::machine_strip));
  EXPECT_THAT(flowing(way_back_card(edge)),
              HasSubstr("Zone edges is an edge. The random-orbit sander keeps off it. Work the "
                        "zone by hand with the same grade on foam pad."));
  mark.zone = "top";
  const WayBack flat = go_back(with_edge(), stack, done, mark);
  ASSERT_TRUE(flat.found);
  EXPECT_FALSE(find(flat.findings, FindingKind::machine_by_hand));
  const std::string text = flowing(way_back_card(flat));
  EXPECT_THAT(text, HasSubstr("Keep the random-orbit sander 10 mm off every edge."));
  EXPECT_THAT(text, HasSubstr("with the random-orbit sander."));
  EXPECT_THAT(text, HasSubstr("Work edges by hand."));
}

TEST(MachineWayBack, OfHandWorkSaysNothingOfTheMachineInTheDrawer) {
  Stack stack = papers({"P400", "P600", "P800"});
  stack.sheets.push_back(disc("P1000"));
  const std::vector<DoneStep> done{{.sheet = "P400"}, {.sheet = "P600"}, {.sheet = "P800"}};
  Mark mark;
  mark.kind = MarkKind::scratch;
  mark.zone = "top";
  const WayBack way = go_back(with_edge(), stack, done, mark);
  EXPECT_TRUE(way.findings.empty());
  EXPECT_THAT(way_back_card(way), Not(HasSubstr("sander")));
}

TEST(MachineFinding, OfASheetThatASequenceDoesNotUseIsNotSaidOfIt) {
  Stack stack = papers({"P400", "P600", "P1000", "P1500"});
  stack.sheets.push_back(disc("P800"));
  const Plan by_hand = evaluate(with_edge(), stack, {"P400", "P600", "P1000", "P1500"});
  EXPECT_FALSE(find(by_hand.findings, FindingKind::machine_by_hand));
  EXPECT_FALSE(find(by_hand.findings, FindingKind::machine_strip));
  const Plan machined = evaluate(with_edge(), stack, {"P400", "disc-P800", "P1500"});
  EXPECT_TRUE(find(machined.findings, FindingKind::machine_by_hand));
  EXPECT_TRUE(find(machined.findings, FindingKind::machine_strip));
}

TEST(MachineZone, ThatIsNotLevelledAndNoEdgeMayBeNarrowAndIsWarnedOfAtTheStep) {
  Job job = with_edge();
  job.zones[1].edge.reset();
  job.zones[1].levelled = false;
  Stack stack = papers({"P400"});
  for (const char* label : {"P600", "P1000", "P1500"}) stack.sheets.push_back(disc(label));
  const Plan narrow = evaluate(job, stack, {"P400", "disc-P600", "disc-P1000"});
  ASSERT_EQ(narrow.steps[1].zones[1].tool, sander);
  const Finding* warned = find(narrow.findings, FindingKind::machine_narrow);
  ASSERT_TRUE(warned);
  EXPECT_EQ(warned->severity, Severity::warning);
  EXPECT_EQ(warned->zone, "edges");
  const std::string said =
      "Zone edges is not levelled, so it may be narrow. The random-orbit sander may cut through "
      "at an edge. Tell its edge_of, or keep the machine off it";
  EXPECT_EQ(sentence(*warned), said);
  const std::string text = flowing(card(narrow));
  const auto step = text.find("Step 2 of 3");
  EXPECT_NE(text.find("Warning: " + said, step), std::string::npos);
  EXPECT_LT(text.find("Warning: " + said, step), text.find("Step 3 of 3"));
  const Plan flat = evaluate(with_edge(), stack, {"P400", "disc-P600", "disc-P1000"});
  EXPECT_FALSE(find(flat.findings, FindingKind::machine_narrow));
}

TEST(MachineStrip, IsSaidBesideTheMinutesOfTheCardAndOfTheComparison) {
  const std::string said =
      "The strip along edges that stays with the hand is not in these minutes.";
  const Plan machined = evaluate(with_edge(), discs({"P400", "P600"}), {"disc-P400", "disc-P600"});
  const std::string text = flowing(card(machined));
  EXPECT_THAT(text, HasSubstr(said));
  EXPECT_LT(text.find(said), text.find("Lay out"));
  const Plan by_hand = evaluate(with_edge(), papers({"P400", "P600"}), {"P400", "P600"});
  EXPECT_THAT(flowing(card(by_hand)), Not(HasSubstr(said)));
  EXPECT_THAT(flowing(comparison_card(by_hand, machined)), HasSubstr(said));
  EXPECT_THAT(flowing(comparison_card(by_hand, by_hand)), Not(HasSubstr(said)));
}

TEST(MachineWords, ASanderWithCompoundIsToldToUseAPolisher) {
  Sheet sheet;
  sheet.id = "medium";
  sheet.label = "medium compound";
  Polish compound = polish_named("medium");
  compound.tool = machine_named(sander);
  sheet.backing = buff_of(compound);
  sheet.kind = compound;
  try {
    require_fitting_machine(sheet, "sheet 'medium'");
    FAIL() << "taken";
  } catch (const BadInput& error) {
    EXPECT_THAT(std::string(error.what()),
                testing::StartsWith("use a polisher: machine 'random-orbit sander' takes no "
                                    "compound"));
  }
}

}  // namespace
}  // namespace machine_film_test
