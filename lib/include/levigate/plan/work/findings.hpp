// What there is to say of one sequence: the rules it breaks, and where it wastes film.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/local.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/why.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/step_rule.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/levelling.hpp"
#include "levigate/wheel/finding.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Collects the findings of one sequence.
class SequenceFindings {
 public:
  SequenceFindings(const Workings& workings, const Sequence& sequence)
      : workings_(workings), sequence_(sequence) {}

  std::vector<Finding> all() {
    ratios();
    compounds();
    repeats();
    levelling();
    paper();
    film();
    target();
    prices();
    wheels();
    return std::move(findings_);
  }

 private:
  std::string named(std::size_t sheet) const {
    return workings_.stack.sheets[sheet].id + " (" + size_text(size_um(sheet)) + ")";
  }
  /// Scratches for the eye, by what made them: "a-p800 (21.8 um)".
  static std::string named(const Scratches& found) {
    return std::string(found.by) + " (" + size_text(found.size_um) + ")";
  }
  double size_um(std::size_t sheet) const { return workings_.grades[sheet].median_um; }
  const std::string& id(std::size_t sheet) const { return workings_.stack.sheets[sheet].id; }
  void add(FindingKind kind, Severity severity, std::vector<std::string> sheets,
           std::string message) {
    findings_.push_back({kind, severity, std::move(sheets), std::move(message)});
  }

  void ratios() {
    for_each_step(workings_, sequence_.sheets,
                  [&](std::optional<Before> before, std::size_t sheet) {
                    for (const Scratches& found : finds(workings_, before, sheet))
                      ratio(found, sheet);
                  });
  }

  void ratio(const Scratches& found, std::size_t fine) {
    const Rules& rules = workings_.job.rules;
    const double coarse_um = found.size_um;
    const double ratio = coarse_um / size_um(fine);
    const StepFit fit = fit_of(coarse_um, size_um(fine), rules);
    std::vector<std::string> ids{id(fine)};
    if (found.sheet) ids.insert(ids.begin(), std::string(found.by));
    const std::string step = "step to " + named(fine) + " from " + named(found);
    if (ratio <= 1.0) {
      add(FindingKind::not_finer, Severity::error, ids,
          step + " is not finer: its scratches undo the step before");
    } else if (fit == StepFit::too_long && !workings_.reach_um[fine]) {
      const auto ways = bridges(coarse_um, size_um(fine), rules);
      add(FindingKind::step_too_long, Severity::error, ids,
          step + " is a ratio of " + fixed(ratio, 2) + ", above max_ratio " +
              fixed(rules.max_ratio, 2) +
              (ways.empty() ? "" : "; " + bridges_text(ways) + " would bridge it"));
    } else if (fit == StepFit::too_short) {
      add(FindingKind::step_too_short, Severity::warning, ids,
          step + " is a ratio of " + fixed(ratio, 2) + ", below min_ratio " +
              fixed(rules.min_ratio, 2) + ": it costs film and time and gains little");
    }
  }

  /// A compound takes out scratches down to its reach, and levels nothing.
  void compounds() {
    for_each_step(workings_, sequence_.sheets,
                  [&](std::optional<Before> before, std::size_t sheet) {
                    if (compound_on_peel(workings_, before, sheet)) {
                      add(FindingKind::scratch_too_deep, Severity::error, {id(sheet)},
                          named(sheet) + " is a compound and cannot level orange peel");
                    } else if (too_deep_um(workings_, before, sheet) > 0) {
                      const Scratches deepest = *deepest_found(workings_, before, sheet);
                      add(FindingKind::scratch_too_deep, Severity::error, {id(sheet)},
                          named(sheet) + " takes out scratches of up to " +
                              fixed(*workings_.reach_um[sheet], 2) + " um; those of " +
                              named(deepest) + " are " + fixed(deepest.scratch_um, 2) + " um deep");
                    }
                  });
  }

  void repeats() {
    for (std::size_t i = 0; i < sequence_.steps(); ++i) {
      const auto end = sequence_.sheets.begin() + static_cast<std::ptrdiff_t>(i);
      if (std::find(sequence_.sheets.begin(), end, sequence_.sheets[i]) == end) continue;
      add(FindingKind::repeated_sheet, Severity::warning, {id(sequence_.sheets[i])},
          named(sequence_.sheets[i]) + " comes more than once");
    }
  }

  /// A soft face follows the orange peel and takes film from its valleys too: compared with a rigid one.
  void levelling() {
    constexpr double worth_saying = 1.25;
    const std::size_t sheet = sequence_.sheets.front();
    for (std::size_t i = 0; i < workings_.job.zones.size(); ++i) {
      const Zone& zone = workings_.job.zones[i];
      if (workings_.starts[i] || !is_levelled(zone)) continue;
      const Block& tool = workings_.work[sheet][i].tool;
      const double soft_um = removal_um(workings_, std::nullopt, sheet, i);
      const double rigid_um =
          levelling_removal_um({.peel_um = zone.peel_um,
                                .wavelength_mm = zone.peel_wavelength_mm,
                                .modulus_mpa = std::numeric_limits<double>::infinity(),
                                .pressure_kpa = tool.pressure_kpa(),
                                .residual_um = workings_.job.rules.residual_peel_um});
      if (soft_um <= worth_saying * rigid_um) continue;
      add(FindingKind::soft_first, Severity::warning, {id(sheet)},
          "levelling zone " + zone.name + " with " + tool.name + " (" +
              number_text(tool.modulus_mpa) + " MPa) costs " + fixed(soft_um, 1) + " um of film, " +
              fixed(soft_um / rigid_um, 1) + " times the " + fixed(rigid_um, 1) +
              " um of a hard block: a soft face follows the orange peel");
    }
  }

  void paper() {
    for_each_step(workings_, sequence_.sheets,
                  [&](std::optional<Before> before, std::size_t sheet) {
                    const std::vector<Effort> step = efforts(workings_, before, sheet);
                    if (micro_short(workings_, step, sheet) == 0) return;
                    add(FindingKind::paper_short, Severity::error, {id(sheet)},
                        named(sheet) + " needs " + fixed(sheets_used(step), 2) + " sheets, " +
                            fixed(*workings_.stack.sheets[sheet].on_hand, 2) + " on hand");
                  });
  }

  void film() {
    const std::vector<std::optional<std::int64_t>> budget = budgets_pm(workings_);
    for (std::size_t i = 0; i < budget.size(); ++i) {
      if (!budget[i]) continue;
      for (std::size_t steps = 1; steps <= sequence_.steps(); ++steps) {
        const auto end = sequence_.sheets.begin() + static_cast<std::ptrdiff_t>(steps);
        const std::int64_t depth = summed(workings_, {sequence_.sheets.begin(), end}).depth_pm[i];
        if (depth <= *budget[i]) continue;
        add(FindingKind::film_short, Severity::error, {id(sequence_.sheets[steps - 1])},
            "zone " + workings_.job.zones[i].name + " is " +
                fixed(static_cast<double>(depth) / pm_per_um, 1) + " um deep after " +
                named(sequence_.sheets[steps - 1]) + ", its budget is " +
                fixed(*workings_.budget_um[i], 1) + " um");
        break;
      }
      entered(i);
    }
  }

  /// The ring that shows where the sanding goes through a round: no polish hides it.
  void entered(std::size_t zone) {
    const double film_um = workings_.job.zones[zone].film->mean_um;
    const double depth_um = static_cast<double>(sequence_.depth_pm[zone]) / pm_per_um;
    if (depth_um <= film_um) return;
    add(FindingKind::round_entered, Severity::error, {id(sequence_.sheets.back())},
        "zone " + workings_.job.zones[zone].name + " is sanded through its last round of " +
            fixed(film_um, 1) + " um" +
            (workings_.job.zones[zone].below_um > 0 ? " into the one below" : "") +
            ": a witness line shows that no polish hides");
  }

  void target() {
    const auto first =
        std::find_if(sequence_.sheets.begin(), sequence_.sheets.end(),
                     [&](std::size_t sheet) { return meets_target(workings_, sheet); });
    const std::size_t last = sequence_.sheets.back();
    if (first == sequence_.sheets.end() || !meets_target(workings_, last)) {
      add(FindingKind::target_missed, Severity::error, {id(last)},
          "ends with " + named(last) + " and misses the target, " + target_text(workings_));
    } else if (first + 1 != sequence_.sheets.end()) {
      add(FindingKind::after_target, Severity::warning, {id(*first)},
          named(*first) + " already meets the target; what follows spends film beyond it");
    }
    sheen();
  }

  void sheen() {
    const std::optional<double> high_gu = workings_.job.target.gloss_high_gu;
    if (!high_gu) return;
    const std::size_t last = sequence_.sheets.back();
    for (std::size_t zone = 0; zone < workings_.job.zones.size(); ++zone) {
      const double gloss_gu = ending(workings_, last, zone).gloss_gu;
      if (gloss_gu <= *high_gu) continue;
      add(FindingKind::sheen_over, Severity::warning, {id(last)},
          "zone " + workings_.job.zones[zone].name + " ends at " + fixed(gloss_gu, 0) +
              " GU or more, above the " + fixed(*high_gu, 0) + " GU of " +
              workings_.job.target.label);
    }
  }

  void prices() {
    if (workings_.job.prefer != Objective::cost) return;
    for (const std::size_t sheet : sequence_.sheets) {
      if (workings_.stack.sheets[sheet].price) continue;
      add(FindingKind::price_missing, Severity::warning, {id(sheet)},
          named(sheet) + " has no price and counts as free");
    }
  }

  /// A wheel that nobody can judge is used, but never silently.
  void wheels() {
    std::set<std::size_t> seen;
    for (const std::size_t sheet : sequence_.sheets) {
      const Sheet& wheeled = workings_.stack.sheets[sheet];
      if (!wheel_unknown(workings_.job, wheeled) || !seen.insert(sheet).second) continue;
      add(FindingKind::wheel_unknown, Severity::warning, {id(sheet)},
          id(sheet) + ": the rim runs at " + fixed(wheel_of(wheeled)->surface_speed_m_s(), 1) +
              " m/s; the speed and heat that " + workings_.job.coating.name +
              " stands are not known: try it on scrap first");
    }
  }

  const Workings& workings_;
  const Sequence& sequence_;
  std::vector<Finding> findings_;
};

}  // namespace detail

/// Everything to say of a sequence under the rules of its job.
inline std::vector<Finding> sequence_findings(const Workings& workings, const Sequence& sequence) {
  return detail::SequenceFindings(workings, sequence).all();
}

/// What there is to say of a job and its tools before any sequence: its defects, its cure, its wheels.
inline std::vector<Finding> job_findings(const Workings& workings) {
  std::vector<Finding> result;
  if (const CureState cure = cure_of(workings.job); !cure.hard) {
    result.push_back({FindingKind::young_coat, Severity::warning, {}, "the coat is " + cure.text});
  }
  for (std::size_t i = 0; i < workings.stack.sheets.size(); ++i) {
    for (const WheelFinding& f : wheel_findings_of(workings, workings.stack.sheets[i])) {
      const bool heat = f.kind == WheelFindingKind::dwell_too_long;
      result.push_back({heat ? FindingKind::wheel_heat : FindingKind::wheel_speed,
                        f.severity,
                        {workings.stack.sheets[i].id},
                        workings.stack.sheets[i].id + ": " + f.message});
    }
  }
  return result;
}

/// What there is to say of the defects that are taken down before a sequence: tall ones must not be sanded out flat.
inline std::vector<Finding> defect_findings(const std::vector<LocalStep>& steps) {
  std::vector<Finding> result;
  for (const LocalStep& step : steps) {
    if (!step.work.shaved) continue;
    result.push_back({FindingKind::tall_defect,
                      Severity::warning,
                      {},
                      std::string(to_string(step.defect.kind)) + " of " +
                          detail::fixed(step.defect.height_um, 0) + " um in zone " + step.zone +
                          ": " + step.work.verdict});
  }
  return result;
}

}  // namespace levigate
