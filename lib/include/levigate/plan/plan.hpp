// The plan: a sequence worked out step by step and zone by zone, with what it adds up to.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "levigate/film/edge.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/findings.hpp"
#include "levigate/plan/reliance.hpp"
#include "levigate/wheel/caution.hpp"

namespace levigate::inline v0 {

/// What a step does in one zone.
struct ZoneStep {
  std::string zone;
  bool worked = true;     ///< false: this step passes it by, and it stands as before
  double removal_um = 0;  ///< lowered by this step [um]
  double scratch_um = 0;  ///< depth of the scratches it leaves [um]
  double depth_um = 0;    ///< all removal so far and these scratches [um]
  double minutes = 0;     ///< sanding, without the change
  double travel_m = 0;    ///< of the block
  double sheets_used = 0;
  double gloss_gu = 0;     ///< at 60 degrees, a lower bound of a glossmeter's reading [GU]
  double gloss_20_gu = 0;  ///< the same at 20 degrees [GU]
  double gloss_85_gu = 0;  ///< the same at 85 degrees [GU]
  std::optional<double> film_left_um;  ///< above the deepest scratch, on the mean; none on a solid
  std::optional<double>
      cut_through;  ///< chance of cutting through somewhere in the zone; none on a solid
  /// Strokes of the pad along the edge that the film still affords after this step; only where a zone on a coat is not
  /// levelled.
  std::optional<double> strokes_left{};
};

/// One step of a plan.
struct Step {
  std::string sheet;  ///< id
  std::string label;  ///< of the grade, as read
  double size_um = 0;
  std::optional<double>
      size_ratio;      ///< to the coarsest grain whose scratches it finds; none where it finds none
  double minutes = 0;  ///< all zones, with the change
  double sheets_used = 0;
  double cost = 0;
  double gloss_gu = 0;  ///< of the zone with least
  std::vector<ZoneStep> zones;
  std::vector<Caution> cautions{};  ///< that this step needs beside those of the plan
};

/// What a plan adds up to.
struct Totals {
  double minutes = 0;
  std::optional<double>
      film;  ///< share of its budget that the worst zone has used; none on a solid
  std::size_t steps = 0;
  double cost = 0;
  double depth_um = 0;  ///< of the deepest zone
};

/// A plan, or the reason why there is none.
struct Plan {
  bool found = false;
  std::vector<LocalStep> before;  ///< work on defects, before the first step
  std::vector<Step> steps;
  Totals total;
  Sequence exact;  ///< the integers that the search decided by
  std::vector<Plan>
      tradeoff;  ///< one per point of the trade-off, by minutes; empty in those plans themselves
  std::vector<Finding> findings;
  std::vector<Caution> cautions;
  std::vector<Reliance> relies_on;  ///< most influential first; empty in the plans of a trade-off
  std::optional<Why> why;           ///< only where none was found
};

namespace detail {

/// Strokes along an edge that the budget still affords at a depth. The pad's force is borne by a share of its area, so it cuts
/// as much faster there. See strokes_within().
inline double edge_strokes(const Bench& bench, std::size_t sheet, std::size_t zone,
                           double depth_um) {
  constexpr double mm_per_root_cm2 = 10.0;
  const SheetInZone& work = bench.work[sheet][zone];
  return strokes_within(std::max(0.0, *bench.budget_um[zone] - depth_um),
                        work.rate_um_per_m / edge_table[0].bearing_share.value,
                        defect_table[0].stroke_mm.value,
                        mm_per_root_cm2 * std::sqrt(work.tool.area_cm2));
}

inline Step worked_step(const Bench& bench, std::optional<Before> before, std::size_t sheet,
                        std::vector<double>& removed_um) {
  const std::vector<Effort> step = efforts(bench, before, sheet);
  Step result{.sheet = bench.stack.sheets[sheet].id,
              .label = bench.grades[sheet].label,
              .size_um = bench.grades[sheet].median_um,
              .size_ratio = std::nullopt,
              .minutes = step_minutes(step, bench.job.rules),
              .sheets_used = sheets_used(step),
              .cost = sheets_used(step) * bench.stack.sheets[sheet].price.value_or(0.0),
              .gloss_gu = std::numeric_limits<double>::infinity(),
              .zones = {}};
  if (const auto& block = bench.stack.sheets[sheet].block; block && block->wheel) {
    for (const WheelCaution& c : wheel_cautions) {
      result.cautions.push_back({std::string(c.topic), std::string(c.text)});
    }
  }
  for (const Scratches& found : finds(bench, before, sheet)) {
    result.size_ratio = std::max(result.size_ratio.value_or(0.0), found.size_um / result.size_um);
  }
  const Before now = after(bench, before, sheet);
  for (std::size_t i = 0; i < step.size(); ++i) {
    const Zone& zone = bench.job.zones[i];
    const SheetInZone& work = bench.work[sheet][i];
    const bool here = worked(bench, now, i);
    const double standing_um = bench.starts[i] ? bench.starts[i]->rq_um : 0.0;
    const auto gloss = [&](double angle_deg) {
      return gloss_gu(bench.job.coating.refractive_index, angle_deg,
                      here ? work.rq_um : standing_um);
    };
    const double scratch_um = scratch_left_um(bench, now, i);
    removed_um[i] += step[i].removal_um;
    ZoneStep& row = result.zones.emplace_back(ZoneStep{.zone = zone.name,
                                                       .worked = here,
                                                       .removal_um = step[i].removal_um,
                                                       .scratch_um = scratch_um,
                                                       .depth_um = removed_um[i] + scratch_um,
                                                       .minutes = step[i].minutes,
                                                       .travel_m = step[i].travel_m,
                                                       .sheets_used = step[i].sheets_used,
                                                       .gloss_gu = gloss(60.0),
                                                       .gloss_20_gu = gloss(20.0),
                                                       .gloss_85_gu = gloss(85.0),
                                                       .film_left_um = std::nullopt,
                                                       .cut_through = std::nullopt});
    result.gloss_gu = std::min(result.gloss_gu, row.gloss_gu);
    if (zone.film) {
      row.film_left_um = zone.film->mean_um - row.depth_um;
      row.cut_through = cut_through_of(bench.job, zone, row.depth_um);
      if (!zone.levelled) row.strokes_left = edge_strokes(bench, sheet, i, row.depth_um);
    }
  }
  return result;
}

}  // namespace detail

/// A sequence worked out in full: figures of every step and zone, sums, and findings. The sums are those of the
/// search, so that the figures on a card and the decision agree.
inline Plan worked_out(const Bench& bench, const Sequence& sequence) {
  Plan plan;
  plan.found = true;
  plan.exact = sequence;
  std::vector<double> removed_um(bench.job.zones.size(), 0.0);
  for_each_step(bench, sequence.sheets, [&](std::optional<Before> before, std::size_t sheet) {
    plan.steps.push_back(detail::worked_step(bench, before, sheet, removed_um));
  });
  const std::int64_t deepest_pm =
      *std::max_element(sequence.depth_pm.begin(), sequence.depth_pm.end());
  plan.total = {.minutes = static_cast<double>(sequence.milliseconds) / detail::ms_per_minute,
                .film = std::nullopt,
                .steps = sequence.steps(),
                .cost = static_cast<double>(sequence.cost) / detail::cost_per_currency,
                .depth_um = static_cast<double>(deepest_pm) / detail::pm_per_um};
  if (bench.job.coating.kind == CoatingKind::coat) {
    plan.total.film =
        static_cast<double>(sequence.film.depth_pm) / static_cast<double>(sequence.film.budget_pm);
  }
  plan.before = local_steps(bench, sequence.sheets.front());
  plan.findings = sequence_findings(bench, sequence);
  const std::vector<Finding> of_defects = defect_findings(plan.before);
  plan.findings.insert(plan.findings.end(), of_defects.begin(), of_defects.end());
  return plan;
}

/// The best plan for a job from a stack, with the whole trade-off beside it; or why there is none.
///
/// The choice is exact: among all sequences that keep the rules, none is better in what the job prefers. See search().
///
/// Throws:    BadInput, OutOfRange where job or stack cannot be used; UnknownGrade, AmbiguousLabel for a sheet
///            whose label does not settle its size
/// NaN:       rejected
/// Accuracy:  sums to a millisecond, a picometre and a hundredth of a cent; as a prediction, rates are uncertain by a
///            factor of 2 to 3 until calibrated
/// Source:    those of the formulas in surface/ and film/
inline Plan plan(const Job& job, const Stack& stack) {
  const Bench bench = levigate::bench(job, stack);
  const std::vector<Sequence> found = sequences_of(bench);
  Plan result;
  if (found.empty()) {
    result.why = why_no_plan(bench);
  } else {
    result = worked_out(bench, best(found, job.prefer));
    result.relies_on = reliances(bench, result.exact);
    for (const Sequence& point : tradeoff(found)) {
      result.tradeoff.push_back(worked_out(bench, point));
    }
  }
  for (const std::vector<Finding>& more : {job_findings(bench), check(stack, job.rules)}) {
    result.findings.insert(result.findings.begin(), more.begin(), more.end());
  }
  result.cautions = cautions(job);
  return result;
}

/// A sequence taken as given, by the ids of its sheets: the same figures as a plan, and every rule it breaks as a finding.
///
/// Throws:    as plan(); BadInput for an empty sequence or an id that is not in the stack
/// NaN:       rejected
/// Accuracy:  that of plan()
/// Source:    that of plan()
inline Plan evaluate(const Job& job, const Stack& stack, const std::vector<std::string>& sequence) {
  if (sequence.empty())
    throw BadInput("sequence is empty: it needs at least one sheet, in evaluate");
  const Bench bench = levigate::bench(job, stack);
  std::vector<std::size_t> sheets;
  for (const std::string& id : sequence) sheets.push_back(sheet_index(stack, id));
  Plan result = worked_out(bench, summed(bench, sheets));
  const std::vector<Finding> of_job = job_findings(bench);
  result.findings.insert(result.findings.begin(), of_job.begin(), of_job.end());
  result.relies_on = reliances(bench, result.exact);
  result.cautions = cautions(job);
  return result;
}

}  // namespace levigate
