// The work behind journal/done.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/journal/done.hpp"

#include "levigate/detail/names.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/struck.hpp"
#include "levigate/journal/work/step_entries.hpp"
#include "levigate/recover/done.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The way that a step ran which ended at that position.
inline std::optional<double> direction_of(std::span<const Entry> entries, std::size_t at) {
  const Entry& ended = entries[at];
  while (at-- > 0) {
    const Entry& before = entries[at];
    if (ends(ended, before)) return covers(before, ended) ? before.direction_deg : std::nullopt;
    const bool ended_before = before.kind == EntryKind::step_ended && before.job == ended.job &&
                              before.sheet == ended.sheet && covers(before, ended);
    if (ended_before) return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace detail

LEVIGATE_WORK std::vector<std::string> jobs(std::span<const Entry> entries) {
  std::vector<std::string> names;
  const std::vector<bool> counts = counted(entries);
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const std::string& job = entries[i].job;
    if (counts[i] && std::find(names.begin(), names.end(), job) == names.end())
      names.push_back(job);
  }
  return names;
}

LEVIGATE_WORK std::vector<std::string> jobs_nearly_named(std::span<const Entry> entries,
                                                         std::string_view job) {
  std::vector<std::string> names = jobs(entries);
  std::erase_if(names, [&](const std::string& name) {
    return name == job || detail::edit_distance(name, job) > name_slip_letters;
  });
  return names;
}

LEVIGATE_WORK std::vector<DoneStep> done_steps(std::span<const Entry> entries,
                                               std::string_view job) {
  std::vector<DoneStep> done;
  const std::vector<Entry> counted = without_struck({entries.begin(), entries.end()});
  entries = counted;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const Entry& entry = entries[i];
    if (entry.job != job || entry.kind != EntryKind::step_ended) continue;
    DoneStep step{.sheet = entry.sheet,
                  .direction_deg = detail::direction_of(entries, i),
                  .removal_um = entry.removal_um,
                  .overcut = entry.overcut};
    if (!entry.zone.empty()) step.zones.push_back(entry.zone);
    done.push_back(std::move(step));
  }
  return done;
}

}  // namespace levigate
