// Learning how deep scratches are: what was measured against what was computed, by coating and backing.
#pragma once

#include <cmath>
#include <cstddef>
#include <set>
#include <utility>
#include <vector>

#include "levigate/journal/learned.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/journal/slip.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/rows.hpp"
#include "levigate/journal/work/shop_belief.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Learns the scratch factor of each pair of coating and backing, from measured scratches.
inline Learned learn_scratches(Learned learned, const std::vector<ScratchSeen>& seen) {
  if (seen.empty()) return learned;
  std::set<PairName> names;
  for (const ScratchSeen& one : seen) names.emplace(one.coating, one.backing);
  Shop shop = with_scratch_rows(std::move(learned.shop), std::move(names));
  std::vector<Observation> observations;
  std::vector<std::size_t> rows;
  for (const ScratchSeen& one : seen) {
    rows.push_back(row_at(shop.scratches, one.coating, one.backing));
    Observation& added = observations.emplace_back();
    added.weights.assign(shop.scratches.size(), 0.0);
    added.weights[rows.back()] = 1;
    added.y = std::log(one.seen_um / one.predicted_um);
  }
  const Settled result = settled(scratch_belief(shop), observations, outlier_line);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const ScratchSeen& one = seen[i];
    if (!result.set_aside[i]) {
      ++shop.scratches[rows[i]].learned.observations;
      continue;
    }
    learned.outliers.push_back({ObservedKind::scratch, one.sheet, one.zone, one.place,
                                one.predicted_um, one.seen_um, *result.set_aside[i]});
  }
  learned.shop = with_scratches(std::move(shop), result.belief);
  return learned;
}

}  // namespace detail

}  // namespace levigate
