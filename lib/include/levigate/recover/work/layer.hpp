// What each step that was done did to one zone: what it took off, and the scratches it made.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/work/zone_done.hpp"
#include "levigate/surface/contact.hpp"

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

/// The layers of a zone, in order. A step that had nothing to take off, as the first on an edge, still laid its scratches: it
/// is taken to have taken off their depth. One that says it took nothing off leaves no layer.
/// Throws: BadInput for a sheet or a zone that is not there, or on a coat a step back to coarser grain that does not say what
/// it took off; OutOfRange for a direction or a removal outside its range
inline std::vector<Layer> layers(const Workings& workings, const std::vector<DoneStep>& done,
                                 std::size_t zone) {
  std::vector<Layer> result;
  std::optional<std::size_t> last;
  const auto add = [&](std::size_t step, std::size_t sheet, std::size_t worked, double removal_um,
                       bool) {
    if (worked != zone) return;
    const bool goes_on = last == sheet && !done[step].removal_um;
    last = sheet;
    const SheetInZone& work = workings.work[sheet][zone];
    if (removal_um <= 0.0 && (goes_on || done[step].removal_um)) return;
    result.push_back({.step = step,
                      .sheet = sheet,
                      .contact = contact_of(workings.job, workings.model, grain_of(workings, sheet),
                                            workings.stack.sheets[sheet].backing, work.tool),
                      .removal_um = removal_um > 0.0 ? removal_um : work.scratch_um,
                      .scratch_um = work.scratch_um,
                      .rate_um_per_m = work.rate_um_per_m,
                      .direction_deg = done[step].direction_deg});
  };
  detail::walk_done(workings, done, std::vector<std::size_t>(workings.job.zones.size(), 0), add);
  return result;
}

}  // namespace levigate
