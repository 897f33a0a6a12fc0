// The journal file: what append acknowledges is there, whoever else writes and wherever a crash cuts; a failed append leaves
// no half line; reading changes nothing.
#include "levigate/io/journal.hpp"

#include <fcntl.h>
#include <signal.h>
#include <sys/file.h>
#include <sys/resource.h>
#include <sys/syscall.h>
#include <sys/wait.h>

#include <array>
#include <fstream>
#include <functional>
#include <random>
#include <set>

#include "unit/io/journal_workshop.hpp"
#include "unit/io/json_workshop.hpp"

namespace journal_test {
namespace {

using namespace journal_workshop;
namespace fs = std::filesystem;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

/// What fsync does in this program; none: what the system does.
std::function<int(int)> when_synchronized;

}  // namespace

// Stands before the one of the system's library.
extern "C" int fsync(int file) {
  return when_synchronized ? when_synchronized(file) : static_cast<int>(::syscall(SYS_fsync, file));
}

namespace {

class JournalFile : public testing::Test {
 protected:
  /// In memory where there is such a directory: the same calls, and no waiting for a disk.
  void SetUp() override {
    const fs::path memory = "/dev/shm";
    const fs::path base =
        ::access(memory.c_str(), W_OK) == 0 ? memory : fs::path(testing::TempDir());
    std::string name = (base / "levigate_journal_XXXXXX").string();
    ASSERT_NE(::mkdtemp(name.data()), nullptr);
    dir_ = name;
    path_ = dir_ / "case.journal";
  }
  void TearDown() override {
    when_synchronized = nullptr;
    fs::remove_all(dir_);
  }

  void put(const std::string& text) const { std::ofstream(path_, std::ios::binary) << text; }
  std::string bytes() const {
    std::ifstream in(path_, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  std::string failure(const fs::path& path) const {
    try {
      append(path, note("more"));
    } catch (const BadInput& error) {
      return error.what();
    }
    return "nothing was thrown";
  }

  fs::path dir_, path_;
};

TEST_F(JournalFile, HoldsWhatWasAppended) {
  const std::vector<Entry> all = one_of_each();
  for (const Entry& each : all) append(path_, each);
  EXPECT_EQ(bytes(), lines_of(all));
  const JournalReading read = read_journal(path_);
  EXPECT_EQ(read.entries, all);
  EXPECT_THAT(read.torn, SizeIs(0));
}

TEST_F(JournalFile, CutAtAnyByteLosesNothingThatIsAppended) {
  const std::vector<Entry> all = {one_of_each()[3], one_of_each()[6], one_of_each()[8]};
  const std::string text = lines_of(all);
  for (std::size_t cut = 0; cut <= text.size(); ++cut) {
    put(text.substr(0, cut));
    const JournalReading before = read_journal(path_);
    append(path_, note("after"));
    JournalReading after = read_journal(path_);
    ASSERT_THAT(after.entries, SizeIs(before.entries.size() + 1)) << cut;
    EXPECT_EQ(after.entries.back(), note("after")) << cut;
    after.entries.pop_back();
    after.lines.pop_back();
    EXPECT_EQ(after, before) << cut;
    EXPECT_EQ(bytes().substr(0, cut), text.substr(0, cut)) << "what is there stays";
  }
}

TEST_F(JournalFile, ReadingChangesNothing) {
  put(lines_of(one_of_each()) + "{\"format\":\"levig");
  const auto long_ago = fs::file_time_type::clock::now() - std::chrono::hours(1000);
  fs::last_write_time(path_, long_ago);
  fs::permissions(path_, fs::perms::owner_read);
  const std::string held = bytes();
  struct stat before {
  }, after{};
  ASSERT_EQ(::stat(path_.c_str(), &before), 0);
  EXPECT_THAT(read_journal(path_).torn, SizeIs(1));
  ASSERT_EQ(::stat(path_.c_str(), &after), 0);
  EXPECT_EQ(bytes(), held);
  EXPECT_EQ(fs::last_write_time(path_), long_ago);
  EXPECT_EQ(before.st_ctim.tv_nsec, after.st_ctim.tv_nsec);
  EXPECT_THROW(read_journal(dir_ / "none.journal"), BadInput);
  EXPECT_FALSE(fs::exists(dir_ / "none.journal"));
}

TEST_F(JournalFile, AWrongEntryTouchesNoFile) {
  EXPECT_THROW(append(path_, entry(EntryKind::note)), BadInput);
  EXPECT_FALSE(fs::exists(path_));
}

TEST_F(JournalFile, WhatIsNoJournalIsRefusedWithItsName) {
  EXPECT_THAT(failure(dir_), AllOf(HasSubstr(dir_.string()), HasSubstr("Is a directory")));
  EXPECT_THAT(failure(dir_ / "none" / "x"), AllOf(HasSubstr("none/x"), HasSubstr("No such file")));
  EXPECT_THAT(failure("/dev/full"), AllOf(HasSubstr("/dev/full"), HasSubstr("not a regular file")));
  ASSERT_EQ(::mkfifo((dir_ / "pipe").c_str(), 0600), 0);
  EXPECT_THAT(failure(dir_ / "pipe"), HasSubstr("not a regular file"));
  fs::create_symlink("loop", dir_ / "loop");
  EXPECT_THAT(failure(dir_ / "loop"), HasSubstr("symbolic links"));
  EXPECT_THROW(read_journal(dir_), BadInput);
  EXPECT_THROW(read_journal(dir_ / "pipe"), BadInput);
}

TEST_F(JournalFile, OneThatMayOnlyBeReadIsRefused) {
  if (::geteuid() == 0) {  // for whom no file is read only, but this one
    EXPECT_THAT(failure("/proc/version"), HasSubstr("journal '/proc/version' cannot be"));
    return;
  }
  put("");
  fs::permissions(path_, fs::perms::owner_read);
  EXPECT_THAT(failure(path_), HasSubstr("Permission denied"));
}

TEST_F(JournalFile, ALinkIsFollowed) {
  fs::create_symlink("case.journal", dir_ / "link");  // leads nowhere yet
  append(dir_ / "link", note("first"));
  append(path_, note("second"));
  EXPECT_TRUE(fs::is_symlink(dir_ / "link"));
  EXPECT_EQ(read_journal(dir_ / "link").entries, (std::vector{note("first"), note("second")}));
}

TEST_F(JournalFile, MoreThanIsReadIsNotWritten) {
  put(lines_of({note("first")}));
  fs::resize_file(path_, largest_journal_bytes);
  EXPECT_THAT(failure(path_), HasSubstr("at most 268435456 are read"));
  EXPECT_EQ(fs::file_size(path_), largest_journal_bytes);
  fs::resize_file(path_, largest_journal_bytes + 1);
  EXPECT_THROW(read_journal(path_), BadInput);
}

/// A limit of the file's size stands for a full disk: the system takes a part of the line, then nothing.
TEST_F(JournalFile, AFullDiskLeavesNoHalfLine) {
  struct sigaction ignore {
  }, before{};
  ignore.sa_handler = SIG_IGN;
  ASSERT_EQ(::sigaction(SIGXFSZ, &ignore, &before), 0);
  const std::string line = to_json(note("more"));
  for (const std::string& held :
       {std::string(), lines_of(one_of_each()), lines_of({note("x")}) + "{\"torn"}) {
    const std::size_t needed = held.size() + line.size() + (held.ends_with("torn") ? 1 : 0);
    for (const std::size_t room :
         {held.size(), held.size() + 1, held.size() + 40, needed - 1, needed}) {
      put(held);
      struct rlimit all {};
      ASSERT_EQ(::getrlimit(RLIMIT_FSIZE, &all), 0);
      const struct rlimit little { room, all.rlim_max };
      ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &little), 0);
      const std::string said = failure(path_);
      ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &all), 0);
      if (room == needed) {
        EXPECT_EQ(said, "nothing was thrown");
        EXPECT_EQ(bytes().size(), needed);
      } else {
        EXPECT_EQ(said, "journal '" + path_.string() + "' cannot be added to: File too large");
        EXPECT_EQ(bytes(), held);
      }
    }
  }
  ::sigaction(SIGXFSZ, &before, nullptr);
}

/// A process of its own, which ends without the clean-up of this one.
template <typename Work>
pid_t child(Work work) {
  const pid_t id = ::fork();
  if (id != 0) return id;
  try {
    work();
  } catch (...) {
    ::_exit(1);
  }
  ::_exit(0);
}

TEST_F(JournalFile, ALineIsSynchronizedBeforeAppendReturns) {
  std::vector<std::string> held;  // by the file, whenever it or its directory was synchronized
  when_synchronized = [&](int file) {
    struct stat of {};
    EXPECT_EQ(::fstat(file, &of), 0);
    held.push_back(S_ISDIR(of.st_mode) ? "directory" : bytes());
    return 0;
  };
  for (const char* text : {"first", "second"}) append(path_, note(text));
  EXPECT_THAT(held, ElementsAre("directory", lines_of({note("first")}),
                                lines_of({note("first"), note("second")})));
}

TEST_F(JournalFile, ALineThatCannotBeSynchronizedIsTakenBack) {
  append(path_, note("first"));
  when_synchronized = [](int) {
    errno = EIO;
    return -1;
  };
  EXPECT_THAT(failure(path_), HasSubstr("cannot be added to: Input/output error"));
  EXPECT_EQ(bytes(), lines_of({note("first")}));
}

TEST_F(JournalFile, TwoWritersAndAReaderNeverMix) {
  constexpr int lines = 100;
  std::array<pid_t, 2> writers;
  for (std::size_t who = 0; who < 2; ++who) {
    writers[who] = child([&] {
      Entry each = note(std::string(who == 0 ? 10 : 1000, who == 0 ? 'a' : 'b'));
      each.job = std::to_string(who);
      for (int i = 0; i < lines; ++i) {
        each.text[0] = static_cast<char>('a' + i % 26);
        append(path_, each);
      }
    });
  }
  append(path_, note("reader"));
  for (int i = 0; i < 20; ++i) EXPECT_THAT(read_journal(path_).torn, SizeIs(0));
  for (const pid_t id : writers) {
    int status = -1;
    ASSERT_EQ(::waitpid(id, &status, 0), id);
    EXPECT_EQ(status, 0);
  }
  const JournalReading read = read_journal(path_);
  EXPECT_THAT(read.torn, SizeIs(0));
  EXPECT_THAT(read.entries, SizeIs(2 * lines + 1));
  std::array<int, 2> seen{};
  for (const Entry& each : read.entries) {
    if (each.text == "reader") continue;
    int& next = seen.at(each.job == "0" ? 0 : 1);
    EXPECT_EQ(each.text[0], 'a' + next % 26);
    ++next;
  }
  EXPECT_THAT(seen, ElementsAre(lines, lines));
}

TEST_F(JournalFile, AReaderWaitsForTheWholeLine) {
  append(path_, note("first"));
  const std::string line = lines_of({note("second")});
  const int writer = ::open(path_.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC);
  ASSERT_EQ(::flock(writer, LOCK_EX), 0);
  ASSERT_EQ(::write(writer, line.data(), 20), 20);
  const pid_t waits = child([&] {
    ::close(writer);  // or this process would wait for itself
    const JournalReading read = read_journal(path_);
    if (read.entries.size() != 2 || !read.torn.empty()) ::_exit(1);
  });
  ::usleep(50'000);  // the reader waits for the lock by then; were it late, it would pass as well
  const auto rest = static_cast<ssize_t>(line.size()) - 20;
  ASSERT_EQ(::write(writer, line.data() + 20, static_cast<std::size_t>(rest)), rest);
  ::close(writer);
  int status = -1;
  ASSERT_EQ(::waitpid(waits, &status, 0), waits);
  EXPECT_EQ(status, 0);
}

TEST_F(JournalFile, ReadersDoNotWaitForOneAnother) {
  append(path_, note("first"));
  const int slow = ::open(path_.c_str(), O_RDONLY | O_CLOEXEC);
  ASSERT_EQ(::flock(slow, LOCK_SH), 0);  // a reader that takes its time
  const pid_t writer = child([&] {
    ::close(slow);
    append(path_, note("second"));
  });
  ::usleep(50'000);  // it waits by then
  const pid_t quick = child([&] {
    ::close(slow);
    ::alarm(5);  // ends it where it waits
    if (read_journal(path_).entries != std::vector{note("first")}) ::_exit(1);
  });
  int status = -1;
  ASSERT_EQ(::waitpid(quick, &status, 0), quick);
  EXPECT_EQ(status, 0) << "neither the slow reader nor the writer holds it up";
  EXPECT_EQ(bytes(), lines_of({note("first")})) << "the writer does wait";
  ::close(slow);
  ASSERT_EQ(::waitpid(writer, &status, 0), writer);
  EXPECT_EQ(status, 0);
  EXPECT_EQ(read_journal(path_).entries, (std::vector{note("first"), note("second")}));
}

TEST_F(JournalFile, AFileThatTakesItsPlaceMeanwhileIsTheJournal) {
  append(path_, note("old"));
  const int held = ::open(path_.c_str(), O_RDONLY);
  ASSERT_EQ(::flock(held, LOCK_EX), 0);
  const pid_t writer = child([&] {
    ::close(held);  // or this process would wait for itself
    append(path_, note("new"));
  });
  std::ofstream(dir_ / "edited") << lines_of({note("edited")});
  ::usleep(50'000);  // the writer waits for the lock by then; were it late, it would pass as well
  fs::rename(dir_ / "edited", path_);
  ::close(held);
  int status = -1;
  ASSERT_EQ(::waitpid(writer, &status, 0), writer);
  EXPECT_EQ(status, 0);
  EXPECT_EQ(read_journal(path_).entries, (std::vector{note("edited"), note("new")}));
}

/// Kills a writer at a random moment, again and again: all that it acknowledged is there, in order, and every line that is not
/// whole is told. bindings/tests does the same a thousand times.
TEST_F(JournalFile, AKilledWriterLosesNothingAcknowledged) {
  constexpr int lives = 50;
  std::mt19937 random(20260301);
  std::vector<int> acknowledged;
  int next = 0;
  for (int life = 0; life < lives; ++life) {
    std::array<int, 2> ends;
    ASSERT_EQ(::pipe(ends.data()), 0);
    const pid_t writer = child([&] {
      for (int i = next;; ++i) {
        append(path_, note(std::to_string(i) + std::string(i % 3 == 0 ? 10'000 : 10, '.')));
        if (::write(ends[1], &i, sizeof i) != sizeof i) break;
      }
    });
    ::close(ends[1]);
    const auto acknowledge = [&] {
      int i = 0;
      if (::read(ends[0], &i, sizeof i) != sizeof i) return false;
      acknowledged.push_back(i);
      return true;
    };
    for (unsigned long first = random() % 4; first > 0; --first) ASSERT_TRUE(acknowledge());
    ::usleep(static_cast<useconds_t>(random() % 1000));
    ::kill(writer, SIGKILL);
    ::waitpid(writer, nullptr, 0);
    while (acknowledge()) {
    }
    ::close(ends[0]);
    next += 1'000'000;
  }
  const JournalReading read = read_journal(path_);
  std::vector<int> held;
  for (const Entry& each : read.entries) held.push_back(std::stoi(each.text));
  EXPECT_TRUE(std::is_sorted(held.begin(), held.end()));
  EXPECT_EQ(std::set(held.begin(), held.end()).size(), held.size());
  EXPECT_TRUE(std::includes(held.begin(), held.end(), acknowledged.begin(), acknowledged.end()));
  EXPECT_GE(acknowledged.size(), 50u);  // as this seed waits for more
  EXPECT_LE(held.size() - acknowledged.size(), static_cast<std::size_t>(lives));
  const std::string text = bytes();
  const auto lines = std::count(text.begin(), text.end(), '\n') + (text.ends_with('\n') ? 0 : 1);
  EXPECT_EQ(held.size() + read.torn.size(), static_cast<std::size_t>(lines));
  RecordProperty("acknowledged", static_cast<int>(acknowledged.size()));
  RecordProperty("torn", static_cast<int>(read.torn.size()));
}

}  // namespace
}  // namespace journal_test
