// Several pieces from one drawer: what one gets, who starves, what to buy, and what is refused.
#include "levigate/risk/together.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "levigate/io/json.hpp"
#include "levigate/risk/simulate.hpp"
#include "levigate/text/together.hpp"
#include "unit/workshop.hpp"

namespace together_test {
namespace {

using namespace workshop;

const SimulateOptions none{.draws = 0};
const SimulateOptions some{.draws = 200};

Stack drawer() { return papers({"P400", "P600", "P800", "P1000", "P1200", "P1500"}); }

double used_of(const Plan& plan, const std::string& id) {
  for (const Step& step : plan.steps) {
    if (step.sheet == id) return step.sheets_used;
  }
  return 0;
}

/// The drawer with so much of every sheet.
Stack with_paper(Stack stack, double on_hand) {
  for (Sheet& sheet : stack.sheets) sheet.on_hand = on_hand;
  return stack;
}

/// The drawer with paper of the coarsest sheet of the job's plan for `pieces` of them alone.
Stack scarce(const Job& job, double pieces) {
  Stack stack = drawer();
  const Plan alone = plan(job, stack);
  for (Sheet& sheet : stack.sheets) {
    if (sheet.id == alone.steps.front().sheet)
      sheet.on_hand = pieces * alone.steps.front().sheets_used;
  }
  return stack;
}

TEST(Together, ACoatThatIsNotCuredWaitsFirst) {
  Job young = top(20), cured = top(30);
  young.cure = Cure{.hard_cure_h = 168, .shrink = 0, .points = {}};
  young.age_h = 5;
  cured.name = "tray";
  const std::string text =
      flowing(together_card(plan_together({cured, young}, drawer(), std::nullopt, none)));
  EXPECT_THAT(text, testing::HasSubstr("Piece 2: Not before 163 h from now."));
  EXPECT_THAT(text, testing::Not(testing::HasSubstr("Piece 1: Not before")));
}

TEST(Together, OnePieceGetsTheAnswerOfPlan) {
  for (const char* const name : {"job", "day"}) {
    const std::string folder = LEVIGATE_DATA_DIR "/demo/";
    const Job job = load_job(folder + name + ".json");
    const bool day = std::string(name) == "day";
    const Stack stack = load_stack(folder + (day ? "day_stack.json" : "stack.json"));
    const Together one = plan_together({job}, stack, std::nullopt, none);
    ASSERT_EQ(one.plans.size(), 1U);
    EXPECT_TRUE(one.found);
    EXPECT_EQ(to_json(one.plans[0]), to_json(plan(job, stack))) << name;
    EXPECT_FALSE(one.starves);
  }
}

TEST(Together, OnePieceWithoutAPlanGetsTheReasonOfPlan) {
  Job job = top(20);
  job.target.size_um = 1;
  const Together one = plan_together({job}, drawer(), std::nullopt, none);
  EXPECT_FALSE(one.found);
  EXPECT_FALSE(one.pieces[0].has_plan);
  EXPECT_EQ(to_json(one.plans[0]), to_json(plan(job, drawer())));
}

TEST(Together, WithPaperEnoughEachPieceGetsTheAnswerOfPlan) {
  const Stack stack = with_paper(drawer(), 100);
  const std::vector<Job> jobs{top(20), top(35), top(10)};
  const Together all = plan_together(jobs, stack, std::nullopt, none);
  EXPECT_TRUE(all.found);
  for (std::size_t i = 0; i < jobs.size(); ++i)
    EXPECT_EQ(to_json(all.plans[i]), to_json(plan(jobs[i], stack))) << i;
  EXPECT_EQ(all.minutes, all.alone_minutes);
}

TEST(Together, SaysWhoStarvesFirstAndWhatPlanningTogetherChanges) {
  const Job job = top(20);
  const Stack stack = scarce(job, 2.5);
  const Plan alone = plan(job, stack);
  const std::string& wanted = alone.steps.front().sheet;
  const Together all = plan_together({job, job, job}, stack, std::nullopt, none);
  ASSERT_TRUE(all.found);
  EXPECT_EQ(all.starves, 2U);
  ASSERT_EQ(all.lacks.size(), 1U);
  EXPECT_EQ(all.lacks[0].sheet, wanted);
  EXPECT_NEAR(all.lacks[0].needed, used_of(alone, wanted), 1e-6);
  EXPECT_NEAR(all.lacks[0].on_hand, 0.5 * used_of(alone, wanted), 3e-6);
  double used = 0;
  for (const Plan& one : all.plans) used += used_of(one, wanted);
  EXPECT_LE(used, *stack.sheets[sheet_index(stack, wanted)].on_hand + 1e-6);
  const auto changed = std::count_if(all.pieces.begin(), all.pieces.end(), [](const Piece& piece) {
    return piece.sheets != piece.alone_sheets;
  });
  EXPECT_EQ(changed, 1);
}

TEST(Together, BuysWholeSheetsOfTheSumAsWornOnesGoOn) {
  const Job job = top(20);
  // Half as much again as one piece takes, and none of any other sheet that could make up for it.
  const Plan freely = plan(job, drawer());
  Stack little = drawer();
  for (Sheet& sheet : little.sheets) sheet.on_hand = 1.5 * used_of(freely, sheet.id);
  const Plan alone = plan(job, little);
  const Together all = plan_together({job, job}, little, std::nullopt, none);
  ASSERT_FALSE(all.found);
  std::int64_t bought = 0;
  for (const PaperOfAll& row : all.paper) {
    const double sum = 2 * used_of(alone, row.sheet);
    EXPECT_NEAR(row.sheets_used, sum, 2e-6) << row.sheet;
    const double lacks = std::max(0.0, sum - *row.on_hand);
    EXPECT_EQ(row.buy, static_cast<std::int64_t>(std::ceil(lacks))) << row.sheet;
    bought += row.buy;
    EXPECT_EQ(row.buy, row.alone_buy);
  }
  EXPECT_GT(bought, 0);
}

TEST(Together, EnoughPaperDoesForAllSheetsAtOnceInNineDrawsOfTen) {
  Stack stack = with_paper(drawer(), 50);
  const std::vector<Job> jobs{top(20), top(20)};
  const Together rich = plan_together(jobs, stack, std::nullopt, some);
  for (const PaperOfAll& row : rich.paper)
    stack.sheets[sheet_index(stack, row.sheet)].on_hand = row.sheets_enough.value();
  const Together again = plan_together(jobs, stack, std::nullopt, some);
  ASSERT_EQ(again.plans[0].exact, rich.plans[0].exact);
  EXPECT_GE(again.suffices.value().share, 0.9);
  EXPECT_LT(again.suffices.value().share, 0.95);
  for (const PaperOfAll& row : again.paper) EXPECT_EQ(row.enough_buy, 0) << row.sheet;
}

TEST(Together, TheFirstPieceTakesThePaperOfItsSimulation) {
  const Stack stack = papers({"P400"});
  Job job = top(20);
  job.target.size_um = 40;
  const Plan alone = plan(job, stack);
  ASSERT_EQ(alone.steps.size(), 1U);
  const Together one = plan_together({job}, stack, std::nullopt, some);
  EXPECT_EQ(one.paper[0].sheets_enough, simulate(job, stack, alone, some).sheets.p90);
}

TEST(Together, HandIsCommonToAllPiecesAndPeelIsNot) {
  const Stack stack = papers({"P400"});
  Job job = top(20);
  job.target.size_um = 40;
  const double one = plan_together({job}, stack, std::nullopt, some).paper[0].sheets_enough.value();
  const double two =
      plan_together({job, job}, stack, std::nullopt, some).paper[0].sheets_enough.value();
  EXPECT_LT(two, 2 * one);    // a high peel of one piece is none of the other
  EXPECT_GT(two, 1.6 * one);  // a hand that wears paper out wears that of both
}

TEST(Together, RefusesMixedObjectivesNoneAndTooMany) {
  Job cheap = top(20);
  cheap.name = "cheap";
  cheap.prefer = Objective::cost;
  try {
    plan_together({top(20), cheap}, drawer(), std::nullopt, none);
    FAIL();
  } catch (const BadInput& error) {
    EXPECT_THAT(error.what(), testing::HasSubstr("'top' minutes, 'cheap' cost"));
  }
  EXPECT_THROW(plan_together({}, drawer(), std::nullopt, none), OutOfRange);
  EXPECT_THROW(plan_together(std::vector<Job>(13, top(20)), drawer(), std::nullopt, none),
               OutOfRange);
}

TEST(Together, ReadsBackEqualAndSaysIt) {
  const Job job = top(20);
  const Together all = plan_together({job, job, job}, scarce(job, 2.5), std::nullopt, some);
  EXPECT_EQ(together_from_json(to_json(all)), all);
  const std::string card = flowing(together_card(all));
  EXPECT_THAT(card, testing::HasSubstr("Piece 3 starves first"));
  EXPECT_THAT(card, testing::HasSubstr("1 of 3 pieces take other sheets"));
  EXPECT_THAT(card, testing::HasSubstr("Worn sheets go on to the next piece"));
}

}  // namespace
}  // namespace together_test
