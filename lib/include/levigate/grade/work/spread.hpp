// The work behind grade/spread.hpp: defines what it declares.
#pragma once

#include <cmath>
#include <numeric>
#include <optional>

#include "levigate/grade/spread.hpp"

#include "levigate/detail/strict_math.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/row.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/grade/work/tables.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Standard normal quantiles of the shares that grade limits are stated for.
inline constexpr double normal_97 = 1.8807936081512509;

inline constexpr double normal_95 = 1.6448536269514722;

inline constexpr double normal_94 = 1.5547735945968535;

inline constexpr double normal_75 = 0.6744897501960817;

inline double fine_quantile(double fine_percent) {
  if (fine_percent == 95) return normal_95;
  if (fine_percent == 94) return normal_94;
  if (fine_percent == 75) return normal_75;
  throw BadInput("fine_percent = " + number_text(fine_percent) + " % is not 95, 94 or 75");
}

/// The log spread that limits imply, if there is one: the mean over the sides that have a limit.
inline std::optional<double> spread_of_limits(double median_um, std::optional<double> coarse_um,
                                              std::optional<double> fine_um,
                                              std::optional<double> fine_percent) {
  if (!coarse_um && !fine_um) return std::nullopt;
  constexpr auto where = "log_spread";
  require_range(median_um, 0.01, 1e4, "median_um", "um", where);
  std::optional<double> coarse_side;
  std::optional<double> fine_side;
  if (coarse_um) {
    require_range(*coarse_um, median_um, 1e5, "coarse_limit_um", "um", where);
    coarse_side = std::log(*coarse_um / median_um) / normal_97;
  }
  if (fine_um) {
    require_range(*fine_um, 1e-3, median_um, "fine_limit_um", "um", where);
    fine_side = std::log(median_um / *fine_um) / fine_quantile(fine_percent.value_or(0.0));
  }
  if (coarse_side && fine_side) return std::midpoint(*coarse_side, *fine_side);
  return coarse_side ? coarse_side : fine_side;
}

inline std::optional<double> spread_of_limits(const auto& grade, double median_um) {
  return spread_of_limits(median_um, grade.coarse_limit_um, grade.fine_limit_um,
                          grade.fine_percent);
}

}  // namespace detail

LEVIGATE_WORK Spread spread(const Grade& grade) {
  if (const auto own = detail::spread_of_limits(grade, grade.median_um)) {
    return {*own, {Basis::computed, "from the limits of the grade, log-normal distribution"}};
  }
  if (grade.system == System::micron || !grade.number) {
    return {0.20, {Basis::assumption, "micron grading, no limits published"}};
  }
  std::optional<double> neighbour;
  for (const GradeRow& row : grade_rows(grade.system)) {
    if (*row.number > *grade.number || !row.median_um) break;
    if (const auto found = detail::spread_of_limits(row, *row.median_um)) neighbour = found;
  }
  if (neighbour) {
    return {*neighbour, {Basis::assumption, "as the nearest coarser grade that has limits"}};
  }
  if (*grade.number <= 220) return {0.15, {Basis::assumption, "graded by sieves"}};
  return {0.30, {Basis::assumption, "micro grit without published limits"}};
}

LEVIGATE_WORK double log_spread(const Grade& grade) { return spread(grade).log_spread; }

LEVIGATE_WORK double coarse_tail_um(const Grade& grade) {
  if (grade.coarse_limit_um) return *grade.coarse_limit_um;
  detail::require_range(grade.median_um, 0.01, 1e4, "median_um", "um", "coarse_tail_um");
  return grade.median_um * std::exp(detail::normal_97 * log_spread(grade));
}

}  // namespace levigate
