// What carries the grain: the backing's stiffness under one grain, how evenly the tips stand, and how long
// the sheet cuts.
#pragma once

#include <limits>
#include <string>
#include <string_view>

#include "levigate/detail/profile.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/backing_table.hpp"

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
  /// What a journal taught: how much faster it removes, and how much deeper and rougher it scratches, than is computed.
  double rate_factor = 1;     ///< 0.01 to 100
  double scratch_factor = 1;  ///< 0.01 to 100

  friend bool operator==(const Backing&, const Backing&) = default;
};

/// The backing of that name in the profiles.
/// Throws: BadInput where there is none, naming the nearest.
inline Backing backing_named(std::string_view name) {
  const BackingProfile& p = detail::profile_named(backing_table, name, "backing");
  return {std::string(p.name),   p.tip_spread.value, p.modulus_mpa.value, p.life_m.value,
          p.clean_every_m.value, p.fade_m.value,     p.floor.value};
}

/// Throws: OutOfRange where a member is outside the range stated at it.
inline void validate(const Backing& backing, std::string_view where) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  detail::require_range(backing.tip_spread, 0.0, 1.0, "tip_spread", "", where);
  detail::require_range(backing.modulus_mpa, 0.01, infinity, "modulus_mpa", "MPa", where);
  detail::require_range(backing.life_m, 0.1, 1e9, "life_m", "m", where);
  detail::require_range(backing.clean_every_m, 0.0, 1e9, "clean_every_m", "m", where);
  detail::require_range(backing.fade_m, 1e-6, 1e9, "fade_m", "m", where);
  detail::require_range(backing.floor, 0.0, 1.0, "floor", "", where);
  detail::require_range(backing.rate_factor, 0.01, 100.0, "rate_factor", "", where);
  detail::require_range(backing.scratch_factor, 0.01, 100.0, "scratch_factor", "", where);
}

}  // namespace levigate
