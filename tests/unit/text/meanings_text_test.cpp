// The table of what labels may mean.
#include "levigate/text/meanings.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

#include "levigate/grade/grades.hpp"
#include "levigate/text/columns.hpp"

namespace meanings_text_test {
namespace {

using namespace levigate;
using testing::HasSubstr;
using testing::Not;

std::string text_of(const std::vector<std::string>& labels,
                    std::optional<System> bare_number = std::nullopt) {
  std::vector<LabelMeanings> all;
  for (const std::string& label : labels) all.push_back(meanings(label, bare_number));
  return meanings_text(all);
}

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream stream(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

TEST(MeaningsText, ABareNumberHasARowForEachSystem) {
  const std::vector<std::string> lines = lines_of(text_of({"600"}));
  EXPECT_EQ(lines[1], "  label  read as   size  FEPA P        CAMI        JIS          micron");
  EXPECT_EQ(lines[2], "  600    P600      25.8  -             400 (23.6)  #500 (25.0)  30 um");
  EXPECT_EQ(lines[3], "         CAMI 600  16.0  P1200 (15.3)  -           #700 (17.0)  15 um");
  EXPECT_EQ(lines[4], "         JIS #600  20.0  P800 (21.8)   500 (19.7)  -            20 um");
  EXPECT_EQ(lines[5],
            "  Note: 600 may be P600, CAMI 600 or JIS #600: look at the back of the sheet.");
}

TEST(MeaningsText, SaysHowALabelIsRead) {
  EXPECT_THAT(text_of({"#800"}), HasSubstr("#800 is read as JIS #800."));
  EXPECT_THAT(text_of({"600"}, System::cami),
              HasSubstr("600 is read as CAMI 600: a bare number is taken for CAMI."));
  EXPECT_THAT(text_of({"P600"}), Not(HasSubstr("Note")));
}

TEST(MeaningsText, SaysWhereASizeIsExtrapolatedAndWhereASystemEnds) {
  const std::string fine = text_of({"P4000"});
  EXPECT_THAT(fine, HasSubstr("P4000 has no printed size: 5.7 um is extrapolated."));
  EXPECT_THAT(fine, Not(HasSubstr("CAMI 1200 has")));
  EXPECT_THAT(text_of({"P3000"}), HasSubstr("CAMI 1200 has no printed size"));
  EXPECT_THAT(text_of({"P24"}), HasSubstr("none  "));
  EXPECT_THAT(text_of({"P24"}), HasSubstr("none: the system has no grade so coarse or so fine."));
  EXPECT_THAT(text_of({"P600", "P3000"}), Not(HasSubstr("none")));
}

TEST(MeaningsText, EveryGradeFitsTheWidthInShortSentences) {
  for (const System system : all_systems) {
    for (const Grade& grade : grades(system)) {
      const std::vector<std::string> lines = lines_of(text_of({grade.label}));
      for (const std::string& line : lines) EXPECT_LE(line.size(), card_columns) << line;
      EXPECT_THAT(lines[1], testing::EndsWith("  micron"));
      EXPECT_THAT(lines[3], testing::StartsWith("  ")) << "one row";
    }
  }
  EXPECT_THAT(text_of({"JIS sedimentation 800"}), HasSubstr("  JIS sedi..  JIS #800 sed..  "));
  EXPECT_THAT(text_of({"JIS sedimentation 800"}), HasSubstr("is read as JIS #800 sedimentation."));
}

}  // namespace
}  // namespace meanings_text_test
