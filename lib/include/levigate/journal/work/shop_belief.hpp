// What a shop file holds, as the belief that learning starts from, and back: old journals are one sum there, without dates.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/learned_factor.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/factor.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The person's pace and the rates, of logarithms: ln duty_factor, then ln rate_factor in the order of shop.rates.
inline Belief pace_belief(const Shop& shop) {
  const double noise = shop.minutes_noise.log_sd, df = shop.minutes_noise.weight;
  std::vector<Sum> logs{log_of(shop.person, df)};
  for (const LearnedPair& rate : shop.rates) logs.push_back(log_of(rate.learned, df));
  Belief belief{{}, {}, noise, df};
  for (std::size_t i = 0; i < logs.size(); ++i) {
    belief.mean.push_back(logs[i].median);
    belief.spread.emplace_back(logs.size(), 0.0);
    for (std::size_t j = 0; j <= i; ++j) {
      const std::vector<double> none(i, 0.0);
      const std::vector<double>& held = i > 0 ? shop.rates[i - 1].correlations : none;
      const double correlation = i == j ? 1.0 : held.empty() ? 0.0 : held[j];
      belief.spread[i][j] = belief.spread[j][i] =
          correlation * logs[i].scale * logs[j].scale / (noise * noise);
    }
  }
  return belief;
}

/// The same for scratches: each pair on its own, through one noise.
inline Belief scratch_belief(const Shop& shop) {
  const double noise = shop.scratch_noise.log_sd, df = shop.scratch_noise.weight;
  Belief belief{{}, {}, noise, df};
  for (std::size_t i = 0; i < shop.scratches.size(); ++i) {
    const Sum log = log_of(shop.scratches[i].learned, df);
    belief.mean.push_back(log.median);
    belief.spread.emplace_back(shop.scratches.size(), 0.0)[i] =
        log.scale * log.scale / (noise * noise);
  }
  return belief;
}

inline LearnedFactor single(const Belief& belief, std::size_t i, std::size_t observations) {
  return learned_factor({belief.mean[i], belief.noise * std::sqrt(belief.spread[i][i])}, belief.df,
                        observations);
}

/// The shop with the numbers of these beliefs; counts as they were.
inline Shop with_pace(Shop shop, const Belief& belief) {
  shop.minutes_noise = {belief.noise, belief.df};
  shop.person = single(belief, 0, shop.person.observations);
  for (std::size_t i = 1; i < belief.mean.size(); ++i) {
    LearnedPair& rate = shop.rates[i - 1];
    rate.learned = single(belief, i, rate.learned.observations);
    rate.correlations.clear();
    for (std::size_t j = 0; j < i; ++j) {
      const double size = std::sqrt(belief.spread[i][i] * belief.spread[j][j]);
      const double correlation = size > 0.0 ? belief.spread[i][j] / size : 0.0;
      rate.correlations.push_back(std::clamp(correlation, -1.0, 1.0));
    }
  }
  return shop;
}

inline Shop with_scratches(Shop shop, const Belief& belief) {
  shop.scratch_noise = {belief.noise, belief.df};
  for (std::size_t i = 0; i < belief.mean.size(); ++i) {
    LearnedFactor& learned = shop.scratches[i].learned;
    learned = single(belief, i, learned.observations);
  }
  return shop;
}

inline const LearnedPair* find_pair(const std::vector<LearnedPair>& pairs, std::string_view coating,
                                    std::string_view backing) {
  const auto at = std::find_if(pairs.begin(), pairs.end(), [&](const LearnedPair& pair) {
    return pair.coating == coating && pair.backing == backing;
  });
  return at == pairs.end() ? nullptr : &*at;
}

}  // namespace detail

}  // namespace levigate
