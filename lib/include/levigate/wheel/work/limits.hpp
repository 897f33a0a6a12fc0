// The work behind wheel/limits.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/wheel/limits.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/wheel/limit_table.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK WheelLimits wheel_limits_named(std::string_view name) {
  const LimitProfile& p = detail::profile_named(limit_table, name, "surface under a wheel");
  return {std::string(p.name), p.speed_m_s.low, p.speed_m_s.high, p.effusivity.value,
          p.rise_k.value};
}

LEVIGATE_WORK void validate(const WheelLimits& limits, std::string_view where) {
  detail::require_range(limits.speed_high_m_s, 1e-3, 100.0, "speed_high_m_s", "m/s", where);
  detail::require_range(limits.speed_low_m_s, 1e-3, limits.speed_high_m_s,
                        "speed_low_m_s (up to speed_high_m_s)", "m/s", where);
  detail::require_range(limits.effusivity, 1.0, 1e5, "effusivity", "J/(m2 K s^0.5)", where);
  detail::require_range(limits.rise_k, 0.1, 2000.0, "rise_k", "K", where);
}

}  // namespace levigate
