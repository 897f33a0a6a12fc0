// What the profile of a coating says that it stands from a wheel.
#pragma once

#include <optional>

#include "levigate/sourced.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/wheel_limits.hpp"

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

}  // namespace levigate
