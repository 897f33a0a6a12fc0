// What a journal leaves open: the rest after a coat was levelled that shrinks back, and marks that no later step worked.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/detail/moment.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/surface/shrink_back.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The marks whose zone no later step worked, in the order of the journal.
inline std::vector<levigate::Mark> open_marks(const std::vector<Entry>& journal) {
  std::vector<levigate::Mark> open;
  for (const Entry& entry : journal) {
    if (entry.mark) {
      open.push_back(*entry.mark);
    } else if (entry.kind == EntryKind::step_ended) {
      std::erase_if(open, [&](const levigate::Mark& mark) {
        return entry.zone.empty() || entry.zone == mark.zone;
      });
    }
  }
  return open;
}

inline Finding mark_open(const levigate::Mark& mark) {
  return {.kind = FindingKind::mark_open,
          .severity = Severity::warning,
          .sheets = {},
          .zone = mark.zone,
          .about = {{"mark", std::string(to_string(mark.kind))}}};
}

/// The entry that ended the levelling of a zone, where the step after its rest was not begun; null where none rests.
///
/// The next step is one with another sheet, or with the same one after the rest: before, that still levels.
inline const Entry* rests_since(const std::vector<Entry>& journal, const Zone& zone,
                                bool passed_by_all, double rest_h) {
  const Entry* levelled = nullptr;
  for (const Entry& entry : journal) {
    const bool ended = entry.kind == EntryKind::step_ended;
    if (!ended && entry.kind != EntryKind::step_begun) continue;
    if (entry.zone.empty() ? passed_by_all : entry.zone != zone.name) continue;
    if (!levelled) {
      if (ended) levelled = &entry;
      continue;
    }
    if (entry.sheet != levelled->sheet ||
        seconds_between(levelled->at, entry.at) >= 3600.0 * rest_h)
      return nullptr;
    if (ended) levelled = &entry;
  }
  return levelled;
}

/// Says which zones rest after levelling, and until when.
inline std::optional<Finding> rest_due(const Workings& workings,
                                       const std::vector<Entry>& journal) {
  const Job& job = workings.job;
  const std::optional<ShrinkBack>& back = job.coating.shrink_back;
  if (!workings.levels || !back || !(back->comes_back > 0.0) || !(back->rest_h > 0.0))
    return std::nullopt;
  Finding finding{.kind = FindingKind::rest_due, .severity = Severity::warning, .sheets = {}};
  const Entry* last = nullptr;
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    const Zone& zone = job.zones[i];
    if (!has_peel_to_level(job, zone)) continue;
    const Entry* since = rests_since(journal, zone, passed_by(workings, i), back->rest_h);
    if (!since) continue;
    if (std::find(finding.sheets.begin(), finding.sheets.end(), since->sheet) ==
        finding.sheets.end())
      finding.sheets.push_back(since->sheet);
    finding.about.push_back({"zone", zone.name});
    if (!last || seconds_between(last->at, since->at) > 0.0) last = since;
  }
  if (!last) return std::nullopt;
  finding.about.push_back({"not_before", moment_after(last->at, back->rest_h)});
  finding.numbers = {{"rest_h", back->rest_h}};
  return finding;
}

/// Says what a journal leaves open.
inline void tell_open_ends(const Workings& workings, const std::vector<Entry>& journal,
                           const std::vector<levigate::Mark>& marks,
                           std::vector<Finding>& findings) {
  if (std::optional<Finding> rest = rest_due(workings, journal))
    findings.push_back(std::move(*rest));
  for (const levigate::Mark& mark : marks) findings.push_back(mark_open(mark));
}

}  // namespace detail

}  // namespace levigate
