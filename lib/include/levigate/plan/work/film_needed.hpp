// How thick a film each zone needs for a plan, and how many coats that is: the advice where film is in the way.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "levigate/film/budget.hpp"
#include "levigate/film/edge.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/surface/levelling.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The thickest film that is looked at [um].
inline constexpr double most_film_um = 2e4;

/// A film told in the same way, of another mean. The error of coats that were counted, or read by comb, grows with it; the part
/// that a shop has learned does not. A stated error stays, and so does that of readings.
inline Film film_as_thick(Film film, double mean_um, double shop_se_um) {
  if (tells_error(film.how)) {
    const double told_um =
        std::sqrt(std::max(0.0, (film.mean_se_um - shop_se_um) * (film.mean_se_um + shop_se_um)));
    const double more_um =
        uncertainty_of_way_um(film.how, mean_um) - uncertainty_of_way_um(film.how, film.mean_um);
    film.mean_se_um = std::hypot(std::max(0.0, told_um + more_um), shop_se_um);
  }
  film.mean_um = mean_um;
  return film;
}

/// A zone with a film of another mean.
inline Zone zone_as_thick(const Workings& workings, std::size_t index, double mean_um) {
  Zone zone = workings.job.zones[index];
  const double shop_se_um = zone.film->readings > 0 ? 0.0 : workings.factors.film_se_um;
  zone.film = film_as_thick(*zone.film, mean_um, shop_se_um);
  return zone;
}

/// Budget of a zone with a film of another mean, as the search takes it [pm].
inline std::int64_t budget_at_pm(const Workings& workings, std::size_t index, double mean_um) {
  double least_um = std::numeric_limits<double>::infinity();
  const Zone zone = zone_as_thick(workings, index, mean_um);
  for (const BudgetInput& input : budget_inputs_of(workings, index, zone))
    least_um = std::min(least_um, depth_budget_um(input));
  return floored_pm(least_um);
}

/// The least mean film of a zone, in whole um above what it has, whose budget holds a depth; none up to 20 000 um.
///
/// For each tool alone the budget rises with the film, so that bisection is exact. A softer tool counts only from the film on that
/// stands levelling with it. So the film of the zone's own tool is raised by those that count at it, until none asks for more.
inline std::optional<double> least_film_um(const Workings& workings, std::size_t index,
                                           std::int64_t depth_pm) {
  const double from_um = std::floor(workings.job.zones[index].film->mean_um);
  const auto holds = [&](BudgetInput input, double mean_um) {
    input.mean_um = mean_um;
    input.common.mean_se_um = zone_as_thick(workings, index, mean_um).film->mean_se_um;
    return floored_pm(depth_budget_um(input)) >= depth_pm;
  };
  const auto least = [&](const BudgetInput& input) -> std::optional<double> {
    double low_um = from_um, step_um = std::ceil(static_cast<double>(depth_pm) / pm_per_um);
    double high_um = std::min(low_um + step_um, most_film_um);
    while (!holds(input, high_um)) {
      if (high_um == most_film_um) return std::nullopt;
      low_um = high_um;
      high_um = std::min(low_um + (step_um *= 2.0), most_film_um);
    }
    while (high_um - low_um > 1.0) {
      const double middle_um = std::floor(0.5 * (low_um + high_um));
      (holds(input, middle_um) ? high_um : low_um) = middle_um;
    }
    return high_um;
  };
  const std::vector<BudgetInput> inputs =
      budget_inputs_of(workings, index, zone_as_thick(workings, index, most_film_um));
  std::optional<double> film_um = least(inputs.front());
  std::vector<bool> counted(inputs.size(), false);
  for (std::size_t i = 1; film_um && i < inputs.size(); ++i) {
    const CommonErrors& errors = inputs[i].common;
    const double levelled =
        levelled_um(0.5 * errors.peel_um, errors.critical_um, 0.5 * errors.residual_um);
    if (counted[i] || levelled > *film_um - inputs[i].reserve_um) continue;
    counted[i] = true;
    if (holds(inputs[i], *film_um)) continue;
    film_um = least(inputs[i]);
    i = 0;  // a thicker film may stand more tools
  }
  return film_um;
}

/// The least depth of one zone over the sequences that keep the budgets of the others [pm]; none where there is no such sequence.
/// The zone is put far deeper than any share of the others, so that the search for the least film looks at it alone.
inline std::optional<std::int64_t> least_depth_pm(Ladder ladder, std::size_t zone) {
  constexpr std::int64_t deep_pm = 2'000'000'000;
  ladder.budget_pm[zone] = std::nullopt;
  for (std::vector<Rung>* rungs : {&ladder.as_first, &ladder.later}) {
    for (Rung& rung : *rungs) rung.scratch_pm[zone] += deep_pm;
  }
  const std::vector<Sequence> found = search(ladder);
  if (found.empty()) return std::nullopt;
  return best(found, Objective::film).depth_pm[zone] - deep_pm;
}

/// What a zone needs, as told.
inline FilmNeeded film_needed(const Workings& workings, std::size_t index,
                              std::optional<double> needed_um) {
  const Zone& zone = workings.job.zones[index];
  FilmNeeded result{.zone = zone.name, .film_um = zone.film->mean_um, .needed_um = needed_um};
  if (!needed_um) return result;
  if (zone.film->dry_um_per_coat.value_or(0.0) > 0.0) {
    result.dry_um_per_coat = zone.film->dry_um_per_coat;
    result.coats = std::ceil(*needed_um / *result.dry_um_per_coat);
  }
  if (zone.edge && zone.edge->radius_mm)
    result.on_flat_um = std::ceil(*needed_um / edge_share(*zone.edge->radius_mm));
  return result;
}

/// The films under which there is a plan, of the zones that are short of film under these limits. None of them can be 1 um thinner,
/// the others as they are told.
///
/// It starts from the depths of a sequence, and lowers the film of one zone after another to the least that the others leave it.
inline std::vector<FilmNeeded> films_needed(const Workings& workings, Limits limits,
                                            const std::vector<std::int64_t>& depth_pm) {
  const std::size_t zones = workings.job.zones.size();
  limits.film = false;
  Ladder ladder = levigate::ladder(workings, limits);
  const std::vector<std::optional<std::int64_t>> has_pm = budgets_pm(workings);
  ladder.budget_pm = has_pm;
  std::vector<std::optional<double>> film_um(zones);
  std::vector<std::size_t> short_of_film;
  const auto take = [&](std::size_t zone, std::int64_t wanted_pm) {
    film_um[zone] = std::nullopt;
    ladder.budget_pm[zone] = has_pm[zone];
    if (wanted_pm <= *has_pm[zone]) return;
    film_um[zone] = least_film_um(workings, zone, wanted_pm);
    ladder.budget_pm[zone] =
        film_um[zone] ? std::optional(budget_at_pm(workings, zone, *film_um[zone])) : std::nullopt;
  };
  for (std::size_t zone = 0; zone < zones; ++zone) {
    if (!has_pm[zone] || depth_pm[zone] <= *has_pm[zone]) continue;
    short_of_film.push_back(zone);
    take(zone, depth_pm[zone]);
  }
  for (bool changed = true; changed;) {
    changed = false;
    for (const std::size_t zone : short_of_film) {
      const std::optional<double> before_um = film_um[zone];
      if (const auto least_pm = least_depth_pm(ladder, zone)) take(zone, *least_pm);
      changed = changed || film_um[zone] != before_um;
    }
    if (short_of_film.size() == 1) break;
  }
  std::vector<FilmNeeded> result;
  for (const std::size_t zone : short_of_film) {
    if (film_um[zone] || !ladder.budget_pm[zone])
      result.push_back(film_needed(workings, zone, film_um[zone]));
  }
  return result;
}

}  // namespace detail

}  // namespace levigate
