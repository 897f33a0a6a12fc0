// A sequence worked out step by step and zone by zone, with what it adds up to.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "levigate/film/budget.hpp"
#include "levigate/film/common_errors.hpp"
#include "levigate/film/edge.hpp"
#include "levigate/film/edge_table.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/findings.hpp"
#include "levigate/plan/work/instructions.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/local.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/sun.hpp"
#include "levigate/plan/work/sunlight.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/defect_table.hpp"
#include "levigate/surface/meter.hpp"
#include "levigate/surface/model.hpp"
#include "levigate/surface/model_table.hpp"
#include "levigate/surface/sheen.hpp"
#include "levigate/wheel/edge.hpp"
#include "levigate/wheel/pass.hpp"
#include "levigate/wheel/standing_still.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Tells what the sun shows of each zone once the steps are done.
inline void tell_sun(const MarksOfSequence& marks, Plan& plan) {
  for (std::size_t zone = 0; zone < plan.zones.size(); ++zone) {
    PlannedZone& row = plan.zones[zone];
    for (const std::vector<Marked>& step : marks.steps) {
      row.marks += step[zone].spots;
      row.clean_chance *= 1.0 - step[zone].chance;
    }
    row.back_minutes = static_cast<double>(marks.zones[zone].back_milliseconds) / ms_per_minute;
    plan.total.clean_chance *= row.clean_chance;
    plan.total.back_minutes += row.back_minutes;
  }
}

/// A zone after a sheet as a glossmeter may find it: with the usual flank, and at both ends of its band, where the grain
/// makes other grooves.
class MeteredFilm {
 public:
  MeteredFilm(const Workings& workings, std::size_t sheet, std::size_t zone, bool worked)
      : index_(workings.job.coating.refractive_index) {
    const Sourced& band = model_table[0].flank_deg;
    const auto at = [&](double flank_deg) {
      if (!worked)
        return Flanks{flank_deg, workings.starts[zone] ? workings.starts[zone]->rq_um : 0.0};
      Model model = workings.model;
      model.flank_deg = flank_deg;
      const SheetInZone work = sheet_in_zone(
          workings.job, model, grain_of(workings, sheet), workings.stack.sheets[sheet].backing,
          workings.work[sheet][zone].tool, workings.factors.of(sheet));
      return Flanks{flank_deg, work.rq_um};
    };
    usual_ = at(workings.model.flank_deg);
    steep_ = at(band.high);
    flat_ = at(band.low);
  }

  Reading reading(double angle_deg) const {
    const auto of = [&](const Flanks& flanks, Lay lay) {
      return meter_reading_gu({index_, angle_deg, flanks.rq_um, flanks.flank_deg, lay});
    };
    return {mean_reading_gu(index_, angle_deg, usual_.rq_um, usual_.flank_deg),
            of(steep_, Lay::across), of(flat_, Lay::along)};
  }

 private:
  struct Flanks {
    double flank_deg = 0;
    double rq_um = 0;
  };
  double index_;
  Flanks usual_, steep_, flat_;
};

/// What the sequences of a plan have in common, worked out when it is first asked for.
class Shared {
 public:
  explicit Shared(const Workings& workings) : sun(workings), workings_(workings) {}

  Sun sun;

  const MeteredFilm& metered(std::size_t sheet, std::size_t zone, bool worked) {
    const auto key = std::tuple(sheet, zone, worked);
    if (const auto known = metered_.find(key); known != metered_.end()) return known->second;
    return metered_.emplace(key, MeteredFilm(workings_, sheet, zone, worked)).first->second;
  }

  /// Chance of cutting through in a zone at a depth, where this sheet came first and levelled it.
  double cut_through(std::size_t zone, std::size_t first, double depth_um) {
    const Block tool = leveller_of(workings_.work[first][zone]);
    const BudgetInput input = budget_input(workings_.job, workings_.job.zones[zone], tool);
    if (none_common(input.common))
      return cut_through_of(workings_.job, workings_.job.zones[zone], tool, depth_um);
    for (const auto& [known, chance] : chances_)
      if (known == input) return chance(depth_um);
    return chances_.emplace_back(input, common_chance(input)).second(depth_um);
  }

 private:
  const Workings& workings_;
  std::map<std::tuple<std::size_t, std::size_t, bool>, MeteredFilm> metered_{};
  std::vector<std::pair<BudgetInput, CommonChance>> chances_{};
};

/// Strokes along an edge that the budget still affords at a depth. The pad's force is borne by a share of its area, so it cuts
/// as much faster there. See strokes_within().
inline double edge_strokes(const Workings& workings, std::size_t sheet, std::size_t zone,
                           double depth_um) {
  constexpr double mm_per_root_cm2 = 10.0;
  const SheetInZone& work = workings.work[sheet][zone];
  return strokes_within(std::max(0.0, *workings.budget_um[zone] - depth_um),
                        work.rate_um_per_m / edge_table[0].bearing_share.value,
                        defect_table[0].stroke_mm.value,
                        mm_per_root_cm2 * std::sqrt(work.tool.area_cm2));
}

/// How far an edge may still be worked at a depth: strokes by hand, time under the face and passes at a wheel. A wheel may bear on
/// the edge alone: it then cuts as much faster as edge_load() has it. An edge of unknown radius counts as sharp.
inline void tell_edge(const Workings& workings, std::size_t sheet, std::size_t zone,
                      ZoneStep& row) {
  const Wheel* wheel = wheel_of(workings.stack.sheets[sheet]);
  if (!wheel) {
    row.strokes_left = edge_strokes(workings, sheet, zone, row.depth_um);
    return;
  }
  const double left_um = std::max(0.0, *workings.budget_um[zone] - row.depth_um);
  const double factor =
      edge_load(*wheel, workings.job.zones[zone].edge->radius_mm.value_or(0.0)).factor;
  const double rate_um_per_m = factor * workings.work[sheet][zone].rate_um_per_m;
  row.left_s = left_um / standing_still(*wheel, std::nullopt, rate_um_per_m).film_um;
  row.passes_left = std::floor(*row.left_s / dwell_s(*wheel));
}

/// `first`: the sheet that comes first in the sequence, which levels.
inline Step worked_step(const Workings& workings, Shared& shared, std::size_t first,
                        std::optional<Before> before, std::size_t sheet, double overcut,
                        const std::vector<Marked>& marked, std::vector<double>& removed_um) {
  const std::vector<Effort> step = efforts(workings, before, sheet, overcut);
  Step result{.sheet = workings.stack.sheets[sheet].id,
              .label = workings.grades[sheet].label,
              .size_um = workings.grades[sheet].median_um,
              .size_ratio = std::nullopt,
              .minutes = step_minutes(step, workings.job.rules),
              .sheets_used = sheets_used(step),
              .cost = sheets_used(step) * workings.stack.sheets[sheet].price.value_or(0.0),
              .gloss_gu = std::numeric_limits<double>::infinity(),
              .reading_gu = std::numeric_limits<double>::infinity(),
              .zones = {}};
  for (const Scratches& found : finds(workings, before, sheet)) {
    result.size_ratio = std::max(result.size_ratio.value_or(0.0), found.size_um / result.size_um);
    result.overcut = overcut;
  }
  result.fragile = fragile(workings, before, sheet);
  const Before now = after(workings, before, sheet);
  for (std::size_t i = 0; i < step.size(); ++i) {
    const Zone& zone = workings.job.zones[i];
    const SheetInZone& work = workings.work[sheet][i];
    const bool here = was_worked(workings, now, i);
    const double standing_um = workings.starts[i] ? workings.starts[i]->rq_um : 0.0;
    const auto gloss = [&](double angle_deg) {
      return gloss_gu(workings.job.coating.refractive_index, angle_deg,
                      here ? work.rq_um : standing_um);
    };
    const double scratch_um = scratch_left_um(workings, now, i);
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
    row.tool = work.tool.name;
    row.marks = marked[i].spots;
    const MeteredFilm& film = shared.metered(sheet, i, here);
    row.reading_20 = film.reading(20.0);
    row.reading_60 = film.reading(60.0);
    row.reading_85 = film.reading(85.0);
    result.reading_gu = std::min(result.reading_gu, row.reading_60.expected_gu);
    row.passed_by = passed_by_for(workings, i, here);
    result.gloss_gu = std::min(result.gloss_gu, row.gloss_gu);
    if (zone.film) {
      row.film_left_um = zone.film->mean_um - row.depth_um;
      row.cut_through = shared.cut_through(i, first, row.depth_um);
      row.film_used = row.depth_um > 0.0 ? row.depth_um / *workings.budget_um[i] : 0.0;
      if (zone.edge) tell_edge(workings, sheet, i, row);
    }
  }
  tell_sheet(workings, sheet, result);
  return result;
}

}  // namespace detail

/// A sequence worked out in full: figures of every step and zone, sums, and findings. The sums are those of the
/// search, so that the figures on a card and the decision agree.
inline Plan plan_of_sequence(const Workings& workings, const Sequence& sequence,
                             detail::Shared& shared) {
  Plan plan;
  tell_job(workings, plan);
  plan.found = true;
  plan.exact = sequence;
  std::vector<double> removed_um(workings.job.zones.size(), 0.0);
  const MarksOfSequence marks = marks_of(workings, shared.sun, sequence);
  for_each_step(
      workings, sequence, [&](std::optional<Before> before, std::size_t sheet, double overcut) {
        plan.steps.push_back(detail::worked_step(workings, shared, sequence.sheets.front(), before,
                                                 sheet, overcut, marks.steps[plan.steps.size()],
                                                 removed_um));
      });
  tell_order(workings, plan);
  const std::int64_t deepest_pm =
      *std::max_element(sequence.depth_pm.begin(), sequence.depth_pm.end());
  plan.total = {.minutes = static_cast<double>(sequence.milliseconds) / detail::ms_per_minute,
                .film = std::nullopt,
                .steps = sequence.steps(),
                .cost = static_cast<double>(sequence.cost) / detail::cost_per_currency,
                .depth_um = static_cast<double>(deepest_pm) / detail::pm_per_um};
  detail::tell_sun(marks, plan);
  if (workings.job.coating.kind == CoatingKind::coat) {
    plan.total.film = used(sequence.film);
  }
  plan.before = local_steps(workings, sequence.sheets.front());
  plan.findings = sequence_findings(workings, sequence);
  const std::vector<Finding> of_defects = defect_findings(plan.before);
  plan.findings.insert(plan.findings.end(), of_defects.begin(), of_defects.end());
  return plan;
}

}  // namespace levigate
