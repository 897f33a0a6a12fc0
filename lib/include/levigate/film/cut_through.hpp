// The chance of sanding through the film somewhere in a zone.
#pragma once

#include <cmath>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/film/common_chance.hpp"

namespace levigate::inline v0 {

/// A zone's film and the depth to be reached in it.
struct CutThroughInput {
  double depth_um;        ///< depth to be reached, scratches included [um], 0 to 1e9
  double mean_um;         ///< mean film [um], 0 to 20 000
  double sd_um;           ///< standard deviation of the film at a spot [um], 0 to 20 000
  double removed_cv;      ///< spread of the depth, over the depth (dimensionless), 0 to 2
  double reserve_um;      ///< film that must stay [um], 0 to 20 000
  double spots;           ///< independent spots, one per cm2 of the zone (dimensionless), 1 to 1e9
  CommonErrors common{};  ///< errors that all spots share; see there for units and ranges
};

/// Chance that at least one spot of the zone ends with less film than the reserve.
///
///   p = Q((mean - reserve - depth) / sqrt(sd^2 + (removed_cv depth)^2)),   1 - (1 - p)^spots
///
/// with Q the upper tail of the normal distribution. Without any spread the chance is 0 up to
/// depth = mean - reserve, where the reserve just stays, and 1 beyond. Errors that all spots share
/// do not add to the spread of each: the chance is its mean over them, for mean', sigma and depth'
/// of CommonErrors in place of mean, sd and depth.
///
/// @code
/// const CutThroughInput zone{.depth_um = 20,
///                            .mean_um = 60,
///                            .sd_um = 8,
///                            .removed_cv = 0.2,
///                            .reserve_um = 10,
///                            .spots = 500};
/// cut_through(zone);  // 0.181
/// @endcode
///
/// @param input  film and depth; see CutThroughInput for units and ranges
/// @return       chance (dimensionless), 0 to 1
/// Throws:    OutOfRange where a member is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-12 relative down to chances of 1e-300; with common errors 1e-3 relative for chances
///            from 1e-10 to 0.5, by quadrature, where removed_cv is 0.5 at most, readings are 0 or
///            at least 3 and peel_factor is 3 at most
/// Source:    normal film and normal depth, independent from spot to spot, a spot per cm2:
///            assumptions; film of few readings: normal sampling theory; peel: log-normal, assumption
inline double cut_through(const CutThroughInput& input) {
  if (detail::any_nan(input.depth_um, input.mean_um, input.sd_um, input.removed_cv,
                      input.reserve_um, input.spots) ||
      detail::any_nan(input.common)) {
    return std::nan("");
  }
  constexpr auto where = "cut_through";
  detail::require_range(input.depth_um, 0.0, 1e9, "depth_um", "um", where);
  detail::require_range(input.mean_um, 0.0, 2e4, "mean_um", "um", where);
  detail::require_range(input.sd_um, 0.0, 2e4, "sd_um", "um", where);
  detail::require_range(input.removed_cv, 0.0, 2.0, "removed_cv", "", where);
  detail::require_range(input.reserve_um, 0.0, 2e4, "reserve_um", "um", where);
  detail::require_range(input.spots, 1.0, 1e9, "spots", "", where);
  detail::require_common(input.common, where);
  if (!detail::none_common(input.common)) {
    return detail::CommonChance(input.mean_um - input.reserve_um, input.sd_um, input.removed_cv,
                                input.spots, input.common)(input.depth_um);
  }
  const double left = input.mean_um - input.reserve_um - input.depth_um;
  const double spread = std::hypot(input.sd_um, input.removed_cv * input.depth_um);
  if (spread == 0.0) return left < 0.0 ? 1.0 : 0.0;
  const double spot = detail::normal_tail(left / spread);
  return -std::expm1(input.spots * std::log1p(-spot));
}

}  // namespace levigate
