// What a journal says was done: the jobs in it, and the steps of one of them in order.
#pragma once

#include <algorithm>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/journal/entry.hpp"
#include "levigate/recover/done.hpp"

namespace levigate::inline v0 {

/// Names of the jobs, in the order in which they first stand there.
inline std::vector<std::string> jobs(std::span<const Entry> entries) {
  std::vector<std::string> names;
  for (const Entry& entry : entries) {
    if (std::find(names.begin(), names.end(), entry.job) == names.end()) names.push_back(entry.job);
  }
  return names;
}

/// The steps of a job that were ended, one for each such entry, in the order of the entries: that is the order in which
/// they were written, whatever clock told `at`. The direction is that of the last step begun with the same sheet and zone
/// since it was last ended there; of a step that is begun and not ended, nothing is known to be done.
inline std::vector<DoneStep> done_steps(std::span<const Entry> entries, std::string_view job) {
  std::vector<DoneStep> done;
  std::vector<const Entry*> begun;
  for (const Entry& entry : entries) {
    const bool begins = entry.kind == EntryKind::step_begun;
    if (entry.job != job || (!begins && entry.kind != EntryKind::step_ended)) continue;
    const auto same = std::find_if(begun.begin(), begun.end(), [&](const Entry* other) {
      return other->sheet == entry.sheet && other->zone == entry.zone;
    });
    if (begins) {
      if (same != begun.end()) begun.erase(same);
      begun.push_back(&entry);
      continue;
    }
    DoneStep step{.sheet = entry.sheet, .removal_um = entry.removal_um};
    if (!entry.zone.empty()) step.zones.push_back(entry.zone);
    if (same != begun.end()) {
      step.direction_deg = (*same)->direction_deg;
      begun.erase(same);
    }
    done.push_back(std::move(step));
  }
  return done;
}

}  // namespace levigate
