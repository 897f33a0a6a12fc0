// The work behind stack/block.hpp: defines what it declares.
#pragma once

#include <limits>
#include <string>
#include <string_view>

#include "levigate/stack/block.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/block_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Block block_named(std::string_view name) {
  const BlockProfile& p = detail::profile_named(block_table, name, "block");
  return {std::string(p.name), p.modulus_mpa.value, p.area_cm2.value, p.force_n.value,
          p.speed_m_s.value,   p.duty.value,        p.wrap.value};
}

}  // namespace levigate
