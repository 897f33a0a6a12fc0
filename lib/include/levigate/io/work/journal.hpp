// The work behind io/journal.hpp: defines what it declares.
#pragma once

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>

#include "levigate/io/journal.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/io/entry.hpp"
#include "levigate/io/read_journal.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/struck.hpp"

namespace levigate::inline v0 {

namespace detail {

[[noreturn]] inline void fail_journal(const std::filesystem::path& path, const std::string& what) {
  throw BadInput("journal '" + path.string() + "' " + what);
}

/// "cannot be opened: Permission denied"
inline std::string with_reason(const std::string& what, int error) {
  return what + ": " + std::generic_category().message(error);
}

/// A system call, made again where a signal cut it short.
template <typename Call>
auto uninterrupted(Call call) {
  while (true) {
    const auto result = call();
    if (result >= 0 || errno != EINTR) return result;
  }
}

class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor& operator=(Descriptor&& other) noexcept {
    std::swap(number_, other.number_);
    return *this;
  }
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  int operator*() const { return number_; }

 private:
  int number_;
};

/// A journal that is open and locked.
class LockedJournal {
 public:
  /// Waits for the lock. Another file may have come to stand at the path meanwhile, as editors do it; then that is the
  /// journal, and a line that went to the old one would be lost.
  LockedJournal(std::filesystem::path path, int flags, int lock) : path_(std::move(path)) {
    struct stat here {
    }, there{};
    do {
      // Without O_NONBLOCK, opening a pipe waits for its other end.
      file_ = Descriptor(uninterrupted(
          [&] { return ::open(path_.c_str(), flags | O_CLOEXEC | O_NOCTTY | O_NONBLOCK, 0666); }));
      if (*file_ < 0) fail("cannot be opened", errno);
      if (::fstat(*file_, &here) != 0) fail("cannot be looked at", errno);
      if (!S_ISREG(here.st_mode)) fail_journal(path_, "is not a regular file");
      if (uninterrupted([&] { return ::flock(*file_, lock); }) != 0)
        fail("cannot be locked", errno);
    } while (::stat(path_.c_str(), &there) != 0 || there.st_dev != here.st_dev ||
             there.st_ino != here.st_ino);
    if (::fstat(*file_, &here) != 0) fail("cannot be looked at", errno);
    bytes_ = here.st_size;
    if (bytes_ > static_cast<off_t>(largest_journal_bytes)) fail_size("has", bytes_);
  }

  ~LockedJournal() {
    ::flock(*file_, LOCK_UN);
  }  // closing does not do it where a fork holds a copy

  /// All that is there.
  std::string text() const {
    std::string text(static_cast<std::size_t>(bytes_), '\0');
    read(text.data(), text.size(), 0);
    return text;
  }

  /// Adds a line and puts it on disk. Where the last line is torn, the new one starts on a line of its own. Where this fails,
  /// the file is cut back to what it was, where the system lets it.
  void append(std::string line) {
    char last = '\n';
    if (bytes_ > 0) read(&last, 1, bytes_ - 1);
    if (last != '\n') line.insert(0, 1, '\n');
    const off_t grown = bytes_ + static_cast<off_t>(line.size());
    if (grown > static_cast<off_t>(largest_journal_bytes)) fail_size("would have", grown);
    // The name before the line: whoever adds the second line must not need to know whether the first got this far.
    if (bytes_ == 0) sync_directory();
    // One write, unless the system takes a part only.
    for (std::string_view rest = line; !rest.empty();) {
      const auto taken = uninterrupted([&] { return ::write(*file_, rest.data(), rest.size()); });
      if (taken < 0) fail_append(errno);
      rest.remove_prefix(static_cast<std::size_t>(taken));
    }
    if (uninterrupted([&] { return ::fsync(*file_); }) != 0) fail_append(errno);
  }

 private:
  [[noreturn]] void fail(const std::string& what, int error) const {
    fail_journal(path_, with_reason(what, error));
  }
  [[noreturn]] void fail_size(const std::string& has, off_t bytes) const {
    fail_journal(path_, has + " " + std::to_string(bytes) + " bytes, at most " +
                            std::to_string(largest_journal_bytes) + " are read");
  }
  [[noreturn]] void fail_append(int error) const {
    const bool clean = uninterrupted([&] { return ::ftruncate(*file_, bytes_); }) == 0;
    const std::string rest = clean ? "" : ", and a piece of the line may stay behind";
    fail_journal(path_, with_reason("cannot be added to", error) + rest);
  }

  void read(char* to, std::size_t count, off_t from) const {
    while (count > 0) {
      const auto got = uninterrupted([&] { return ::pread(*file_, to, count, from); });
      if (got <= 0) fail("cannot be read", got < 0 ? errno : EIO);
      to += got;
      from += got;
      count -= static_cast<std::size_t>(got);
    }
  }

  void sync_directory() const {
    std::error_code failed;
    const auto target = std::filesystem::canonical(path_, failed);  // past a link
    const Descriptor directory(uninterrupted(
        [&] { return ::open(target.parent_path().c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC); }));
    if (failed || *directory < 0 || uninterrupted([&] { return ::fsync(*directory); }) != 0) {
      fail("cannot be entered on disk in its directory", failed ? failed.value() : errno);
    }
  }

  std::filesystem::path path_;
  Descriptor file_{-1};
  off_t bytes_ = 0;
};

/// Throws: BadInput where the line that an entry strikes is not there, is of another job, or is struck already.
inline void require_to_strike(const std::filesystem::path& path, const Entry& entry) {
  JournalReading reading = read_journal(path);
  const auto at =
      std::find(reading.lines.begin(), reading.lines.end(), static_cast<int>(*entry.line));
  const std::string line = "line = " + std::to_string(*entry.line);
  if (at == reading.lines.end()) {
    throw BadInput::of("line", line + " is no whole line of journal '" + path.string() +
                                   "', which has " + std::to_string(reading.lines.size()) +
                                   ": nothing is struck");
  }
  Entry strikes = entry;
  strikes.line = static_cast<std::size_t>(at - reading.lines.begin()) + 1;
  require_strikes(reading.entries, strikes);
  if (struck(reading.entries)[*strikes.line - 1])
    throw BadInput::of("line", line + " of journal '" + path.string() + "' is struck already");
}

}  // namespace detail

LEVIGATE_WORK void append(const std::filesystem::path& path, const Entry& entry) {
  const std::string line = to_json(entry);
  if (entry.kind == EntryKind::struck) detail::require_to_strike(path, entry);
  detail::LockedJournal(path, O_RDWR | O_APPEND | O_CREAT, LOCK_EX).append(line);
}

LEVIGATE_WORK JournalReading read_journal(const std::filesystem::path& path) {
  const std::string text = detail::LockedJournal(path, O_RDONLY, LOCK_SH).text();
  return journal_from_json(text, path.string());
}

}  // namespace levigate
