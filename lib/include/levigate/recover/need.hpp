// How much has to come off until a mark is gone: chances by depth.
#pragma once

#include <vector>

#include "levigate/describe.hpp"

namespace levigate::inline v0 {

/// How much has to come off until the mark is gone, and the chance of that.
struct Need {
  double need_um = 0;
  double probability = 0;

  friend bool operator==(const Need&, const Need&) = default;
};

/// Chances that were added up may pass 1 by their roundings.
inline constexpr Within chance_range{0, 1.000001};

template <std::same_as<Need> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Need", "How much has to come off until the mark is gone, and the chance of that.",
    member<&Value::need_um>("need_um", Within{1e-9, 1e6}, "how much"),
    member<&Value::probability>("probability", chance_range, "of that"));

/// The least need that a share q of the chances does not exceed.
///
/// @param needs  from least to most, chances adding up to 1
/// @param q      share (dimensionless), 0 to 1
/// @return       [um]; 0 without needs
/// Throws:    nothing
/// NaN:       a q of NaN gives the largest need
/// Accuracy:  one of the needs
/// Source:    definition of a quantile
inline double need_quantile_um(const std::vector<Need>& needs, double q) {
  double below = 0;
  for (const Need& need : needs) {
    below += need.probability;
    if (below >= q) return need.need_um;
  }
  return needs.empty() ? 0.0 : needs.back().need_um;
}

}  // namespace levigate
