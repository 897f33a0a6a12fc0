// The work behind journal/struck.hpp: defines what it declares.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "levigate/journal/struck.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/journal/entry.hpp"

namespace levigate::inline v0 {

namespace detail {

LEVIGATE_WORK void require_strikes(std::span<const Entry> before, const Entry& strikes) {
  const std::size_t line = strikes.line.value_or(0);
  if (line < 1 || line > before.size()) {
    throw BadInput::of("line", "line = " + std::to_string(line) +
                                   " is no line of the journal before it: it has lines 1 to " +
                                   std::to_string(before.size()) + ", in kind 'struck'");
  }
  const Entry& struck = before[line - 1];
  if (struck.job != strikes.job) {
    throw BadInput::of("line", "line = " + std::to_string(line) + " is of job '" + struck.job +
                                   "', not of '" + strikes.job + "', in kind 'struck'");
  }
}

}  // namespace detail

LEVIGATE_WORK std::vector<bool> struck(std::span<const Entry> entries) {
  std::vector<bool> result(entries.size(), false);
  for (std::size_t i = entries.size(); i-- > 0;) {
    if (entries[i].kind != EntryKind::struck || result[i]) continue;
    const std::size_t line = entries[i].line.value_or(0);
    if (line >= 1 && line <= i && entries[line - 1].job == entries[i].job) result[line - 1] = true;
  }
  return result;
}

LEVIGATE_WORK std::vector<bool> counted(std::span<const Entry> entries) {
  const std::vector<bool> struck = levigate::struck(entries);
  std::vector<bool> counts(entries.size(), true);
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const bool strikes = entries[i].kind == EntryKind::struck;
    if (strikes && !struck[i]) detail::require_strikes(entries.first(i), entries[i]);
    counts[i] = !strikes && !struck[i];
  }
  return counts;
}

LEVIGATE_WORK std::vector<Entry> without_struck(std::vector<Entry> entries) {
  const std::vector<bool> counts = counted(entries);
  for (std::size_t i = 0; i < entries.size(); ++i) {
    if (counts[i]) continue;
    Entry note{.at = entries[i].at, .job = entries[i].job, .text = "struck out"};
    entries[i] = std::move(note);
  }
  return entries;
}

}  // namespace levigate
