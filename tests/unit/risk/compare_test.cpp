// A habit beside the best plan: the same bench, the same draws, and a sentence of it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/io/json.hpp"
#include "levigate/risk/compare.hpp"
#include "levigate/risk/simulate.hpp"
#include "levigate/text/comparison.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace compare_test {
namespace {

using namespace learn_workshop;
using testing::HasSubstr;

const SimulateOptions few{.draws = 200, .seed = 7};
const std::vector<std::string> habit{"P600", "P1000", "P1500"};

TEST(Compare, AHabitIsEvaluatedOnTheSameBenchAsTheBestPlan) {
  Shop shop;
  shop.person = {0.5, 0.3, 0.8, 9};
  const Bench bench(clock_case(), drawer(), shop, {ended("P400", 60)});
  const Comparison both = compare(bench, {"P1000", "P1500"}, few);
  EXPECT_EQ(both.taken, evaluate(bench, {"P1000", "P1500"}));
  EXPECT_EQ(both.best, plan(bench));
  EXPECT_EQ(both.draws, 200);
  EXPECT_EQ(both.seed, 7U);
  const double at_hand =
      evaluate(Bench(clock_case(), drawer(), {}, {ended("P400", 60)}), {"P1000", "P1500"})
          .total.minutes;
  EXPECT_GT(both.taken.total.minutes, 1.5 * at_hand) << "the shop's hand counts";
}

TEST(Compare, SaysInHowManyRunsAHabitIsSlowerAndByHowMuch) {
  const Bench bench(clock_case(), drawer());
  const Comparison both = compare(bench, {"P1200", "P1500"}, few);
  ASSERT_TRUE(both.minutes);
  EXPECT_GT(both.minutes->slower.share, 0.9);
  const std::string text = flowing(comparison_card(both));
  EXPECT_THAT(text, HasSubstr("Your sequence is slower in"));
  EXPECT_THAT(text, HasSubstr("of 100 runs. The median is"));
  EXPECT_THAT(text, HasSubstr("min more, in 4 of 5 runs"));
}

TEST(Compare, AQuickerSequenceIsSaidToBeQuicker) {
  Job job = top(60, 200);
  job.prefer = Objective::film;
  const Bench bench(job, papers({"P400", "P800", "P1500"}));
  const Comparison both = compare(bench, {"P400", "P800", "P1500"}, few);
  ASSERT_TRUE(both.minutes);
  EXPECT_LT(both.minutes->more.p50, 0) << "the best plan spares film";
  EXPECT_LT(both.minutes->slower.share, 0.5);
  EXPECT_THAT(flowing(comparison_card(both)), HasSubstr("Your sequence is quicker in"));
}

TEST(Compare, TheBestPlanItselfTakesAsLong) {
  const Stack stack = papers({"P400", "P800", "P1500"});
  Job job = clock_case();
  job.rules.overcut = 2.0;  // leaves no choice of another
  const Plan best = plan(job, stack);
  EXPECT_THAT(flowing(comparison_card(compare(Bench(job, stack), ids(best), few))),
              HasSubstr("takes as long in every run"));
}

TEST(Compare, WithoutABestPlanThereIsNothingToPair) {
  const Comparison both = compare(Bench(clock_case(), papers({"P400"})), {"P400"}, few);
  EXPECT_FALSE(both.best.found || both.minutes);
  EXPECT_EQ(both.draws, 0);
}

TEST(Compare, DrawsOutsideTheirRangeAreRefused) {
  const Bench bench(clock_case(), drawer());
  EXPECT_THROW(compare(bench, habit, {.draws = 9}), OutOfRange);
  EXPECT_THROW(compare(bench, habit, {.draws = 10, .threads = 1025}), OutOfRange);
  EXPECT_THROW(compare(bench, {}, few), BadInput);
}

TEST(Compare, DoesNotDependOnThreads) {
  const Bench bench(clock_case(), drawer());
  EXPECT_EQ(compare(bench, habit, {.draws = 50, .threads = 1}),
            compare(bench, habit, {.draws = 50, .threads = 3}));
}

TEST(Compare, ReadsBackEqual) {
  const Comparison both = compare(Bench(clock_case(), drawer()), habit, few);
  EXPECT_EQ(comparison_from_json(to_json(both)), both);
}

}  // namespace
}  // namespace compare_test
