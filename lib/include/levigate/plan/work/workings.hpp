// A job and a stack, read and looked up: every number a sequence is worked out from, and all that does not depend on the sequence worked out once.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "levigate/detail/profile.hpp"
#include "levigate/error.hpp"
#include "levigate/film/budget.hpp"
#include "levigate/film/common_errors.hpp"
#include "levigate/film/film.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/ratio.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/plan/at_wheel.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/factors.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/work/budget_of.hpp"
#include "levigate/plan/work/by_hand.hpp"
#include "levigate/plan/work/coat_of.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/surface/defect.hpp"
#include "levigate/surface/levelling.hpp"
#include "levigate/surface/meter.hpp"
#include "levigate/surface/model.hpp"
#include "levigate/surface/take_down.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/finding.hpp"
#include "levigate/wheel/limits.hpp"
#include "levigate/wheel/machine.hpp"
#include "levigate/wheel/pass.hpp"
#include "levigate/wheel/standing_still.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

/// A job and a stack with all that a sequence is worked out from.
struct Setup {
  Job job;
  Stack stack;
  std::vector<Grade> grades;        ///< of each sheet
  std::vector<double> log_spreads;  ///< of each sheet's grain
  Model model;
  std::vector<std::vector<bool>>
      stands{};  ///< of each sheet: the zones that it leaves as they stand
  Factors factors{};
  std::vector<double> overcuts{};             ///< that a step may have, the least first
  std::vector<double> carried_log_spreads{};  ///< of the grain whose scratches a zone carries
  Backing carried_backing = backing_named("latex paper");  ///< what that grain is taken to lie on
};

/// The size of a sheet's grain when it has done its work [um].
inline double worn_um(const Setup& setup, std::size_t sheet) {
  const Polish* polish = polish_of(setup.stack.sheets[sheet]);
  return polish ? polish->worn_um : setup.grades[sheet].median_um;
}

inline Grain grain_of(const Setup& setup, std::size_t sheet) {
  const Polish* polish = polish_of(setup.stack.sheets[sheet]);
  return {setup.grades[sheet].median_um, worn_um(setup, sheet), setup.log_spreads[sheet],
          polish ? polish->wear_share : 1.0};
}

/// The coarsest grain that a zone carries [um]; 0 where none does.
inline double coarsest_carried_um(const Job& job) {
  double coarsest_um = 0;
  for (const Zone& zone : job.zones) {
    if (const auto carried = carried_in(job, zone))
      coarsest_um = std::max(coarsest_um, grain_um(*carried));
  }
  return coarsest_um;
}

/// The zones that a sheet passes by: those whose grade it is not finer than by min_ratio. Where nothing is left to level the
/// coarsest is never passed by: a step that would work no zone breaks the ratio rule there. All later sheets work what one takes up.
inline std::vector<bool> zones_standing(const Job& job, const Grade& sheet) {
  const double leads_um = starts_by_levelling(job) ? 0.0 : coarsest_carried_um(job);
  std::vector<bool> result;
  for (const Zone& zone : job.zones) {
    const std::optional<Carried> carried = carried_in(job, zone);
    const double from_um = carried ? grain_um(*carried) : 0.0;
    const bool finer =
        from_um > sheet.median_um && ratio_within(from_um, sheet.median_um, job.rules.min_ratio,
                                                  std::numeric_limits<double>::infinity());
    result.push_back(carried && from_um != leads_um && !finer);
  }
  return result;
}

namespace detail {

/// A film moved by what a shop has learned; not below zero.
inline Film moved(Film film, double offset_um, double se_um) {
  film.mean_um = std::max(0.0, film.mean_um + offset_um);
  film.mean_se_um = std::sqrt(film.mean_se_um * film.mean_se_um + se_um * se_um);
  return film;
}

}  // namespace detail

/// The job with the films that a shop has learned of: those that are not from readings are moved by the offset. Edges hold a share of
/// the film only. They, and flats that the levelling step passes by, are moved only where it takes film from them.
///
///   mean' = max(0, mean + offset),   mean_se'^2 = mean_se^2 + se^2
inline Job with_films(Job job, const Factors& factors) {
  for (Zone& zone : job.zones) {
    if (!zone.film || zone.film->readings > 0) continue;
    const double offset_um =
        is_levelled(zone) ? factors.film_offset_um : std::min(0.0, factors.film_offset_um);
    zone.film = detail::moved(*zone.film, offset_um, factors.film_se_um);
  }
  return job;
}

/// Throws: BadInput where the sheet that the last step is rubbed with is not in the stack, or works on a wheel or a machine.
inline void require_rub_out(const Job& job, const Stack& stack) {
  const std::string& id = job.target.rub_out;
  if (id.empty() || stack.sheets.empty()) return;
  const Sheet& sheet = stack.sheets[sheet_index(stack, id)];
  if (!wheel_of(sheet) && !machine_of(sheet)) return;
  throw BadInput("rub_out '" + id + "' works on a " + (wheel_of(sheet) ? "wheel" : "machine") +
                     ": it cannot be rubbed one way",
                 "/target/rub_out");
}

/// Throws: what validate(Job), validate(Stack) and grades_of(Stack) throw
inline Setup setup(const Job& given, const Stack& stack, const Factors& factors = {}) {
  const Job told = with_films(given, factors);
  validate(told);
  validate(stack);
  const Job job = as_one_round(cured(told));
  require_rub_out(job, stack);
  Setup result{job, stack, grades_of(stack), {}, {}, {}, factors};
  result.overcuts = overcuts_of(job.rules);
  result.job.rules.overcut = result.overcuts.front();
  for (const Grade& grade : result.grades) {
    result.log_spreads.push_back(log_spread(grade));
    result.stands.push_back(zones_standing(job, grade));
  }
  for (const Zone& zone : job.zones) {
    const std::optional<Carried> carried = carried_in(job, zone);
    result.carried_log_spreads.push_back(carried ? log_spread(carried->grade) : 0.0);
  }
  return result;
}

/// What a zone carries before the first step.
struct Start {
  std::string label;
  double size_um = 0;     ///< of its grain
  double worn_um = 0;     ///< of its grain when it had done its work
  double scratch_um = 0;  ///< depth of its scratches [um]
  double rq_um = 0;       ///< roughness [um]
  double reading_gu = 0;  ///< what a glossmeter reads at the angle of the target [GU]
  bool leads = false;  ///< the coarsest, and nothing is left to level: every sequence begins here
};

/// Depth that a zone can afford where one tool levels it.
struct ZoneBudget {
  BudgetInput input;
  double depth_um = 0;  ///< depth_budget_um() of it
};

/// A setup with all that does not depend on the sequence worked out once.
struct Workings : Setup {
  std::vector<std::vector<SheetInZone>> work;    ///< of each sheet in each zone
  std::vector<std::optional<Start>> starts;      ///< of each zone; none as sprayed
  bool levels = true;                            ///< whether the first step levels orange peel
  std::vector<std::optional<double>> budget_um;  ///< depth each zone can afford; none on a solid
  std::vector<std::optional<double>> reach_um;   ///< of each sheet that is a compound
  std::vector<bool>
      refused;  ///< of each sheet: a wheel or polisher that coat or piece does not suit
  std::vector<double>
      local_minutes;  ///< work on defects before the first step, by the sheet that comes first
  std::vector<std::vector<ZoneBudget>> budgets{};  ///< of each zone: the least of them counts
};

/// Depth of scratches that a sheet takes out, where it is a compound [um].
inline std::optional<double> reach_of(const Setup& setup, const Sheet& sheet) {
  const Polish* polish = polish_of(sheet);
  if (!polish) return std::nullopt;
  if (const auto* scratch = std::get_if<ScratchReach>(&polish->reach))
    return scratch->coarsest_scratch_um;
  return paper_scratch_um(std::get<PaperReach>(polish->reach).coarsest_paper_um,
                          setup.job.coating.hardness_mpa);
}

/// What speaks against the wheel or the polisher of a sheet on the job's coating. Nothing where it has none, or the coating's limits
/// are not known: see wheel_unknown().
inline std::vector<WheelFinding> wheel_findings_of(const Setup& setup, const Sheet& sheet) {
  const Coating& coating = setup.job.coating;
  if (!coating.limits) return {};
  if (const Wheel* wheel = wheel_of(sheet))
    return wheel_findings(*wheel, *coating.limits, coating.name);
  const Machine* polisher = polisher_of(sheet);
  if (!polisher) return {};
  return machine_findings(*polisher, *coating.limits, coating.name);
}

/// Whether a sheet works with a wheel or a polisher on a coating of which nobody here knows what speed and heat it stands.
inline bool wheel_unknown(const Job& job, const Sheet& sheet) {
  return (wheel_of(sheet) || polisher_of(sheet)) && !job.coating.limits;
}

/// The tools for the defects of a zone, with the paper that comes first. Only minutes come of their rates, so that these take the
/// person's pace in.
inline LocalTools local_tools(const Workings& workings, std::size_t zone, std::size_t first) {
  const Block small = block_named("small hard block");
  const SheetInZone local =
      sheet_in_zone(workings.job, workings.model, grain_of(workings, first),
                    workings.stack.sheets[first].backing, small, workings.factors.of(first));
  const SheetInZone& work = workings.work[first][zone];
  LocalTools tools;
  const double pace = workings.factors.duty;
  tools.small_block = {small, pace * local.rate_um_per_m};
  tools.zone_block = {work.tool, pace * work.rate_um_per_m};
  tools.residual_um = workings.job.rules.residual_peel_um;
  return tools;
}

/// What a zone carries before the first step; none as sprayed. Where only the grade is known, its scratches are taken for those of
/// paper on the zone's block, and its roughness goes with their depth.
inline std::optional<Start> start_of(const Setup& setup, std::size_t zone_index) {
  const Zone& zone = setup.job.zones[zone_index];
  const std::optional<Carried> carried = carried_in(setup.job, zone);
  if (!carried) return std::nullopt;
  const double size_um = carried->grade.median_um;
  const double left_um = grain_um(*carried);
  const SheetInZone paper = sheet_in_zone(setup.job, setup.model,
                                          {size_um, left_um, setup.carried_log_spreads[zone_index]},
                                          setup.carried_backing, zone.block);
  const double scratch_um = carried->scratch_um.value_or(paper.scratch_um);
  const double rq_um = carried->rq_um.value_or(paper.rq_um * (scratch_um / paper.scratch_um));
  return Start{carried->grade.label,
               size_um,
               left_um,
               scratch_um,
               rq_um,
               mean_reading_gu(setup.job.coating.refractive_index, setup.job.target.angle_deg,
                               rq_um, setup.model.flank_deg)};
}

/// Whether sheets that touch the same coat under the same tool work alike in two setups.
inline bool works_alike(const Setup& a, const Setup& b, std::size_t sheet) {
  return a.job.coating == b.job.coating && a.job.rules == b.job.rules && a.model == b.model &&
         grain_of(a, sheet) == grain_of(b, sheet) &&
         a.stack.sheets[sheet].backing == b.stack.sheets[sheet].backing &&
         a.factors.of(sheet) == b.factors.of(sheet);
}

/// What a sheet does in each zone. What is known of it under the same tool is not worked out again.
inline std::vector<SheetInZone> work_of(const Setup& setup, std::size_t index,
                                        std::vector<SheetInZone> known) {
  const Sheet& sheet = setup.stack.sheets[index];
  const Tool* own = tool_of(sheet);
  std::vector<SheetInZone> result;
  for (const Zone& zone : setup.job.zones) {
    const bool machine = machine_in(sheet, zone);
    const bool handed = machine_of(sheet) && !machine;
    const Block tool = own && !handed ? face_of(*own) : zone.block;
    const SheetFactors factors = setup.factors.of(index);
    auto at = std::find_if(known.begin(), known.end(),
                           [&](const SheetInZone& one) { return one.tool == tool; });
    if (at == known.end()) {
      at = known.insert(
          at, sheet_in_zone(setup.job, setup.model, grain_of(setup, index), sheet.backing, tool,
                            handed ? factors.by_hand() : factors));
      at->machine = machine;
      if (machine) at->soft_mpa = soft_modulus_mpa(*machine_of(sheet));
    }
    result.push_back(*at);
  }
  return result;
}

/// Workings but for the budgets, which take longest. What a sheet does as in `like`, which has the same sheets, is that of it.
inline Workings workings_without_budgets(Setup setup, const Workings* like = nullptr) {
  Workings result{std::move(setup), {}, {}, true, {}, {}, {}, {}};
  result.levels = starts_by_levelling(result.job);
  const Job& job = result.job;
  for (std::size_t i = 0; i < result.stack.sheets.size(); ++i) {
    const bool alike = like && works_alike(result, *like, i);
    result.work.push_back(work_of(result, i, alike ? like->work[i] : std::vector<SheetInZone>{}));
  }
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    result.starts.push_back(start_of(result, i));
    result.budget_um.push_back(std::nullopt);
  }
  for (std::size_t i = 0; i < result.stack.sheets.size(); ++i) {
    const Sheet& sheet = result.stack.sheets[i];
    result.reach_um.push_back(reach_of(result, sheet));
    const std::vector<WheelFinding> findings = wheel_findings_of(result, sheet);
    result.refused.push_back(
        too_heavy(job, sheet) ||
        std::any_of(findings.begin(), findings.end(),
                    [](const WheelFinding& f) { return f.severity == Severity::error; }));
    double minutes = 0;
    for (std::size_t z = 0; z < job.zones.size(); ++z) {
      for (const Defect& defect : job.zones[z].defects) {
        minutes += take_down(defect, local_tools(result, z, i)).local.minutes;
      }
    }
    result.local_minutes.push_back(minutes);
  }
  return result;
}

/// What the budget of a zone hangs on, by the tools that may level it. An error of the peel costs the more depth the softer the tool.
/// So a sheet with a softer tool of its own counts too, where the film would stand levelling with it. The least budget of all holds
/// whatever sheet comes first: it is exact where no tool is softer, and on the safe side elsewhere.
/// `zone`: that of this index, which may have another film.
inline std::vector<BudgetInput> budget_inputs_of(const Workings& workings, std::size_t zone_index,
                                                 const Zone& zone) {
  const Job& job = workings.job;
  std::vector<BudgetInput> result{budget_input(job, zone, zone.block)};
  if (!has_peel_to_level(job, zone)) return result;
  const CommonErrors own = result.front().common;
  for (std::size_t sheet = 0; sheet < workings.stack.sheets.size(); ++sheet) {
    if (workings.reach_um[sheet] || workings.refused[sheet]) continue;
    BudgetInput input = budget_input(job, zone, leveller_of(workings.work[sheet][zone_index]));
    if (input.common.critical_um <= own.critical_um) continue;
    const double levelled_um = detail::levelled_um(
        0.5 * input.common.peel_um, input.common.critical_um, 0.5 * input.common.residual_um);
    if (levelled_um > input.mean_um - input.reserve_um) continue;
    if (std::find(result.begin(), result.end(), input) == result.end()) result.push_back(input);
  }
  return result;
}

/// Works the budgets out, but for those that hang on the same as one of the zone in `like`, where there is one.
inline void find_budgets(Workings& workings, const Workings* like = nullptr) {
  for (std::size_t i = 0; i < workings.job.zones.size(); ++i) {
    std::vector<ZoneBudget>& budgets = workings.budgets.emplace_back();
    if (!workings.job.zones[i].film) continue;
    double least_um = std::numeric_limits<double>::infinity();
    for (const BudgetInput& input : budget_inputs_of(workings, i, workings.job.zones[i])) {
      const ZoneBudget* known = nullptr;
      if (like) {
        for (const ZoneBudget& one : like->budgets[i])
          if (one.input == input) known = &one;
      }
      budgets.push_back({input, known ? known->depth_um : depth_budget_um(input)});
      least_um = std::min(least_um, budgets.back().depth_um);
    }
    workings.budget_um[i] = least_um;
  }
}

inline Workings workings(Setup setup) {
  Workings result = workings_without_budgets(std::move(setup));
  find_budgets(result);
  return result;
}

/// What standing still at the wheel or with the machine of a sheet costs; none by hand. All zones are of one coat and under one wheel
/// or machine: the rate is that of the first.
inline std::optional<StandingStill> still_of(const Workings& workings, std::size_t sheet) {
  const Wheel* wheel = wheel_of(workings.stack.sheets[sheet]);
  for (const SheetInZone& work : workings.work[sheet]) {
    if (!work.machine) continue;
    return standing_still(*machine_of(workings.stack.sheets[sheet]), workings.job.coating.limits,
                          work.rate_um_per_m);
  }
  if (!wheel) return std::nullopt;
  return standing_still(*wheel, workings.job.coating.limits,
                        workings.work[sheet].front().rate_um_per_m);
}

/// What a removal in a zone takes at the wheel of a sheet; none by hand.
inline std::optional<AtWheel> at_wheel(const Workings& workings, std::size_t sheet,
                                       std::size_t zone, double removal_um) {
  const Wheel* wheel = wheel_of(workings.stack.sheets[sheet]);
  if (!wheel) return std::nullopt;
  return AtWheel{
      std::ceil(removal_um / film_per_pass_um(*wheel, workings.work[sheet][zone].rate_um_per_m)),
      zone_pass_s(*wheel, workings.job.zones[zone].area_cm2), *still_of(workings, sheet)};
}

inline Workings workings(const Job& job, const Stack& stack, const Factors& factors = {}) {
  return workings(setup(job, stack, factors));
}

}  // namespace levigate
