// The way back, of what is laid out.
#pragma once

#include <algorithm>
#include <cstddef>
#include <limits>
#include <string>
#include <vector>

#include "levigate/recover/way_back.hpp"

#include "levigate/plan/caution.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/budget_of.hpp"
#include "levigate/plan/work/coat_of.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/tool_findings.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/diagnose.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/need.hpp"
#include "levigate/recover/policy.hpp"
#include "levigate/recover/work/diagnose_body.hpp"
#include "levigate/recover/work/film_walk.hpp"
#include "levigate/recover/work/layer.hpp"
#include "levigate/recover/work/legs_of.hpp"
#include "levigate/recover/work/present_body.hpp"
#include "levigate/recover/work/zone_done.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/surface/inspection_table.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The sheets that worked a zone, coarse to fine.
inline std::vector<std::size_t> sheets_of(const Workings& workings,
                                          const std::vector<Layer>& layers) {
  std::vector<std::size_t> result;
  for (const Layer& layer : layers) {
    if (std::find(result.begin(), result.end(), layer.sheet) == result.end())
      result.push_back(layer.sheet);
  }
  std::stable_sort(result.begin(), result.end(), [&](std::size_t a, std::size_t b) {
    return workings.grades[a].median_um > workings.grades[b].median_um;
  });
  return result;
}

/// What going back to each sheet of a zone takes. For a wave, one that brings a tool of its own reaches nothing: it does not
/// level.
inline std::vector<Reentry> reentries(const Workings& workings,
                                      const std::vector<std::size_t>& sheets, std::size_t zone,
                                      MarkKind kind) {
  std::vector<Reentry> result(sheets.size());
  double after_minutes = inspection_table[0].look_minutes.value;
  double after_um = 0;
  for (std::size_t i = sheets.size(); i-- > 0;) {
    const Sheet& sheet = workings.stack.sheets[sheets[i]];
    Reentry& way = result[i];
    way.sheet = sheet.id;
    way.climb.fixed_minutes = with_change(after_minutes, workings.job.rules);
    way.climb.minutes_per_um = sanding_minutes(workings, sheets[i], zone, 1.0);
    way.climb.above_um = after_um;
    if (workings.reach_um[sheets[i]]) way.climb.reach_um = *workings.reach_um[sheets[i]];
    if (kind == MarkKind::wave && tool_of(sheet)) way.climb.reach_um = 0;
    if (i == 0) break;
    way.removal_um = workings.work[sheets[i - 1]][zone].scratch_um * *workings.job.rules.overcut;
    after_minutes +=
        with_change(sanding_minutes(workings, sheets[i], zone, way.removal_um), workings.job.rules);
    after_um += way.removal_um;
  }
  return result;
}

/// Film that may still come off a zone [um]: what its budget leaves; infinite on a solid. Where a gauge read it, that is the budget
/// of what is left now. A thinner reading that no second one has settled gives no more than without it.
inline double budget_left_um(const Workings& workings, const std::vector<Layer>& layers,
                             std::size_t zone, const Standing& standing) {
  if (!workings.budget_um[zone]) return std::numeric_limits<double>::infinity();
  double depth_um = layers.back().scratch_um;
  double unread_um = *workings.budget_um[zone] - depth_um;
  for (const Layer& layer : layers) unread_um -= layer.removal_um;
  const FilmSoFar& film = *standing.films[zone];
  if (!film.is_read()) return std::max(0.0, unread_um);
  Zone now = zone_now(workings, zone, standing);
  now.film->mean_um = std::max(0.0, film.now().mean_um);
  const double read_um = budget_of(workings.job, now) - depth_um;
  return std::max(0.0, film.read_once() ? std::min(read_um, unread_um) : read_um);
}

/// Another round and each step again, however often it was gone back to [min].
inline double round_minutes(const Workings& workings, const std::vector<Layer>& layers,
                            const std::vector<std::size_t>& sheets, std::size_t zone,
                            const std::vector<Reentry>& ways) {
  double minutes = inspection_table[0].round_minutes.value;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const double off_um = i == 0 ? layers.front().removal_um : ways[i].removal_um;
    minutes += with_change(sanding_minutes(workings, sheets[i], zone, off_um), workings.job.rules);
  }
  return minutes;
}

/// The attempts of a policy, written out.
inline std::vector<Try> tries(const Workings& workings, const std::vector<std::size_t>& sheets,
                              std::size_t zone, const std::vector<Reentry>& ways,
                              const std::vector<Need>& needs, const Policy& policy) {
  std::vector<Try> result;
  double off_um = 0;
  double left = 1;
  for (const Attempt& attempt : policy.attempts) {
    const Climb& climb = ways[attempt.climb].climb;
    const double deep_um = needs[attempt.need].need_um;
    double gone = 0;
    for (const Need& need : needs) {
      if (need.need_um > off_um && need.need_um <= deep_um) gone += need.probability;
    }
    const double off_now_um = climb_um(climb, deep_um - off_um);
    Try& one = result.emplace_back(Try{.steps = {},
                                       .removal_um = off_now_um,
                                       .minutes = climb_minutes(climb, deep_um - off_um),
                                       .gone_chance = std::min(1.0, gone / left)});
    for (std::size_t i = attempt.climb; i < ways.size(); ++i) {
      const double step_um =
          i == attempt.climb ? one.removal_um - climb.above_um : ways[i].removal_um;
      one.steps.push_back({ways[i].sheet, step_um,
                           sanding_minutes(workings, sheets[i], zone, step_um),
                           at_wheel(workings, sheets[i], zone, step_um)});
    }
    off_um = deep_um;
    left -= gone;
  }
  return result;
}

/// Tells what the hand keeps of the work of the machines of the legs, and the cautions of those that work the zone.
inline void tell_machines(const Workings& workings, std::size_t zone, WayBack& way) {
  std::vector<std::string> sheets;
  for (const Leg& leg : way.legs) {
    sheets.push_back(leg.sheet);
    sheets.insert(sheets.end(), leg.then.begin(), leg.then.end());
  }
  way.findings = machine_limits_in(workings, workings.job.zones[zone], sheets);
  if (std::none_of(sheets.begin(), sheets.end(), [&](const std::string& id) {
        return workings.work[sheet_index(workings.stack, id)][zone].machine;
      }))
    return;
  add_cautions(machine_cautions, way.cautions);
}

/// Why going back would not pay, or cannot be done.
inline NoWay no_way(const Job& job, const Diagnosis& diagnosis, const std::vector<Reentry>& ways,
                    double film_um) {
  if (diagnosis.mark.kind == MarkKind::witness_line)
    return rounds_melt(job) ? NoWay::bottom_shows : NoWay::witness_line;
  if (diagnosis.needs.empty()) return NoWay::unexplained;
  const double least_um = diagnosis.needs.front().need_um;
  if (std::none_of(ways.begin(), ways.end(),
                   [&](const Reentry& way) { return way.climb.reach_um >= least_um; }))
    return NoWay::out_of_reach;
  return least_um > film_um ? NoWay::film_short : NoWay::not_worth;
}

}  // namespace detail

/// go_back() of a job and a stack that are read. See recover/go_back.hpp. `standing`: of the same steps.
inline WayBack go_back(const Workings& workings, const std::vector<DoneStep>& done,
                       const Mark& mark, const detail::Standing& standing) {
  WayBack result;
  result.diagnosis = diagnose(workings, done, mark);
  result.cautions = cautions(workings.job);
  const std::size_t zone = zone_index(workings.job, mark.zone);
  const std::vector<Layer> here = layers(workings, done, zone);
  const std::vector<std::size_t> sheets = detail::sheets_of(workings, here);
  const double film_um = detail::budget_left_um(workings, here, zone, standing);
  result.reentries = detail::reentries(workings, sheets, zone, mark.kind);
  result.round_minutes = detail::round_minutes(workings, here, sheets, zone, result.reentries);
  result.expected_minutes = result.round_minutes;  // where there is no way back
  if (workings.budget_um[zone]) result.film_um = film_um;
  const std::vector<Need>& needs = result.diagnosis.needs;
  if (!needs.empty()) {
    std::vector<Climb> climbs;
    for (const Reentry& way : result.reentries) climbs.push_back(way.climb);
    const Policy policy = best_policy(needs, climbs, film_um, result.round_minutes);
    result.expected_minutes = policy.expected_minutes;
    result.gone_chance = policy.gone_chance;
    result.tries = detail::tries(workings, sheets, zone, result.reentries, needs, policy);
  }
  result.zone_minutes = result.round_minutes;
  if (!needs.empty()) detail::set_legs(workings, sheets, zone, film_um, result);
  result.found = !result.legs.empty();
  detail::tell_machines(workings, zone, result);
  if (!result.found) {
    result.tries.clear();
    result.expected_minutes = result.round_minutes;
    result.gone_chance = 0;
    result.no_way = detail::no_way(workings.job, result.diagnosis, result.reentries, film_um);
    result.remedies = {Remedy::spot_repair, Remedy::another_round};
  }
  return result;
}

}  // namespace levigate
