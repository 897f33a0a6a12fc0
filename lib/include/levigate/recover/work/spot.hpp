// What may have happened at the spot of a mark: how much came off there, and which step missed it.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/quadrature.hpp"
#include "levigate/recover/inspection_table.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What happened at the spot of the mark, as a node of a quadrature.
struct SpotNode {
  double weight = 0;
  double evenness = 1;                ///< taken off here over the mean of the zone, in all steps
  std::optional<std::size_t> missed;  ///< the layer that missed it
  double worked = 1;                  ///< share of its work that the layer did that missed it
};

/// The kinds of spots, with weights that add up to 1. Removal is uneven by removed_cv: normal, and the same for all steps, as in
/// cut_through(). Each step misses a spot with chance missed_share. It then does an even share of its work. Two steps that miss
/// the same spot count as one of them.
inline std::vector<SpotNode> spot_nodes(std::size_t layers, double removed_cv) {
  constexpr int panels = 2;  // chances are within 0.003 of those by eight
  const double missed_share = inspection_table[0].missed_share.value;
  std::vector<std::pair<double, double>> evenness{{1.0, 1.0}};
  if (removed_cv > 0) {
    evenness.clear();
    constexpr double sigmas = 4.0;
    constexpr double least = 0.05;
    for_each_node(std::max(least, 1.0 - sigmas * removed_cv), 1.0 + sigmas * removed_cv, panels,
                  [&](double u, double weight) {
                    evenness.emplace_back(
                        u, weight * normal_density((u - 1.0) / removed_cv) / removed_cv);
                  });
  }
  double total = 0;
  for (const auto& [u, weight] : evenness) total += weight;
  const double none = std::pow(1.0 - missed_share, static_cast<double>(layers));
  std::vector<SpotNode> result;
  for (const auto& [u, weight] : evenness) {
    const double here = weight / total;
    result.push_back({here * none, u, std::nullopt, 1.0});
    for (std::size_t layer = 0; layer < layers; ++layer) {
      for_each_node(0.0, 1.0, panels, [&, u = u](double worked, double part) {
        result.push_back(
            {here * (1.0 - none) / static_cast<double>(layers) * part, u, layer, worked});
      });
    }
  }
  return result;
}

}  // namespace detail

}  // namespace levigate
