// What may have happened at the spot of a mark: how much came off there, and which step missed it.
#pragma once

#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include "levigate/detail/quadrature.hpp"
#include "levigate/surface/inspection_table.hpp"
#include "levigate/surface/work/spot.hpp"

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
  const double none = std::pow(1.0 - missed_share, static_cast<double>(layers));
  std::vector<SpotNode> result;
  for (const auto& [u, here] : evenness_nodes(removed_cv)) {
    result.push_back({here * none, u, std::nullopt, 1.0});
    for (std::size_t layer = 0; layer < layers; ++layer) {
      for_each_node(0.0, 1.0, panels, [&, u = u, here = here](double worked, double part) {
        result.push_back(
            {here * (1.0 - none) / static_cast<double>(layers) * part, u, layer, worked});
      });
    }
  }
  return result;
}

}  // namespace detail

}  // namespace levigate
