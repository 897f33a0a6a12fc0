// What check() says of a drawer of paper.
#include "levigate/stack/check.hpp"
#include "levigate/grade/label.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/text/sentences.hpp"
#include "unit/workshop.hpp"

namespace check_test {
namespace {

using namespace workshop;
using testing::ElementsAre;
using testing::HasSubstr;

TEST(Check, NamesBothSheetsWhereNumbersAndSizesDisagree) {
  Stack stack;
  stack.sheets = {paper("a", "P600"), paper("b", "600", System::cami), paper("c", "#800")};
  const std::vector<Finding> findings = check(stack);
  ASSERT_EQ(count(findings, FindingKind::misleading_numbers), 1);
  const Finding& finding = *find(findings, FindingKind::misleading_numbers);
  EXPECT_THAT(finding.sheets, ElementsAre("a", "b"));
  EXPECT_THAT(sentence(finding), HasSubstr("25.8 um"));
  EXPECT_THAT(sentence(finding), HasSubstr("16.0 um"));
  EXPECT_THAT(sentence(finding), HasSubstr("the same number"));
}

TEST(Check, Cami600AfterP800IsFinerNotCoarser) {
  Stack stack;
  stack.sheets = {paper("a", "P800"), paper("b", "CAMI 600")};
  const std::vector<Finding> findings = check(stack);
  ASSERT_EQ(count(findings, FindingKind::misleading_numbers), 1);
  EXPECT_THAT(sentence(*find(findings, FindingKind::misleading_numbers)),
              HasSubstr("b (CAMI 600, 16.0 um) is finer than a (P800, 21.8 um). The finer one has "
                        "the lower number"));
  EXPECT_EQ(find(findings, FindingKind::gap), nullptr);
}

TEST(Check, NumbersInOrderMisleadNobody) {
  EXPECT_EQ(
      count(check(papers({"P400", "P600", "P800", "P1000"})), FindingKind::misleading_numbers), 0);
}

TEST(Check, FindsLabelsThatGiveNoSize) {
  Stack stack = papers({"P400", "600", "P650"});
  const std::vector<Finding> findings = check(stack);
  ASSERT_EQ(count(findings, FindingKind::ambiguous_label), 1);
  EXPECT_THAT(find(findings, FindingKind::ambiguous_label)->sheets, ElementsAre("600"));
  EXPECT_EQ(find(findings, FindingKind::ambiguous_label)->severity, Severity::error);
  ASSERT_EQ(count(findings, FindingKind::unknown_label), 1);
  EXPECT_THAT(find(findings, FindingKind::unknown_label)->sheets, ElementsAre("P650"));

  stack.bare_number = System::cami;
  EXPECT_EQ(count(check(stack), FindingKind::ambiguous_label), 0);
}

TEST(Check, FindsDoublesBelowMinRatio) {
  // CAMI 320 (36.0) and P400 (35.0): a ratio of 1.03.
  Stack stack;
  stack.sheets = {paper("a", "P400"), paper("b", "CAMI 320")};
  const Finding* finding = find(check(stack), FindingKind::near_duplicate);
  ASSERT_NE(finding, nullptr);
  const std::vector<Finding> findings = check(stack);
  EXPECT_THAT(find(findings, FindingKind::near_duplicate)->sheets, ElementsAre("b", "a"));
  EXPECT_THAT(sentence(*find(findings, FindingKind::near_duplicate)), HasSubstr("1.03"));
}

TEST(Check, FindsGapsAndTheGradesThatBridgeThem) {
  // P400 (35.0) to P1000 (18.3): a ratio of 1.91; P600 (25.8) makes 1.36 and 1.41.
  const std::vector<Finding> findings = check(papers({"P400", "P1000"}));
  ASSERT_EQ(count(findings, FindingKind::gap), 1);
  EXPECT_THAT(sentence(*find(findings, FindingKind::gap)), HasSubstr("1.91"));
  EXPECT_THAT(sentence(*find(findings, FindingKind::gap)), HasSubstr("P600"));
  EXPECT_EQ(count(check(papers({"P400", "P1000"}), {.min_ratio = 1.15, .max_ratio = 2.0}),
                  FindingKind::gap),
            0);
}

TEST(Check, AStepExactlyAtTheLimitOnPaperIsAllowed) {
  // P1000 (18.3) to CAMI 800 (12.2): 1.5 in decimals, a little more in binary.
  ASSERT_GT(18.3 / 12.2, 1.5);
  const Stack stack = papers({"P1000", "CAMI 800"});
  EXPECT_EQ(count(check(stack, {.min_ratio = 1.1, .max_ratio = 1.5}), FindingKind::gap), 0);
  EXPECT_EQ(count(check(stack, {.min_ratio = 1.1, .max_ratio = 1.49}), FindingKind::gap), 1);
  Job job = top(0);
  job.scratched_by = grade("P1000");
  job.rules.max_ratio = 1.5;
  EXPECT_TRUE(plan(job, papers({"CAMI 800"})).found);
}

TEST(Check, FindsStrayGrainCoarserThanTheStepBefore) {
  // JIS #600: median 20.0, at most 3 % above 43; P800: 21.8 and 38.1.
  Stack stack;
  stack.sheets = {paper("a", "P800"), paper("b", "#600")};
  const std::vector<Finding> findings = check(stack);
  ASSERT_EQ(count(findings, FindingKind::coarse_tail), 1);
  EXPECT_THAT(find(findings, FindingKind::coarse_tail)->sheets, ElementsAre("a", "b"));
  EXPECT_THAT(sentence(*find(findings, FindingKind::coarse_tail)), HasSubstr("43.0 um"));
  EXPECT_THAT(sentence(*find(findings, FindingKind::coarse_tail)), HasSubstr("38.1 um"));
}

TEST(Check, SaysWhichSizesAreExtrapolatedAndWhichSheetsAreUsedUp) {
  Stack stack = papers({"P2500", "P3000"});
  stack.sheets[0].on_hand = 0;
  std::vector<Finding> findings = check(stack);
  EXPECT_THAT(find(findings, FindingKind::extrapolated_size)->sheets, ElementsAre("P3000"));
  EXPECT_THAT(find(findings, FindingKind::paper_short)->sheets, ElementsAre("P2500"));
  stack.sheets[1].size_um = 6.5;
  stack.sheets[0].on_hand = 3;
  findings = check(stack);
  EXPECT_EQ(find(findings, FindingKind::extrapolated_size), nullptr);
  EXPECT_EQ(find(findings, FindingKind::paper_short), nullptr);
}

TEST(Check, RefusesWhatIsNoStackOrRule) {
  EXPECT_THROW(check(papers({"P400", "P400"})), BadInput);
  EXPECT_THROW(check(papers({""})), BadInput);
  EXPECT_THROW(check(papers({"P400"}), {.min_ratio = 2.0, .max_ratio = 1.5}), BadInput);
  EXPECT_THROW(check(papers({"P400"}), {.min_ratio = 1.5, .max_ratio = 1.5}), BadInput);
}

TEST(Sheet, LabelAndSystemMustAgree) {
  EXPECT_EQ(grade_of(paper("a", "600", System::cami), {}).median_um, 16.0);
  EXPECT_EQ(grade_of(paper("a", "600"), System::jis).median_um, 20.0);
  EXPECT_THROW(grade_of(paper("a", "P600", System::cami), {}), BadInput);
  EXPECT_THROW(grade_of(paper("a", "600"), {}), AmbiguousLabel);
}

TEST(Sheet, OwnSizeStandsAboveTheLabel) {
  Sheet sheet = paper("a", "P3000");
  sheet.size_um = 6.5;
  const Grade grade = grade_of(sheet, {});
  EXPECT_EQ(grade.median_um, 6.5);
  EXPECT_EQ(grade.basis(), Basis::user);
}

}  // namespace
}  // namespace check_test
