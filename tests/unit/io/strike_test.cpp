// Striking a line of a journal file: it must be there, and lines that a crash cut shift no other.
#include "levigate/io/entry.hpp"
#include "levigate/io/journal.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "levigate/journal/done.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace strike_test {
namespace {

using namespace learn_workshop;
using testing::HasSubstr;
namespace fs = std::filesystem;

class Strike : public testing::Test {
 protected:
  void SetUp() override {
    std::string name = (fs::path(testing::TempDir()) / "levigate_strike_XXXXXX").string();
    ASSERT_NE(::mkdtemp(name.data()), nullptr);
    dir_ = name;
    path_ = dir_ / "case.journal";
  }
  void TearDown() override { fs::remove_all(dir_); }

  static Entry of(std::size_t line) {
    Entry entry = learn_workshop::entry(EntryKind::struck, "", "");
    entry.line = line;
    entry.text = "wrong sheet";
    return entry;
  }
  std::string bytes() const {
    std::ifstream in(path_, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }

  fs::path dir_, path_;
};

TEST_F(Strike, AppendsALineAndDeletesNone) {
  append(path_, ended("P80", 60));
  append(path_, ended("P400", 60));
  const std::string before = bytes();
  append(path_, of(1));
  EXPECT_EQ(bytes(), before + to_json(of(1)));
  EXPECT_EQ(done_steps(read_journal(path_).entries, "clock case").size(), 1U);
}

TEST_F(Strike, ALineWhoseStrikeIsStruckCountsAndMayBeStruckAgain) {
  append(path_, ended("P400", 60));
  append(path_, of(1));
  append(path_, of(2));
  EXPECT_EQ(done_steps(read_journal(path_).entries, "clock case").size(), 1U);
  append(path_, of(1));
  EXPECT_EQ(done_steps(read_journal(path_).entries, "clock case").size(), 0U);
  EXPECT_THAT([&] { append(path_, of(1)); },
              testing::ThrowsMessage<BadInput>(HasSubstr("struck already")));
}

TEST_F(Strike, ALineThatIsNotThereIsRefusedAndNothingIsWritten) {
  append(path_, ended("P80", 60));
  const std::string before = bytes();
  EXPECT_THAT([&] { append(path_, of(2)); },
              testing::ThrowsMessage<BadInput>(HasSubstr("line = 2")));
  Entry other = of(1);
  other.job = "tray";
  EXPECT_THAT([&] { append(path_, other); },
              testing::ThrowsMessage<BadInput>(HasSubstr("'clock case'")));
  EXPECT_EQ(bytes(), before);
  append(path_, of(1));
  EXPECT_THAT([&] { append(path_, of(1)); },
              testing::ThrowsMessage<BadInput>(HasSubstr("struck already")));
  EXPECT_THROW(append(dir_ / "none.journal", of(1)), BadInput);
  EXPECT_FALSE(fs::exists(dir_ / "none.journal"));
}

TEST_F(Strike, LinesThatACrashCutCountInTheFile) {
  append(path_, ended("P400", 60));
  std::ofstream(path_, std::ios::app) << "{\"format\": \"levigate.jour";
  append(path_, ended("P80", 60));
  EXPECT_THROW(append(path_, of(2)), BadInput) << "it is cut";
  append(path_, of(3));
  const JournalReading reading = read_journal(path_);
  EXPECT_EQ(reading.lines, (std::vector<int>{1, 3, 4}));
  const std::vector<DoneStep> done = done_steps(reading.entries, "clock case");
  ASSERT_EQ(done.size(), 1U);
  EXPECT_EQ(done[0].sheet, "P400");
}

}  // namespace
}  // namespace strike_test
