// The work behind io/journal.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <string>
#include <system_error>
#include <utility>

#include "levigate/io/journal.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/io/entry.hpp"
#include "levigate/io/read_journal.hpp"
#include "levigate/io/work/system_file.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/struck.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A journal that is open and locked.
class LockedJournal {
 public:
  /// Waits for the lock. Another file may have come to stand at the path meanwhile, as editors do it; then that is the
  /// journal, and a line that went to the old one would be lost.
  LockedJournal(std::filesystem::path path, FileUse use, FileLock lock) : path_(std::move(path)) {
    FileFacts facts;
    do {
      require(file_.open(path_, use), "cannot be opened");
      require(file_.look(facts), "cannot be looked at");
      if (!facts.regular) fail("is not a regular file");
      require(file_.lock(lock), "cannot be locked");
    } while (!file_.stands_at(path_));
    require(file_.look(facts), "cannot be looked at");
    bytes_ = facts.bytes;
    if (bytes_ > largest_journal_bytes) fail_size("has", bytes_);
  }

  ~LockedJournal() { file_.unlock(); }

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
    const std::uintmax_t grown = bytes_ + line.size();
    if (grown > largest_journal_bytes) fail_size("would have", grown);
    // The name before the line: whoever adds the second line must not need to know whether the first got this far.
    if (bytes_ == 0) require(file_.sync_name(path_), "cannot be entered on disk in its directory");
    std::error_code failed = file_.append(line);
    if (!failed) failed = file_.sync();
    if (failed) fail_append(failed);
  }

 private:
  [[noreturn]] void fail(const std::string& what) const {
    throw BadInput("journal '" + path_.string() + "' " + what);
  }
  /// "cannot be opened: Permission denied"
  void require(const std::error_code& failed, const std::string& what) const {
    if (failed) fail(what + ": " + failed.message());
  }
  [[noreturn]] void fail_size(const std::string& has, std::uintmax_t bytes) const {
    fail(has + " " + std::to_string(bytes) + " bytes, at most " +
         std::to_string(largest_journal_bytes) + " are read");
  }
  [[noreturn]] void fail_append(const std::error_code& failed) {
    const bool clean = !file_.cut(bytes_);
    const std::string rest = clean ? "" : ", and a piece of the line may stay behind";
    fail("cannot be added to: " + failed.message() + rest);
  }

  void read(char* to, std::size_t count, std::uintmax_t from) const {
    require(file_.read(to, count, from), "cannot be read");
  }

  std::filesystem::path path_;
  SystemFile file_;
  std::uintmax_t bytes_ = 0;
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
  detail::LockedJournal(path, detail::FileUse::append, detail::FileLock::alone).append(line);
}

LEVIGATE_WORK JournalReading read_journal(const std::filesystem::path& path) {
  const std::string text =
      detail::LockedJournal(path, detail::FileUse::read, detail::FileLock::shared).text();
  return journal_from_json(text, path.string());
}

}  // namespace levigate
