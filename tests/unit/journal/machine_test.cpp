// What a journal teaches of a machine stays with the machine, and what it teaches of a hand with the hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "levigate/bench/bench.hpp"
#include "levigate/journal/report.hpp"
#include "levigate/journal/work/prior.hpp"
#include "levigate/journal/work/shop_belief.hpp"
#include "levigate/risk/simulate.hpp"
#include "levigate/text/sentences.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace journal_machine_test {
namespace {

using namespace learn_workshop;
using testing::ElementsAre;
using testing::HasSubstr;

const std::string on_sander = "latex paper on the random-orbit sander";

/// Paper by hand, and discs of the same paper on a sander.
Stack two_ways() {
  Stack stack = papers({"P400", "P600", "P1000"});
  for (const char* label : {"P400", "P600", "P1000"}) {
    Sheet disc = paper(std::string("disc-") + label, label);
    disc.kind = Pad{machine_named("random-orbit sander")};
    stack.sheets.push_back(disc);
  }
  return stack;
}

Learned learn_of(const std::vector<Entry>& entries) {
  return learn({}, clock_case(), two_ways(), entries);
}

const LearnedPair* row(const Shop& shop, const std::string& backing) {
  return detail::find_pair(shop.rates, "two-part urethane", backing);
}

TEST(LearnMachine, ItsMinutesTeachItsRowAndNotTheHand) {
  const Learned learned = learn_of({ended("disc-P400", 22, "top")});
  EXPECT_TRUE(learned.unmatched.empty());
  ASSERT_TRUE(row(learned.shop, on_sander));
  EXPECT_EQ(row(learned.shop, on_sander)->learned.observations, 1U);
  EXPECT_LT(row(learned.shop, on_sander)->learned.factor, 0.9);
  EXPECT_FALSE(row(learned.shop, "latex paper"));
  const Shop untaught;
  EXPECT_EQ(learned.shop.person.observations, 0U);
  EXPECT_DOUBLE_EQ(learned.shop.person.factor, untaught.person.factor);
}

TEST(LearnMachine, AHandsMinutesMoveNoMachineBeyondWhatTheCoatingShares) {
  std::vector<Entry> entries;
  for (const char* sheet : {"P400", "P600", "P1000"}) entries.push_back(ended(sheet, 400, "top"));
  const Shop shop = learn_of(entries).shop;
  EXPECT_EQ(shop.person.observations, 3U);
  EXPECT_LT(shop.person.factor, 0.8);
  const Factors factors = factors_of(shop, clock_case(), two_ways());
  const LearnedPair* coating = row(shop, "");
  EXPECT_DOUBLE_EQ(factors.of(3).rate, coating->learned.factor);
  EXPECT_DOUBLE_EQ(factors.of(3).hand_rate, row(shop, "latex paper")->learned.factor);
  // The person's pace slows the hand, not the machine: the minutes by machine go with its rate alone.
  const Workings before = workings(clock_case(), two_ways());
  const Workings after = workings(clock_case(), two_ways(), factors);
  const auto minutes = [](const Workings& all, std::size_t sheet, std::size_t zone) {
    return effort(1, all.work[sheet][zone], all.job.zones[zone], all.stack.sheets[sheet],
                  all.factors.duty)
        .minutes;
  };
  EXPECT_NEAR(minutes(after, 3, 0) / minutes(before, 3, 0), 1 / factors.of(3).rate, 1e-12);
  // The rim is an edge: by hand, as the same paper by hand.
  EXPECT_FALSE(after.work[3][2].machine);
  EXPECT_DOUBLE_EQ(minutes(after, 3, 2), minutes(after, 0, 2));
}

TEST(LearnMachine, MinutesOfHandAndMachineInOneTeachNeither) {
  const Learned learned = learn_of({ended("P400", 200), ended("disc-P600", 60)});
  ASSERT_EQ(learned.unmatched.size(), 1U);
  EXPECT_EQ(learned.unmatched[0].kind, UnmatchedKind::hand_and_machine);
  EXPECT_THAT(sentence(learned.unmatched[0]), HasSubstr("Record each zone by itself"));
  EXPECT_FALSE(row(learned.shop, on_sander));
}

TEST(LearnMachine, WhatTeachesNothingIsToldWithItsLineAndSheet) {
  const Learned learned = learn_of({ended("P400", 200), ended("disc-P600", 60)});
  ASSERT_EQ(learned.unmatched.size(), 1U);
  EXPECT_THAT(sentence(learned.unmatched[0]), HasSubstr("Line 2, disc-P600: "));
  Entry other = ended("P400", 20);
  other.job = "tray";
  const Bench bench(clock_case(), two_ways(), {},
                    {other, ended("P400", 200), ended("disc-P600", 60)}, {4, 6, 9});
  for (const auto& unmatched : {learn(bench).unmatched, observe(bench).unmatched}) {
    ASSERT_EQ(unmatched.size(), 1U);
    EXPECT_THAT(sentence(unmatched[0]), HasSubstr("Line 9, disc-P600: "));
  }
}

TEST(LearnMachine, HandWorkInItsPlaceTeachesTheHand) {
  const Observed observed = observe(clock_case(), two_ways(),
                                    {ended("disc-P400", 60, "top"), ended("P400", 5, "rim"),
                                     ended("P600", 5, "rim"), ended("disc-P1000", 5, "rim")});
  ASSERT_EQ(observed.paces.size(), 2U);
  EXPECT_TRUE(observed.paces[0].machine);
  EXPECT_EQ(observed.paces[0].backing, on_sander);
  EXPECT_EQ(observed.paces[1].sheet, "disc-P1000");
  EXPECT_FALSE(observed.paces[1].machine);
  EXPECT_EQ(observed.paces[1].backing, "latex paper");
}

TEST(LearnMachine, ItsScratchesAreItsOwn) {
  const Shop shop = learn_of({ended("disc-P400", 60, "top"), width_read("disc-P400", 30)}).shop;
  ASSERT_EQ(shop.scratches.size(), 1U);
  EXPECT_EQ(shop.scratches[0].backing, on_sander);
  const Factors factors = factors_of(shop, clock_case(), two_ways());
  EXPECT_NE(factors.of(3).scratch, 1.0);
  EXPECT_EQ(factors.of(3).hand_scratch, 1.0);
  EXPECT_EQ(factors.of(0).scratch, 1.0);
}

TEST(LearnMachine, NothingUnderTheDefaultName) {
  Stack stack = two_ways();
  Machine machine = machine_named("random-orbit sander");
  machine.name = Machine{}.name;
  stack.sheets[3].kind = Pad{machine};
  const Learned learned = learn({}, clock_case(), stack, {ended("disc-P400", 60, "top")});
  ASSERT_EQ(learned.unmatched.size(), 1U);
  EXPECT_EQ(learned.unmatched[0].kind, UnmatchedKind::unnamed_machine);
}

TEST(LearnMachine, ItsPriorHasItsOwnBands) {
  // V of the sander's force, duty, rpm, orbit and free turn; the pad's size acts by way of the free turn alone.
  const auto v = [](double value, double low, double high) {
    return (std::pow(std::log(low / value), 2) + std::pow(std::log(high / value), 2)) / 6;
  };
  const auto of_speed = [](double pad, double turns, double orbit, double rpm) {
    return pad_speed_m_s(pad, turns, orbit, rpm);
  };
  const double usual = of_speed(150, 200, 3, 9000);
  const double expected = v(25, 12, 45) + v(0.7, 0.5, 0.85) +
                          v(usual, of_speed(150, 200, 3, 4000), of_speed(150, 200, 3, 12000)) +
                          v(usual, of_speed(150, 200, 2.5, 9000), of_speed(150, 200, 5, 9000)) +
                          v(usual, of_speed(150, 20, 3, 9000), of_speed(150, 600, 3, 9000)) +
                          v(usual, of_speed(125, 200, 3, 9000), usual);
  EXPECT_NEAR(machine_variance("random-orbit sander"), expected, 1e-12);
  EXPECT_NEAR(backing_variance("two-part urethane", on_sander) -
                  backing_variance("two-part urethane", "latex paper"),
              expected, 1e-12);
  EXPECT_NE(machine_variance("random-orbit sander"), duty_variance());
}

TEST(LearnMachine, ASimulationKeepsThemApart) {
  // Many slow days by hand: the plan by machine takes no longer for it than the coating's own share.
  std::vector<Entry> slow;
  for (const char* sheet : {"P400", "P600", "P1000"}) slow.push_back(ended(sheet, 4000, "top"));
  Job job = clock_case();
  job.target.size_um = 20;
  const Shop shop = learn_of(slow).shop;
  EXPECT_LT(shop.person.factor, 0.5);
  const SimulateOptions options{.draws = 400};
  const auto median = [&](const std::vector<std::string>& sheets, const std::optional<Shop>& of) {
    const Bench bench(job, two_ways(), of);
    return simulate(bench, evaluate(bench, sheets), options).minutes.p50;
  };
  const std::vector<std::string> hand{"P400", "P600", "P1000"};
  const std::vector<std::string> machine{"disc-P400", "disc-P600", "disc-P1000"};
  const double by_hand = median(hand, shop) / median(hand, {});
  const double by_machine = median(machine, shop) / median(machine, {});
  EXPECT_GT(by_hand, 1.5 * by_machine);
}

}  // namespace
}  // namespace journal_machine_test
