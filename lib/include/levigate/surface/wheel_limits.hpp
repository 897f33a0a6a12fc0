// What a surface stands from a wheel: the band of rim speeds for it, how it takes up heat, how warm it may get.
#pragma once

#include <string_view>

#include "levigate/version.hpp"

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
void validate(const WheelLimits& limits, std::string_view where);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/surface/work/wheel_limits.hpp"
#endif
