// The nearest of a system's grades, whether two sizes agree, and a number between two grades.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <optional>
#include <span>

#include "levigate/detail/strict_math.hpp"
#include "levigate/grade/grade.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Index of the nearest grade by |ln size|, of two as near the coarser. Grades fall strictly.
/// Compares d^2 with the product of the neighbours, which is the geometric middle between them.
inline std::size_t nearest_index(std::span<const Grade> grades, double size_um) {
  const auto finer =
      std::ranges::find_if(grades, [&](const Grade& grade) { return grade.median_um < size_um; });
  const auto index = static_cast<std::size_t>(finer - grades.begin());
  if (index == 0) return 0;
  if (index == grades.size()) return index - 1;
  const bool nearer_to_finer =
      size_um * size_um < grades[index - 1].median_um * grades[index].median_um;
  return nearer_to_finer ? index : index - 1;
}

/// Whether two medians differ by no more than their tolerances add up to, in whole picometres:
/// sizes and tolerances are printed decimals, and 1.5 - 1.2 is not above 0.3 as it is in binary.
inline bool within(double median_1_um, double median_2_um, double tolerance_1_um,
                   double tolerance_2_um) {
  const auto pm = [](double um) { return std::llround(um * 1e6); };
  return std::llabs(pm(median_1_um) - pm(median_2_um)) <= pm(tolerance_1_um) + pm(tolerance_2_um);
}

/// Log-log interpolation of the grit number between the grades on either side of a size.
inline std::optional<double> continuous_number(std::span<const Grade> grades, double size_um) {
  if (!grades.front().number) return std::nullopt;
  for (std::size_t i = 0; i < grades.size(); ++i) {
    if (size_um == grades[i].median_um) return grades[i].number;
    if (size_um < grades[i].median_um) continue;
    if (i == 0) return std::nullopt;
    const Grade& coarse = grades[i - 1];
    const Grade& fine = grades[i];
    const double share =
        std::log(coarse.median_um / size_um) / std::log(coarse.median_um / fine.median_um);
    return *coarse.number * std::pow(*fine.number / *coarse.number, share);
  }
  return std::nullopt;
}

}  // namespace detail

}  // namespace levigate
