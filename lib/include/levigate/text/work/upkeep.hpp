// What the card says of care: how far an edge may still be sanded, when to clean the paper and when to change it.
#pragma once

#include <fmt/format.h>

#include <string>
#include <vector>

#include "levigate/plan/outcome.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/surface/clogging.hpp"
#include "levigate/surface/defect_table.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Lines for one step with one sheet. A wheel is charged, not rinsed: nothing is said of it here.
inline std::vector<std::string> upkeep(const Step& step, const Sheet& sheet, const Block& tool,
                                       double duty_factor) {
  std::vector<std::string> lines;
  for (const ZoneStep& zone : step.zones) {
    if (!zone.strokes_left || !zone.worked) continue;
    lines.push_back(fmt::format("Film for about {:.0f} more strokes along {} with this sheet.",
                                *zone.strokes_left, zone.zone));
  }
  if (wheel_of(sheet)) return lines;
  const double stroke_m = 1e-3 * defect_table[0].stroke_mm.value;
  lines.push_back(fmt::format(
      "Rinse or wipe it every {:.0f} strokes or so; change the piece after {:.0f} min of work.",
      sheet.backing.clean_every_m / stroke_m,
      pieces(sheet.backing, tool, 0.0).minutes_each / duty_factor));
  return lines;
}

}  // namespace detail

}  // namespace levigate
