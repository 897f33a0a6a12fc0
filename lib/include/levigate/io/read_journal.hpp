// The lines of a journal: entries, and the pieces that a crash left of lines.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/journal/entry.hpp"

namespace levigate::inline v0 {

/// A line of which a piece is there only.
struct Torn {
  int line = 0;           ///< in the file, from 1
  std::size_t bytes = 0;  ///< length of the piece
  std::string message;    ///< a sentence

  friend bool operator==(const Torn&, const Torn&) = default;
};

/// What a journal holds.
struct JournalReading {
  std::vector<Entry>
      entries;  ///< in the order of the lines; a line that one strikes counts whole lines
  std::vector<int> lines;  ///< line of each entry, from 1
  std::vector<Torn> torn;  ///< skipped

  friend bool operator==(const JournalReading&, const JournalReading&) = default;
};

/// The entries of a journal from its text, of format levigate.journal/1: one JSON object a line.
///
/// Torn is a line that was cut: an object whose text ends before it is closed, or a line with zero bytes. It is reported and
/// skipped, whether it is the last or others follow. Nobody was told that it is written. A last line that is whole and
/// lacks its newline only is an entry like any other, since nothing of it is missing and the next append gives it its newline.
/// Any other line that does not read was not cut but written so by someone, and is an error: one that is empty too.
///
/// @param text  the lines, UTF-8
/// @param file  its name for messages; may be empty
/// @return      entries with their lines, and the torn lines
/// Throws:    BadInput, with pointer and line, for a line that is not of the format and not torn; OutOfRange for a
///            number outside its range
/// Source:    data/schema/journal.schema.json
JournalReading journal_from_json(std::string_view text, std::string_view file = "");

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/read_journal.hpp"
#endif
