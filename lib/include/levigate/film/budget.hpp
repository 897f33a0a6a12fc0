// How deep a zone may be sanded before the chance of cutting through reaches a limit.
#pragma once

#include <cmath>
#include <limits>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// A zone's film and the risk that is accepted.
struct BudgetInput {
  double mean_um;            ///< mean film [um], 0 to 20 000
  double sd_um;              ///< standard deviation of the film at a spot [um], 0 to 20 000
  double removed_cv;         ///< spread of the depth, over the depth (dimensionless), 0 to 2
  double reserve_um;         ///< film that must stay [um], 0 to 20 000
  double spots;              ///< independent spots of the zone (dimensionless), 1 to 1e9
  double cut_through_limit;  ///< chance accepted for the zone (dimensionless), 1e-100 to 1
};

/// Depth at which cut_through() equals the limit, in closed form.
///
///   p = 1 - (1 - limit)^(1 / spots),  z = Q^-1(p),  M = mean - reserve
///   M - D = z sqrt(sd^2 + (removed_cv D)^2)
///
/// a quadratic in D, solved without cancellation. The budget is 0 where even an untouched film
/// exceeds the limit or its mean does not exceed the reserve. It is infinite where no depth reaches
/// the limit: a limit of 1, or one so high that the spread of the depth keeps the chance below it.
///
/// @param input  film and limit; see BudgetInput for units and ranges
/// @return       largest depth, scratches included [um], 0 to infinity
/// Throws:    OutOfRange where a member is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  cut_through() of the result equals the limit to 1e-10 relative where the spread at
///            that depth exceeds 1e-4 of mean_um
/// Source:    that of cut_through()
inline double depth_budget_um(const BudgetInput& input) {
  if (detail::any_nan(input.mean_um, input.sd_um, input.removed_cv, input.reserve_um, input.spots,
                      input.cut_through_limit)) {
    return std::nan("");
  }
  constexpr auto where = "depth_budget_um";
  detail::require_range(input.mean_um, 0.0, 2e4, "mean_um", "um", where);
  detail::require_range(input.sd_um, 0.0, 2e4, "sd_um", "um", where);
  detail::require_range(input.removed_cv, 0.0, 2.0, "removed_cv", "", where);
  detail::require_range(input.reserve_um, 0.0, 2e4, "reserve_um", "um", where);
  detail::require_range(input.spots, 1.0, 1e9, "spots", "", where);
  detail::require_range(input.cut_through_limit, 1e-100, 1.0, "cut_through_limit", "", where);
  constexpr double infinity = std::numeric_limits<double>::infinity();
  const double mean = input.mean_um - input.reserve_um;
  if (mean <= 0.0) return 0.0;
  if (input.cut_through_limit == 1.0) return infinity;

  // The nearer tail keeps its digits: p where it is small, 1 - p where p is near 1.
  const double log_kept = std::log1p(-input.cut_through_limit) / input.spots;
  const double kept = std::exp(log_kept);
  const double z =
      kept < 0.5 ? -detail::normal_quantile(kept) : detail::normal_quantile(-std::expm1(log_kept));
  const double film_part = z * input.sd_um;
  const double depth_part = z * input.removed_cv;
  if (z >= 0.0) {
    if (film_part > mean) return 0.0;
    const double product = (mean - film_part) * (mean + film_part);
    return product / (mean + std::hypot(film_part, depth_part * std::sqrt(product)));
  }
  const double leading = (1.0 - depth_part) * (1.0 + depth_part);
  if (leading <= 0.0) return infinity;
  return (mean + std::hypot(film_part * std::sqrt(leading), depth_part * mean)) / leading;
}

}  // namespace levigate
