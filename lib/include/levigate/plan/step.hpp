// A step of a sequence: what it finds, what it must remove, and what that takes in all zones.
#pragma once

#include <algorithm>
#include <numeric>
#include <optional>
#include <vector>

#include "levigate/plan/bench.hpp"
#include "levigate/surface/levelling.hpp"

namespace levigate::inline v0 {

/// The sheet before a step, and whether that one came first.
struct Before {
  std::size_t sheet = 0;
  bool first = false;
};

/// Whether a zone is left as sprayed by the first step.
inline bool passed_by(const Bench& bench, std::size_t zone) {
  return !bench.job.scratched_by && !bench.job.zones[zone].levelled;
}

/// Depth of the scratches that a sheet leaves in a zone [um]; none where it comes first and passes the zone by.
inline double scratch_left_um(const Bench& bench, const Before& sheet, std::size_t zone) {
  return sheet.first && passed_by(bench, zone) ? 0.0 : bench.work[sheet.sheet][zone].scratch_um;
}

/// Film that a sheet must remove in a zone [um]: the scratches of the sheet before it, or as the first step the orange peel
/// or the scratches the work carries.
inline double removal_um(const Bench& bench, std::optional<Before> before, std::size_t sheet,
                         std::size_t zone) {
  const Rules& rules = bench.job.rules;
  if (before) return scratch_left_um(bench, *before, zone) * rules.overcut;
  if (bench.job.scratched_by) return bench.start_scratch_um[zone] * rules.overcut;
  if (passed_by(bench, zone)) return 0.0;
  const Block& tool = bench.work[sheet][zone].tool;
  return levelling_removal_um({.peel_um = bench.job.zones[zone].peel_um,
                               .wavelength_mm = bench.job.zones[zone].peel_wavelength_mm,
                               .modulus_mpa = tool.modulus_mpa,
                               .pressure_kpa = tool.pressure_kpa(),
                               .residual_um = rules.residual_peel_um});
}

/// Effort of each zone for a step to `sheet` after `before` (none: as the first step).
inline std::vector<Effort> efforts(const Bench& bench, std::optional<Before> before,
                                   std::size_t sheet) {
  std::vector<Effort> result;
  for (std::size_t zone = 0; zone < bench.job.zones.size(); ++zone) {
    result.push_back(effort(removal_um(bench, before, sheet, zone), bench.work[sheet][zone],
                            bench.job.zones[zone], bench.stack.sheets[sheet],
                            bench.job.duty_factor));
  }
  return result;
}

/// Calls visit(before, sheet) for every step of a sequence, in order.
template <typename Visit>
void for_each_step(const std::vector<std::size_t>& sheets, Visit visit) {
  std::optional<Before> before;
  for (const std::size_t sheet : sheets) {
    visit(before, sheet);
    before = Before{sheet, !before};
  }
}

/// Sheets of one step in all zones together.
inline double sheets_used(const std::vector<Effort>& step) {
  return std::accumulate(step.begin(), step.end(), 0.0,
                         [](double sum, const Effort& e) { return sum + e.sheets_used; });
}

/// Minutes of one step in all zones together, with the change.
inline double step_minutes(const std::vector<Effort>& step, const Rules& rules) {
  return std::accumulate(step.begin(), step.end(), rules.change_minutes,
                         [](double sum, const Effort& e) { return sum + e.minutes; });
}

/// Size of the grain whose scratches a step finds [um]; none as the first step on a sprayed coat.
inline std::optional<double> size_before_um(const Bench& bench, std::optional<Before> before) {
  if (before) return worn_um(bench, before->sheet);
  if (bench.job.scratched_by) return bench.job.scratched_by->median_um;
  return std::nullopt;
}

/// Depth of the scratches that a step finds, in the zone where they are deepest [um].
inline double deepest_before_um(const Bench& bench, std::optional<Before> before) {
  double deepest = 0;
  for (std::size_t zone = 0; zone < bench.job.zones.size(); ++zone) {
    if (before)
      deepest = std::max(deepest, scratch_left_um(bench, *before, zone));
    else if (bench.job.scratched_by)
      deepest = std::max(deepest, bench.start_scratch_um[zone]);
  }
  return deepest;
}

/// By how much the scratches that a compound finds exceed what it takes out [um]; at most zero where it does, or is paper.
inline double too_deep_um(const Bench& bench, std::optional<Before> before, std::size_t sheet) {
  const std::optional<double> limit_um = bench.reach_um[sheet];
  return limit_um ? deepest_before_um(bench, before) - *limit_um : 0.0;
}

/// Whether a step is a compound that meets orange peel: it takes out scratches and does not level.
inline bool compound_on_peel(const Bench& bench, std::optional<Before> before, std::size_t sheet) {
  return !before && !bench.job.scratched_by && bench.reach_um[sheet].has_value();
}

}  // namespace levigate
