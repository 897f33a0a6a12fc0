// What was done, checked and in numbers: which zones a step worked and what came off each.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/profile.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// The position of the zone of that name. Throws: BadInput where there is none, naming the nearest.
inline std::size_t zone_index(const Job& job, std::string_view name) {
  std::vector<std::string_view> known;
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    if (job.zones[i].name == name) return i;
    known.push_back(job.zones[i].name);
  }
  throw BadInput(detail::unknown_name_text("zone", name, known));
}

namespace detail {

/// What was done to one zone so far.
struct ZoneDone {
  std::optional<std::size_t> last;  ///< the sheet that worked it last
  double removed_um = 0;            ///< by all of it [um]
  double last_um = 0;               ///< by its last step [um]
  bool known = true;                ///< whether that is computed or told, not guessed
};

/// The zones that a done step worked. Where it names none, all, but for those that a plan would have it pass by.
inline std::vector<std::size_t> zones_worked(const Workings& workings, const DoneStep& step,
                                             std::size_t sheet, bool first,
                                             const std::vector<ZoneDone>& so_far) {
  std::vector<std::size_t> result;
  for (const std::string& name : step.zones) {
    const std::size_t zone = zone_index(workings.job, name);
    if (std::find(result.begin(), result.end(), zone) != result.end())
      throw BadInput("zone '" + name + "' is repeated");
    result.push_back(zone);
  }
  if (!result.empty()) return result;
  for (std::size_t zone = 0; zone < so_far.size(); ++zone) {
    const bool passes =
        workings.starts[zone] ? workings.stands[sheet][zone] : first && passed_by(workings, zone);
    if (so_far[zone].last || !passes) result.push_back(zone);
  }
  return result;
}

/// A zone after one more step. `read`: a gauge tells later what is left of its film.
inline ZoneDone worked_once(const Workings& workings, const DoneStep& step, std::size_t sheet,
                            std::size_t zone, const ZoneDone& done, bool read) {
  // The same sheet again, and nothing said of it: the same step goes on, after a pause.
  if (done.last == sheet && !step.removal_um) return {sheet, done.removed_um, 0.0};
  const std::optional<Start>& start = workings.starts[zone];
  std::optional<double> from_um, scratch_um;
  if (done.last) {
    from_um = worn_um(workings, *done.last);
    scratch_um = workings.work[*done.last][zone].scratch_um;
  } else if (start) {
    from_um = start->worn_um;
    scratch_um = start->scratch_um;
  }
  const double size_um = workings.grades[sheet].median_um;
  const bool coarser = from_um && size_um >= *from_um;
  if (coarser && !step.removal_um && !read && workings.job.zones[zone].film) {
    throw BadInput(
        "it has " + size_text(size_um) + ", not finer than the " + size_text(*from_um) +
        " that zone '" + workings.job.zones[zone].name +
        "' carried. What it took off is not known: give removal_um or a later film read");
  }
  const double overcut = step.overcut.value_or(*workings.job.rules.overcut);
  const double asked_um = scratch_um ? *scratch_um * overcut : levelling_um(workings, sheet, zone);
  const double removal_um = step.removal_um.value_or(asked_um);
  return {sheet, done.removed_um + removal_um, removal_um, !coarser || step.removal_um};
}

/// Walks the steps done in order and calls visit(step, sheet, zone, removal_um, known) for each zone that one worked; returns what
/// was done to each zone. `read_after`: of each zone, how many steps were done before a gauge last told its film.
/// Throws: BadInput, OutOfRange, naming the step
template <typename Visit>
std::vector<ZoneDone> walk_done(const Workings& workings, const std::vector<DoneStep>& done,
                                const std::vector<std::size_t>& read_after, Visit visit) {
  std::vector<ZoneDone> so_far(workings.job.zones.size());
  for (std::size_t i = 0; i < done.size(); ++i) {
    const DoneStep& step = done[i];
    const std::string where = "done step " + std::to_string(i + 1) + " ('" + step.sheet + "')";
    if (step.removal_um) require_range(*step.removal_um, 0.0, 1e4, "removal_um", "um", where);
    if (step.overcut)
      require_range(*step.overcut, overcut_range.low, overcut_range.high, "overcut", "", where);
    if (step.overcut && step.removal_um)
      throw BadInput("give either removal_um or overcut, in " + where);
    if (step.direction_deg)
      require_range(*step.direction_deg, 0.0, 180.0, "direction_deg", "deg", where);
    try {
      const std::size_t sheet = sheet_index(workings.stack, step.sheet);
      for (const std::size_t zone : zones_worked(workings, step, sheet, i == 0, so_far)) {
        if (step.direction_deg && workings.work[sheet][zone].machine)
          throw BadInput("direction_deg does not go with zone '" + workings.job.zones[zone].name +
                         "': its machine makes curls, which have no direction");
        so_far[zone] = worked_once(workings, step, sheet, zone, so_far[zone], i < read_after[zone]);
        visit(i, sheet, zone, so_far[zone].last_um, so_far[zone].known);
      }
    } catch (const BadInput& error) {
      throw BadInput(error.what() + (", in " + where));
    }
  }
  return so_far;
}

}  // namespace detail

}  // namespace levigate
