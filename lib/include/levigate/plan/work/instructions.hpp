// The facts of a plan beside its figures: its purpose, the way of the strokes and the sign that a step is done.
// Also when to rinse and change the paper, and the settings of a wheel.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "levigate/film/film.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/work/cure_wait.hpp"
#include "levigate/plan/work/tool_findings.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/source.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/machine.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/wheel.hpp"
#include "levigate/surface/clogging.hpp"
#include "levigate/surface/defect_table.hpp"
#include "levigate/surface/shrink_back.hpp"
#include "levigate/surface/wheel_limits.hpp"
#include "levigate/wheel/caution.hpp"
#include "levigate/wheel/heat.hpp"
#include "levigate/wheel/machine.hpp"
#include "levigate/wheel/pass.hpp"

namespace levigate::inline v0 {

/// What a plan is for, found or not.
inline void tell_job(const Workings& workings, Plan& plan) {
  const Job& job = workings.job;
  plan.wait = cure_wait_of(job);
  plan.job = job.name;
  plan.coating = job.coating.name;
  plan.one_round = job.coating.redissolves.value_or(false);
  if (job.scratched_by) plan.scratched_by = job.scratched_by->label;
  plan.target = job.target;
  plan.reserve_um = job.rules.reserve_um;
  plan.cut_through_limit = job.rules.cut_through_limit;
  plan.overcut = *job.rules.overcut;
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    const Zone& zone = job.zones[i];
    PlannedZone& row = plan.zones.emplace_back();
    row.zone = zone.name;
    row.area_cm2 = zone.area_cm2;
    row.block = zone.block.name;
    row.budget_um = workings.budget_um[i];
    const bool to_level = has_peel_to_level(job, zone);
    if (to_level || zone.levelled_peel_um > 0) {
      (to_level ? row.peel_um : row.levelled_peel_um) =
          to_level ? zone.peel_um : zone.levelled_peel_um;
      row.peel_how = zone.peel_how;
      row.peel_factor = peel_factor(zone.peel_how).value;
      if (zone.usual_wavelength) row.usual_wavelength_mm = zone.peel_wavelength_mm;
    }
    if (workings.starts[i]) row.stands = workings.starts[i]->label;
    if (!zone.film) continue;
    row.film_um = zone.film->mean_um;
    row.film_sd_um = spot_sd_um(*zone.film);
    row.film_se_um = zone.film->mean_se_um;
    row.film_how = zone.film->how;
    row.below_um = zone.below_um;
    row.usual_spread = zone.film->usual_spread;
  }
}

namespace detail {

/// What a pass at the wheel of a sheet does. All zones are of one coat and under one wheel: the rate is that of the first.
inline WheelStep wheel_step(const Workings& workings, std::size_t sheet, const Wheel& wheel) {
  const double rate_um_per_m = workings.work[sheet].front().rate_um_per_m;
  WheelStep step{.rim_m_s = wheel.surface_speed_m_s(),
                 .rpm = wheel.rpm,
                 .feed_m_s = wheel.feed_m_s,
                 .dwell_s = dwell_s(wheel),
                 .film_per_pass_um = film_per_pass_um(wheel, rate_um_per_m),
                 .still = *still_of(workings, sheet)};
  const std::optional<WheelLimits>& limits = workings.job.coating.limits;
  if (!limits) return step;
  const WheelHeatInput heat = heat_of(wheel, *limits);
  step.rise_k = temperature_rise_k(heat, step.dwell_s);
  step.dwell_limit_s = dwell_limit_s(heat, limits->rise_k);
  return step;
}

/// The numbers of a wheel step, and how it goes over each zone.
inline void tell_wheel(const Workings& workings, std::size_t sheet, const Wheel& wheel,
                       Step& step) {
  add_cautions(wheel_cautions, step.cautions);
  step.wheel = wheel_step(workings, sheet, wheel);
  for (std::size_t i = 0; i < step.zones.size(); ++i) {
    ZoneStep& zone = step.zones[i];
    zone.passes = std::ceil(zone.removal_um / step.wheel->film_per_pass_um);
    zone.pass_s = zone_pass_s(wheel, workings.job.zones[i].area_cm2);
  }
}

/// The machine of a sheet, where it works any zone; else null.
inline const Machine* machine_at_work(const Workings& workings, std::size_t sheet) {
  return machine_zones(workings.work[sheet]) > 0 ? machine_of(workings.stack.sheets[sheet])
                                                 : nullptr;
}

/// The numbers of a step with a machine, with its cautions.
inline void tell_machine(const Workings& workings, std::size_t sheet, const Machine& machine,
                         Step& step) {
  add_cautions(machine_cautions, step.cautions);
  MachineStep& told = step.machine.emplace(MachineStep{.name = machine.name,
                                                       .speed_m_s = machine.speed_m_s(),
                                                       .rpm = machine.rpm,
                                                       .orbit_mm = machine.orbit_mm,
                                                       .feed_m_s = machine.feed_m_s,
                                                       .keep_off_mm = machine.keep_off_mm,
                                                       .still = *still_of(workings, sheet)});
  if (!polisher_of(workings.stack.sheets[sheet])) return;
  told.dwell_s = dwell_s(machine);
  const std::optional<WheelLimits>& limits = workings.job.coating.limits;
  if (!limits) return;
  const WheelHeatInput heat = heat_of(machine, *limits);
  told.rise_k = temperature_rise_k(heat, *told.dwell_s);
  told.dwell_limit_s = dwell_limit_s(heat, limits->rise_k);
}

/// When the paper wants rinsing and when a new piece, under the tool of the first zone.
inline void tell_upkeep(const Workings& workings, std::size_t sheet, Step& step) {
  const Backing& backing = workings.stack.sheets[sheet].backing;
  const Block& tool = workings.work[sheet].front().tool;
  const double stroke_m = 1e-3 * defect_table[0].stroke_mm.value;
  const bool machine = workings.work[sheet].front().machine;
  if (!machine) step.rinse_every_strokes = backing.clean_every_m / stroke_m;
  step.change_every_minutes =
      pieces(backing, tool, 0.0).minutes_each / (machine ? 1.0 : workings.factors.duty);
  step.rinse_every_minutes = *step.change_every_minutes * backing.clean_every_m / backing.life_m;
}

/// Why a step passes a zone by: those that carry a grade stand, those as sprayed are not to be levelled.
inline std::optional<PassedBy> passed_by_for(const Workings& workings, std::size_t zone,
                                             bool worked) {
  if (worked) return std::nullopt;
  return workings.starts[zone] ? PassedBy::fine_already : PassedBy::not_levelled;
}

/// The grades whose scratches a step takes out: that of the step before, and those of the zones that it is the first to work.
inline std::vector<std::string> labels_before(const Workings& workings, const Plan& plan,
                                              std::size_t i) {
  std::vector<std::string> labels;
  if (i > 0) labels.push_back(plan.steps[i - 1].label);
  for (std::size_t zone = 0; zone < workings.starts.size(); ++zone) {
    const std::optional<Start>& start = workings.starts[zone];
    const bool worked_before = i > 0 && plan.steps[i - 1].zones[zone].worked;
    if (!start || worked_before || !plan.steps[i].zones[zone].worked) continue;
    if (std::find(labels.begin(), labels.end(), start->label) == labels.end())
      labels.push_back(start->label);
  }
  return labels;
}

/// Each step crosses the one before. Where scratches will show they end along the grain. The curls of a machine have no way, and
/// nothing can cross them.
inline StrokeWay way_of(const Plan& plan, std::size_t i, bool along_grain) {
  if (plan.steps[i].machine) return StrokeWay::curls;
  if (!along_grain && i > 0 && plan.steps[i - 1].machine) return StrokeWay::one_way;
  if (along_grain) {
    const bool along = (plan.steps.size() - 1 - i) % 2 == 0;
    return along ? StrokeWay::along_grain : StrokeWay::across_grain;
  }
  if (i > 0) return StrokeWay::across_before;
  return plan.steps[i].levels ? StrokeWay::one_way : StrokeWay::across_scratches;
}

/// What comes back after levelling, and how long to wait for it.
inline void tell_shrink_back(const Workings& workings, Step& step) {
  const std::optional<ShrinkBack>& back = workings.job.coating.shrink_back;
  if (!back) return;
  for (std::size_t i = 0; i < step.zones.size(); ++i) {
    ZoneStep& zone = step.zones[i];
    if (!has_peel_to_level(workings.job, workings.job.zones[i]) || zone.removal_um == 0) continue;
    zone.comes_back_um = zone.removal_um * (1.0 - 1.0 / with_shrink_back(back));
    step.rest_h = back->rest_h;
  }
}

}  // namespace detail

/// What a step has of its sheet alone. Its zones must be there.
inline void tell_sheet(const Workings& workings, std::size_t at, Step& step) {
  const Sheet& sheet = workings.stack.sheets[at];
  const Polish* polish = polish_of(sheet);
  step.maker = sheet.maker;
  step.size_basis = polish ? polish->basis : workings.grades[at].basis();
  if (const Wheel* wheel = wheel_of(sheet)) {
    detail::tell_wheel(workings, at, *wheel, step);
  } else {
    if (const Machine* machine = detail::machine_at_work(workings, at))
      detail::tell_machine(workings, at, *machine, step);
    detail::tell_upkeep(workings, at, step);
  }
}

/// What steps have of each other: which way they run, what they take out, and how one sees that they are done.
inline void tell_order(const Workings& workings, Plan& plan) {
  const Target& target = workings.job.target;
  // A sheen that is not polished shows its scratches: they must all run along the grain.
  const bool rubbed_out = !target.rub_out.empty() && plan.steps.back().sheet == target.rub_out;
  const bool along_grain = rubbed_out || (target.gloss_high_gu.has_value() &&
                                          !plan.steps.back().wheel && !plan.steps.back().machine);
  for (std::size_t i = 0; i < plan.steps.size(); ++i) {
    Step& step = plan.steps[i];
    step.levels = i == 0 && workings.levels;
    if (step.levels) detail::tell_shrink_back(workings, step);
    step.way = detail::way_of(plan, i, along_grain);
    step.takes_out = detail::labels_before(workings, plan, i);
    const bool polished = step.wheel || (step.machine && step.machine->dwell_s);
    step.done = step.levels    ? DoneSign::no_shiny_spot
                : polished     ? DoneSign::even_sheen
                : step.machine ? DoneSign::even_curls
                : along_grain  ? DoneSign::scratches_one_way
                               : DoneSign::scratches_your_way;
  }
  plan.steps.back().done_gloss_gu = target.gloss_gu;
  plan.steps.back().done_gloss_high_gu = target.gloss_high_gu;
  if (target.gloss_gu) plan.steps.back().done_angle_deg = target.angle_deg;
}

}  // namespace levigate
