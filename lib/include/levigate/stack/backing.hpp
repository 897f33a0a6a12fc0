// What carries the grain: the backing's stiffness under one grain, how evenly the tips stand, and how long
// the sheet cuts.
#pragma once

#include <string>
#include <string_view>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// Name of a backing that is told by its numbers without a name.
inline constexpr std::string_view nameless_backing = "own backing";

/// The backing of one sheet or pad.
struct Backing {
  std::string name;
  double tip_spread =
      0;  ///< standard deviation of the tips' heights as a share of the grain size, 0 to 1
  double modulus_mpa = 0;    ///< modulus at the scale of a grain [MPa], 0.01 to infinity (rigid)
  double life_m = 0;         ///< block travel that one piece lasts [m]
  double clean_every_m = 0;  ///< block travel between two cleanings [m]
  double fade_m = 0;         ///< travel over which clogging takes hold [m]
  double floor = 0;          ///< share of the fresh rate that clogged paper keeps, 0 to 1

  friend bool operator==(const Backing&, const Backing&) = default;
};

/// The backing of that name in the profiles.
/// Throws: BadInput where there is none, naming the nearest.
Backing backing_named(std::string_view name);

/// Throws: OutOfRange where a member is outside the range stated at it.
void validate(const Backing& backing, std::string_view where);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/stack/work/backing.hpp"
#endif
