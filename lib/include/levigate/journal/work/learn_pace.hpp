// Learning the person's pace and the rates of paper: minutes of the journal against computed minutes.
#pragma once

#include <cmath>
#include <cstddef>
#include <set>
#include <utility>
#include <vector>

#include "levigate/journal/learned.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/journal/slip.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/rows.hpp"
#include "levigate/journal/work/shop_belief.hpp"

namespace levigate::inline v0 {

namespace detail {

/// How many times the noise of a step one observation has, of which the removal is known so well. It goes by the noise before any
/// journal, so that the order of entries does not matter.
inline double noise_share(double log_sd) { return std::hypot(1.0, log_sd / prior_minutes_noise); }

/// Learns the person's pace and the rate of each pair together, from minutes. Those of a machine tell nothing of the person.
inline Learned learn_pace(Learned learned, const std::vector<PaceSeen>& seen) {
  if (seen.empty()) return learned;
  std::set<PairName> names;
  for (const PaceSeen& one : seen) names.emplace(one.coating, one.backing);
  Shop shop = with_rates(std::move(learned.shop), std::move(names));
  std::vector<Observation> observations;
  std::vector<std::size_t> rows;
  for (const PaceSeen& one : seen) {
    rows.push_back(row_at(shop.rates, one.coating, one.backing));
    Observation& added = observations.emplace_back();
    added.weights.assign(shop.rates.size() + 1, 0.0);
    const double told = 1.0 / noise_share(one.log_sd);
    added.weights[rows.back() + 1] = -told;  // a higher pace takes fewer minutes
    if (!one.machine) added.weights[0] = -told;
    added.y = told * std::log(one.actual_minutes / one.predicted_minutes);
  }
  const Settled result = settled(pace_belief(shop), observations, outlier_line);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const PaceSeen& one = seen[i];
    if (!result.set_aside[i]) {
      if (!one.machine) ++shop.person.observations;
      ++shop.rates[rows[i]].learned.observations;
      ++shop.rates[row_at(shop.rates, one.coating, "")].learned.observations;
      continue;
    }
    learned.outliers.push_back({ObservedKind::minutes, one.sheet, one.zone, one.place,
                                one.predicted_minutes, one.actual_minutes, *result.set_aside[i]});
  }
  learned.shop = with_pace(std::move(shop), result.belief);
  return learned;
}

}  // namespace detail

}  // namespace levigate
