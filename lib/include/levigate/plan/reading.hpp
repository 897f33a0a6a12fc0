// What a glossmeter reads at one angle, and between which ends.
#pragma once

#include "levigate/describe.hpp"

namespace levigate::inline v0 {

/// What a glossmeter reads: to be expected, and the ends of it.
struct Reading {
  double expected_gu = 0;
  double low_gu = 0;
  double high_gu = 0;

  friend bool operator==(const Reading&, const Reading&) = default;
};

template <std::same_as<Reading> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Reading", "What a glossmeter reads at one angle.",
    member<&Value::expected_gu>("expected_gu", at_least(0), "mean of both lays"),
    member<&Value::low_gu>("low_gu", at_least(0), "across the lay, with steep flanks"),
    member<&Value::high_gu>("high_gu", at_least(0), "along the lay, with flat flanks"));

}  // namespace levigate
