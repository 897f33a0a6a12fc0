// What learning does to a plan is told: which step, why, which learned number, and what one more sheet gives.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/bench/bench.hpp"
#include "levigate/text/bench_card.hpp"
#include "levigate/text/sentences.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace change_test {
namespace {

using namespace learn_workshop;
using testing::HasSubstr;
using testing::Not;

/// Enough paper of the first step for the computed pace, and not for one half as fast.
Stack scarce() {
  Stack stack = papers({"P400", "P1000", "P1500"});
  for (Sheet& sheet : stack.sheets) sheet.on_hand = 20;
  const Plan best = plan(clock_case(), stack);
  stack.sheets[sheet_index(stack, best.steps.front().sheet)].on_hand =
      1.2 * best.steps.front().sheets_used;
  return stack;
}

Shop slow_paper() {
  Shop shop;
  shop.rates = {{"two-part urethane", "latex paper", {0.5, 0.4, 0.6, 9}}};
  return shop;
}

std::vector<std::string> sheets(const std::vector<ChosenStep>& steps) {
  std::vector<std::string> result;
  for (const ChosenStep& step : steps) result.push_back(step.sheet);
  return result;
}

TEST(LearningChangesThePlan, IsToldWithTheRuleThatBlocksWhatItWas) {
  const Plan was = plan(clock_case(), scarce());
  const Plan now = plan(Bench(clock_case(), scarce(), slow_paper()));
  ASSERT_TRUE(was.found && now.found);
  ASSERT_NE(ids(was), ids(now));
  ASSERT_TRUE(now.change);
  const LearnedChange& change = *now.change;
  EXPECT_EQ(sheets(change.before), ids(was));
  EXPECT_EQ(change.step, 1U);
  EXPECT_EQ(change.was->sheet, was.steps[0].sheet);
  EXPECT_EQ(change.now->sheet, now.steps[0].sheet);
  EXPECT_EQ(change.reason, ChangeReason::blocked);
  ASSERT_EQ(change.findings.size(), 1U);
  EXPECT_EQ(change.findings[0].kind, FindingKind::paper_short);
  EXPECT_EQ(change.findings[0].sheets[0], was.steps[0].sheet);
}

TEST(LearningChangesThePlan, AFactorThatDoesItAloneIsNamed) {
  Shop shop = slow_paper();
  shop.person = {0.99, 0.9, 1.1, 9};
  const Plan now = plan(Bench(clock_case(), scarce(), shop));
  ASSERT_TRUE(now.change);
  const std::vector<LearnedCause>& learned = now.change->learned;
  ASSERT_EQ(learned.size(), 2U);
  EXPECT_EQ(learned[0].kind, LearnedKind::hand);
  EXPECT_FALSE(learned[0].alone) << "a hand takes no more paper";
  EXPECT_EQ(learned[1].kind, LearnedKind::rate);
  EXPECT_EQ(learned[1].backing, "latex paper");
  EXPECT_EQ(learned[1].factor, 0.5);
  EXPECT_TRUE(learned[1].alone);
}

TEST(LearningChangesThePlan, WhatMoreSheetsGiveIsThePlanWithThem) {
  const Stack stack = scarce();
  const Plan now = plan(Bench(clock_case(), stack, slow_paper()));
  ASSERT_TRUE(now.change && !now.change->more_sheets.empty());
  const auto expected = [](const Plan& plan) {
    return plan.total.minutes + plan.total.back_minutes;
  };
  bool some = false;
  for (const MoreSheets& more : now.change->more_sheets) {
    Stack richer = stack;
    *richer.sheets[sheet_index(richer, more.sheet)].on_hand += more.sheets;
    const Plan better = plan(Bench(clock_case(), richer, slow_paper()));
    EXPECT_NEAR(more.less_minutes, std::max(0.0, expected(now) - expected(better)), 1e-9);
    some = some || more.less_minutes > 1;
  }
  EXPECT_EQ(now.change->more_sheets.front().sheets, 1);
  EXPECT_TRUE(some);
}

TEST(LearningChangesThePlan, ASlowerSequenceSaysByHowMuch) {
  Shop shop;
  shop.rates = {{"two-part urethane", "film", {3, 2, 4, 9}}};
  const Bench bench(clock_case(), drawer(), shop);
  const Plan was = plan(clock_case(), drawer()), now = plan(bench);
  ASSERT_TRUE(now.change);
  const LearnedChange& change = *now.change;
  EXPECT_EQ(change.reason, ChangeReason::minutes);
  EXPECT_TRUE(change.findings.empty() && change.more_sheets.empty());
  EXPECT_EQ(sheets(change.before), ids(was));
  EXPECT_GT(change.more_minutes, 0.03 * (now.total.minutes + now.total.back_minutes));
  EXPECT_NEAR(change.more_minutes,
              change.minutes + change.back_minutes - now.total.minutes - now.total.back_minutes,
              1e-9);
}

TEST(LearningChangesThePlan, AThinnerFilmIsNamed) {
  Shop shop;
  shop.films = {{"two-part urethane", -8, -9, -7, 9}};
  const Stack stack = papers({"P400", "P800", "P1500"});
  const Plan now = plan(Bench(top(30, 80), stack, shop));
  ASSERT_TRUE(now.change) << "the film allows less";
  ASSERT_EQ(now.change->learned.size(), 1U);
  EXPECT_EQ(now.change->learned[0].kind, LearnedKind::film);
  EXPECT_EQ(now.change->learned[0].offset_um, -8);
  EXPECT_TRUE(now.change->learned[0].alone);
  EXPECT_EQ(now.change->reason, ChangeReason::blocked);
  EXPECT_EQ(now.change->findings[0].kind, FindingKind::film_short);
}

TEST(LearningChangesThePlan, IsSilentWhereItDoesNot) {
  Shop shop;
  shop.person = {0.9, 0.8, 1.0, 9};
  const Plan now = plan(Bench(clock_case(), drawer(), shop));
  EXPECT_EQ(ids(now), ids(plan(clock_case(), drawer())));
  EXPECT_FALSE(now.change);
  EXPECT_FALSE(plan(clock_case(), drawer()).change);
  EXPECT_THAT(card(now), Not(HasSubstr("What was learned")));
}

TEST(LearningChangesThePlan, AfterAJournalIsMeasuredByTheSameSteps) {
  const std::vector<Entry> journal{ended("P400", 60)};
  Shop shop;
  shop.scratches = {{"two-part urethane", "film", {0.3, 0.2, 0.4, 9}}};
  const Plan was = plan(Bench(clock_case(), drawer(), {}, journal));
  const Plan now = plan(Bench(clock_case(), drawer(), shop, journal));
  ASSERT_NE(ids(was), ids(now));
  ASSERT_TRUE(now.change);
  EXPECT_EQ(sheets(now.change->before), ids(was));
}

TEST(LearningChangesThePlan, StandsOnTheCardOnce) {
  const Plan now = plan(Bench(clock_case(), scarce(), slow_paper()));
  ASSERT_TRUE(now.change);
  const std::string text = flowing(card(now));
  const auto at = text.find("What was learned changes the plan");
  ASSERT_NE(at, std::string::npos);
  EXPECT_EQ(text.find("What was learned changes the plan", at + 1), std::string::npos);
  EXPECT_THAT(text, HasSubstr("instead of " + now.change->was->sheet));
  EXPECT_THAT(text, HasSubstr(flowing(sentence(now.change->findings[0]))));
  EXPECT_THAT(text,
              HasSubstr("The rate of latex paper does it alone: 0.50 times the computed one."));
  EXPECT_THAT(text, HasSubstr("more of " + now.change->was->sheet));
}

}  // namespace
}  // namespace change_test
