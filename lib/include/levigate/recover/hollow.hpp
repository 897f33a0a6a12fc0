// The hollow that a patch leaves round a mark, and how wide it must be not to show.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// Width of a patch whose hollow is nowhere steeper than a slope.
///
/// The depth is taken at the mark and feathered out to nothing at the rim, h(r) = D/2 (1 + cos(2 pi r / w)), r up to w/2. It is
/// steepest halfway out:
///
///   max |dh/dr| = pi D / w,   w = max(2 L, pi D / s)
///
/// A tool whose middle moves over the mark by its own length L wears 2 L, however little comes off.
///
/// @param depth_um         taken at the mark D [um], 0 to 10 000
/// @param slope_um_per_mm  that does not show s [um/mm], 1e-4 to 100
/// @param face_mm          side of the largest tool L [mm], 0.1 to 10 000
/// @return                 rim to rim w [mm]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp; as a model, a hand that feathers out evenly: assumption
/// Source:    geometry; slope: data/profiles/inspection.json
inline double patch_width_mm(double depth_um, double slope_um_per_mm, double face_mm) {
  if (detail::any_nan(depth_um, slope_um_per_mm, face_mm)) return std::nan("");
  constexpr auto where = "patch_width_mm";
  detail::require_range(depth_um, 0.0, 1e4, "depth_um", "um", where);
  detail::require_range(slope_um_per_mm, 1e-4, 100.0, "slope_um_per_mm", "um/mm", where);
  detail::require_range(face_mm, 0.1, 1e4, "face_mm", "mm", where);
  return std::max(2.0 * face_mm, std::numbers::pi * depth_um / slope_um_per_mm);
}

/// Area that takes as much volume where it is lowered evenly as a patch does whose hollow is as deep at the mark.
///
///   volume / D = (1/2 - 2/pi^2) (pi/4) w^2,   of the profile in patch_width_mm()
///
/// @param width_mm  rim to rim w [mm], 0 to 1e6
/// @return          [cm2]
/// Throws:    OutOfRange where the width is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp
/// Source:    integral of the profile over the disc
inline double hollow_area_cm2(double width_mm) {
  if (std::isnan(width_mm)) return width_mm;
  detail::require_range(width_mm, 0.0, 1e6, "width_mm", "mm", "hollow_area_cm2");
  constexpr double pi = std::numbers::pi;
  constexpr double mm2_per_cm2 = 100.0;
  return (0.5 - 2.0 / (pi * pi)) * (0.25 * pi) * width_mm * width_mm / mm2_per_cm2;
}

}  // namespace levigate
