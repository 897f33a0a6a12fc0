// Two sequences over the same draws: the minutes of each are those of its own simulation, and their difference is draw by draw.
#include <gtest/gtest.h>

#include "levigate/risk/simulate.hpp"
#include "levigate/risk/work/paired.hpp"
#include "levigate/text/bench_card.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace paired_test {
namespace {

using namespace learn_workshop;

const SimulateOptions few{.draws = 200, .seed = 7};

PairedMinutes paired(const Bench& bench, const Plan& first, const Plan& second,
                     const SimulateOptions& options = few) {
  const Workings& workings = detail::workings_now(bench.laid());
  std::int64_t draws = 0;
  return detail::paired_minutes(bench, detail::paired_sequence(workings, first),
                                detail::paired_sequence(workings, second), options, draws);
}

double with_back(const Plan& plan) { return 1 + plan.total.back_minutes / plan.total.minutes; }

TEST(Paired, EachHasTheMinutesOfItsOwnSimulation) {
  const Bench bench(clock_case(), drawer());
  const Plan first = evaluate(bench, {"P400", "P800", "P1500"}), second = plan(bench);
  const PairedMinutes both = paired(bench, first, second);
  for (const auto& [plan, minutes] : {std::pair(first, both.first), {second, both.second}}) {
    const Interval alone = simulate(bench, plan, few).minutes;
    EXPECT_NEAR(minutes.p10, alone.p10 * with_back(plan), 1e-9 * alone.p10);
    EXPECT_NEAR(minutes.p50, alone.p50 * with_back(plan), 1e-9 * alone.p50);
    EXPECT_NEAR(minutes.p90, alone.p90 * with_back(plan), 1e-9 * alone.p90);
  }
  EXPECT_NEAR(both.more.mean, both.first.mean - both.second.mean, 1e-9 * both.first.mean);
}

TEST(Paired, ASequenceIsNeverSlowerThanItself) {
  Shop shop;
  shop.person = {0.5, 0.3, 0.8, 9};
  for (const std::optional<Shop>& known : {std::optional<Shop>(), std::optional(shop)}) {
    const Bench bench(clock_case(), drawer(), known);
    const Plan best = plan(bench);
    const PairedMinutes both = paired(bench, best, best);
    EXPECT_EQ(both.slower.share, 0);
    EXPECT_EQ(both.more, Interval{});
  }
}

TEST(Paired, TheSameDrawsTellSequencesApartThatOverlap) {
  const Bench bench(clock_case(), drawer());
  const Plan second = plan(bench);
  const Plan first = evaluate(bench, {"P1200", "P1500"});
  const PairedMinutes both = paired(bench, first, second);
  EXPECT_LT(both.first.p10, both.second.p90) << "their ranges overlap";
  EXPECT_GT(both.slower.share, 0.9);
  EXPECT_LT(both.more.p90 - both.more.p10, both.first.p90 - both.first.p10);
}

TEST(Paired, TheSequenceBeforeLearningIsComparedWithThePlan) {
  Shop shop;
  shop.rates = {{"two-part urethane", "film", {3, 2, 4, 9}}};
  const Bench bench(clock_case(), drawer(), shop);
  const Plan now = plan(bench);
  ASSERT_TRUE(now.change);
  const Simulation simulation = simulate(bench, now, few);
  ASSERT_TRUE(simulation.before_learning);
  const PairedMinutes& before = *simulation.before_learning;
  const Interval& minutes = simulation.minutes;
  EXPECT_NEAR(before.second.p50, minutes.p50 * with_back(now), 0.25 * minutes.p50);
  EXPECT_GT(before.slower.share, 0.8);
  const std::string text = flowing(card(now, simulation));
  EXPECT_NE(text.find("That sequence is slower in"), std::string::npos);
  EXPECT_FALSE(
      simulate(Bench(clock_case(), drawer()), plan(clock_case(), drawer()), few).before_learning);
}

}  // namespace
}  // namespace paired_test
