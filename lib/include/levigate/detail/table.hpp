// A smooth function from a table of equal steps, by cubics.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <vector>

#include "levigate/version.hpp"

namespace levigate::inline v0::detail {

/// Cubics through the values, with the slopes of parabolas through three of them. Beyond its ends it is constant.
class Table {
 public:
  /// Of at least three values, at low, low + step, ...
  Table(double low, double step, const std::vector<double>& values)
      : low_(low), steps_a_unit_(1.0 / step), last_(static_cast<double>(values.size() - 1)) {
    const auto slope = [&](std::size_t i) {
      if (i == 0) return -1.5 * values[0] + 2.0 * values[1] - 0.5 * values[2];
      if (i + 1 == values.size())
        return 1.5 * values[i] - 2.0 * values[i - 1] + 0.5 * values[i - 2];
      return 0.5 * (values[i + 1] - values[i - 1]);
    };
    cells_.reserve(values.size());
    for (std::size_t i = 0; i + 1 < values.size(); ++i) {
      const double rise = values[i + 1] - values[i], first = slope(i), last = slope(i + 1);
      cells_.push_back(
          {values[i], first, 3.0 * rise - 2.0 * first - last, first + last - 2.0 * rise});
    }
    cells_.push_back({values.back(), 0.0, 0.0, 0.0});  // at the upper end itself
  }

  double operator()(double x) const {
    const double place = std::clamp((x - low_) * steps_a_unit_, 0.0, last_);
    const int cell = static_cast<int>(place);
    const double t = place - cell;
    const std::array<double, 4>& power = cells_[static_cast<std::size_t>(cell)];
    return power[0] + t * (power[1] + t * (power[2] + t * power[3]));
  }

 private:
  double low_, steps_a_unit_, last_;
  std::vector<std::array<double, 4>> cells_{};
};

}  // namespace levigate::inline v0::detail
