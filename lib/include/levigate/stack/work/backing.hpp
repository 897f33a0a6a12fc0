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

}  // namespace levigate
