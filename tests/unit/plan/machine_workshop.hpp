// Discs of paper on a sander, for the tests of plans with machines.
#pragma once

#include <string>
#include <vector>

#include "levigate/stack/machine.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"
#include "unit/workshop.hpp"

namespace machine_workshop {

using namespace workshop;

inline const std::string sander = "random-orbit sander";

/// A disc of P-grade paper on a sander.
inline Sheet disc(const std::string& label, const Machine& machine = machine_named(sander)) {
  Sheet sheet = paper("disc-" + label, label);
  sheet.kind = Pad{machine};
  sheet.width_mm = sheet.height_mm = 150;
  return sheet;
}

inline Stack discs(const std::vector<std::string>& labels,
                   const Machine& machine = machine_named(sander)) {
  Stack stack;
  for (const std::string& label : labels) stack.sheets.push_back(disc(label, machine));
  return stack;
}

}  // namespace machine_workshop
