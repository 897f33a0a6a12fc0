// A job that is rubbed out to a sheen with a stated sheet, and paste rubbed by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "levigate/io/json.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/text/card.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/wheel.hpp"
#include "unit/workshop.hpp"

namespace rub_out_test {
namespace {

using namespace workshop;
using testing::HasSubstr;

const std::vector<std::string> drawer{"P400", "P600", "P800", "P1000", "P1200", "P1500", "P2000"};

/// A drawer with a non-woven pad of a stated size.
Stack with_pad(double size_um) {
  Stack stack = papers(drawer);
  Sheet soft = pad("non-woven", "fine non-woven");
  soft.size_um = size_um;
  stack.sheets.push_back(soft);
  return stack;
}

Job rubbed(const std::string& sheet) {
  Job job = top(20);
  job.target = {.gloss_gu = 10, .gloss_high_gu = 90};
  job.target.rub_out = sheet;
  return job;
}

TEST(RubOut, IsTheLastStepAndRunsOneWay) {
  const Plan found = plan(rubbed("non-woven"), with_pad(11));
  ASSERT_TRUE(found.found) << sentence(*found.why);
  const Step& last = found.steps.back();
  EXPECT_EQ(last.sheet, "non-woven");
  EXPECT_EQ(last.way, StrokeWay::along_grain);
  EXPECT_EQ(last.done, DoneSign::scratches_one_way);
  EXPECT_GT(last.reading_gu, 0);
  const std::string text = flowing(card(found));
  EXPECT_THAT(text, HasSubstr("rubbed out one way with non-woven"));
  EXPECT_THAT(text, HasSubstr("in straight strokes from end to end."));
  Job any = rubbed("");
  EXPECT_NE(plan(any, with_pad(11)).steps.back().sheet, "non-woven")
      << "without it another sheet ends sooner";
}

TEST(RubOut, OfAGradeKeepsItsWay) {
  Job job = top(20);
  job.target.rub_out = "P1500";
  const Plan found = plan(job, papers(drawer));
  ASSERT_TRUE(found.found) << sentence(*found.why);
  EXPECT_EQ(found.steps.back().sheet, "P1500");
  EXPECT_EQ(found.steps.back().way, StrokeWay::along_grain);
}

TEST(RubOut, ThatMissesTheTargetIsNoPlan) {
  Job job = top(20);
  job.target.rub_out = "P400";
  const Plan none = plan(job, papers(drawer));
  ASSERT_FALSE(none.found);
  EXPECT_EQ(none.why->nearest->sheet, "P400");
  EXPECT_THAT(sentence(*none.why), HasSubstr("The last step is to be rubbed with P400"));
  const Plan other = evaluate(rubbed("P1000"), papers(drawer), {"P600", "P1500"});
  ASSERT_NE(find(other.findings, FindingKind::target_missed), nullptr);
  EXPECT_THAT(sentence(*find(other.findings, FindingKind::target_missed)),
              HasSubstr("The last step is to be rubbed with P1000"));
}

TEST(RubOut, NeedsASheetOfTheStackThatIsRubbedByHand) {
  EXPECT_THAT([] { plan(rubbed("p-1500"), papers(drawer)); },
              testing::ThrowsMessage<BadInput>(HasSubstr("p-1500")));
  Stack stack = papers(drawer);
  Sheet buff = paper("buff", "P3000");
  buff.kind = Pad{wheel_named("loose flannel")};
  stack.sheets.push_back(buff);
  EXPECT_THAT([&] { plan(rubbed("buff"), stack); },
              testing::ThrowsMessage<BadInput>(HasSubstr("works on a wheel")));
}

TEST(Paste, IsRubbedByHandWithAFeltBlock) {
  const Coating coating = coating_named("two-part urethane");
  const Compound compound = compound_named("cutting", coating);
  Sheet paste = paper("paste", "cutting paste");
  paste.kind = Polish{.name = compound.name,
                      .size_um = compound.size_um,
                      .worn_um = compound.worn_um,
                      .wear_share = compound.wear_share,
                      .reach = ScratchReach{compound.coarsest_scratch_um},
                      .tool = block_named("felt block")};
  paste.backing = compound_backing(compound);
  Stack stack = papers(drawer);
  stack.sheets.push_back(paste);
  Job job = top(20);
  const Plan rubbed = evaluate(job, stack, {"P600", "P1000", "P1500", "paste"});
  const Step& last = rubbed.steps.back();
  EXPECT_EQ(last.zones[0].tool, "felt block");
  EXPECT_FALSE(last.wheel || last.zones[0].passes);
  // 60 cm2 at 0.45 m/s for 0.6 of the time: minutes follow from the travel.
  EXPECT_NEAR(last.zones[0].minutes, last.zones[0].travel_m / 0.45 / 0.6 / 60, 1e-9);
}

}  // namespace
}  // namespace rub_out_test
