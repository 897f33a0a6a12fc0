// The film of the last round, out of one that reaches through all rounds.
#pragma once

#include <cmath>

#include "levigate/film/film.hpp"
#include "levigate/film/gauge.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Standard uncertainty of a film that is told by its coats [um]: a wet comb knows it as well.
inline double uncertainty_of_coats_um(double film_um) {
  return uncertainty_um(gauge_named("wet comb"), film_um);
}

/// The film of the last round, of one that a gauge read through all rounds. The rounds below are told by their coats. The mean may
/// come out below 0.
inline Film above(Film film, double below_um) {
  if (below_um == 0.0) return film;
  film.mean_um -= below_um;
  film.mean_se_um = std::hypot(film.mean_se_um, uncertainty_of_coats_um(below_um));
  return film;
}

}  // namespace detail

}  // namespace levigate
