// Rules for bare numbers: one for all sheets, or one for each maker.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/grade/label.hpp"
#include "levigate/io/json.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/text/sentences.hpp"
#include "unit/workshop.hpp"

namespace bare_number_test {
namespace {

using namespace workshop;
using testing::ElementsAre;
using testing::HasSubstr;

Sheet of_maker(const std::string& id, const std::string& maker, const std::string& label) {
  Sheet sheet = paper(id, label);
  sheet.maker = maker;
  return sheet;
}

Stack drawer() {
  Stack stack;
  stack.sheets = {of_maker("a", "Maker A", "P400"), of_maker("b", "Maker B", "600"),
                  of_maker("c", "Maker C", "600"), of_maker("d", "Maker D", "600")};
  stack.bare_number_by_maker = {{"maker b", System::cami}, {"Maker  C", System::jis}};
  return stack;
}

TEST(BareNumber, IsReadByTheRuleForItsMaker) {
  Stack stack = drawer();
  EXPECT_EQ(grade_of(stack.sheets[1], bare_number_of(stack, stack.sheets[1])).label, "CAMI 600");
  EXPECT_EQ(grade_of(stack.sheets[2], bare_number_of(stack, stack.sheets[2])).label, "JIS #600");
  try {
    grades_of(stack);
    ADD_FAILURE() << "guessed for Maker D, who has no rule";
  } catch (const AmbiguousLabel& error) {
    EXPECT_THAT(error.what(), HasSubstr("in /sheets/3/label ('d'). If all bare numbers of "
                                        "\"Maker D\" are FEPA P, write \"bare_number\": "
                                        "{\"Maker D\": \"FEPA P\"}"));
  }
  stack.sheets.pop_back();
  const std::vector<Grade> grades = grades_of(stack);
  EXPECT_EQ(grades[0].label, "P400") << "a label that names its system needs no rule";
  EXPECT_EQ(grades[1].label, "CAMI 600");
  EXPECT_EQ(grades[2].label, "JIS #600");
}

TEST(BareNumber, CheckSaysWhatALabelWasReadAsAndByWhichRule) {
  const std::vector<Finding> findings = check(drawer());
  std::vector<std::string> told;
  for (const Finding& finding : findings) {
    if (finding.kind != FindingKind::label_by_rule) continue;
    EXPECT_EQ(finding.severity, Severity::note);
    told.push_back(sentence(finding));
  }
  EXPECT_THAT(told,
              ElementsAre("b: 600 of Maker B read as CAMI (16.0 um), by the rule for Maker B",
                          "c: 600 of Maker C read as JIS (20.0 um), by the rule for Maker C"));
  ASSERT_EQ(count(findings, FindingKind::ambiguous_label), 1);
  EXPECT_THAT(find(findings, FindingKind::ambiguous_label)->sheets, ElementsAre("d"));

  Stack all;
  all.bare_number = System::fepa_p;
  all.sheets = {paper("e", "600"), paper("f", "P600"), paper("g", "600", System::cami)};
  const std::vector<Finding> of_all = check(all);
  ASSERT_EQ(count(of_all, FindingKind::label_by_rule), 1);
  EXPECT_EQ(sentence(*find(of_all, FindingKind::label_by_rule)),
            "e: 600 read as FEPA P (25.8 um), by the rule for all makers");
}

TEST(BareNumber, TwoRulesForOneMakerAreRefused) {
  Stack stack = drawer();
  stack.bare_number_by_maker.push_back({"MAKER B", System::jis});
  EXPECT_THROW(check(stack), BadInput);
}

std::string file(const std::string& rule) {
  std::string text = to_json(drawer());
  const std::size_t begin = text.find("{", 1), end = text.find("}", begin);
  return text.replace(begin, end + 1 - begin, rule);
}

TEST(BareNumber, ByMakerInAFileReadsBackEqual) {
  const Stack stack = drawer();
  EXPECT_THAT(to_json(stack), HasSubstr("\"maker b\": \"CAMI\""));
  EXPECT_EQ(stack_from_json(to_json(stack)), stack);
  const Stack free =
      stack_from_json(file(R"({"Maker B": "cami", "Maker C": "jis-sedimentation"})"));
  EXPECT_THAT(free.bare_number_by_maker,
              ElementsAre(MakerSystem{"Maker B", System::cami},
                          MakerSystem{"Maker C", System::jis_sedimentation}));
  EXPECT_EQ(free.bare_number, std::nullopt);
  EXPECT_EQ(stack_from_json(file("\"fepa p\"")).bare_number, System::fepa_p);
  EXPECT_EQ(stack_from_json(file("\"Ask\"")).bare_number, std::nullopt);
  EXPECT_EQ(stack_from_json(file("{}")), stack_from_json(file("\"ask\"")));
}

/// All that is wrong with rules by maker, at once.
TEST(BareNumber, ARuleThatNobodyUsesOrThatNamesNoSystemIsRefused) {
  try {
    stack_from_json(file(R"({"Maker E": "CAMI", "Maker B": "CAMMI", " ": "JIS", "Maker C": 7})"));
    ADD_FAILURE() << "took rules that cannot be";
  } catch (const BadInput& error) {
    ASSERT_EQ(error.faults().size(), 4U) << error.what();
    EXPECT_THAT(error.what(), HasSubstr("'CAMMI' is not known; the nearest is 'CAMI'"));
    EXPECT_THAT(error.what(), HasSubstr("a maker without a name"));
    EXPECT_THAT(error.what(), HasSubstr("Maker C is a number, wanted text"));
    EXPECT_THAT(error.what(),
                HasSubstr("a rule for 'Maker E', and no sheet is of it; the nearest"));
    EXPECT_EQ(error.faults()[0].pointer, "/bare_number/Maker B");
    EXPECT_EQ(error.faults()[3].pointer, "/bare_number/Maker E");
    EXPECT_GT(error.faults()[3].line, 0);
  }
  EXPECT_THROW(stack_from_json(file(R"({"Maker B": "CAMI", "maker b": "JIS"})")), BadInput);
  EXPECT_THROW(stack_from_json(file("[]")), BadInput);
}

TEST(BareNumber, AFileHoldsOneRuleOrThoseByMaker) {
  Stack stack = drawer();
  stack.bare_number = System::jis;
  EXPECT_THROW(to_json(stack), BadInput);
  EXPECT_EQ(bare_number_of(stack, stack.sheets[3]), System::jis);
  EXPECT_EQ(bare_number_of(stack, stack.sheets[1]), System::cami);
}

TEST(BareNumber, CaseAndSpacingOfASystemAreFree) {
  EXPECT_EQ(system_named("fepa p"), System::fepa_p);
  EXPECT_EQ(system_named("FEPA-F Tube"), System::fepa_f_tube);
  EXPECT_EQ(system_named("FEPA"), std::nullopt);
}

}  // namespace
}  // namespace bare_number_test
