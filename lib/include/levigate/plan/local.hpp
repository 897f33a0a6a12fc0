// Runs, sags, nibs and ridges: taken down one by one before the levelling step.
#pragma once

#include <string>

#include "levigate/surface/defect.hpp"
#include "levigate/surface/take_down.hpp"

namespace levigate::inline v0 {

/// Work on the defects of one kind in a zone, before the first step.
struct LocalStep {
  std::string zone;
  Defect defect;
  std::string block;  ///< that does it
  LocalWork work;     ///< how, how long, and what sanding them out flat would cost instead
};

}  // namespace levigate
