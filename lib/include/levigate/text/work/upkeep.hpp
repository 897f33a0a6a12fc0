// What the card says of care: how far an edge may still be sanded, when to clean the paper and when to change it.
#pragma once

#include <fmt/format.h>

#include <string>
#include <vector>

#include "levigate/plan/plan_values.hpp"
#include "levigate/text/work/wheel_notes.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Lines for one step. A wheel is charged, not rinsed: nothing is said of it here.
inline std::vector<std::string> upkeep(const Step& step) {
  std::vector<std::string> lines;
  for (const ZoneStep& zone : step.zones) {
    if (zone.left_s && zone.worked) lines.push_back(edge_at_wheel_text(zone));
    if (!zone.strokes_left || !zone.worked) continue;
    lines.push_back(
        fmt::format("The film allows about {:.0f} more strokes along {} with this sheet.",
                    *zone.strokes_left, zone.zone));
  }
  if (step.machine && step.rinse_every_minutes && step.change_every_minutes) {
    lines.push_back(
        fmt::format("The plan counts the sheet as cleaned every {:.0f} s of work, by extraction or "
                    "by hand. Change the piece after {:.0f} min of work.",
                    60.0 * *step.rinse_every_minutes, *step.change_every_minutes));
    return lines;
  }
  if (!step.rinse_every_strokes || !step.change_every_minutes) return lines;
  lines.push_back(
      fmt::format("Rinse or wipe the sheet about every {:.0f} strokes. Change the piece after "
                  "{:.0f} min of work.",
                  *step.rinse_every_strokes, *step.change_every_minutes));
  return lines;
}

}  // namespace detail

}  // namespace levigate
