// The size behind a grit number beyond the finest with a printed size, and how far to trust it.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/tables.hpp"

namespace levigate::inline v0 {

/// An extrapolated median, and the interval that the printed grades leave open.
struct Extrapolation {
  double median_um;
  double low_um;
  double high_um;
};

/// Median of a grade beyond the finest one with a printed size, by a power law through the six
/// finest grades of the system, anchored at the finest:
///
///   d(N) = d_f (N / N_f)^b,   b the least-squares slope of ln d against ln N
///
/// The interval takes the steepest and the shallowest slope between neighbours among the six, and
/// the tolerance of d_f where it is known. For P4000 it gives 5.7 um, 5.0 to 6.4; the trade puts
/// P4000 near 5 um (common practice).
///
/// @param system  one with grit numbers
/// @param number  grit number N (dimensionless), from that of the finest grade with a printed size,
///                N_f, to 2 N_f
/// @return        median and interval [um]
/// Throws:    BadInput for micron, which has no numbers; OutOfRange where number is outside its
///            range
/// NaN:       rejected
/// Accuracy:  4 ulp as arithmetic; as a prediction the interval says
/// Source:    common practice: printed sizes fall along a power of the number
inline Extrapolation extrapolated_size(System system, double number) {
  const std::string where = "extrapolated_size (" + std::string(to_string(system)) + ")";
  if (system == System::micron) throw BadInput("micron labels have no grit number, in " + where);

  std::vector<GradeRow> finest;
  for (const GradeRow& row : grade_rows(system)) {
    if (row.median_um) finest.push_back(row);
  }
  finest.erase(finest.begin(), finest.end() - 6);
  const GradeRow& last = finest.back();
  detail::require_range(number, *last.number, 2 * *last.number, "number", "", where);

  double mean_x = 0;
  double mean_y = 0;
  for (const GradeRow& row : finest) {
    mean_x += std::log(*row.number) / 6;
    mean_y += std::log(*row.median_um) / 6;
  }
  double xx = 0;
  double xy = 0;
  for (const GradeRow& row : finest) {
    const double x = std::log(*row.number) - mean_x;
    xx += x * x;
    xy += x * (std::log(*row.median_um) - mean_y);
  }
  double steepest = 0;
  double shallowest = -std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < finest.size(); ++i) {
    const double slope = std::log(*finest[i].median_um / *finest[i - 1].median_um) /
                         std::log(*finest[i].number / *finest[i - 1].number);
    steepest = std::min(steepest, slope);
    shallowest = std::max(shallowest, slope);
  }
  const double tolerance_um = last.tolerance_um.value_or(0.0);
  const double step = number / *last.number;
  return {.median_um = *last.median_um * std::pow(step, xy / xx),
          .low_um = (*last.median_um - tolerance_um) * std::pow(step, steepest),
          .high_um = (*last.median_um + tolerance_um) * std::pow(step, shallowest)};
}

}  // namespace levigate
