// The least lift of one limit under which there is a plan: of ratios, of a compound's reach, of film, of paper.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/grade/grade.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/stack/step_rule.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::vector<Sequence> found_under(const Workings& workings, const Limits& limits) {
  return search(ladder(workings, limits));
}

/// All ratios that a step of these workings could have, ascending.
inline std::vector<double> possible_ratios(const Workings& workings) {
  std::vector<double> from;
  for (std::size_t sheet = 0; sheet < workings.grades.size(); ++sheet)
    from.push_back(worn_um(workings, sheet));
  for (const std::optional<Start>& start : workings.starts) {
    if (start) from.push_back(start->worn_um);
  }
  std::vector<double> ratios;
  for (const double coarse : from) {
    for (const Grade& grade : workings.grades) {
      if (grade.median_um < coarse) ratios.push_back(coarse / grade.median_um);
    }
  }
  std::sort(ratios.begin(), ratios.end());
  ratios.erase(std::unique(ratios.begin(), ratios.end()), ratios.end());
  return ratios;
}

/// The first of these bounds, each looser than the one before, under which there is a plan. A looser bound only adds
/// steps, so bisection is exact.
inline std::optional<double> first_that_does(const Workings& workings, Limits limits,
                                             double Limits::*bound,
                                             const std::vector<double>& values) {
  const auto too_tight = [&](double value) {
    limits.*bound = value;
    return found_under(workings, limits).empty();
  };
  const auto at = std::partition_point(values.begin(), values.end(), too_tight);
  return at == values.end() ? std::nullopt : std::optional(*at);
}

/// The smallest max_ratio, from the present one up, under which there is a plan.
inline std::optional<double> smallest_max_ratio(const Workings& workings, const Limits& limits) {
  std::vector<double> values = possible_ratios(workings);
  std::erase_if(values, [&](double ratio) { return ratio <= limits.max_ratio; });
  values.insert(values.begin(), limits.max_ratio);
  return first_that_does(workings, limits, &Limits::max_ratio, values);
}

/// The largest min_ratio, from the present one down, under which there is a plan. Which zones a sheet passes by stays as
/// it is: a limit that is lifted takes no step away.
inline std::optional<double> largest_min_ratio(const Workings& workings, const Limits& limits) {
  std::vector<double> values = possible_ratios(workings);
  std::erase_if(values, [&](double ratio) { return ratio >= limits.min_ratio; });
  values.push_back(limits.min_ratio);
  std::reverse(values.begin(), values.end());
  return first_that_does(workings, limits, &Limits::min_ratio, values);
}

/// The least depth by which scratches must be allowed to exceed a compound's reach, for there to be a plan.
inline std::optional<double> least_deeper_um(const Workings& workings, const Limits& limits) {
  std::vector<double> values{limits.deeper_um};
  for (std::size_t to = 0; to < workings.grades.size(); ++to) {
    values.push_back(too_deep_um(workings, std::nullopt, to));
    for (std::size_t from = 0; from < workings.grades.size(); ++from) {
      values.push_back(too_deep_um(workings, Before{from, true}, to));
      values.push_back(too_deep_um(workings, Before{from, false}, to));
    }
  }
  std::erase_if(values, [&](double value) { return value < limits.deeper_um; });
  std::sort(values.begin(), values.end());
  return first_that_does(workings, limits, &Limits::deeper_um, values);
}

/// The steps of a sequence that are longer than max_ratio.
inline std::vector<Gap> gaps_in(const Workings& workings, const Sequence& sequence) {
  std::vector<Gap> gaps;
  for_each_step(workings, sequence.sheets, [&](std::optional<Before> before, std::size_t sheet) {
    const double fine_um = workings.grades[sheet].median_um;
    for (const Scratches& found : finds(workings, before, sheet)) {
      if (fit_of(found.size_um, fine_um, workings.job.rules) != StepFit::too_long) continue;
      gaps.push_back({std::string(found.by), workings.stack.sheets[sheet].id, found.size_um,
                      fine_um, found.size_um / fine_um,
                      bridges(found.size_um, fine_um, workings.job.rules)});
    }
  });
  return gaps;
}

/// How far the zone that is shortest of film is beyond its budget, at least: the least over all sequences of the
/// worst zone's excess.
struct FilmShort {
  std::size_t zone = 0;
  double excess_um = 0;
  std::vector<std::int64_t> depth_pm{};  ///< of each zone in that sequence
};

/// Depths are shifted so that equal excess means equal depth; the search for the least film then finds the least excess.
inline std::optional<FilmShort> least_film_short(const Workings& workings, Limits limits) {
  const Ladder strict = ladder(workings, limits);
  limits.film = false;
  Ladder shifted = ladder(workings, limits);
  std::int64_t largest = 0;
  for (const auto& budget : strict.budget_pm) largest = std::max(largest, budget.value_or(0));
  for (std::vector<Rung>* rungs : {&shifted.as_first, &shifted.later}) {
    for (Rung& rung : *rungs) {
      for (std::size_t zone = 0; zone < rung.scratch_pm.size(); ++zone) {
        rung.scratch_pm[zone] += largest - strict.budget_pm[zone].value_or(0);
      }
    }
  }
  const std::vector<Sequence> found = search(shifted);
  if (found.empty()) return std::nullopt;
  std::vector<std::int64_t> depth = best(found, Objective::film).depth_pm;
  const auto worst = std::max_element(depth.begin(), depth.end());
  FilmShort result{static_cast<std::size_t>(worst - depth.begin()),
                   static_cast<double>(*worst - largest) / pm_per_um};
  for (std::size_t zone = 0; zone < depth.size(); ++zone)
    depth[zone] -= largest - strict.budget_pm[zone].value_or(0);
  result.depth_pm = std::move(depth);
  return result;
}

/// The sheets that run out in the sequence that needs the fewest sheets beyond what is on hand.
inline std::vector<PaperShort> least_paper_short(const Workings& workings, Limits limits) {
  limits.paper = false;
  Ladder counted = ladder(workings, limits);
  const auto missing = [&](std::optional<Before> before, std::size_t sheet) {
    return micro_short(workings, efforts(workings, before, sheet), sheet);
  };
  for (LadderStep& step : counted.first) step.cost.cost = missing(std::nullopt, step.to);
  for (std::size_t sheet = 0; sheet < counted.later.size(); ++sheet) {
    for (LadderStep& step : counted.as_first[sheet].next) {
      step.cost.cost = missing(Before{sheet, true}, step.to);
    }
    for (LadderStep& step : counted.later[sheet].next) {
      step.cost.cost = missing(Before{sheet, false}, step.to);
    }
  }
  const std::vector<Sequence> found = search(counted);
  if (found.empty()) return {};
  std::vector<PaperShort> result;
  for_each_step(workings, best(found, Objective::cost).sheets,
                [&](std::optional<Before> before, std::size_t sheet) {
                  const std::vector<Effort> step = efforts(workings, before, sheet);
                  if (micro_short(workings, step, sheet) == 0) return;
                  result.push_back({workings.stack.sheets[sheet].id, sheets_used(step),
                                    *workings.stack.sheets[sheet].on_hand});
                });
  return result;
}

}  // namespace detail

}  // namespace levigate
