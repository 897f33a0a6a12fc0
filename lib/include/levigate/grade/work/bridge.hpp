// The work behind grade/bridge.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

#include "levigate/grade/bridge.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/ratio.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::optional<std::vector<Grade>> bridge(double coarse_um, double fine_um,
                                                       System system, double min_ratio,
                                                       double max_ratio) {
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
