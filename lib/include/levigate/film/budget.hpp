// How deep a zone may be sanded before the chance of cutting through reaches a limit.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/film/common_chance.hpp"

namespace levigate::inline v0 {

/// A zone's film and the risk that is accepted.
struct BudgetInput {
  double mean_um;            ///< mean film [um], 0 to 20 000
  double sd_um;              ///< standard deviation of the film at a spot [um], 0 to 20 000
  double removed_cv;         ///< spread of the depth, over the depth (dimensionless), 0 to 2
  double reserve_um;         ///< film that must stay [um], 0 to 20 000
  double spots;              ///< independent spots of the zone (dimensionless), 1 to 1e9
  double cut_through_limit;  ///< chance accepted for the zone (dimensionless), 1e-100 to 1
  CommonErrors common{};     ///< errors that all spots share; see there for units and ranges

  friend bool operator==(const BudgetInput&, const BudgetInput&) = default;
};

namespace detail {

/// The depth D at which mean - D is hypot(film_part, depth_part D), or where it is not `above` the negative of that. Below 0: there is
/// none.
inline double depth_within(double mean, double film_part, double depth_part, bool above) {
  if (above) {
    if (mean <= 0.0 || film_part > mean) return -1.0;
    const double product = (mean - film_part) * (mean + film_part);
    return product / (mean + std::hypot(film_part, depth_part * std::sqrt(product)));
  }
  const double leading = (1.0 - depth_part) * (1.0 + depth_part);
  if (leading <= 0.0) return std::numeric_limits<double>::infinity();
  return (mean + std::hypot(film_part * std::sqrt(leading), depth_part * mean)) / leading;
}

/// The chance of cutting through at any depth, with errors that all spots share.
inline CommonChance common_chance(const BudgetInput& zone) {
  return {zone.mean_um - zone.reserve_um, zone.sd_um, zone.removed_cv, zone.spots, zone.common};
}

/// depth_budget_um() with errors that all spots share: the root by Ridders' method, in the quantile of the chance, which is
/// nearly straight in the depth.
inline double budget_with_common_um(const BudgetInput& input) {
  constexpr double deepest_um = 1e9, most_sigmas = 40.0, close = 1e-10;
  const CommonChance chance = common_chance(input);
  const double aim = normal_quantile(input.cut_through_limit);
  const auto beyond = [&](double depth_um) {
    return aim - std::clamp(normal_quantile(chance(depth_um)), -most_sigmas, most_sigmas);
  };
  double low_um = 0, low = beyond(low_um);
  if (low > 0.0) return 0.0;
  double high_um = input.mean_um - input.reserve_um, high = beyond(high_um);
  while (high <= 0.0) {
    low_um = high_um;
    low = high;
    high_um *= 2.0;
    if (high_um > deepest_um) return std::numeric_limits<double>::infinity();
    high = beyond(high_um);
  }
  for (int step = 0; step < 100 && high_um - low_um > close * high_um; ++step) {
    const double middle_um = 0.5 * (low_um + high_um), middle = beyond(middle_um);
    const double root_um =
        middle_um - (middle_um - low_um) * middle / std::sqrt(middle * middle - low * high);
    const double root = beyond(root_um);
    if (std::abs(root) < close) return root_um;
    for (const auto& [depth_um, value] : {std::pair(middle_um, middle), std::pair(root_um, root)}) {
      if (value <= 0.0 && depth_um >= low_um) {
        low_um = depth_um;
        low = value;
      } else if (value > 0.0 && depth_um <= high_um) {
        high_um = depth_um;
        high = value;
      }
    }
  }
  return low_um;
}

}  // namespace detail

/// Depth at which cut_through() equals the limit, in closed form unless there are common errors.
///
///   p = 1 - (1 - limit)^(1 / spots),  z = Q^-1(p),  M = mean - reserve
///   M - D = z sqrt(sd^2 + (removed_cv D)^2)
///
/// a quadratic in D, solved without cancellation. The budget is 0 where even an untouched film
/// exceeds the limit or its mean does not exceed the reserve. It is infinite where no depth reaches
/// the limit: a limit of 1, or one so high that the spread of the depth keeps the chance below it.
/// With errors that all spots share it is the root of cut_through() less the limit, from below.
///
/// @param input  film and limit; see BudgetInput for units and ranges
/// @return       largest depth, scratches included [um], 0 to infinity
/// Throws:    OutOfRange where a member is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  cut_through() of the result equals the limit to 1e-10 relative where the spread at
///            that depth exceeds 1e-4 of mean_um; with common errors that of cut_through()
/// Source:    that of cut_through()
inline double depth_budget_um(const BudgetInput& input) {
  if (detail::any_nan(input.mean_um, input.sd_um, input.removed_cv, input.reserve_um, input.spots,
                      input.cut_through_limit) ||
      detail::any_nan(input.common)) {
    return std::nan("");
  }
  constexpr auto where = "depth_budget_um";
  detail::require_range(input.mean_um, 0.0, 2e4, "mean_um", "um", where);
  detail::require_range(input.sd_um, 0.0, 2e4, "sd_um", "um", where);
  detail::require_range(input.removed_cv, 0.0, 2.0, "removed_cv", "", where);
  detail::require_range(input.reserve_um, 0.0, 2e4, "reserve_um", "um", where);
  detail::require_range(input.spots, 1.0, 1e9, "spots", "", where);
  detail::require_range(input.cut_through_limit, 1e-100, 1.0, "cut_through_limit", "", where);
  detail::require_common(input.common, where);
  const double mean = input.mean_um - input.reserve_um;
  if (mean <= 0.0) return 0.0;
  if (input.cut_through_limit == 1.0) return std::numeric_limits<double>::infinity();
  if (!detail::none_common(input.common)) return detail::budget_with_common_um(input);

  // The nearer tail keeps its digits: p where it is small, 1 - p where p is near 1.
  const double log_kept = std::log1p(-input.cut_through_limit) / input.spots;
  const double kept = std::exp(log_kept);
  const double z =
      kept < 0.5 ? -detail::normal_quantile(kept) : detail::normal_quantile(-std::expm1(log_kept));
  const double out = std::abs(z);
  return std::max(0.0,
                  detail::depth_within(mean, out * input.sd_um, out * input.removed_cv, z >= 0.0));
}

}  // namespace levigate
