// What a journal leaves open: the rest after a coat was levelled that shrinks back, and marks that no later step worked.
#include "levigate/bench/bench.hpp"
#include "levigate/risk/when_done.hpp"
#include "levigate/text/card.hpp"
#include "levigate/text/way_back.hpp"
#include "levigate/text/when_done.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "unit/journal/learn_workshop.hpp"

namespace open_ends_test {
namespace {

using namespace learn_workshop;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

const SimulateOptions few{.draws = 100};

/// Lacquer that shrinks back for three days after it was levelled.
Job lacquered() {
  Job job = clock_case();
  job.coating.shrink_back = ShrinkBack{.comes_back = 0.1, .rest_h = 72};
  return job;
}

Bench after(std::vector<Entry> journal, const Job& job) {
  return Bench(job, drawer(), {}, std::move(journal));
}

Entry at(const std::string& moment, Entry entry) {
  entry.at = moment;
  return entry;
}

Entry begun(const std::string& sheet, const std::string& zone = "") {
  return entry(EntryKind::step_begun, zone, sheet);
}

std::string plan_text(const std::vector<Entry>& journal, const Job& job) {
  return flowing(card(plan(after(journal, job))));
}

std::string when_text(const std::vector<Entry>& journal, const Job& job) {
  return flowing(when_done_card(when_done(after(journal, job), few)));
}

const auto rest_told =
    AllOf(HasSubstr("Wait 72 h after levelling"), HasSubstr("Level once more with P400"),
          HasSubstr("Wednesday 4 March 2026, 09:30"));

TEST(RestAfterLevelling, IsToldUntilTheNextStepBegins) {
  const std::vector<Entry> levelled{begun("P400"), ended("P400", 60)};
  EXPECT_THAT(plan_text(levelled, lacquered()), rest_told);
  EXPECT_THAT(when_text(levelled, lacquered()),
              AllOf(rest_told, HasSubstr("Wait 72 h beside that.")));
  // What comes back is levelled three days later: the rest is over then, as it is where a finer sheet begins.
  for (const Entry& next : {at("2026-03-04T11:30:00+01:00", begun("P400")), begun("P600"),
                            at("2026-03-04T10:00:00Z", ended("P400", 10)), ended("P600", 20)}) {
    std::vector<Entry> journal = levelled;
    journal.push_back(next);
    EXPECT_THAT(plan_text(journal, lacquered()), Not(HasSubstr("Wait 72 h")))
        << next.sheet << next.at;
    EXPECT_THAT(when_text(journal, lacquered()), Not(HasSubstr("Wait 72 h")))
        << next.sheet << next.at;
  }
  EXPECT_THAT(plan_text(levelled, clock_case()), Not(HasSubstr("Wait 72 h")))
      << "it does not shrink back";
  EXPECT_THAT(plan_text({}, lacquered()), Not(HasSubstr("Wait 72 h after levelling")));
}

TEST(RestAfterLevelling, RunsFromTheEndOfLevelling) {
  // The same sheet on the same day goes on levelling.
  EXPECT_THAT(
      plan_text({at("2026-02-28T17:00:00Z", ended("P400", 60)), begun("P400"), ended("P400", 30)},
                lacquered()),
      rest_told);
  // One zone rests while another is worked.
  const std::string text = plan_text(
      {ended("P400", 60, "top"), begun("P600", "door"), ended("P600", 20, "door")}, lacquered());
  EXPECT_THAT(text, AllOf(HasSubstr("Wait 72 h after levelling"), HasSubstr("top")));
  EXPECT_THAT(when_text({}, lacquered()), HasSubstr("Wait 72 h beside that."))
      << "the rest to come";
}

Entry found(MarkKind kind, const std::string& zone) {
  Entry result = entry(EntryKind::mark_found, "", "");
  result.mark = Mark{.kind = kind, .zone = zone};
  return result;
}

TEST(OpenMarks, AreToldByPlanAndWhenDoneAndGoBack) {
  std::vector<Entry> journal;
  for (const char* sheet : {"P400", "P600", "P800", "P1000", "P1500"})
    journal.push_back(ended(sheet, 60));
  EXPECT_THAT(when_text(journal, clock_case()),
              HasSubstr("0 min left: every zone meets the target."));
  EXPECT_THAT(plan_text(journal, clock_case()), Not(HasSubstr("open mark")));
  journal.push_back(found(MarkKind::scratch, "top"));
  journal.push_back(found(MarkKind::haze, "door"));
  const auto both =
      AllOf(HasSubstr("open mark: scratch in zone top"), HasSubstr("open mark: haze in zone door"),
            HasSubstr("go-back"), HasSubstr("2 marks are open"));
  EXPECT_THAT(plan_text(journal, clock_case()), both);
  EXPECT_THAT(when_text(journal, clock_case()), AllOf(both, Not(HasSubstr("0 min left"))));
  EXPECT_FALSE(when_done(after(journal, clock_case()), few).done);
  const Bench bench = after(journal, clock_case());
  EXPECT_EQ(bench.open_mark()->zone, "door");
  EXPECT_THAT(flowing(way_back_card(go_back(bench))),
              AllOf(HasSubstr("haze in zone door"), HasSubstr("open mark: scratch in zone top"),
                    Not(HasSubstr("open mark: haze"))));
}

TEST(OpenMarks, AnEarlierOneIsStillOpenWhenTheLastIsWorked) {
  const Bench bench = after({ended("P400", 60), found(MarkKind::scratch, "top"),
                             found(MarkKind::haze, "door"), ended("P600", 20, "door")},
                            clock_case());
  ASSERT_TRUE(bench.open_mark());
  EXPECT_EQ(bench.open_mark()->zone, "top");
  EXPECT_FALSE(
      after({found(MarkKind::haze, "door"), found(MarkKind::scratch, "top"), ended("P600", 20)},
            clock_case())
          .open_mark());
}

}  // namespace
}  // namespace open_ends_test
