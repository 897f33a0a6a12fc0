// What the problems of going back ask of their numbers.
#pragma once

#include <cstddef>
#include <limits>
#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/recover/need.hpp"

namespace levigate::inline v0::detail {

/// Throws: BadInput where needs are empty or do not ascend, OutOfRange where a number is outside its range
inline void require_policy(const std::vector<Need>& needs, double film_um, double stop_minutes,
                           const std::string& where) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  if (needs.empty()) throw BadInput("needs is empty, in " + where);
  require_range(film_um, 0.0, infinity, "film_um", "um", where);
  require_range(stop_minutes, 0.0, 1e12, "stop_minutes", "min", where);
  for (std::size_t i = 0; i < needs.size(); ++i) {
    require_range(needs[i].need_um, 1e-9, 1e6, "need_um", "um", where);
    require_range(needs[i].probability, 1e-300, 1.0 + 1e-9, "probability", "", where);
    if (i > 0 && needs[i].need_um <= needs[i - 1].need_um)
      throw BadInput("needs do not ascend, in " + where);
  }
}

}  // namespace levigate::inline v0::detail
