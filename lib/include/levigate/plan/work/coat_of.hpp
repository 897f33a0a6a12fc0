// The coat of a job: how far it has cured, and the film that there is to work once it has.
#pragma once

#include <cmath>
#include <optional>

#include "levigate/film/film.hpp"
#include "levigate/film/work/above.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/surface/cure.hpp"

namespace levigate::inline v0 {

/// How the coat of a job cures: by its data sheet where the job has that, else as the coating usually does.
inline const std::optional<Cure>& rules_of_cure(const Job& job) {
  return job.cure ? job.cure : job.coating.cure;
}

/// How far the coat has cured: hard where the job gives no age, or nothing is known of its cure.
inline CureState cure_of(const Job& job) {
  const std::optional<Cure>& cure = rules_of_cure(job);
  if (!job.age_h || !cure)
    return {.hard = true, .hardness_ratio = {}, .scratch_ratio = {}, .first_h = {}, .last_h = {}};
  const Grade p800 = grade("P800");
  const Backing paper = backing_named("latex paper");
  return cure_state(*cure, *job.age_h,
                    {.size_um = p800.median_um,
                     .log_spread = log_spread(p800),
                     .tip_spread = paper.tip_spread,
                     .modulus_mpa = paper.modulus_mpa,
                     .pressure_kpa = job.zones.front().block.pressure_kpa(),
                     .hardness_mpa = job.coating.hardness_mpa},
                    job.rules.scratch_quantile);
}

/// What a coat that is not cured loses until it is. A film that is read or laid now counts with what is left of it then.
///
///   mean' = mean (1 - shrink_left)
inline Job cured(Job job) {
  const double left = 1.0 - cure_of(job).shrink_left;
  for (Zone& zone : job.zones) {
    if (zone.film) zone.film->mean_um *= left;
  }
  return job;
}

/// Whether the rounds of a job melt together. Where nobody knows, they do not.
inline bool rounds_melt(const Job& job) { return job.coating.redissolves.value_or(false); }

/// The job where rounds that melt together are one: its film is that of all rounds. Rounds told by coats alone spread alike. A gauge
/// that read through them has that spread in it.
///
///   mean' = mean + below,   sd' = sd (mean + below) / mean,   mean_se'^2 = mean_se^2 + u(below)^2
inline Job as_one_round(Job job) {
  if (!rounds_melt(job)) return job;
  for (Zone& zone : job.zones) {
    if (!zone.film || zone.below_um == 0.0) continue;
    Film& film = *zone.film;
    const double all_um = film.mean_um + zone.below_um;
    const double more = film.readings > 0 || film.mean_um == 0.0 ? 1.0 : all_um / film.mean_um;
    film.sd_um *= more;
    film.sd_se_um *= more;
    film.mean_se_um = std::hypot(film.mean_se_um, detail::uncertainty_of_coats_um(zone.below_um));
    film.mean_um = all_um;
    zone.below_um = 0;
  }
  return job;
}

}  // namespace levigate
