// When a job is done: what is left after the journal is what plan and simulation say, and a step under way takes what it takes yet.
#include "levigate/risk/when_done.hpp"
#include "levigate/text/when_done.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "unit/journal/learn_workshop.hpp"

namespace when_done_test {
namespace {

using namespace learn_workshop;
using testing::HasSubstr;

const SimulateOptions few{.draws = 400};

Bench after(std::vector<Entry> journal) {
  return Bench(clock_case(), drawer(), {}, std::move(journal));
}

Entry begun(const std::string& sheet, std::optional<double> minutes = {}) {
  Entry result = entry(EntryKind::step_begun, "", sheet);
  result.minutes = minutes;
  return result;
}

TEST(WhenDone, MinutesLeftAreThoseOfPlanAndSimulation) {
  const std::vector<Entry> journal{ended("P400", 300)};
  const Bench bench = after(journal);
  const WhenDone when = when_done(bench, few);
  const Bench taught(clock_case(), drawer(), learn(bench).shop, journal);
  const Plan rest = plan(taught);
  const Simulation simulation = simulate(taught, rest, few);
  EXPECT_EQ(when.minutes, simulation.minutes);
  EXPECT_EQ(when.sheets, ids(rest));
  EXPECT_FALSE(when.step);
  EXPECT_FALSE(when.done);
  EXPECT_EQ(when.draws, 400);
  ASSERT_EQ(when.pace.size(), 3U) << "the person, any other paper, and the paper used";
  EXPECT_EQ(when.pace[2].subject, "latex paper on two-part urethane");
  EXPECT_EQ(when.pace[2].observations, 1U);
  EXPECT_LT(when.pace[2].low, when.pace[2].value);
  EXPECT_LT(when.pace[2].value, when.pace[2].high);
  ASSERT_FALSE(when.paper.empty());
  EXPECT_EQ(when.paper[0].sheet, "P400");
  EXPECT_GT(when.paper[0].used, 0);
}

TEST(WhenDone, AStepUnderWayTakesWhatItTakesYet) {
  const std::string next = plan(after({ended("P400", 300)})).steps.front().sheet;
  const auto with = [&](double spent) {
    return when_done(after({ended("P400", 300), begun(next), begun(next, spent)}), few);
  };
  const WhenDone none = when_done(after({ended("P400", 300), begun(next)}), few);
  ASSERT_TRUE(none.step);
  EXPECT_EQ(none.step->sheet, next);
  EXPECT_EQ(none.step->spent_minutes, 0);
  EXPECT_EQ(none.sheets.front(), next);
  EXPECT_EQ(none.minutes, when_done(after({ended("P400", 300)}), few).minutes);
  const double half = 0.5 * none.step->minutes.p10;
  const WhenDone some = with(half);
  EXPECT_NEAR(some.step->minutes.p90, none.step->minutes.p90 - half, 0.05 * none.step->minutes.p90);
  EXPECT_LT(some.minutes->p50, none.minutes->p50);
  // One that takes longer than nearly all draws let expect is of a slow hand, which the rest shows too.
  const double long_ago = none.step->minutes.p90;
  const WhenDone slow = with(long_ago);
  EXPECT_GT(slow.step->minutes.p10, 0);
  EXPECT_LT(slow.draws, 60);
  EXPECT_GT(slow.minutes->p50 - slow.step->minutes.p50, none.minutes->p50 - none.step->minutes.p50);
  EXPECT_THROW(with(9e4), BadInput);
  EXPECT_THAT(when_done_card(some), HasSubstr("Step under way: " + next));
}

TEST(WhenDone, AStepThatThePlanDoesNotHaveComesFirst) {
  const WhenDone when = when_done(after({ended("P400", 300), begun("P600")}), few);
  ASSERT_TRUE(when.step);
  EXPECT_EQ(when.sheets.front(), "P600");
  EXPECT_EQ(when.sheets.back(), "P1500");
}

TEST(WhenDone, BeforeTheFirstLineAllIsLeft) {
  const WhenDone when = when_done(after({}), few);
  EXPECT_TRUE(when.pace.empty());
  EXPECT_EQ(when.minutes, simulate(after({}), plan(after({})), few).minutes);
}

TEST(WhenDone, NothingIsLeftWhereTheTargetIsMet) {
  std::vector<Entry> journal;
  for (const char* sheet : {"P400", "P600", "P800", "P1000", "P1500"})
    journal.push_back(ended(sheet, 60));
  const WhenDone when = when_done(after(journal), few);
  EXPECT_TRUE(when.done);
  EXPECT_FALSE(when.minutes);
  EXPECT_EQ(when.paper.size(), 5U);
  EXPECT_THAT(when_done_card(when), HasSubstr("0 min left"));
}

TEST(WhenDone, ACoatThatIsNotCuredWaitsFirst) {
  Job job = clock_case();
  job.coating.cure.reset();
  job.cure = Cure{.hard_cure_h = 168, .shrink = 0, .points = {}};
  job.age_h = 5;
  const auto card_of = [&](std::vector<Entry> journal) {
    return flowing(when_done_card(when_done(Bench(job, drawer(), {}, std::move(journal)), few)));
  };
  const std::string text = card_of({});
  EXPECT_LT(text.find("Not before 163 h from now."), text.find(" left.")) << text;
  EXPECT_THAT(card_of({begun("P600")}), HasSubstr("Not before 163 h from now."));
  job.age_h.reset();
  EXPECT_THAT(card_of({}), testing::Not(HasSubstr("Not before")));
}

}  // namespace
}  // namespace when_done_test
