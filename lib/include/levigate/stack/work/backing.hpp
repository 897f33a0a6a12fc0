// The work behind stack/backing.hpp: defines what it declares.
#pragma once

#include <limits>
#include <string>
#include <string_view>

#include "levigate/stack/backing.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/backing_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Backing backing_named(std::string_view name) {
  const BackingProfile& p = detail::profile_named(backing_table, name, "backing");
  return {std::string(p.name),   p.tip_spread.value, p.modulus_mpa.value, p.life_m.value,
          p.clean_every_m.value, p.fade_m.value,     p.floor.value};
}

LEVIGATE_WORK void validate(const Backing& backing, std::string_view where) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  detail::require_range(backing.tip_spread, 0.0, 1.0, "tip_spread", "", where);
  detail::require_range(backing.modulus_mpa, 0.01, infinity, "modulus_mpa", "MPa", where);
  detail::require_range(backing.life_m, 0.1, 1e9, "life_m", "m", where);
  detail::require_range(backing.clean_every_m, 0.0, 1e9, "clean_every_m", "m", where);
  detail::require_range(backing.fade_m, 1e-6, 1e9, "fade_m", "m", where);
  detail::require_range(backing.floor, 0.0, 1.0, "floor", "", where);
}

}  // namespace levigate
