// The job as it stands, of what is laid out.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/work/film_walk.hpp"
#include "levigate/recover/work/zone_done.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What a sheet leaves a zone with.
inline Carried left_by(const Workings& workings, std::size_t sheet, std::size_t zone) {
  const SheetInZone& work = workings.work[sheet][zone];
  const Polish* polish = polish_of(workings.stack.sheets[sheet]);
  return {workings.grades[sheet], work.scratch_um, work.rq_um,
          polish ? std::optional(polish->worn_um) : std::nullopt};
}

/// The zone after what was done to it and read of it.
inline Zone zone_now(const Workings& workings, std::size_t index, const Standing& standing) {
  Zone zone = workings.job.zones[index];
  if (const std::optional<FilmSoFar>& film = standing.films[index]) {
    zone.film = film->before_cure();
    if (film->unread_peel()) {
      zone.levelled_peel_um = zone.peel_um;
    } else if (film->is_read() && !film->read_once()) {
      zone.levelled_peel_um = 0;
    }
  }
  const std::optional<std::size_t>& last = standing.done[index].last;
  if (!last) return zone;
  zone.carries = left_by(workings, *last, index);
  zone.defects.clear();
  if (is_levelled(zone)) zone.peel_um = std::min(zone.peel_um, workings.job.rules.residual_peel_um);
  return zone;
}

/// Throws: BadInput where no film above the reserve is left.
inline void require_film(const Job& job, const Zone& zone, const FilmSoFar& film) {
  if (!(zone.film->mean_um <= job.rules.reserve_um)) return;  // NaN is for validate()
  if (film.is_read() && film.since_um() == 0.0) {
    throw BadInput(
        "zone '" + zone.name + "' reads " + number_text(zone.film->mean_um + zone.below_um) +
        " um through all rounds. The rounds below the last hold " + number_text(zone.below_um) +
        " um. The last is not above reserve_um = " + number_text(job.rules.reserve_um) +
        " um: nothing may be removed");
  }
  throw BadInput(
      "zone '" + zone.name + "' has " + number_text(zone.film->mean_um) + " um of film left of " +
      number_text(film.base_um()) + " um" + (film.is_read() ? " that were read" : "") +
      ", as computed. That is not above reserve_um = " + number_text(job.rules.reserve_um) +
      " um: nothing may be removed. Read a film gauge to check");
}

}  // namespace detail

/// present() of what is laid out. Films are as the workings have them: what a shop has learned of them is in.
inline Job present(const Workings& workings, const Job& job, const detail::Standing& standing) {
  Job now = job;
  for (std::size_t zone = 0; zone < job.zones.size(); ++zone) {
    now.zones[zone] = detail::zone_now(workings, zone, standing);
    const auto& film = standing.films[zone];
    if (film && (film->is_read() || standing.done[zone].last))
      detail::require_film(workings.job, now.zones[zone], *film);
  }
  validate(now);
  return now;
}

}  // namespace levigate
