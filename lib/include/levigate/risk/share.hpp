// How often something happened, and between what the chance of it then lies.
#pragma once

#include <cstdint>

#include "levigate/describe.hpp"

namespace levigate::inline v0 {

/// A share of cases with the interval of the chance behind it.
struct Share {
  double share = 0;
  double low = 0;
  double high = 1;

  friend bool operator==(const Share&, const Share&) = default;
};

template <std::same_as<Share> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Share", "How often something happened, with the exact 90 % interval of its chance.",
    member<&Value::share>("share", Within{0, 1}, "of the cases"),
    member<&Value::low>("low", Within{0, 1}, "lower end of the interval"),
    member<&Value::high>("high", Within{0, 1}, "upper end of the interval"));

/// Share of cases that hit, with the exact interval of its chance: the chances under which so many hits, or so few, would not be
/// rarer than half of what the confidence leaves.
///
///   P(X >= hits | low) = (1 - confidence)/2 = P(X <= hits | high),   X binomial
///
/// @param hits        of the cases, 0 to cases
/// @param cases       independent of each other, 1 to 1e7
/// @param confidence  least share of such intervals that hold the chance (dimensionless), 0.5 to 0.9999
/// @return            share and interval (dimensionless)
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       rejected as OutOfRange
/// Accuracy:  1e-9 relative, of low and of 1 - high
/// Source:    Clopper and Pearson, Biometrika 26:404-413 (1934), from memory
Share exact_share(std::int64_t hits, std::int64_t cases, double confidence = 0.9);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/risk/work/share.hpp"
#endif
