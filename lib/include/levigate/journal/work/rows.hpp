// The unknown numbers of a shop as the rows of a belief.
#pragma once

#include <cmath>
#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "levigate/grade/spread.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/prior.hpp"
#include "levigate/journal/work/shop_belief.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

using PairName = std::pair<std::string, std::string>;  // coating, backing

inline std::set<PairName> names_of(const std::vector<LearnedPair>& pairs) {
  std::set<PairName> names;
  for (const LearnedPair& pair : pairs) names.emplace(pair.coating, pair.backing);
  return names;
}

/// Rows of these pairs, in the order of their names; numbers of those that were there are kept.
inline std::vector<LearnedPair> rows_of(const std::set<PairName>& names,
                                        const std::vector<LearnedPair>& held) {
  std::vector<LearnedPair> rows;
  for (const auto& [coating, backing] : names) {
    const LearnedPair* row = find_pair(held, coating, backing);
    rows.push_back(row ? *row : LearnedPair{coating, backing, {}});
  }
  return rows;
}

inline std::size_t row_at(const std::vector<LearnedPair>& rows, const std::string& coating,
                          const std::string& backing) {
  return static_cast<std::size_t>(find_pair(rows, coating, backing) - rows.data());
}

/// The shop with a rate for each of these pairs and for their coatings. A rate of which nothing was known is that of all backings on
/// its coating and what the backing's own bands add; that of a coating has the coating's bands. See work/prior.hpp.
inline Shop with_rates(Shop shop, std::set<PairName> names) {
  for (const auto& [coating, backing] : std::set(names)) names.emplace(coating, "");
  names.merge(names_of(shop.rates));
  if (names.size() == shop.rates.size()) return shop;
  constexpr double unit = prior_minutes_noise * prior_minutes_noise;  // spreads are over the noise
  const Belief before = pace_belief(shop);
  const std::vector<LearnedPair> held = std::exchange(shop.rates, rows_of(names, shop.rates));

  const std::size_t count = shop.rates.size() + 1;
  Belief belief{std::vector<double>(count, 0.0), {}, before.noise, before.df};
  belief.spread.assign(count, std::vector<double>(count, 0.0));
  std::vector<std::optional<std::size_t>> old{0};
  for (const LearnedPair& rate : shop.rates) {
    const LearnedPair* row = find_pair(held, rate.coating, rate.backing);
    old.push_back(row ? std::optional(1 + static_cast<std::size_t>(row - held.data()))
                      : std::nullopt);
  }
  for (std::size_t i = 0; i < count; ++i) {
    if (!old[i]) continue;
    belief.mean[i] = before.mean[*old[i]];
    for (std::size_t j = 0; j < count; ++j) {
      if (old[j]) belief.spread[i][j] = before.spread[*old[i]][*old[j]];
    }
  }
  for (std::size_t i = 1; i < count; ++i) {
    if (old[i]) continue;
    const LearnedPair& rate = shop.rates[i - 1];
    if (rate.backing.empty()) {
      belief.spread[i][i] = coating_variance(rate.coating) / unit;
      continue;
    }
    const std::size_t of_coating = 1 + row_at(shop.rates, rate.coating, "");
    belief.mean[i] = belief.mean[of_coating];
    for (std::size_t j = 0; j < count; ++j) {
      belief.spread[i][j] = belief.spread[j][i] = belief.spread[of_coating][j];
    }
    belief.spread[i][i] =
        belief.spread[of_coating][of_coating] + backing_variance(rate.coating, rate.backing) / unit;
  }
  return with_pace(std::move(shop), belief);
}

/// The same for scratches, each pair on its own.
inline Shop with_scratch_rows(Shop shop, std::set<PairName> names) {
  names.merge(names_of(shop.scratches));
  const std::vector<LearnedPair> held =
      std::exchange(shop.scratches, rows_of(names, shop.scratches));
  const double noise = shop.scratch_noise.log_sd / prior_scratch_noise;
  for (LearnedPair& row : shop.scratches) {
    if (find_pair(held, row.coating, row.backing)) continue;
    const double sd = std::sqrt(scratch_variance(row.coating, row.backing));
    row.learned = learned_factor({0, noise * sd}, shop.scratch_noise.weight, 0);
  }
  return shop;
}

}  // namespace detail

}  // namespace levigate
