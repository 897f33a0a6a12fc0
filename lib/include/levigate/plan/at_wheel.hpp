// Work in a zone at a buffing wheel, in passes and seconds.
#pragma once

#include "levigate/describe.hpp"
#include "levigate/wheel/standing_still.hpp"

namespace levigate::inline v0 {

/// Passes over a zone at a wheel, and what standing still there costs.
struct AtWheel {
  double passes = 0;
  double pass_s = 0;
  StandingStill still{};

  friend bool operator==(const AtWheel&, const AtWheel&) = default;
};

template <std::same_as<AtWheel> Value>
inline constexpr auto described<Value> = describe<Value>(
    "AtWheel", "Passes over a zone at a buffing wheel.",
    member<&Value::passes>("passes", at_least(0), "whole passes over every spot"),
    member<&Value::pass_s>("pass_s", at_least(0), "one pass over the whole zone"),
    member<&Value::still>("still", "what one second of standing still costs a spot"));

}  // namespace levigate
