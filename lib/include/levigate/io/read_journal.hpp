// The lines of a journal: entries, and the pieces that a crash left of lines.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/io/entry.hpp"

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
  std::vector<Entry> entries;  ///< in the order of the lines
  std::vector<int> lines;      ///< line of each entry, from 1
  std::vector<Torn> torn;      ///< skipped

  friend bool operator==(const JournalReading&, const JournalReading&) = default;
};

namespace detail {

/// Whether a line that cannot be read is a piece of an entry: an object whose text ends before it is closed.
inline bool is_cut(std::string_view line) {
  SyntaxCheck check;
  nlohmann::json::sax_parse(line, &check);
  return line.starts_with('{') && check.fault && check.fault->byte >= line.size();
}

/// The entry of a line, or nothing where the line is torn.
inline std::optional<Entry> whole_entry(std::string_view text, std::string_view file, int line) {
  if (text.find('\0') != std::string_view::npos) return std::nullopt;
  const auto refuse = [&](const std::string& message) {
    throw BadInput(message + ", line " + std::to_string(line) +
                       (file.empty() ? "" : " of " + std::string(file)),
                   "", line);
  };
  if (text.size() > longest_entry_bytes) {
    refuse("the line has " + std::to_string(text.size()) + " bytes, at most " +
           std::to_string(longest_entry_bytes) + " are read");
  }
  if (text.find_first_not_of(" \t\r") == std::string_view::npos) refuse("the line is empty");
  try {
    return entry_from_json(text, file, line);
  } catch (const BadInput&) {
    if (is_cut(text)) return std::nullopt;
    throw;
  }
}

}  // namespace detail

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
inline JournalReading journal_from_json(std::string_view text, std::string_view file = "") {
  JournalReading reading;
  int line = 1;
  for (std::size_t at = 0; at < text.size(); ++line) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    const std::string_view piece = text.substr(at, end - at);
    at = end + 1;
    if (auto entry = detail::whole_entry(piece, file, line)) {
      reading.entries.push_back(*std::move(entry));
      reading.lines.push_back(line);
    } else {
      reading.torn.push_back({line, piece.size(),
                              "line " + std::to_string(line) +
                                  " is torn: of an entry that was not acknowledged, " +
                                  std::to_string(piece.size()) + " bytes are there"});
    }
  }
  return reading;
}

}  // namespace levigate
