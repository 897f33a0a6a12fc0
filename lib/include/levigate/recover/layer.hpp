// What each step that was done did to one zone: what it took off, and the scratches it made.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "levigate/plan/step.hpp"
#include "levigate/recover/done.hpp"

namespace levigate::inline v0 {

/// A step that was done, in one zone.
struct Layer {
  std::size_t step;                     ///< in the order of what was done
  std::size_t sheet;                    ///< in the stack
  Contact contact;                      ///< of its grain on the coat
  double removal_um;                    ///< taken off, on the mean [um], above 0
  double scratch_um;                    ///< depth that its scratches reach [um]
  double rate_um_per_m;                 ///< film it takes off per metre of sliding
  std::optional<double> direction_deg;  ///< of its strokes, 0 to 180
};

/// The position of the zone of that name. Throws: BadInput where there is none, naming the nearest.
inline std::size_t zone_index(const Job& job, std::string_view name) {
  std::vector<std::string_view> known;
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    if (job.zones[i].name == name) return i;
    known.push_back(job.zones[i].name);
  }
  throw BadInput(detail::unknown_name_text("zone", name, known));
}

/// The layers of a zone, in order. A step that took nothing off leaves none.
/// Throws: BadInput for a sheet or a zone that is not there; OutOfRange for a direction or a removal outside its range
inline std::vector<Layer> layers(const Bench& bench, const std::vector<DoneStep>& done,
                                 std::size_t zone) {
  std::vector<Layer> result;
  std::optional<Before> before;
  for (std::size_t i = 0; i < done.size(); ++i) {
    const DoneStep& step = done[i];
    const std::string where = "done step " + std::to_string(i + 1);
    if (step.direction_deg)
      detail::require_range(*step.direction_deg, 0.0, 180.0, "direction_deg", "deg", where);
    if (step.removal_um)
      detail::require_range(*step.removal_um, 0.0, 1e4, "removal_um", "um", where);
    const std::size_t sheet = sheet_index(bench.stack, step.sheet);
    const bool here = step.zones.empty() ||
                      std::any_of(step.zones.begin(), step.zones.end(),
                                  [&](const auto& n) { return zone_index(bench.job, n) == zone; });
    if (!here) continue;
    const double removed_um = step.removal_um.value_or(removal_um(bench, before, sheet, zone));
    const SheetInZone& work = bench.work[sheet][zone];
    if (removed_um > 0.0) {
      result.push_back({.step = i,
                        .sheet = sheet,
                        .contact = contact_of(bench.job, bench.model, grain_of(bench, sheet),
                                              bench.stack.sheets[sheet].backing, work.tool),
                        .removal_um = removed_um,
                        .scratch_um = work.scratch_um,
                        .rate_um_per_m = work.rate_um_per_m,
                        .direction_deg = step.direction_deg});
    }
    before = Before{sheet, !before};
  }
  return result;
}

}  // namespace levigate
