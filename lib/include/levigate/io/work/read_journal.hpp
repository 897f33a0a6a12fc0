// The work behind io/read_journal.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "levigate/io/read_journal.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/io/entry.hpp"
#include "levigate/io/work/locate.hpp"
#include "levigate/journal/entry.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Whether a line that cannot be read is a piece of an entry: an object whose text ends before it is closed.
inline bool is_cut(std::string_view line) {
  SyntaxCheck check;
  OrderedJson::sax_parse(line, &check);
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

/// A line that is struck is named by its place in the file. In memory it is named by its place among the whole lines.
inline void count_whole_lines(JournalReading& reading) {
  for (std::size_t i = 0; i < reading.entries.size(); ++i) {
    if (!reading.entries[i].line) continue;
    std::size_t& line = *reading.entries[i].line;
    const auto at = std::find(reading.lines.begin(), reading.lines.end(), static_cast<int>(line));
    // One that a crash cut cannot be struck: it then names itself, which is refused where it counts.
    line = at == reading.lines.end() ? i + 1
                                     : static_cast<std::size_t>(at - reading.lines.begin()) + 1;
  }
}

}  // namespace detail

LEVIGATE_WORK JournalReading journal_from_json(std::string_view text, std::string_view file) {
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
  if (!reading.torn.empty()) detail::count_whole_lines(reading);
  return reading;
}

}  // namespace levigate
