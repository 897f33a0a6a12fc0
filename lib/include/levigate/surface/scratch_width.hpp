// From the width of a scratch to its depth, and back.
#pragma once

#include <cmath>
#include <numbers>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// Depth of a scratch of that width: a V whose sides make the flank angle with the surface.
///
///   depth = width / 2 tan(flank)
///
/// @param width_um   across the scratch [um], 0 to 10 000
/// @param flank_deg  angle of its sides with the surface [deg], 1 to 80
/// @return           depth [um]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp
/// Source:    geometry; grains as cones, as in contact()
inline double depth_of_width_um(double width_um, double flank_deg) {
  if (detail::any_nan(width_um, flank_deg)) return std::nan("");
  constexpr auto where = "depth_of_width_um";
  detail::require_range(width_um, 0.0, 1e4, "width_um", "um", where);
  detail::require_range(flank_deg, 1.0, 80.0, "flank_deg", "deg", where);
  return 0.5 * width_um * std::tan(flank_deg * (std::numbers::pi / 180.0));
}

/// The width of a scratch of that depth: the inverse of depth_of_width_um().
///
/// @param depth_um   [um], 0 to 10 000
/// @param flank_deg  angle of its sides with the surface [deg], 1 to 80
/// @return           width [um]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp
/// Source:    that of depth_of_width_um()
inline double width_of_depth_um(double depth_um, double flank_deg) {
  if (detail::any_nan(depth_um, flank_deg)) return std::nan("");
  constexpr auto where = "width_of_depth_um";
  detail::require_range(depth_um, 0.0, 1e4, "depth_um", "um", where);
  detail::require_range(flank_deg, 1.0, 80.0, "flank_deg", "deg", where);
  return 2.0 * depth_um / std::tan(flank_deg * (std::numbers::pi / 180.0));
}

}  // namespace levigate
