// From physics to the integers of the search: which steps the rules allow, and what each one costs.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <numeric>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/ratio.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/median_band.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

/// The limits that a ladder keeps; relaxed one by one to find which of them is in the way.
struct Limits {
  double min_ratio = 1;
  double max_ratio = 1;
  double deeper_um = 0;    ///< by which scratches may exceed what a compound takes out
  bool film = true;        ///< every zone stays within its budget
  bool paper = true;       ///< no step uses more sheets than are on hand
  bool choice = false;     ///< steps may have any of the overcuts; else the least
  bool all_zones = false;  ///< no sequence ends while a zone is as sprayed
};

inline Limits limits_of(const Rules& rules) {
  return {.min_ratio = rules.min_ratio, .max_ratio = rules.max_ratio};
}

namespace detail {

inline constexpr double pm_per_um = 1e6;

inline constexpr double ms_per_minute = 60'000.0;

inline constexpr double cost_per_currency = 10'000.0;

inline constexpr double micro_per_sheet = 1e6;

/// Stands for no budget at all: a picometre, which no step keeps.
inline constexpr std::int64_t no_budget_pm = 1;

/// A step that would take longer than this is not a step. Keeps every sum far inside 64 bits.
inline constexpr double longest_minutes = 1e9;

inline constexpr double most_sheets = 1e9;

}  // namespace detail

/// Sheets in the integers of the search [1/1 000 000 sheet], as decisions on paper are taken in them.
inline std::int64_t micro_sheets(double sheets) {
  return std::llround(sheets * detail::micro_per_sheet);
}

/// Sheets that a step needs beyond what is on hand [1/1 000 000 sheet]; zero where there is enough or no limit.
inline std::int64_t micro_short(const Workings& workings, const std::vector<Effort>& step,
                                std::size_t sheet) {
  const std::optional<double> on_hand = workings.stack.sheets[sheet].on_hand;
  if (!on_hand) return 0;
  return std::max<std::int64_t>(0, micro_sheets(sheets_used(step)) - micro_sheets(*on_hand));
}

/// Whether the limits allow a step from grain of one size to a sheet. A compound may be any amount finer: what it can take
/// out is the rule for it.
inline bool ratio_allowed(const Workings& workings, const Limits& limits, double from_um,
                          std::size_t sheet) {
  const double to_um = workings.grades[sheet].median_um;
  const double most =
      workings.reach_um[sheet] ? std::numeric_limits<double>::infinity() : limits.max_ratio;
  return to_um < from_um && ratio_within(from_um, to_um, limits.min_ratio, most);
}

/// Whether the limits allow a step on what it finds.
inline bool ratio_allowed(const Workings& workings, const Limits& limits,
                          std::optional<Before> before, std::size_t sheet) {
  const std::vector<Scratches> found = finds(workings, before, sheet);
  return std::all_of(found.begin(), found.end(), [&](const Scratches& one) {
    return ratio_allowed(workings, limits, one.size_um, sheet);
  });
}

/// The grade whose scratches a step finds.
inline Grade grade_of(const Workings& workings, std::optional<Before> before,
                      const Scratches& found) {
  if (found.sheet) return workings.grades[before->sheet];
  std::size_t zone = 0;
  while (!workings.starts[zone] || workings.starts[zone]->label != found.by) ++zone;
  return carried_in(workings.job, workings.job.zones[zone])->grade;
}

/// Whether a step keeps max_ratio on what it finds, and breaks it once the size of one of the two grades, alone, is at an end of its
/// band. A compound may be any amount finer.
inline bool fragile(const Workings& workings, std::optional<Before> before, const Scratches& found,
                    std::size_t sheet) {
  if (workings.reach_um[sheet]) return false;
  const Sourced to = detail::median_band(workings.grades[sheet]);
  const Sourced from = detail::median_band(grade_of(workings, before, found));
  const double high_um = found.size_um * from.high / from.value;
  const auto keeps = [&](double from_um, double to_um) {
    return ratio_within(from_um, to_um, 0.0, workings.job.rules.max_ratio);
  };
  return keeps(found.size_um, to.value) &&
         !(keeps(high_um, to.value) && keeps(found.size_um, to.low));
}

/// The same of all that it finds.
inline bool fragile(const Workings& workings, std::optional<Before> before, std::size_t sheet) {
  const std::vector<Scratches> all = finds(workings, before, sheet);
  return std::any_of(all.begin(), all.end(), [&](const Scratches& found) {
    return fragile(workings, before, found, sheet);
  });
}

/// The step in the integers of the search, each sum rounded to the nearest. Work on defects counts with the first step.
/// Throws: OutOfRange where the step would take more than 1e9 minutes or sheets
inline StepCost step_cost(const Workings& workings, std::optional<Before> before, std::size_t sheet,
                          const std::vector<Effort>& step) {
  const double minutes =
      step_minutes(step, workings.job.rules) + (before ? 0.0 : workings.local_minutes[sheet]);
  const double sheets = sheets_used(step);
  const std::string where = "a step with sheet '" + workings.stack.sheets[sheet].id + "'";
  detail::require_range(minutes, 0.0, detail::longest_minutes, "minutes", "min", where);
  detail::require_range(sheets, 0.0, detail::most_sheets, "sheets_used", "sheets", where);
  StepCost cost{.milliseconds = std::llround(minutes * detail::ms_per_minute),
                .cost = std::llround(sheets * workings.stack.sheets[sheet].price.value_or(0.0) *
                                     detail::cost_per_currency),
                .removal_pm = {}};
  for (const Effort& zone : step) {
    cost.removal_pm.push_back(std::llround(zone.removal_um * detail::pm_per_um));
    cost.zone_milliseconds.push_back(
        zone.removal_um > 0.0
            ? std::llround(with_change(zone.minutes, workings.job.rules) * detail::ms_per_minute)
            : 0);
  }
  cost.fragile = fragile(workings, before, sheet) ? 1 : 0;
  cost.micro_sheets = micro_sheets(sheets);
  return cost;
}

namespace detail {

/// A budget in the integers of the search, rounded down; at least no_budget_pm.
inline std::int64_t floored_pm(double budget_um) {
  return std::max(no_budget_pm, static_cast<std::int64_t>(std::floor(budget_um * pm_per_um)));
}

}  // namespace detail

/// The depth that each zone can afford, rounded down; at least detail::no_budget_pm. None on a solid.
inline std::vector<std::optional<std::int64_t>> budgets_pm(const Workings& workings) {
  std::vector<std::optional<std::int64_t>> result;
  for (const std::optional<double>& budget_um : workings.budget_um) {
    result.push_back(budget_um ? std::optional(detail::floored_pm(*budget_um)) : std::nullopt);
  }
  return result;
}

/// Share of its budget that a zone has used: 0 untouched; once worked, infinity where it has no budget.
inline double used(FilmShare share) {
  if (share.depth_pm > 0 && share.budget_pm == detail::no_budget_pm)
    return std::numeric_limits<double>::infinity();
  return static_cast<double>(share.depth_pm) / static_cast<double>(share.budget_pm);
}

/// Grain and reading of a zone at the end of a sequence.
struct Ending {
  double size_um = 0;
  double reading_gu = 0;  ///< of a glossmeter at the angle of the target
};

/// How a sheet that ends a sequence leaves a zone: by its own work, or as the zone stands.
inline Ending ending(const Workings& workings, std::size_t sheet, std::size_t zone) {
  const std::optional<Start>& start = workings.starts[zone];
  if (workings.stands[sheet][zone]) return {start->size_um, start->reading_gu};
  return {workings.grades[sheet].median_um, workings.work[sheet][zone].reading_gu};
}

/// Whether a zone that ends so meets the target, which for a band of sheen is neither below nor above it.
inline bool meets_target(const Target& target, const Ending& zone) {
  if (target.size_um) return zone.size_um <= *target.size_um;
  const double high_gu = target.gloss_high_gu.value_or(std::numeric_limits<double>::infinity());
  return zone.reading_gu >= *target.gloss_gu && zone.reading_gu <= high_gu;
}

/// Whether a sequence may end with a sheet: with any, unless the target names one.
inline bool may_end(const Workings& workings, std::size_t sheet) {
  const std::string& rub_out = workings.job.target.rub_out;
  return rub_out.empty() || workings.stack.sheets[sheet].id == rub_out;
}

/// Whether a sheet that ends a sequence meets the target in every zone. A job that is rubbed out ends with that sheet alone.
inline bool meets_target(const Workings& workings, std::size_t sheet) {
  if (workings.refused[sheet] || !may_end(workings, sheet)) return false;
  for (std::size_t zone = 0; zone < workings.job.zones.size(); ++zone) {
    if (!meets_target(workings.job.target, ending(workings, sheet, zone))) return false;
  }
  return true;
}

/// Whether a job whose zones were worked already meets the target in all of them.
inline bool already_done(const Workings& workings) {
  if (!workings.job.target.rub_out.empty()) return false;
  bool done = false;
  for (std::size_t zone = 0; zone < workings.job.zones.size(); ++zone) {
    const std::optional<Start>& start = workings.starts[zone];
    if (!start || !meets_target(workings.job.target, {start->size_um, start->reading_gu}))
      return false;
    done = done || workings.job.zones[zone].carries;
  }
  return done;
}

/// A step under the limits, once for each overcut that they leave it; none where they do not allow it.
inline std::vector<LadderStep> allowed_steps(const Workings& workings, const Limits& limits,
                                             std::optional<Before> before, std::size_t sheet) {
  if (!ratio_allowed(workings, limits, before, sheet)) return {};
  if (workings.refused[sheet]) return {};
  if (compound_on_peel(workings, before, sheet)) return {};
  if (too_deep_um(workings, before, sheet) > limits.deeper_um) return {};
  std::vector<LadderStep> result;
  for (const double overcut : workings.overcuts) {
    const std::vector<Effort> step = efforts(workings, before, sheet, overcut);
    if (step_minutes(step, workings.job.rules) + workings.local_minutes[sheet] >
        detail::longest_minutes) {
      break;
    }
    if (sheets_used(step) > detail::most_sheets) break;
    if (limits.paper && micro_short(workings, step, sheet) > 0) break;
    result.push_back({sheet, step_cost(workings, before, sheet, step), overcut});
    const bool levels = !before && workings.levels;  // what takes the peel down has no overcut
    if (!limits.choice || levels) break;
  }
  return result;
}

/// Whether the first step leaves some zone as sprayed.
inline bool passes_some_by(const Workings& workings) {
  for (std::size_t zone = 0; zone < workings.job.zones.size(); ++zone) {
    if (passed_by(workings, zone)) return true;
  }
  return false;
}

/// A sheet's rung under the limits.
inline Rung rung(const Workings& workings, const Limits& limits, const Before& sheet) {
  Rung result;
  const bool meets = meets_target(workings, sheet.sheet);
  const bool leaves_some = sheet.first && passes_some_by(workings);
  result.ends = meets && !(limits.all_zones && leaves_some);
  for (std::size_t zone = 0; zone < workings.job.zones.size(); ++zone) {
    result.scratch_pm.push_back(
        std::llround(scratch_left_um(workings, sheet, zone) * detail::pm_per_um));
  }
  if (meets && !leaves_some) return result;
  for (std::size_t to = 0; to < workings.stack.sheets.size(); ++to) {
    for (LadderStep& step : allowed_steps(workings, limits, sheet, to))
      result.next.push_back(std::move(step));
  }
  return result;
}

/// The ladder of these workings under limits.
inline Ladder ladder(const Workings& workings, const Limits& limits) {
  Ladder result;
  const std::size_t count = workings.stack.sheets.size();
  result.coarse_to_fine.resize(count);
  std::iota(result.coarse_to_fine.begin(), result.coarse_to_fine.end(), std::size_t{0});
  std::stable_sort(result.coarse_to_fine.begin(), result.coarse_to_fine.end(),
                   [&](std::size_t a, std::size_t b) {
                     return workings.grades[a].median_um > workings.grades[b].median_um;
                   });
  for (std::size_t sheet = 0; sheet < count; ++sheet) {
    for (LadderStep& step : allowed_steps(workings, limits, std::nullopt, sheet))
      result.first.push_back(std::move(step));
    result.as_first.push_back(rung(workings, limits, {sheet, true}));
    result.later.push_back(rung(workings, limits, {sheet, false}));
  }
  result.budget_pm = budgets_pm(workings);
  if (!limits.film) result.budget_pm.assign(result.budget_pm.size(), std::nullopt);
  return result;
}

/// The sums of any sequence of sheets, whether it keeps the rules or not, but for what the sun shows.
/// `overcuts`: of each step; empty: the least.
/// Throws: OutOfRange where a step would take more than 1e9 minutes or sheets
inline Sequence summed(const Workings& workings, const std::vector<std::size_t>& sheets,
                       std::vector<double> overcuts = {}) {
  if (overcuts.empty()) overcuts.assign(sheets.size(), *workings.job.rules.overcut);
  Sequence result{.sheets = sheets,
                  .milliseconds = 0,
                  .cost = 0,
                  .depth_pm = {},
                  .film = {},
                  .overcuts = std::move(overcuts)};
  std::vector<std::int64_t> removed(workings.job.zones.size(), 0);
  const auto add = [&](std::optional<Before> before, std::size_t sheet, double overcut) {
    const StepCost step =
        step_cost(workings, before, sheet, efforts(workings, before, sheet, overcut));
    result.milliseconds += step.milliseconds;
    result.cost += step.cost;
    result.fragile += step.fragile;
    result.depth_pm.clear();
    for (std::size_t zone = 0; zone < removed.size(); ++zone) {
      removed[zone] += step.removal_pm[zone];
      const double scratch_um = scratch_left_um(workings, after(workings, before, sheet), zone);
      result.depth_pm.push_back(removed[zone] + std::llround(scratch_um * detail::pm_per_um));
    }
  };
  for_each_step(workings, result, add);
  result.film = worst_share(budgets_pm(workings), result.depth_pm);
  return result;
}

}  // namespace levigate
