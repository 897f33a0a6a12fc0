// The work behind grade/extrapolate.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <string>
#include <vector>

#include "levigate/grade/extrapolate.hpp"

#include "levigate/detail/strict_math.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/row.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/grade/work/tables.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Extrapolation extrapolated_size(System system, double number) {
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
