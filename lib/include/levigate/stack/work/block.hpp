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
          p.speed_m_s.value,   p.duty.value,        p.wrap.value,     {}};
}

LEVIGATE_WORK void validate(const Block& block, std::string_view where) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  detail::require_range(block.modulus_mpa, 0.001, infinity, "modulus_mpa", "MPa", where);
  detail::require_range(block.area_cm2, 0.01, 1e5, "area_cm2", "cm2", where);
  detail::require_range(block.force_n, 1e-3, 1e5, "force_n", "N", where);
  detail::require_range(block.pressure_kpa(), 0.01, 1e3, "pressure_kpa (force_n over area_cm2)",
                        "kPa", where);
  detail::require_range(block.speed_m_s, 1e-3, 100.0, "speed_m_s", "m/s", where);
  detail::require_range(block.duty, 0.01, 1.0, "duty", "", where);
  detail::require_range(block.wrap, 0.0, 100.0, "wrap", "", where);
}

}  // namespace levigate
