// Learning how films turn out: gauge readings against what the coats were to leave.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <string>
#include <vector>

#include "levigate/detail/normal.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/journal/slip.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/factor.hpp"
#include "levigate/journal/work/prior.hpp"

namespace levigate::inline v0 {

namespace detail {

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

}  // namespace detail

}  // namespace levigate
