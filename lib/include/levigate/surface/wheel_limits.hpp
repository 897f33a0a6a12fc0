// What a surface stands from a wheel: the band of rim speeds for it, how it takes up heat, how warm it may get.
#pragma once

#include <string_view>

#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// Limits of a surface under a wheel.
struct WheelLimits {
  double speed_low_m_s = 0;   ///< least rim speed that works [m/s], 0.001 to speed_high_m_s
  double speed_high_m_s = 0;  ///< highest rim speed [m/s], to 100
  double effusivity = 0;      ///< thermal effusivity of the surface [J/(m2 K s^0.5)], 1 to 100 000
  double rise_k = 0;          ///< rise above room temperature that it stands [K], 0.1 to 2000

  friend bool operator==(const WheelLimits&, const WheelLimits&) = default;
};

/// Throws: OutOfRange where a member is outside its range.
inline void validate(const WheelLimits& limits, std::string_view where) {
  detail::require_range(limits.speed_high_m_s, 1e-3, 100.0, "speed_high_m_s", "m/s", where);
  detail::require_range(limits.speed_low_m_s, 1e-3, limits.speed_high_m_s,
                        "speed_low_m_s (up to speed_high_m_s)", "m/s", where);
  detail::require_range(limits.effusivity, 1.0, 1e5, "effusivity", "J/(m2 K s^0.5)", where);
  detail::require_range(limits.rise_k, 0.1, 2000.0, "rise_k", "K", where);
}

}  // namespace levigate
