// Traps of a journal: names that are nearly those of the job, sheets that are not there, wrong lines, and paper that is used up.
#include "levigate/bench/bench.hpp"
#include "levigate/text/card.hpp"
#include "levigate/text/sentences.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/journal/done.hpp"
#include "levigate/journal/struck.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace journal_traps_test {
namespace {

using namespace learn_workshop;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;

Bench after(std::vector<Entry> journal) {
  return Bench(clock_case(), drawer(), {}, std::move(journal));
}

Entry strikes(std::size_t line) {
  Entry result = entry(EntryKind::struck, "", "");
  result.line = line;
  result.text = "wrong sheet";
  return result;
}

std::vector<Finding> of_kind(const Bench& bench, FindingKind kind) {
  std::vector<Finding> result;
  for (const Finding& finding : bench.findings())
    if (finding.kind == kind) result.push_back(finding);
  return result;
}

TEST(JournalTraps, ANameNearlyThatOfTheJobIsSaidAloud) {
  Entry mistyped = ended("P400", 60);
  mistyped.job = "clok case";
  const Bench bench = after({mistyped, ended("P600", 20)});
  const std::vector<Finding> found = of_kind(bench, FindingKind::job_name_near);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_THAT(sentence(found[0]), AllOf(HasSubstr("'clok case'"), HasSubstr("'clock case'")));
  EXPECT_THAT(card(plan(bench)), HasSubstr("'clok case'"));
  Entry other = mistyped;
  other.job = "tray";
  EXPECT_TRUE(after({other, ended("P600", 20)}).findings().empty());
  // Once it is struck it is no trap any more.
  Entry strike = strikes(1);
  strike.job = mistyped.job;
  EXPECT_TRUE(after({mistyped, ended("P600", 20), strike}).findings().empty());
}

TEST(JournalTraps, AnUnknownSheetIsToldWithItsLineAndCanBeStruck) {
  std::vector<Entry> journal{ended("P400", 60), ended("P80", 20)};
  const auto told = testing::ThrowsMessage<BadInput>(
      AllOf(HasSubstr("P80"), HasSubstr("line 2 of the journal"), HasSubstr("strike the line")));
  EXPECT_THAT([&] { plan(after(journal)); }, told);
  EXPECT_THAT(
      [&] {
        plan(Bench(clock_case(), drawer(), {}, journal, {3, 7}));
      },
      testing::ThrowsMessage<BadInput>(HasSubstr("line 7 of the journal")));
  journal.push_back(strikes(2));
  EXPECT_EQ(plan(after(journal)).exact, plan(after({ended("P400", 60)})).exact);
  journal = {film_read("tpo", {80, 82})};
  EXPECT_THAT([&] { plan(after(journal)); },
              testing::ThrowsMessage<BadInput>(AllOf(HasSubstr("tpo"), HasSubstr("line 1"))));
}

TEST(JournalTraps, AllReadersHonourAStruckLine) {
  const std::vector<Entry> wrong{film_read("top", {45, 44}), ended("P400", 6),
                                 width_read("P400", 50), ended("P400", 60)};
  std::vector<Entry> mended = wrong;
  for (const std::size_t line : {1U, 2U, 3U}) mended.push_back(strikes(line));
  const std::vector<Entry> right{ended("P400", 60)};
  EXPECT_EQ(done_steps(mended, "clock case"), done_steps(right, "clock case"));
  const Bench bench = after(mended), other = after(right);
  EXPECT_EQ(present(bench), present(other));
  EXPECT_EQ(observe(bench).paces.size(), 1U);
  EXPECT_EQ(observe(bench).paces[0].actual_minutes, 60);
  EXPECT_TRUE(observe(bench).scratches.empty());
  Shop taught = learn(bench).shop, expected = learn(other).shop;
  EXPECT_EQ(taught.jobs[0].lines, 7U) << "places stay, so that a line is not learned twice";
  taught.jobs.clear();
  expected.jobs.clear();
  EXPECT_EQ(taught, expected);
  EXPECT_EQ(learn(Shop{}, clock_case(), drawer(), mended).shop.person, expected.person);
  EXPECT_THAT(jobs(std::vector<Entry>{ended("P400", 6), strikes(1)}), ElementsAre());
  EXPECT_EQ(without_struck(without_struck(mended)), without_struck(mended));
}

TEST(JournalTraps, AStrikeMayBeStruck) {
  EXPECT_EQ(done_steps(std::vector<Entry>{ended("P400", 60), strikes(1), strikes(2)}, "clock case")
                .size(),
            1U);
}

TEST(JournalTraps, StrikingALineThatIsNotThereIsRefused) {
  const auto told = testing::ThrowsMessage<BadInput>(HasSubstr("no line of the journal before it"));
  EXPECT_THAT([&] { counted(std::vector<Entry>{ended("P400", 60), strikes(2)}); }, told);
  EXPECT_THAT([&] { after({strikes(3), ended("P400", 60)}); }, told);
  Entry other = ended("P400", 60);
  other.job = "tray";
  EXPECT_THAT(
      [&] {
        counted(std::vector<Entry>{other, strikes(1)});
      },
      testing::ThrowsMessage<BadInput>(HasSubstr("'tray'")));
  EXPECT_NO_THROW(after({ended("P400", 60), strikes(2), strikes(2)}))
      << "a wrong strike can be struck";
}

TEST(JournalTraps, SheetsUsedRunDownWhatIsOnHand) {
  Stack stack = drawer();
  for (Sheet& sheet : stack.sheets) sheet.on_hand = 3;
  stack.sheets[1].on_hand.reset();
  Entry step = ended("P400", 60);
  step.sheets_used = 1.25;
  const auto with = [&](std::vector<Entry> journal) {
    return Bench(clock_case(), stack, {}, std::move(journal));
  };
  const Bench told = with({step, step});
  EXPECT_EQ(*paper_left(told).sheets[0].on_hand, 0.5);
  EXPECT_EQ(*paper_left(told).sheets[2].on_hand, 3);
  EXPECT_FALSE(paper_left(told).sheets[1].on_hand);
  EXPECT_EQ(told.stack().sheets[0].on_hand, 3) << "the stack stays as it was given";
  const Bench computed = with({ended("P400", 60)});
  const double used = evaluate(with({}), {"P400"}).steps[0].sheets_used;
  EXPECT_NEAR(*paper_left(computed).sheets[0].on_hand, 3 - used, 1e-9);
  const std::string text = card(plan(told));
  const std::string said = "2.5 of P400";
  EXPECT_THAT(text, HasSubstr(said));
  EXPECT_EQ(text.find(said), text.rfind(said)) << "once";

  const Bench over = with({step, step, step});
  EXPECT_EQ(*paper_left(over).sheets[0].on_hand, 0.0);
  ASSERT_EQ(of_kind(over, FindingKind::paper_overused).size(), 1U);
  EXPECT_EQ(figure(of_kind(over, FindingKind::paper_overused)[0].numbers, "sheets_used"), 3.75);
  EXPECT_TRUE(of_kind(told, FindingKind::paper_overused).empty());
  EXPECT_EQ(paper_left(with({})), stack);
}

// A plan must not take paper that is used up.
TEST(JournalTraps, APlanTakesNoPaperThatIsUsedUp) {
  Stack stack = drawer();
  for (Sheet& sheet : stack.sheets) sheet.on_hand = 9;
  const Bench fresh(clock_case(), stack, {}, {ended("P400", 60)});
  const std::string next = plan(fresh).steps.front().sheet;
  Entry wasted = ended(next, 1, "rim");
  wasted.sheets_used = 9;
  const Plan rest = plan(Bench(clock_case(), stack, {}, {ended("P400", 60), wasted}));
  for (const Step& step : rest.steps) EXPECT_NE(step.sheet, next);
}

}  // namespace
}  // namespace journal_traps_test
