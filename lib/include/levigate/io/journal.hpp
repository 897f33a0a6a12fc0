// The journal file: adding a line that is on disk when the call returns, and reading what is there.
// For POSIX systems and Windows.
#pragma once

#include <cstddef>
#include <filesystem>

#include "levigate/error.hpp"
#include "levigate/io/read_journal.hpp"
#include "levigate/journal/entry.hpp"

namespace levigate::inline v0 {

/// Some million lines.
inline constexpr std::size_t largest_journal_bytes = std::size_t{256} << 20;

/// Adds an entry to a journal, which is made where there is none, as one line at its end. It returns when the line is on disk
/// (fsync), and only then is the entry acknowledged. Writers wait for each other, so that lines never mix. Whatever is
/// there stays as it is: behind a torn last line the new one starts on a line of its own. Where it fails, the
/// file is cut back to what it was where the system lets it; where not, the error says that a piece of the line may stay behind. After a crash, read the journal before you append again: a line may be there that was not acknowledged.
///
/// Throws: what to_json throws for an entry; BadInput where it strikes a line that is not there, of another job or struck already, or where the file cannot be opened or locked, is not a regular file, is full
///         or would become larger than largest_journal_bytes, or the disk takes no more
void append(const std::filesystem::path& path, const Entry& entry);

/// What a journal holds: see journal_from_json. Waits until nobody writes, so that no line is seen half written; changes
/// nothing, not even its times of change.
///
/// Throws: what journal_from_json throws; BadInput where there is no such file, it cannot be read, is not a regular file or
///         larger than largest_journal_bytes
JournalReading read_journal(const std::filesystem::path& path);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/journal.hpp"
#endif
