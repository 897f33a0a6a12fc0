// What a label may mean, and what is nearest to each meaning.
#include "levigate/grade/meanings.hpp"

#include <gtest/gtest.h>

#include <array>
#include <string>
#include <vector>

#include "levigate/grade/grades.hpp"
#include "levigate/grade/label.hpp"

namespace meanings_test {
namespace {

using namespace levigate;

std::vector<std::string> labels(const LabelMeanings& label) {
  std::vector<std::string> result;
  for (const LabelMeaning& meaning : label.meanings) result.push_back(meaning.grade.label);
  return result;
}

TEST(Meanings, AreTheCandidatesOfTheLabelEachWithTheNearestOfEverySystem) {
  for (const std::string text : {"600", "#800", "A16", "1,200 um", "2/0", "9 um", "F320"}) {
    const LabelReading read = read_label(text);
    const LabelMeanings label = meanings(text);
    EXPECT_EQ(label.label, text);
    EXPECT_EQ(label.ambiguous, read.ambiguous) << text;
    EXPECT_FALSE(label.bare_number) << text;
    ASSERT_EQ(label.meanings.size(), read.candidates.size()) << text;
    for (std::size_t i = 0; i < read.candidates.size(); ++i) {
      const LabelMeaning& meaning = label.meanings[i];
      EXPECT_EQ(meaning.grade, read.candidates[i]) << text;
      ASSERT_EQ(meaning.nearest.size(), coated_systems.size());
      for (std::size_t at = 0; at < coated_systems.size(); ++at) {
        EXPECT_EQ(meaning.nearest[at].grade, convert(meaning.grade, coated_systems[at]).grade);
        EXPECT_EQ(meaning.nearest[at].given, meaning.grade);
      }
    }
  }
}

TEST(Meanings, ASystemForBareNumbersSettlesThemAlone) {
  const LabelMeanings bare = meanings("600", System::cami);
  EXPECT_EQ(labels(bare), std::vector<std::string>{"CAMI 600"});
  EXPECT_EQ(bare.bare_number, System::cami);
  EXPECT_FALSE(bare.ambiguous);
  const LabelMeanings named = meanings("P600", System::cami);
  EXPECT_EQ(labels(named), std::vector<std::string>{"P600"});
  EXPECT_FALSE(named.bare_number);
  EXPECT_THROW(meanings("650", System::cami), UnknownGrade);
}

TEST(Meanings, OnlyTheSystemsAskedFor) {
  const std::array only{System::jis};
  const LabelMeanings label = meanings("P600", {}, only);
  ASSERT_EQ(label.meanings.front().nearest.size(), 1U);
  EXPECT_EQ(label.meanings.front().nearest.front().grade.label, "JIS #500");
}

TEST(Meanings, TheNoteSaysHowTheLabelIsReadAndNotWhatItsRowSays) {
  EXPECT_EQ(meanings("P600").note, "");
  EXPECT_EQ(meanings("600").note, "");
  EXPECT_EQ(meanings("#800").note, "# is JIS; older and loose usage puts it before any grit");
  EXPECT_EQ(meanings("2/0").note, "old US symbol for CAMI 100");
}

TEST(Meanings, ASystemEndsWhereItsNextGradeWouldBeNearer) {
  const auto beyond = [](const char* label, System system) {
    return beyond_system(convert(grade(label), system));
  };
  EXPECT_FALSE(beyond("P3000", System::cami)) << "7.2 um, beside 7.6 after 9.2";
  EXPECT_TRUE(beyond("P4000", System::cami)) << "5.7 um";
  EXPECT_TRUE(beyond("P120", System::jis)) << "125 um, and the coarsest is 57";
  EXPECT_FALSE(beyond("P240", System::jis)) << "58.5 um";
  EXPECT_FALSE(beyond("P600", System::cami));
}

}  // namespace
}  // namespace meanings_test
