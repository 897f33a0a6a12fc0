// The job as it stands after what was done: plan() of it is the plan of what remains.
#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "levigate/plan/step.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/layer.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What was done to one zone so far.
struct ZoneDone {
  std::optional<std::size_t> last;  ///< the sheet that worked it last
  double removed_um = 0;
};

/// The zones that a done step worked. Where it names none, all, but for those that a plan would have it pass by.
inline std::vector<std::size_t> zones_worked(const Bench& bench, const DoneStep& step,
                                             std::size_t sheet, bool first,
                                             const std::vector<ZoneDone>& so_far) {
  std::vector<std::size_t> result;
  for (const std::string& name : step.zones) {
    const std::size_t zone = zone_index(bench.job, name);
    if (std::find(result.begin(), result.end(), zone) != result.end())
      throw BadInput("zone '" + name + "' stands twice");
    result.push_back(zone);
  }
  if (!result.empty()) return result;
  for (std::size_t zone = 0; zone < so_far.size(); ++zone) {
    const bool passes =
        bench.starts[zone] ? bench.stands[sheet][zone] : first && passed_by(bench, zone);
    if (so_far[zone].last || !passes) result.push_back(zone);
  }
  return result;
}

/// A zone after one more step. `read`: a gauge tells what is left of its film.
inline ZoneDone worked_once(const Bench& bench, const DoneStep& step, std::size_t sheet,
                            std::size_t zone, const ZoneDone& done, bool read) {
  const std::optional<Start>& start = bench.starts[zone];
  std::optional<double> from_um, scratch_um;
  if (done.last) {
    from_um = worn_um(bench, *done.last);
    scratch_um = bench.work[*done.last][zone].scratch_um;
  } else if (start) {
    from_um = start->worn_um;
    scratch_um = start->scratch_um;
  }
  const double size_um = bench.grades[sheet].median_um;
  const bool known = step.removal_um || read || !bench.job.zones[zone].film;
  if (from_um && size_um >= *from_um && !known) {
    throw BadInput("it is of " + size_text(size_um) + ", not finer than the " +
                   size_text(*from_um) + " that zone '" + bench.job.zones[zone].name +
                   "' carried: what it took off is not known, give removal_um or a film read "
                   "since");
  }
  const double removal_um =
      scratch_um ? *scratch_um * bench.job.rules.overcut : levelling_um(bench, sheet, zone);
  return {sheet, done.removed_um + step.removal_um.value_or(removal_um)};
}

/// A film after so much was taken off by hand.
inline Film lowered(Film film, double removed_um, double removed_cv) {
  film.mean_um -= removed_um;
  film.sd_um = std::hypot(film.sd_um, removed_cv * removed_um);
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
    zone.film = *read;
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
/// what a gauge read since, else
///
///   mean' = mean - R,   sd' = sqrt(sd^2 + (removed_cv R)^2),   R the film taken off so far
///
/// R is what each step says, else what the scratches it found ask for, or the peel. Unevenness counts once: that of R is in sd',
/// that of what is still to come in the budget of the plan. The two are taken to be independent; the plan of the whole job
/// takes them to add up at one spot, so that a budget worked out anew is a little larger than what was left of the old one.
/// What is uncertain about the film (its standard errors) stays as it was. A zone that no step worked stays as it is.
///
/// @param job    as it was before the first of the steps
/// @param stack  with the sheets of the steps; its on_hand is not counted down
/// @param done   the steps, in order; one without zones worked all that a plan would have it work
/// @param films  by the name of the zone: read since the last step, with zones as they are now
/// @return       the job; where every zone meets the target, plan() says that nothing is to be done
/// Throws:    BadInput for a sheet or zone that is not there, a zone named twice, a step that is not finer than what a zone
///            carried where neither removal_um nor films tells what it took off, and where no film above the reserve is left;
///            OutOfRange for removal_um outside 0 to 10 000; what plan() throws for the job
/// NaN:       rejected
/// Accuracy:  that of plan()
/// Source:    that of plan(); independent unevenness: assumption
inline Job present(const Job& job, const Stack& stack, const std::vector<DoneStep>& done,
                   const std::map<std::string, Film>& films = {}) {
  const Bench bench = levigate::bench(job, stack);
  std::vector<const Film*> read(job.zones.size(), nullptr);
  for (const auto& [name, film] : films) read[zone_index(job, name)] = &film;
  std::vector<detail::ZoneDone> so_far(job.zones.size());
  for (std::size_t i = 0; i < done.size(); ++i) {
    const DoneStep& step = done[i];
    const std::string where = "done step " + std::to_string(i + 1) + " ('" + step.sheet + "')";
    if (step.removal_um)
      detail::require_range(*step.removal_um, 0.0, 1e4, "removal_um", "um", where);
    try {
      const std::size_t sheet = sheet_index(stack, step.sheet);
      for (const std::size_t zone : detail::zones_worked(bench, step, sheet, i == 0, so_far)) {
        so_far[zone] =
            detail::worked_once(bench, step, sheet, zone, so_far[zone], read[zone] != nullptr);
      }
    } catch (const BadInput& error) {
      throw BadInput(error.what() + (", in " + where));
    }
  }
  Job now = job;
  for (std::size_t zone = 0; zone < job.zones.size(); ++zone) {
    now.zones[zone] = detail::zone_now(bench, zone, so_far[zone], read[zone]);
  }
  validate(now);
  return now;
}

}  // namespace levigate
