// Random and mutated labels, seeded: a reading or an error of the library, and nothing else.
#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

#include "levigate/grade/label.hpp"
#include "levigate/grade/sized.hpp"

namespace label_random_test {
namespace {

using namespace levigate;

const std::vector<std::string> seeds{"P800",
                                     "FEPA P 800",
                                     "ISO F400",
                                     "CAMI #600",
                                     "JIS #800 sedimentation",
                                     "F400 tube",
                                     "800番",
                                     "＃８００",
                                     "A16",
                                     "K120",
                                     "600 J",
                                     "2/0",
                                     "½",
                                     "9 µm",
                                     "1,500 um",
                                     "0,3 μm",
                                     "grit 800",
                                     "800-grit",
                                     "40-N",
                                     "M40",
                                     "B126",
                                     "Ｐ８００",
                                     "micron 0.125",
                                     "P\u00A0800"};

/// True where reading gave an answer that holds together.
bool reads(const std::string& text) {
  try {
    const LabelReading read = read_label(text);
    EXPECT_FALSE(read.candidates.empty());
    EXPECT_TRUE(read.ambiguous || read.candidates.size() == 1);
    for (const Grade& candidate : read.candidates) {
      EXPECT_TRUE(candidate.median_um >= 0.05 && candidate.median_um <= 5000) << candidate.label;
      EXPECT_EQ(grade(candidate.label), candidate);
    }
    return true;
  } catch (const Error& error) {
    EXPECT_LT(std::string(error.what()).size(), 800u);
    return false;
  }
}

TEST(LabelRandom, RandomBytes) {
  std::mt19937_64 random(20260101);
  for (int i = 0; i < 40000; ++i) {
    std::string text(random() % 24, '\0');
    for (char& c : text) c = static_cast<char>(random() & 0xFF);
    reads(text);
  }
}

TEST(LabelRandom, MutatedLabels) {
  std::mt19937_64 random(20260102);
  int read = 0;
  for (int i = 0; i < 60000; ++i) {
    std::string text = seeds[random() % seeds.size()];
    for (std::uint64_t edits = 1 + random() % 3; edits > 0; --edits) {
      const std::size_t at = random() % (text.size() + 1);
      switch (random() % 4) {
        case 0: text.insert(at, 1, static_cast<char>(random() & 0x7F)); break;
        case 1: text.erase(at, 1); break;
        case 2: text.insert(at, seeds[random() % seeds.size()]); break;
        default:
          if (at < text.size()) text[at] = static_cast<char>(text[at] ^ (1 << (random() % 8)));
      }
    }
    read += reads(text);
  }
  // Mutation must leave some labels readable and break some, or it tests one side only.
  EXPECT_GT(read, 3000);
  EXPECT_LT(read, 57000);
}

TEST(LabelRandom, AnyTextCanNameASizedSheet) {
  std::mt19937_64 random(20260103);
  for (int i = 0; i < 20000; ++i) {
    std::string text(1 + random() % 12, ' ');
    for (char& c : text) c = static_cast<char>(' ' + random() % 95);
    if (text.find_first_not_of(' ') == std::string::npos) continue;
    const Grade made = sized_grade(text, 12.5);
    EXPECT_EQ(made.median_um, 12.5) << text;
    EXPECT_FALSE(made.label.empty()) << text;
    EXPECT_EQ(made.system == System::micron, !made.number) << text;
  }
}

}  // namespace
}  // namespace label_random_test
