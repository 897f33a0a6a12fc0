// What was done so far: the steps in order, each with the zones it worked and the way it ran.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace levigate::inline v0 {

/// One step that is done.
struct DoneStep {
  std::string sheet;                    ///< its id
  std::vector<std::string> zones;       ///< that it worked; empty: all
  std::optional<double> direction_deg;  ///< of the strokes against the length of the zone, 0 to 180

  friend bool operator==(const DoneStep&, const DoneStep&) = default;
};

}  // namespace levigate
