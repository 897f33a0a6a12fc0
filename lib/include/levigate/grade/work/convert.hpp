// The work behind grade/convert.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "levigate/grade/convert.hpp"

#include "levigate/detail/normal.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/grade/work/nearest.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK double size_overlap(double median_1_um, double log_spread_1, double median_2_um,
                                  double log_spread_2) {
  if (detail::any_nan(median_1_um, log_spread_1, median_2_um, log_spread_2)) return std::nan("");
  constexpr auto where = "size_overlap";
  detail::require_range(median_1_um, 1e-3, 1e6, "median_1_um", "um", where);
  detail::require_range(median_2_um, 1e-3, 1e6, "median_2_um", "um", where);
  detail::require_range(log_spread_1, 1e-6, 10.0, "log_spread_1", "", where);
  detail::require_range(log_spread_2, 1e-6, 10.0, "log_spread_2", "", where);
  const double narrow = std::min(log_spread_1, log_spread_2);
  const double r = std::max(log_spread_1, log_spread_2) / narrow;
  const double distance = std::abs(std::log(median_1_um / median_2_um)) / narrow;
  if (r == 1.0) return 2.0 * detail::normal_tail(distance / 2.0);

  // Between the crossings the wide density is the lower one, outside them the narrow one. The
  // roots are taken from the sum that cannot cancel.
  const double a = (r - 1.0) * (r + 1.0);
  const double c = distance * distance + 2.0 * r * r * std::log(r);
  const double q = distance + std::sqrt(distance * distance + a * c);
  const double left = -q / a;
  const double right = c / q;
  const auto wide_below = [&](double t) { return detail::normal_tail((distance - t) / r); };
  return detail::normal_tail(-left) + (wide_below(right) - wide_below(left)) +
         detail::normal_tail(right);
}

LEVIGATE_WORK Equivalent convert(const Grade& given, System system) {
  detail::require_range(given.median_um, 0.01, 1e4, "median_um", "um", "convert");
  const std::vector<Grade> all = grades(system);
  const std::size_t index = detail::nearest_index(all, given.median_um);
  Equivalent found;
  found.given = given;
  found.grade = all[index];
  found.size_ratio = found.grade.median_um / given.median_um;
  if (given.tolerance_um || found.grade.tolerance_um) {
    found.within_tolerance =
        detail::within(given.median_um, found.grade.median_um, given.tolerance_um.value_or(0.0),
                       found.grade.tolerance_um.value_or(0.0));
  }
  found.overlap = size_overlap(given.median_um, log_spread(given), found.grade.median_um,
                               log_spread(found.grade));
  found.number = detail::continuous_number(all, given.median_um);
  if (index > 0) found.coarser = all[index - 1];
  if (index + 1 < all.size()) found.finer = all[index + 1];
  return found;
}

LEVIGATE_WORK std::vector<std::size_t> nearest(std::span<const double> sizes_um, System system) {
  std::vector<std::size_t> indices(sizes_um.size());
  nearest_into(sizes_um, system, indices);
  return indices;
}

LEVIGATE_WORK void nearest_into(std::span<const double> sizes_um, System system,
                                std::span<std::size_t> indices) {
  if (indices.size() != sizes_um.size()) {
    throw BadInput("nearest: " + std::to_string(sizes_um.size()) + " sizes_um and room for " +
                   std::to_string(indices.size()) + " indices");
  }
  const detail::NearestTable table(grades(system));
  for (std::size_t i = 0; i < sizes_um.size(); ++i) {
    const double size_um = sizes_um[i];
    if (!(size_um >= 0.01 && size_um <= 1e4)) {
      detail::require_range(size_um, 0.01, 1e4, "sizes_um[" + std::to_string(i) + "]", "um",
                            "nearest");
    }
    indices[i] = table(size_um);
  }
}

}  // namespace levigate
