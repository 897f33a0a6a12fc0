// What is left of the day and of the paper, counted from minutes that the journal tells: no clock is read.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/risk/when_done.hpp"

#include "levigate/bench/work/laid.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learn.hpp"
#include "levigate/journal/work/step_entries.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/stack/finding.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The bench with what its own journal teaches.
inline Bench taught(const Bench& bench) {
  const Shop shop = learn(bench).shop;
  if (shop == bench.shop().value_or(Shop{})) return bench;
  return {bench.job(), bench.stack(), shop, bench.journal(), bench.lines()};
}

/// The last step that was begun and has not ended; null where there is none.
inline const Entry* step_under_way(const std::vector<Entry>& journal) {
  const Entry* begun = nullptr;
  for (const Entry& entry : journal) {
    if (entry.kind == EntryKind::step_begun) begun = &entry;
    if (begun && ends(entry, *begun)) begun = nullptr;
  }
  return begun;
}

/// The plan of what is left where a step is under way: as it is, where that comes first, else the step and what follows it.
inline Plan plan_from(const Bench& bench, const Entry& begun) {
  Plan rest = plan(bench);
  if (rest.found && rest.steps.front().sheet == begun.sheet) return rest;
  std::vector<Entry> journal = bench.journal();
  journal.push_back({.kind = EntryKind::step_ended,
                     .at = begun.at,
                     .job = begun.job,
                     .zone = begun.zone,
                     .sheet = begun.sheet,
                     .minutes = 0});
  std::vector<std::string> sheets{begun.sheet};
  for (const Step& step :
       plan(Bench(bench.job(), bench.stack(), bench.shop(), std::move(journal))).steps)
    sheets.push_back(step.sheet);
  return evaluate(bench, sheets);
}

/// The rest after levelling that is under way, else that to come; none where none is.
inline std::optional<double> rest_of(const Plan& rest, const std::vector<Finding>& findings) {
  for (const Finding& finding : findings)
    if (finding.kind == FindingKind::rest_due) return figure(finding.numbers, "rest_h");
  for (const Step& step : rest.steps)
    if (step.rest_h) return step.rest_h;
  return std::nullopt;
}

inline std::vector<PaperLeft> paper_of(const Bench& bench, const Simulation* simulation) {
  std::vector<PaperLeft> result;
  const Laid& laid = bench.laid();
  for (std::size_t i = 0; i < laid.paper.sheets.size(); ++i) {
    const Sheet& sheet = laid.paper.sheets[i];
    PaperLeft left{sheet.id, laid.sheets_used[i], sheet.on_hand, 0};
    bool comes = false;
    if (simulation) {
      for (const SimulatedStep& step : simulation->steps) {
        if (step.sheet != sheet.id) continue;
        comes = true;
        left.needed += step.sheets_used.p50;
      }
    }
    if (comes || left.used > 0.0) result.push_back(std::move(left));
  }
  return result;
}

}  // namespace detail

LEVIGATE_WORK WhenDone when_done(const Bench& given, const SimulateOptions& options) {
  const Bench bench = detail::taught(given);
  WhenDone result;
  result.job = bench.job().name;
  result.findings = given.findings();
  for (LearnedLine& line : report(bench.shop().value_or(Shop{})))
    if (line.quantity == "minutes" && line.observations > 0) result.pace.push_back(std::move(line));
  const Entry* begun = detail::step_under_way(bench.journal());
  const Plan rest = begun ? detail::plan_from(bench, *begun) : plan(bench);
  result.wait = rest.wait;
  result.rest_h = detail::rest_of(rest, result.findings);
  if (rest.steps.empty()) {
    result.why = rest.why;
    result.done = rest.why && rest.why->blocked_by == Blocker::done && bench.laid().marks.empty();
    result.paper = detail::paper_of(bench, nullptr);
    return result;
  }
  SimulateOptions so_far = options;
  so_far.spent_minutes.reset();
  if (begun) so_far.spent_minutes = begun->minutes.value_or(0.0);
  const Simulation simulation = simulate(bench, rest, so_far);
  for (const Step& step : rest.steps) result.sheets.push_back(step.sheet);
  if (begun)
    result.step =
        StepUnderWay{begun->sheet, *so_far.spent_minutes, simulation.steps.front().minutes};
  result.minutes = simulation.minutes;
  result.paper = detail::paper_of(bench, &simulation);
  result.draws = simulation.draws;
  result.seed = simulation.seed;
  return result;
}

}  // namespace levigate
