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
  std::string block;
  LocalWork work;

  friend bool operator==(const LocalStep&, const LocalStep&) = default;
};

template <std::same_as<LocalStep> Value>
inline constexpr auto described<Value> = describe<Value>(
    "LocalStep", "Equal defects of one zone, taken down one by one before the first step.",
    member<&Value::zone>("zone", "its name"),
    member<&Value::defect>("defect", "what is taken down"),
    member<&Value::block>("block", "name of the block that does it"),
    member<&Value::work>("work", "how, and how long").flat());

}  // namespace levigate
