// The job as it stands after what was done: plan() of it is the plan of what remains.
#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "levigate/film/gauge.hpp"
#include "levigate/plan/step.hpp"
#include "levigate/recover/worked.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A film after so much was taken off by hand.
inline Film lowered(Film film, double removed_um, double removed_cv) {
  film.mean_um -= removed_um;
  film.sd_um = std::hypot(film.sd_um, removed_cv * removed_um);
  return film;
}

/// The film of the last round, of one that a gauge read through all rounds. Rounds below are known as coats are.
inline Film above(Film film, double below_um) {
  if (below_um == 0.0) return film;
  film.mean_um -= below_um;
  film.mean_se_um = std::hypot(film.mean_se_um, uncertainty_um(gauge_named("wet comb"), below_um));
  return film;
}

/// What a sheet leaves a zone with.
inline Carried left_by(const Bench& bench, std::size_t sheet, std::size_t zone) {
  const SheetInZone& work = bench.work[sheet][zone];
  return {bench.grades[sheet], work.scratch_um, work.rq_um, bench.stack.sheets[sheet].worn_um};
}

/// The zone after what was done to it.
inline Zone zone_now(const Bench& bench, std::size_t index, const ZoneDone& done,
                     const Film* read) {
  Zone zone = bench.job.zones[index];
  if (read) {
    if (!zone.film) throw BadInput("zone '" + zone.name + "' is solid: it has no film");
    zone.film = above(*read, zone.below_um);
    if (zone.film->mean_um <= bench.job.rules.reserve_um) {
      throw BadInput("zone '" + zone.name + "' reads " + number_text(read->mean_um) +
                     " um through all rounds, of which " + number_text(zone.below_um) +
                     " um are of those below the last: what is left of it is not above reserve_um "
                     "= " +
                     number_text(bench.job.rules.reserve_um) + " um, nothing may be removed");
    }
  } else if (zone.film) {
    zone.film = lowered(*zone.film, done.removed_um, bench.job.rules.removed_cv);
    if (zone.film->mean_um <= bench.job.rules.reserve_um) {
      throw BadInput("zone '" + zone.name + "' has " + number_text(zone.film->mean_um) +
                     " um of film left of " + number_text(bench.job.zones[index].film->mean_um) +
                     " um by what was taken off, not above reserve_um = " +
                     number_text(bench.job.rules.reserve_um) +
                     " um: nothing may be removed; a gauge tells whether that is so");
    }
  }
  if (!done.last) return zone;
  zone.carries = left_by(bench, *done.last, index);
  zone.defects.clear();
  if (zone.levelled) zone.peel_um = std::min(zone.peel_um, bench.job.rules.residual_peel_um);
  return zone;
}

}  // namespace detail

/// The job as it stands after what was done. plan() of it is the plan of what remains: it does not come back to sheets that are
/// done, unless the work asks for it.
///
/// A zone that was worked carries the scratches that its last sheet left, its defects and its peel are gone, and its film is
/// what a gauge read since, less the rounds below the last one, else what it was less what came off:
///
///   read:  mean' = mean_read - below_um,   sd' = sd_read,   mean_se'^2 = mean_se_read^2 + u(below_um)^2
///   else:  mean' = mean - R,   sd' = sqrt(sd^2 + (removed_cv R)^2),   R the film taken off so far
///
/// A gauge sees every round, and rounds that are told by their coats are known as well as a wet comb knows them: u is
/// uncertainty_um() of it.
/// R is what each step says, else what the scratches it found ask for, or the peel. Unevenness counts once: that of R is in sd',
/// that of what is still to come in the budget of the plan. The two are taken to be independent; the plan of the whole job
/// takes them to add up at one spot, so that a budget worked out anew is a little larger than what was left of the old one.
/// What is uncertain about the film (its standard errors) stays as it was. A zone that no step worked stays as it is.
///
/// @param job    as it was before the first of the steps
/// @param stack  with the sheets of the steps; its on_hand is not counted down
/// @param done   the steps, in order; one without zones worked all that a plan would have it work
/// @param films  by the name of the zone: of all rounds, as a gauge reads them, read since the last step
/// @return       the job; where every zone meets the target, plan() says that nothing is to be done
/// Throws:    BadInput for a sheet or zone that is not there, a zone named twice, a step that is not finer than what a zone
///            carried where neither removal_um nor films tells what it took off, and where no film above the reserve is left;
///            OutOfRange for removal_um outside 0 to 10 000; what plan() throws for the job
/// NaN:       rejected
/// Accuracy:  that of plan()
/// Source:    that of plan(); gauge_table; independent unevenness: assumption
inline Job present(const Job& job, const Stack& stack, const std::vector<DoneStep>& done,
                   const std::map<std::string, Film>& films = {}) {
  const Bench bench = levigate::bench(job, stack);
  std::vector<const Film*> read(job.zones.size(), nullptr);
  for (const auto& [name, film] : films) read[zone_index(job, name)] = &film;
  std::vector<bool> known;
  for (const Film* film : read) known.push_back(film != nullptr);
  const std::vector<detail::ZoneDone> so_far =
      detail::walk_done(bench, done, known, [](std::size_t, std::size_t, std::size_t, double) {});
  Job now = job;
  for (std::size_t zone = 0; zone < job.zones.size(); ++zone) {
    now.zones[zone] = detail::zone_now(bench, zone, so_far[zone], read[zone]);
  }
  validate(now);
  return now;
}

}  // namespace levigate
