// Learning from what a journal shows: paces, scratches and films, each against what all else lets expect.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "levigate/detail/normal.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/factor.hpp"
#include "levigate/journal/work/observer.hpp"
#include "levigate/journal/work/prior.hpp"
#include "levigate/journal/work/rows.hpp"
#include "levigate/journal/work/shop_belief.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

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

/// Learns the person's pace and the rate of each pair together, from minutes.
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
    added.weights[0] = added.weights[rows.back() + 1] = -1;  // a higher pace takes fewer minutes
    added.y = std::log(one.actual_minutes / one.predicted_minutes);
  }
  const Settled result = settled(pace_belief(shop), observations, outlier_line);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const PaceSeen& one = seen[i];
    if (!result.set_aside[i]) {
      ++shop.person.observations;
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

/// Readings of a film against what its coats were to leave. Their noise is known: spots of one film, and films of the same coats.
inline Learned learn_films(Learned learned, const std::vector<FilmSeen>& seen) {
  if (seen.empty()) return learned;
  const std::string& coating = seen.front().coating;  // a job has one
  std::vector<LearnedFilm>& films = learned.shop.films;
  auto film = std::find_if(films.begin(), films.end(),
                           [&](const LearnedFilm& row) { return row.coating >= coating; });
  const double quantile = normal_quantile(tail_share);
  if (film == films.end() || film->coating != coating) {
    const double reach_um = quantile * std::sqrt(film_variance_um2());
    film = films.insert(film, {coating, 0, -reach_um, reach_um, 0});
  }
  const double sd_um = 0.5 * (film->high_um - film->low_um) / quantile;
  constexpr double known = 1e12;  // observations that a noise is known by which is not in question
  const Belief before{{film->offset_um}, {{sd_um * sd_um}}, 1, known};
  std::vector<Observation> observations;
  for (const FilmSeen& one : seen) {
    const auto spots = static_cast<double>(one.readings_um.size());
    const double mean_um =
        std::accumulate(one.readings_um.begin(), one.readings_um.end(), 0.0) / spots;
    const double noise_um = std::hypot(film_noise_um, one.sd_um / std::sqrt(spots));
    observations.push_back({{1 / noise_um}, (mean_um - one.expected_um) / noise_um});
  }
  const Settled result = settled(before, observations, outlier_line);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const FilmSeen& one = seen[i];
    if (!result.set_aside[i]) {
      ++film->observations;
      continue;
    }
    const double mean_um = one.expected_um + observations[i].y / observations[i].weights[0];
    learned.outliers.push_back({ObservedKind::film, "", one.zone, one.place, one.expected_um,
                                mean_um, *result.set_aside[i]});
  }
  film->offset_um = result.belief.mean[0];
  const double reach_um = quantile * std::sqrt(result.belief.spread[0][0]);
  film->low_um = film->offset_um - reach_um;
  film->high_um = film->offset_um + reach_um;
  return learned;
}

/// The row of a job, made where there is none.
inline LearnedJob& job_row(std::vector<LearnedJob>& jobs, const std::string& name) {
  const auto row = std::find_if(jobs.begin(), jobs.end(),
                                [&](const LearnedJob& one) { return one.job == name; });
  return row != jobs.end() ? *row : jobs.emplace_back(LearnedJob{name});
}

}  // namespace detail

}  // namespace levigate
