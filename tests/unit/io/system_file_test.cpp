// Files by the calls of the system: what is written, locked, cut and replaced. The same tests hold on every system.
#include "levigate/io/work/system_file.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <atomic>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <thread>
#include <vector>

#include "levigate/io/journal.hpp"
#include "unit/io/journal_workshop.hpp"

namespace system_file_test {
namespace {

using namespace journal_workshop;
using levigate::detail::FileFacts;
using levigate::detail::FileLock;
using levigate::detail::FileUse;
using levigate::detail::SystemFile;
using testing::SizeIs;
namespace fs = std::filesystem;

class OfTheSystem : public testing::Test {
 protected:
  void SetUp() override {
    const auto* test = testing::UnitTest::GetInstance()->current_test_info();
    dir_ = fs::path(testing::TempDir()) / (std::string("levigate_file_") + test->name());
    fs::remove_all(dir_);
    fs::create_directories(dir_);
    path_ = dir_ / "case.journal";
  }
  void TearDown() override { fs::remove_all(dir_); }

  void put(const std::string& text) const { std::ofstream(path_, std::ios::binary) << text; }
  std::string bytes() const {
    std::ifstream in(path_, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }

  fs::path dir_, path_;
};

TEST_F(OfTheSystem, WritesAtTheEndWhereverThatIs) {
  SystemFile first, second;
  ASSERT_FALSE(first.open(path_, FileUse::append));
  ASSERT_FALSE(second.open(path_, FileUse::append));
  EXPECT_FALSE(first.append("one\n"));
  EXPECT_FALSE(second.append("two\n"));
  EXPECT_FALSE(first.append("three\n"));
  EXPECT_FALSE(first.sync());
  EXPECT_EQ(bytes(), "one\ntwo\nthree\n");
}

TEST_F(OfTheSystem, LooksAndReadsWhatIsThere) {
  put("0123456789");
  SystemFile file;
  ASSERT_FALSE(file.open(path_, FileUse::read));
  FileFacts facts;
  EXPECT_FALSE(file.look(facts));
  EXPECT_TRUE(facts.regular);
  EXPECT_EQ(facts.bytes, 10u);
  std::string text(4, ' ');
  EXPECT_FALSE(file.read(text.data(), text.size(), 3));
  EXPECT_EQ(text, "3456");
  EXPECT_TRUE(file.read(text.data(), text.size(), 8)) << "two bytes only";
  EXPECT_TRUE(file.append("more")) << "it is open for reading";
  EXPECT_EQ(bytes(), "0123456789");
}

TEST_F(OfTheSystem, ReadingMakesNoFile) {
  SystemFile file;
  EXPECT_TRUE(file.open(path_, FileUse::read));
  EXPECT_FALSE(fs::exists(path_));
}

TEST_F(OfTheSystem, CutsBack) {
  put("0123456789");
  SystemFile file;
  ASSERT_FALSE(file.open(path_, FileUse::append));
  EXPECT_FALSE(file.cut(4));
  EXPECT_FALSE(file.append("x"));
  EXPECT_EQ(bytes(), "0123x");
}

TEST_F(OfTheSystem, KnowsWhetherItIsStillAtThePath) {
  put("old");
  SystemFile file;
  ASSERT_FALSE(file.open(path_, FileUse::read));
  EXPECT_TRUE(file.stands_at(path_));
  EXPECT_TRUE(file.stands_at(dir_ / "." / "case.journal"));
  std::ofstream(dir_ / "edited") << "new";
  EXPECT_FALSE(file.stands_at(dir_ / "edited"));
  fs::rename(path_, dir_ / "aside");
  EXPECT_FALSE(file.stands_at(path_)) << "nothing is there";
  fs::rename(dir_ / "edited", path_);
  EXPECT_FALSE(file.stands_at(path_));
  EXPECT_TRUE(file.stands_at(dir_ / "aside"));
}

TEST_F(OfTheSystem, OneWhoLocksAloneWaitsForReaders) {
  put("");
  std::array<SystemFile, 2> readers;
  for (SystemFile& each : readers) {
    ASSERT_FALSE(each.open(path_, FileUse::read));
    ASSERT_FALSE(each.lock(FileLock::shared));  // or this waits for ever
  }
  std::atomic<bool> locked = false;
  std::thread writer([&] {
    SystemFile file;
    EXPECT_FALSE(file.open(path_, FileUse::append));
    EXPECT_FALSE(file.lock(FileLock::alone));
    locked = true;
    file.unlock();
  });
  std::this_thread::sleep_for(std::chrono::milliseconds(50));
  EXPECT_FALSE(locked);
  for (SystemFile& each : readers) each.unlock();
  writer.join();
  EXPECT_TRUE(locked);
}

TEST_F(OfTheSystem, EightWritersOfAJournalNeverMix) {
  constexpr int lines = 25;
  std::vector<std::thread> writers;
  for (int who = 0; who < 8; ++who) {
    writers.emplace_back([&, who] {
      for (int i = 0; i < lines; ++i) {
        levigate::Entry each = note(std::to_string(i) + std::string(who % 2 == 0 ? 10 : 5000, '.'));
        each.job = std::to_string(who);
        levigate::append(path_, each);
      }
    });
  }
  for (std::thread& each : writers) each.join();
  const levigate::JournalReading read = levigate::read_journal(path_);
  EXPECT_THAT(read.torn, SizeIs(0));
  EXPECT_THAT(read.entries, SizeIs(8 * lines));
  std::array<int, 8> next{};
  for (const levigate::Entry& each : read.entries)
    EXPECT_EQ(std::stoi(each.text), next.at(std::stoul(each.job))++);
}

TEST_F(OfTheSystem, ATornLineStaysAndTheNextStartsAfresh) {
  levigate::append(path_, note("first"));
  const std::string whole = bytes();
  put(whole + "{\"format\":\"levig");
  levigate::append(path_, note("second"));
  EXPECT_EQ(bytes().substr(0, whole.size() + 17), whole + "{\"format\":\"levig\n");
  const levigate::JournalReading read = levigate::read_journal(path_);
  EXPECT_THAT(read.torn, SizeIs(1));
  EXPECT_EQ(read.entries, (std::vector{note("first"), note("second")}));
}

TEST_F(OfTheSystem, ADirectoryIsNoJournal) {
  EXPECT_THROW(levigate::append(dir_, note("x")), levigate::BadInput);
  EXPECT_THROW(levigate::append(dir_ / "none" / "x", note("x")), levigate::BadInput);
  EXPECT_THROW(levigate::read_journal(dir_), levigate::BadInput);
}

}  // namespace
}  // namespace system_file_test
