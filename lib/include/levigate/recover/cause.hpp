// What a mark tells: which step made it, and how much has to come off until it is gone.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "levigate/recover/mark.hpp"
#include "levigate/recover/need.hpp"

namespace levigate::inline v0 {

/// One explanation of a mark.
struct Cause {
  std::size_t step = 0;  ///< in the order of what was done
  std::string sheet;     ///< its id
  bool stray = false;    ///< a stray grain under that sheet, not its own grain
  double probability = 0;
  double expected = 0;  ///< such marks that it leaves in the zone on average
  std::vector<double>
      missed{};  ///< for each done step: chance that it missed the spot, given this cause
};

/// What a mark tells.
struct Diagnosis {
  Mark mark;
  std::vector<Cause> causes;  ///< most likely first, adding up to 1; none where no step explains it
  std::vector<Need> needs;    ///< how much has to come off until it is gone, and the chance of that
  double shows_um = 0;        ///< width from which a scratch stands out from the finish [um]
  std::vector<std::string> evidence{};  ///< in words
};

}  // namespace levigate
