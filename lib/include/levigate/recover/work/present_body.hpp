// The job as it stands, of what is laid out.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/work/above.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/work/zone_done.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A film after so much was taken off by hand.
inline Film lowered(Film film, double removed_um, double removed_cv) {
  film.mean_um -= removed_um;
  film.sd_um = std::hypot(film.sd_um, removed_cv * removed_um);
  return film;
}

/// What a sheet leaves a zone with.
inline Carried left_by(const Workings& workings, std::size_t sheet, std::size_t zone) {
  const SheetInZone& work = workings.work[sheet][zone];
  const Polish* polish = polish_of(workings.stack.sheets[sheet]);
  return {workings.grades[sheet], work.scratch_um, work.rq_um,
          polish ? std::optional(polish->worn_um) : std::nullopt};
}

/// The zone after what was done to it.
inline Zone zone_now(const Workings& workings, std::size_t index, const ZoneDone& done,
                     const Film* read) {
  Zone zone = workings.job.zones[index];
  if (read) {
    if (!zone.film) throw BadInput("zone '" + zone.name + "' is solid: it has no film");
    zone.film = above(*read, zone.below_um);
    zone.levelled_peel_um = 0;
    if (zone.film->mean_um <= workings.job.rules.reserve_um) {
      throw BadInput("zone '" + zone.name + "' reads " + number_text(read->mean_um) +
                     " um through all rounds. The rounds below the last hold " +
                     number_text(zone.below_um) + " um. The last is not above reserve_um = " +
                     number_text(workings.job.rules.reserve_um) + " um: nothing may be removed");
    }
  } else if (zone.film) {
    zone.film = lowered(*zone.film, done.removed_um, workings.job.rules.removed_cv);
    if (done.last && has_peel_to_level(workings.job, zone)) zone.levelled_peel_um = zone.peel_um;
    if (zone.film->mean_um <= workings.job.rules.reserve_um) {
      throw BadInput("zone '" + zone.name + "' has " + number_text(zone.film->mean_um) +
                     " um of film left of " + number_text(workings.job.zones[index].film->mean_um) +
                     " um, as computed. That is not above reserve_um = " +
                     number_text(workings.job.rules.reserve_um) +
                     " um: nothing may be removed. Read a film gauge to check");
    }
  }
  // The job as it stands tells the film of now, before the cure has taken its share.
  if (zone.film && !read) zone.film->mean_um /= 1.0 - cure_of(workings.job).shrink_left;
  if (!done.last) return zone;
  zone.carries = left_by(workings, *done.last, index);
  zone.defects.clear();
  if (is_levelled(zone)) zone.peel_um = std::min(zone.peel_um, workings.job.rules.residual_peel_um);
  return zone;
}

}  // namespace detail

/// present() of what is laid out. Films are as the workings have them: what a shop has learned of them is in.
inline Job present(const Workings& workings, const Job& job, const std::vector<DoneStep>& done,
                   const std::map<std::string, Film>& films) {
  std::vector<const Film*> read(job.zones.size(), nullptr);
  for (const auto& [name, film] : films) read[zone_index(job, name)] = &film;
  std::vector<bool> known;
  for (const Film* film : read) known.push_back(film != nullptr);
  const std::vector<detail::ZoneDone> so_far = detail::walk_done(
      workings, done, known, [](std::size_t, std::size_t, std::size_t, double) {});
  Job now = job;
  for (std::size_t zone = 0; zone < job.zones.size(); ++zone) {
    now.zones[zone] = detail::zone_now(workings, zone, so_far[zone], read[zone]);
  }
  validate(now);
  return now;
}

}  // namespace levigate
