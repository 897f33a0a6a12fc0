// What each step that was done did to one zone: what it took off, and the scratches it made.
#pragma once

#include <optional>
#include <vector>

#include "levigate/recover/worked.hpp"

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

/// The layers of a zone, in order. A step that took nothing off leaves none.
/// Throws: BadInput for a sheet or a zone that is not there, or a step back to coarser grain that does not say what it took
/// off; OutOfRange for a direction or a removal outside its range
inline std::vector<Layer> layers(const Bench& bench, const std::vector<DoneStep>& done,
                                 std::size_t zone) {
  std::vector<Layer> result;
  const auto add = [&](std::size_t step, std::size_t sheet, std::size_t worked, double removal_um) {
    if (worked != zone || removal_um <= 0.0) return;
    const SheetInZone& work = bench.work[sheet][zone];
    result.push_back({.step = step,
                      .sheet = sheet,
                      .contact = contact_of(bench.job, bench.model, grain_of(bench, sheet),
                                            bench.stack.sheets[sheet].backing, work.tool),
                      .removal_um = removal_um,
                      .scratch_um = work.scratch_um,
                      .rate_um_per_m = work.rate_um_per_m,
                      .direction_deg = done[step].direction_deg});
  };
  detail::walk_done(bench, done, std::vector<bool>(bench.job.zones.size(), false), add);
  return result;
}

}  // namespace levigate
