// The work behind film/agreement.hpp: defines what it declares.
#pragma once

#include <cmath>
#include <limits>

#include "levigate/film/agreement.hpp"

#include "levigate/detail/strict_math.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/film/film.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Agreement agrees(const Film& coats, const Film& readings) {
  constexpr auto where = "agrees";
  for (const Film* film : {&coats, &readings}) {
    detail::require_range(film->mean_um, 0.0, 2e4, "mean_um", "um", where);
    detail::require_range(film->mean_se_um, 0.0, 2e4, "mean_se_um", "um", where);
  }
  Agreement result;
  result.coats_um = coats.mean_um;
  result.readings_um = readings.mean_um;
  result.difference_um = readings.mean_um - coats.mean_um;
  result.uncertainty_um = std::hypot(coats.mean_se_um, readings.mean_se_um);
  if (result.difference_um != 0.0) {
    result.sigmas = result.uncertainty_um > 0.0
                        ? std::abs(result.difference_um) / result.uncertainty_um
                        : std::numeric_limits<double>::infinity();
  }
  result.contradicts = result.sigmas > contradiction_sigmas;
  return result;
}

}  // namespace levigate
