// The work behind surface/wheel_limits.hpp: defines what it declares.
#pragma once

#include <optional>
#include <string_view>

#include "levigate/surface/wheel_limits.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/sourced.hpp"
#include "levigate/surface/coating_table.hpp"

namespace levigate::inline v0 {

namespace detail {

inline WheelLimits limits_from(const Sourced& speed_m_s, const Sourced& effusivity,
                               const Sourced& rise_k) {
  return {speed_m_s.low, speed_m_s.high, effusivity.value, rise_k.value};
}

/// The limits of a profile, where they are known.
inline std::optional<WheelLimits> limits_of(const CoatingProfile& p) {
  if (!p.speed_m_s || !p.effusivity || !p.rise_k) return std::nullopt;
  return limits_from(*p.speed_m_s, *p.effusivity, *p.rise_k);
}

}  // namespace detail

LEVIGATE_WORK void validate(const WheelLimits& limits, std::string_view where) {
  detail::require_range(limits.speed_high_m_s, 1e-3, 100.0, "speed_high_m_s", "m/s", where);
  detail::require_range(limits.speed_low_m_s, 1e-3, limits.speed_high_m_s,
                        "speed_low_m_s (up to speed_high_m_s)", "m/s", where);
  detail::require_range(limits.effusivity, 1.0, 1e5, "effusivity", "J/(m2 K s^0.5)", where);
  detail::require_range(limits.rise_k, 0.1, 2000.0, "rise_k", "K", where);
}

}  // namespace levigate
