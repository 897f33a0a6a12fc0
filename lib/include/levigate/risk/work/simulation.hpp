// The work behind risk/simulation.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <vector>

#include "levigate/risk/simulation.hpp"

#include "levigate/detail/work.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Interval interval_of(std::vector<double> values) {
  Interval result;
  const std::size_t n = values.size();
  result.mean = std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(n);
  std::sort(values.begin(), values.end());
  const auto quantile = [&](std::size_t percent) { return values[(percent * n + 99) / 100 - 1]; };
  result.p10 = quantile(10);
  result.p50 = quantile(50);
  result.p90 = quantile(90);
  return result;
}

}  // namespace levigate
