// How much has to come off until a mark is gone: chances by depth.
#pragma once

#include <cmath>
#include <map>
#include <vector>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// How much has to come off until the mark is gone, and the chance of that.
struct Need {
  double need_um = 0;      ///< [um], above 0
  double probability = 0;  ///< above 0
};

/// The least need that a share q of the chances does not exceed [um]; 0 without needs.
inline double need_quantile_um(const std::vector<Need>& needs, double q) {
  double below = 0;
  for (const Need& need : needs) {
    below += need.probability;
    if (below >= q) return need.need_um;
  }
  return needs.empty() ? 0.0 : needs.back().need_um;
}

namespace detail {

/// Chances by depth on a grid of a tenth; the upper edge of a cell stands for it.
class DepthTally {
 public:
  void add(double depth_um, double chance) {
    cells_[static_cast<int>(std::ceil(per_factor_e * std::log(depth_um)))] += chance;
  }
  void scale(double by) {
    for (auto& [cell, chance] : cells_) chance *= by;
  }
  /// The cells that matter, adding up to 1.
  std::vector<Need> needs() const {
    constexpr double least = 1e-9;
    double total = 0;
    for (const auto& [cell, chance] : cells_) total += chance;
    std::vector<Need> result;
    double kept = 0;
    for (const auto& [cell, chance] : cells_) {
      if (chance <= least * total) continue;
      result.push_back({std::exp(cell / per_factor_e), chance});
      kept += chance;
    }
    for (Need& need : result) need.probability /= kept;
    return result;
  }

 private:
  static constexpr double per_factor_e = 10.0;
  std::map<int, double> cells_;
};

}  // namespace detail
}  // namespace levigate
