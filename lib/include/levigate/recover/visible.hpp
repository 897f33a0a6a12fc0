// From the width of a scratch to its depth, and from how a mark was seen to the depths it can have.
#pragma once

#include <cmath>
#include <numbers>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/recover/inspection_table.hpp"
#include "levigate/recover/mark.hpp"

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

/// Smallest angle between two lines, whichever way each runs [deg], 0 to 90.
inline double angle_between_deg(double a_deg, double b_deg) {
  const double turned = std::fmod(std::abs(a_deg - b_deg), 180.0);
  return std::min(turned, 180.0 - turned);
}

/// Likelihood of a way a mark runs, given the way of a step's strokes; per degree.
///
///   (1 - o) N(angle between; 0, sd), folded at 90 degrees, + o / 180,   o = other_direction_share
///
/// Even over 180 degrees where the mark's way or the step's is not known.
inline double direction_likelihood(std::optional<double> mark_deg, std::optional<double> step_deg) {
  constexpr double any = 1.0 / 180.0;
  if (!mark_deg || !step_deg) return any;
  const double sd_deg = inspection_table[0].direction_sd_deg.value;
  const double other = inspection_table[0].other_direction_share.value;
  const double apart = angle_between_deg(*mark_deg, *step_deg);
  const double near = detail::normal_density(apart / sd_deg) +
                      detail::normal_density((180.0 - apart) / sd_deg);  // the other way round
  return (1.0 - other) * near / sd_deg + other * any;
}

/// Standard deviation of the logarithm of a width that was measured (dimensionless).
inline double width_log_sd(Seen seen) {
  return seen == Seen::loupe ? inspection_table[0].loupe_log_sd.value
                             : inspection_table[0].comparison_log_sd.value;
}

}  // namespace levigate
