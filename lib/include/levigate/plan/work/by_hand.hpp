// What a tool may not do: zones that the hand works in place of a machine, and pieces that two hands do not hold to a wheel.
#pragma once

#include <optional>

#include "levigate/plan/handling_table.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/machine.hpp"
#include "levigate/stack/sheet.hpp"

namespace levigate::inline v0 {

/// Why the hand works a zone in place of a machine.
enum class ByHand {
  edge,       ///< the pad would bear on the edge alone
  too_small,  ///< the pad does not lie in the zone with its distance from every edge
};

/// Why the hand works a zone in place of a machine; none where the machine does.
inline std::optional<ByHand> by_hand(const Machine& machine, const Zone& zone) {
  if (zone.edge) return ByHand::edge;
  if (zone.area_cm2 < machine.room_cm2(machine.keep_off_mm)) return ByHand::too_small;
  return std::nullopt;
}

/// Whether nothing tells that a zone is wide: what is not levelled may be an edge of which nobody said so.
inline bool may_be_narrow(const Zone& zone) { return !zone.levelled && !zone.edge; }

/// The machine that works a zone with a sheet; null where the hand or a wheel does.
inline const Machine* machine_in(const Sheet& sheet, const Zone& zone) {
  const Machine* machine = machine_of(sheet);
  return machine && !by_hand(*machine, zone) ? machine : nullptr;
}

/// The machine that a sheet polishes with: a compound on it warms the coat as on a wheel. Null of paper.
inline const Machine* polisher_of(const Sheet& sheet) {
  return polish_of(sheet) ? machine_of(sheet) : nullptr;
}

/// Whether a job's piece is too heavy for the wheel of a sheet.
inline bool too_heavy(const Job& job, const Sheet& sheet) {
  return wheel_of(sheet) && job.weight_kg.value_or(0.0) > handling_table[0].most_kg.value;
}

/// The first zone that is so large that two hands may not hold its piece to a wheel, where its weight is not told.
inline const Zone* unweighed_zone(const Job& job) {
  if (job.weight_kg) return nullptr;
  for (const Zone& zone : job.zones) {
    if (zone.area_cm2 > handling_table[0].unweighed_cm2.value) return &zone;
  }
  return nullptr;
}

}  // namespace levigate
