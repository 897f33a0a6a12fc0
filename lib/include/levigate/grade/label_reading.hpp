// What the print on the back of a sheet can mean.
#pragma once

#include <string>
#include <vector>

#include "levigate/grade/grade.hpp"

namespace levigate::inline v0 {

/// What a label can mean. `ambiguous` holds where the label does not name its system, even if only
/// one system has a grade of that number.
struct LabelReading {
  std::vector<Grade> candidates;
  bool ambiguous = false;
  std::string note;
};

}  // namespace levigate
