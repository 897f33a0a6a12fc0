// The surface speed of a turning wheel.
#pragma once

#include <cmath>
#include <numbers>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// Speed of the rim of a wheel.
///
///   v = pi diameter rpm / 60 s
///
/// @param diameter_mm  of the wheel [mm], 1 to 10 000
/// @param rpm          turns per minute [1/min], 0 to 1 000 000
/// @return             surface speed [m/s]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp
/// Source:    geometry
inline double surface_speed_m_s(double diameter_mm, double rpm) {
  if (detail::any_nan(diameter_mm, rpm)) return std::nan("");
  constexpr auto where = "surface_speed_m_s";
  detail::require_range(diameter_mm, 1.0, 1e4, "diameter_mm", "mm", where);
  detail::require_range(rpm, 0.0, 1e6, "rpm", "1/min", where);
  return std::numbers::pi * diameter_mm * rpm / 60e3;
}

}  // namespace levigate
