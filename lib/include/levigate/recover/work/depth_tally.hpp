// A tally of depths by their weight, from which the needs are read.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <vector>

#include "levigate/recover/need.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Chances by depth on a grid of a tenth; the upper edge of a cell stands for it.
class DepthTally {
 public:
  void add(double log_depth, double chance) {
    const double cell = std::clamp(std::ceil(per_factor_e * log_depth) + zero, 0.0, cells - 1.0);
    chances_[static_cast<std::size_t>(cell)] += chance;
  }
  void scale(double by) {
    for (double& chance : chances_) chance *= by;
  }
  /// The cells that matter, adding up to 1.
  std::vector<Need> needs() const {
    constexpr double least = 1e-9;
    const double total = std::accumulate(chances_.begin(), chances_.end(), 0.0);
    std::vector<Need> result;
    double kept = 0;
    for (std::size_t i = 0; i < chances_.size(); ++i) {
      if (chances_[i] <= least * total) continue;
      result.push_back({std::exp((static_cast<double>(i) - zero) / per_factor_e), chances_[i]});
      kept += chances_[i];
    }
    for (Need& need : result) need.probability /= kept;
    return result;
  }

 private:
  static constexpr double per_factor_e = 10.0;
  static constexpr std::size_t cells = 200;  // from e^-10 um, finer than any grain, to e^10 um
  static constexpr double zero = cells / 2.0;
  std::vector<double> chances_ = std::vector<double>(cells, 0.0);
};

}  // namespace detail

}  // namespace levigate
