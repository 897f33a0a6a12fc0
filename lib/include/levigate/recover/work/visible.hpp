// From how a mark was seen to the depths it can have.
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/surface/inspection_table.hpp"

namespace levigate::inline v0 {

/// Width from which a scratch shows in the light of a room, where it stands out from the finish from shows_um on.
///
///   max(lamp_um, lamp_ratio shows_um)
///
/// @param shows_um  [um], 0 to 10 000
/// @return          width [um]
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  1 ulp
/// Source:    data/profiles/inspection.json: common practice; on a coarse finish, assumption
inline double lamp_width_um(double shows_um) {
  if (std::isnan(shows_um)) return shows_um;
  return std::max(inspection_table[0].lamp_um.value,
                  inspection_table[0].lamp_ratio.value * shows_um);
}

/// Smallest angle between two lines, whichever way each runs.
///
/// @param a_deg  [deg], any
/// @param b_deg  [deg], any
/// @return       angle [deg], 0 to 90
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  exact but for the rounding of the difference
/// Source:    geometry
inline double angle_between_deg(double a_deg, double b_deg) {
  const double turned = std::fmod(std::abs(a_deg - b_deg), 180.0);
  return std::min(turned, 180.0 - turned);
}

/// Likelihood of a way a mark runs, given the way of a step's strokes; per degree.
///
///   (1 - o) N(angle between; 0, sd), folded at 90 degrees, + o / 180,   o = other_direction_share
///
/// Even over 180 degrees where the mark's way or the step's is not known.
///
/// @param mark_deg  [deg], 0 to 180
/// @param step_deg  [deg], 0 to 180
/// @return          density [1/deg]
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  adds up to 1 over 180 degrees to 1e-8
/// Source:    data/profiles/inspection.json: assumptions
inline double direction_likelihood(std::optional<double> mark_deg, std::optional<double> step_deg) {
  constexpr double any = 1.0 / 180.0;
  if (!mark_deg || !step_deg) return any;
  const double sd_deg = inspection_table[0].direction_sd_deg.value;
  const double other = inspection_table[0].other_direction_share.value;
  const double apart = angle_between_deg(*mark_deg, *step_deg);
  const double close_by = detail::normal_density(apart / sd_deg) +
                          detail::normal_density((180.0 - apart) / sd_deg);  // the other way round
  return (1.0 - other) * close_by / sd_deg + other * any;
}

/// Standard deviation of the logarithm of a width that was measured (dimensionless): loupe_log_sd, else comparison_log_sd.
inline double width_log_sd(Seen seen) {
  return seen == Seen::loupe ? inspection_table[0].loupe_log_sd.value
                             : inspection_table[0].comparison_log_sd.value;
}

}  // namespace levigate
