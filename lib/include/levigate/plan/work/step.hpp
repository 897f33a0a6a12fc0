// A step of a sequence: what it finds, what it must remove, and what that takes in all zones.
#pragma once

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <optional>
#include <string_view>
#include <vector>

#include "levigate/plan/job.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/levelling_of.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/shrink_back.hpp"

namespace levigate::inline v0 {

/// The sheet before a step, and whether that one came first.
struct Before {
  std::size_t sheet = 0;
  bool first = false;
  std::size_t finest = sheet;  ///< of the sequence so far: another where sizes do not fall
};

/// What the step after this one finds before it. Of two sheets the finer leaves fewer zones as they stand, and no other ones.
inline Before after(const Workings& workings, std::optional<Before> before, std::size_t sheet) {
  const auto left = [&](std::size_t i) {
    return std::count(workings.stands[i].begin(), workings.stands[i].end(), true);
  };
  const bool finer = !before || left(sheet) <= left(before->finest);
  return {sheet, !before, finer ? sheet : before->finest};
}

/// Whether the first step leaves a zone as sprayed: it levels, and keeps off edges.
inline bool passed_by(const Workings& workings, std::size_t zone) {
  return workings.levels && !workings.starts[zone] && !is_levelled(workings.job.zones[zone]);
}

/// Whether a zone was worked by the sheets so far, the last of them with the rest.
inline bool was_worked(const Workings& workings, const Before& sheets, std::size_t zone) {
  return workings.starts[zone] ? !workings.stands[sheets.finest][zone]
                               : !sheets.first || !passed_by(workings, zone);
}

/// Scratches, and the grain that made them.
struct Scratches {
  std::string_view by;    ///< id of the sheet, or label of the grade that the zone carries
  bool sheet = false;     ///< whether by a sheet of the sequence
  double size_um = 0;     ///< of the grain
  double scratch_um = 0;  ///< their depth
};

/// The scratches that a step works out of a zone; none where it passes the zone by, or finds it as sprayed.
inline std::optional<Scratches> found_in(const Workings& workings, std::optional<Before> before,
                                         std::size_t sheet, std::size_t zone) {
  if (before && was_worked(workings, *before, zone)) {
    return Scratches{workings.stack.sheets[before->sheet].id, true,
                     worn_um(workings, before->sheet),
                     workings.work[before->sheet][zone].scratch_um};
  }
  const std::optional<Start>& start = workings.starts[zone];
  if (!start || !was_worked(workings, after(workings, before, sheet), zone)) return std::nullopt;
  return Scratches{start->label, false, start->worn_um, start->scratch_um};
}

/// Depth of the scratches in a zone after a sheet [um]: its own, or those that the zone stands with.
inline double scratch_left_um(const Workings& workings, const Before& sheet, std::size_t zone) {
  if (was_worked(workings, sheet, zone)) return workings.work[sheet.sheet][zone].scratch_um;
  return workings.starts[zone] ? workings.starts[zone]->scratch_um : 0.0;
}

/// Film that a tool must remove to level a zone as sprayed [um], with what comes back of it; none of an edge, which keeps its peel.
inline double levelling_with(const Workings& workings, const Block& tool, std::size_t zone_index) {
  const Zone& zone = workings.job.zones[zone_index];
  if (!is_levelled(zone)) return 0.0;
  return levelling_of(zone, tool, zone.peel_um, workings.job.rules.residual_peel_um) *
         with_shrink_back(workings.job.coating.shrink_back);
}

/// The same of a sheet, as film is counted.
inline double levelling_um(const Workings& workings, std::size_t sheet, std::size_t zone) {
  return levelling_with(workings, leveller_of(workings.work[sheet][zone]), zone);
}

/// Film that a sheet must remove in a zone [um]: the scratches it finds times overcut (none: the least), or as the first step the
/// orange peel.
inline double removal_um(const Workings& workings, std::optional<Before> before, std::size_t sheet,
                         std::size_t zone, std::optional<double> overcut = std::nullopt) {
  if (const auto found = found_in(workings, before, sheet, zone))
    return found->scratch_um * overcut.value_or(*workings.job.rules.overcut);
  return before || workings.starts[zone] ? 0.0 : levelling_um(workings, sheet, zone);
}

/// The same as minutes and paper are counted: with a pad that nobody measured as stiff as usual.
inline double usual_removal_um(const Workings& workings, std::optional<Before> before,
                               std::size_t sheet, std::size_t zone,
                               std::optional<double> overcut = std::nullopt) {
  const SheetInZone& work = workings.work[sheet][zone];
  if (work.machine && !before && !workings.starts[zone])
    return levelling_with(workings, work.tool, zone);
  return removal_um(workings, before, sheet, zone, overcut);
}

/// Effort of each zone for a step to `sheet` after `before` (none: as the first step).
inline std::vector<Effort> efforts(const Workings& workings, std::optional<Before> before,
                                   std::size_t sheet,
                                   std::optional<double> overcut = std::nullopt) {
  std::vector<Effort> result;
  for (std::size_t zone = 0; zone < workings.job.zones.size(); ++zone) {
    result.push_back(effort(usual_removal_um(workings, before, sheet, zone, overcut),
                            workings.work[sheet][zone], workings.job.zones[zone],
                            workings.stack.sheets[sheet], workings.factors.duty));
    result.back().removal_um = removal_um(workings, before, sheet, zone, overcut);
  }
  return result;
}

/// Calls visit(before, sheet) for every step of a sequence, in order.
template <typename Visit>
void for_each_step(const Workings& workings, const std::vector<std::size_t>& sheets, Visit visit) {
  std::optional<Before> before;
  for (const std::size_t sheet : sheets) {
    visit(before, sheet);
    before = after(workings, before, sheet);
  }
}

/// The same for the steps of a sequence with its overcuts: visit(before, sheet, overcut).
template <typename Visit>
void for_each_step(const Workings& workings, const Sequence& sequence, Visit visit) {
  std::size_t i = 0;
  for_each_step(workings, sequence.sheets, [&](std::optional<Before> before, std::size_t sheet) {
    visit(before, sheet, sequence.overcuts[i++]);
  });
}

/// Sheets of one step in all zones together.
inline double sheets_used(const std::vector<Effort>& step) {
  return std::accumulate(step.begin(), step.end(), 0.0,
                         [](double sum, const Effort& e) { return sum + e.sheets_used; });
}

/// These minutes and the change, which a step takes once.
inline double with_change(double minutes, const Rules& rules) {
  return minutes + rules.change_minutes;
}

/// Minutes of one step in all zones together, with the change.
inline double step_minutes(const std::vector<Effort>& step, const Rules& rules) {
  return std::accumulate(step.begin(), step.end(), with_change(0.0, rules),
                         [](double sum, const Effort& e) { return sum + e.minutes; });
}

/// The kinds of scratches that a step finds, each once: of the sheet before it, and of the zones that it takes up.
inline std::vector<Scratches> finds(const Workings& workings, std::optional<Before> before,
                                    std::size_t sheet) {
  std::vector<Scratches> result;
  if (before) {
    result.push_back(
        {workings.stack.sheets[before->sheet].id, true, worn_um(workings, before->sheet)});
  }
  for (std::size_t zone = 0; zone < workings.job.zones.size(); ++zone) {
    const std::optional<Scratches> found = found_in(workings, before, sheet, zone);
    if (!found) continue;
    const auto same = std::find_if(result.begin(), result.end(), [&](const Scratches& other) {
      return other.sheet == found->sheet && other.by == found->by &&
             other.size_um == found->size_um;
    });
    if (same == result.end()) {
      result.push_back(*found);
    } else {
      same->scratch_um = std::max(same->scratch_um, found->scratch_um);
    }
  }
  return result;
}

/// The scratches that a step finds where they are deepest; none where it finds none.
inline std::optional<Scratches> deepest_found(const Workings& workings,
                                              std::optional<Before> before, std::size_t sheet) {
  const std::vector<Scratches> found = finds(workings, before, sheet);
  const auto deepest = std::max_element(
      found.begin(), found.end(),
      [](const Scratches& a, const Scratches& b) { return a.scratch_um < b.scratch_um; });
  return deepest == found.end() ? std::nullopt : std::optional(*deepest);
}

/// By how much the scratches that a compound finds exceed what it takes out [um]; at most zero where it does, or is paper.
inline double too_deep_um(const Workings& workings, std::optional<Before> before,
                          std::size_t sheet) {
  const std::optional<double> limit_um = workings.reach_um[sheet];
  if (!limit_um) return 0.0;
  const std::optional<Scratches> deepest = deepest_found(workings, before, sheet);
  return (deepest ? deepest->scratch_um : 0.0) - *limit_um;
}

/// Whether a step is a compound that meets orange peel: it takes out scratches and does not level.
inline bool compound_on_peel(const Workings& workings, std::optional<Before> before,
                             std::size_t sheet) {
  return !before && workings.levels && workings.reach_um[sheet].has_value();
}

}  // namespace levigate
