// What to buy: sheets that suffice, the kind that shortens the day most, and whether an open label matters.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/io/write_buying.hpp"
#include "levigate/risk/buy.hpp"
#include "levigate/risk/simulate.hpp"
#include "levigate/text/buying.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace buy_test {
namespace {

using namespace learn_workshop;
using testing::HasSubstr;
using testing::Not;

const SimulateOptions few{.draws = 200, .seed = 7};

Buying bought(const Job& job, const Stack& stack, const std::vector<std::string>& labels = {}) {
  return buy(job, stack, {}, {}, labels, few);
}

double expected(const Plan& plan) { return plan.total.minutes + plan.total.back_minutes; }

TEST(Buy, TheSheetsSufficeInNineOfTen) {
  const Stack stack = papers({"P400", "P800", "P1500"});
  const Plan best = plan(top(30), stack);
  const Simulation simulation = simulate(top(30), stack, best, few);
  const Buying buying = bought(top(30), stack, {"P400"});
  ASSERT_TRUE(buying.found);
  ASSERT_EQ(buying.sheets.size(), best.steps.size());
  EXPECT_GE(buying.enough, 0.9);
  for (std::size_t i = 0; i < buying.sheets.size(); ++i) {
    EXPECT_EQ(buying.sheets[i].sheet, best.steps[i].sheet);
    EXPECT_EQ(buying.sheets[i].usual, simulation.steps[i].sheets_used.p50);
    EXPECT_GE(buying.sheets[i].pieces, simulation.steps[i].sheets_used.p90);
    EXPECT_EQ(buying.sheets[i].buy, 0) << "the drawer has no limit";
  }
}

TEST(Buy, WhatIsMissingIsCountedInWholeSheets) {
  Stack stack = papers({"P400", "P800", "P1500"});
  Job job = top(30);
  job.zones[0].area_cm2 = 5000;
  const Buying buying = bought(job, stack, {"P400"});
  ASSERT_TRUE(buying.found && buying.sheets[0].pieces > 3);
  stack.sheets[sheet_index(stack, buying.sheets[0].sheet)].on_hand = buying.sheets[0].pieces - 1.5;
  const Buying short_of = bought(job, stack, {"P400"});
  ASSERT_TRUE(short_of.found);
  ASSERT_EQ(short_of.sheets[0].sheet, buying.sheets[0].sheet);
  EXPECT_EQ(short_of.sheets[0].buy, 2);
}

TEST(Buy, TheOfferShortensTheDayAsThePlanWithItDoes) {
  const Stack stack = papers({"P600", "P1000", "P1500"});
  const Buying buying = bought(top(60), stack);
  EXPECT_NEAR(buying.minutes, expected(plan(top(60), stack)), 1e-6);
  ASSERT_FALSE(buying.offers.empty());
  double last = 1e9;
  for (const Offer& offer : buying.offers) {
    Stack more = stack;
    more.sheets.push_back(paper("new", offer.label));
    const Plan better = plan(top(60), more);
    EXPECT_NEAR(offer.less_minutes, buying.minutes - expected(better), 1e-6) << offer.label;
    EXPECT_GT(offer.less_minutes, 0.03 * buying.minutes - 1e-3);
    EXPECT_LE(offer.less_minutes, last);
    last = offer.less_minutes;
    EXPECT_GE(offer.sheets, 1);
  }
}

TEST(Buy, WithinThreePercentIsNoOffer) {
  const Stack stack = papers({"P320", "P400", "P500", "P600", "P800", "P1000", "P1200", "P1500"});
  const Buying buying = bought(top(30), stack, {"P360", "P2000"});
  EXPECT_EQ(buying.tried, 2U);
  EXPECT_TRUE(buying.offers.empty());
  EXPECT_THAT(flowing(buying_card(buying)), HasSubstr("None of them shortens the day"));
}

TEST(Buy, AKindThatGivesAPlanIsOffered) {
  const Buying buying = bought(top(30), papers({"P400"}), {"P1500", "P180"});
  EXPECT_FALSE(buying.found);
  EXPECT_TRUE(buying.why && buying.sheets.empty());
  ASSERT_EQ(buying.offers.size(), 1U);
  EXPECT_EQ(buying.offers[0].label, "P1500");
  EXPECT_THAT(flowing(buying_card(buying)), HasSubstr("there is then a plan"));
}

TEST(Buy, AnOpenLabelThatIsInNoPlanChangesNothing) {
  Stack stack = papers({"P400", "P800", "P1500"});
  stack.sheets.push_back(paper("old", "40"));
  const Buying buying = bought(top(30), stack, {"P400"});
  ASSERT_EQ(buying.labels.size(), 1U);
  EXPECT_EQ(buying.labels[0].sheet, "old");
  EXPECT_TRUE(buying.labels[0].known);
  EXPECT_FALSE(buying.labels[0].matters);
  EXPECT_THAT(flowing(buying_card(buying)), HasSubstr("What it means changes nothing."));
}

TEST(Buy, AnOpenLabelThatDecidesIsSaidToAndHowToFindOut) {
  Stack stack = papers({"P400", "P800"});
  stack.sheets.push_back(paper("last", "1200"));
  const Buying buying = bought(top(30), stack, {"P400"});
  ASSERT_EQ(buying.labels.size(), 1U);
  const OpenLabel& label = buying.labels[0];
  EXPECT_TRUE(label.matters) << "as CAMI or JIS it ends the sequence, as P it does not";
  ASSERT_GE(label.meanings.size(), 2U);
  for (const Meaning& meaning : label.meanings) {
    Stack settled = stack;
    settled.sheets.back() = paper("last", meaning.label);
    const Plan best = plan(top(30), settled);
    EXPECT_EQ(meaning.found, best.found) << meaning.label;
    if (best.found) {
      EXPECT_EQ(meaning.sequence, ids(best));
      EXPECT_NEAR(meaning.minutes, expected(best), 1e-6);
    }
  }
  for (std::size_t i = 1; i < label.meanings.size(); ++i) {
    EXPECT_LE(label.meanings[i].size_um, label.meanings[i - 1].size_um);
    EXPECT_LT(*label.meanings[i].width_um, *label.meanings[i - 1].width_um + 1e-12);
  }
  const std::string text = flowing(buying_card(buying));
  EXPECT_THAT(text, HasSubstr("What it means decides the plan."));
  EXPECT_THAT(text, HasSubstr("with a loupe"));
  EXPECT_THAT(text, HasSubstr("P for FEPA P"));
  Stack fine = papers({"P400", "P800", "P1500"});
  Job job = top(30);
  job.target.size_um = 8;
  fine.sheets.push_back(pad("pad", "3000"));
  EXPECT_THAT(flowing(buying_card(bought(job, fine, {"P400"}))),
              HasSubstr("too fine or too much alike for a loupe"));
}

TEST(Buy, OneOpenLabelIsJudgedUnderEachMeaningOfTheOther) {
  Stack stack = papers({"P400", "P800"});
  stack.sheets.push_back(paper("last", "1200"));
  stack.sheets.push_back(paper("coarse", "40"));
  const Buying buying = bought(top(30), stack, {"P400"});
  ASSERT_EQ(buying.labels.size(), 2U);
  EXPECT_TRUE(buying.labels[0].matters);
  EXPECT_FALSE(buying.labels[1].matters);
}

TEST(Buy, ALabelThatNoSystemHasIsTriedAsAnySize) {
  Stack stack = papers({"P400", "P1500"});
  stack.sheets.push_back(paper("worn", "P650"));
  const Buying buying = bought(top(30), stack, {"P400"});
  ASSERT_EQ(buying.labels.size(), 1U);
  EXPECT_FALSE(buying.labels[0].known);
  EXPECT_TRUE(buying.labels[0].matters) << "as P800 it bridges the gap, as P1500 it does not";
}

TEST(Buy, TooManyMeaningsAreRefused) {
  Stack stack = papers({"P400", "P800", "P1500"});
  for (const char* id : {"a", "b", "c", "d", "e"}) stack.sheets.push_back(paper(id, "P650"));
  EXPECT_THROW(bought(top(30), stack), BadInput);
}

TEST(Buy, ReadsBackEqual) {
  Stack stack = papers({"P400", "P800", "P1500"});
  stack.sheets.push_back(paper("old", "600"));
  const Buying buying = bought(top(60), stack);
  EXPECT_EQ(buying_from_json(to_json(buying)), buying);
}

}  // namespace
}  // namespace buy_test
