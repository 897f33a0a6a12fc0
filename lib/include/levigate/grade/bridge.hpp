// Closing a gap: the fewest grades of a system that lead from one size down to another.
#pragma once

#include <algorithm>
#include <limits>
#include <optional>
#include <vector>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/ratio.hpp"

namespace levigate::inline v0 {

/// The fewest grades between two sizes such that every step d_i / d_(i+1) of the whole way, the
/// first and the last included, lies in min_ratio to max_ratio. Among the fewest, the most even:
/// its largest ratio is the smallest; among those still equal, the coarser grades. Grades whose size is extrapolated are left out: nobody
/// should buy one for its size.
///
/// @param coarse_um  where the way starts [um], 0.01 to 10 000
/// @param fine_um    where it ends [um], 0.01 to below coarse_um
/// @param system     whose grades
/// @param min_ratio  smallest ratio of a step (dimensionless), 1 to below max_ratio
/// @param max_ratio  largest ratio of a step (dimensionless), up to 1000
/// @return           the grades, coarse to fine: empty where one step will do, none where no
///                   grades will
/// Throws:    OutOfRange where an argument is outside its range; BadInput where fine_um is not
///            below coarse_um or min_ratio not below max_ratio
/// NaN:       rejected
/// Accuracy:  decisions as those of ratio_within()
/// Source:    exact shortest path from the fine end; checked against enumeration
inline std::optional<std::vector<Grade>> bridge(double coarse_um, double fine_um, System system,
                                                double min_ratio, double max_ratio) {
  constexpr auto where = "bridge";
  detail::require_range(coarse_um, 0.01, 1e4, "coarse_um", "um", where);
  detail::require_range(fine_um, 0.01, 1e4, "fine_um", "um", where);
  detail::require_range(min_ratio, 1.0, 1e3, "min_ratio", "", where);
  detail::require_range(max_ratio, 1.0, 1e3, "max_ratio", "", where);
  if (fine_um >= coarse_um) throw BadInput("fine_um must be below coarse_um, in bridge");
  if (min_ratio >= max_ratio) throw BadInput("min_ratio must be below max_ratio, in bridge");

  std::vector<Grade> between = grades(system);
  std::erase_if(between, [&](const Grade& grade) {
    return grade.median_um >= coarse_um || grade.median_um <= fine_um ||
           grade.basis() == Basis::extrapolated;
  });
  std::vector<double> sizes_um{coarse_um};
  for (const Grade& grade : between) sizes_um.push_back(grade.median_um);
  sizes_um.push_back(fine_um);

  // From each size, the best way to the end: fewest steps, then the smallest largest ratio.
  struct Way {
    std::size_t steps;
    double largest_ratio;
    auto operator<=>(const Way&) const = default;
  };
  constexpr Way no_way{std::numeric_limits<std::size_t>::max(), 0.0};
  const std::size_t last = sizes_um.size() - 1;
  std::vector<Way> ways(sizes_um.size(), no_way);
  ways[last] = {0, 1.0};
  const auto way_over = [&](std::size_t from, std::size_t to) -> Way {
    const double ratio = sizes_um[from] / sizes_um[to];
    if (ways[to] == no_way || !ratio_within(sizes_um[from], sizes_um[to], min_ratio, max_ratio)) {
      return no_way;
    }
    return {ways[to].steps + 1, std::max(ratio, ways[to].largest_ratio)};
  };
  for (std::size_t from = last; from-- > 0;) {
    for (std::size_t to = from + 1; to <= last; ++to) {
      ways[from] = std::min(ways[from], way_over(from, to));
    }
  }
  if (ways[0] == no_way) return std::nullopt;

  std::vector<Grade> result;
  for (std::size_t at = 0; ways[at].steps > 1;) {
    std::size_t to = at + 1;
    while (true) {
      const Way way = way_over(at, to);
      if (way.steps == ways[at].steps && way.largest_ratio <= ways[0].largest_ratio) break;
      ++to;
    }
    result.push_back(between[to - 1]);
    at = to;
  }
  return result;
}

}  // namespace levigate
