// A spot of a zone, and how evenly a hand takes film off from spot to spot.
#pragma once

#include <algorithm>
#include <utility>
#include <vector>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/quadrature.hpp"
#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// A spot of 1 cm2, as in cut_through(). Scratches are much longer and cross it; spots count as independent: assumption.
inline constexpr double spot_um = 10'000.0;

namespace detail {

/// Film taken off a spot over the mean of its zone, with weights that add up to 1: normal, the same for all steps, as in
/// cut_through().
inline std::vector<std::pair<double, double>> evenness_nodes(double removed_cv) {
  if (!(removed_cv > 0)) return {{1.0, 1.0}};
  constexpr int panels = 2;  // chances are within 0.003 of those by eight
  constexpr double sigmas = 4.0;
  constexpr double least = 0.05;
  std::vector<std::pair<double, double>> result;
  double total = 0;
  for_each_node(std::max(least, 1.0 - sigmas * removed_cv), 1.0 + sigmas * removed_cv, panels,
                [&](double u, double weight) {
                  const double here = weight * normal_density((u - 1.0) / removed_cv) / removed_cv;
                  result.emplace_back(u, here);
                  total += here;
                });
  for (auto& [u, weight] : result) weight /= total;
  return result;
}

}  // namespace detail

}  // namespace levigate
