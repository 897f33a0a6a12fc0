// What was done so far: the steps in order, each with the zones it worked and the way it ran.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace levigate::inline v0 {

/// One step that is done.
struct DoneStep {
  std::string sheet;                 ///< its id
  std::vector<std::string> zones{};  ///< that it worked; empty: all
  std::optional<double>
      direction_deg{};  ///< of the strokes against the length of the zone, 0 to 180

  /// Film it took off [um], 0 to 10 000; none: what the scratches before it ask for, as in a plan.
  std::optional<double> removal_um{};

  /// Film it took off over the scratch depth before it, 1 to 20; none: what the rules say. Not with removal_um.
  std::optional<double> overcut{};

  friend bool operator==(const DoneStep&, const DoneStep&) = default;
};

}  // namespace levigate
