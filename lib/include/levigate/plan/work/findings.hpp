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

#include "levigate/fact.hpp"
#include "levigate/film/film.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/local.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/tool_findings.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/step_rule.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/levelling.hpp"
#include "levigate/wheel/finding.hpp"
#include "levigate/wheel/standing_still.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What a target asks for.
inline std::vector<Quantity> figures_of(const Target& target) {
  std::vector<Quantity> result;
  if (target.size_um) result.push_back({"target_um", *target.size_um});
  if (target.gloss_gu) result.push_back({"target_gloss_gu", *target.gloss_gu});
  if (target.gloss_high_gu) result.push_back({"target_gloss_high_gu", *target.gloss_high_gu});
  if (target.gloss_gu) result.push_back({"target_angle_deg", target.angle_deg});
  return result;
}

inline std::vector<Quantity> figures_of(const CureState& cure) {
  std::vector<Quantity> result{{"age_h", cure.age_h}, {"hard_cure_h", cure.hard_cure_h}};
  if (cure.hardness_ratio) result.push_back({"hardness_ratio", *cure.hardness_ratio});
  if (cure.scratch_ratio) result.push_back({"scratch_ratio", *cure.scratch_ratio});
  if (cure.first_h) result.push_back({"first_h", *cure.first_h});
  if (cure.last_h) result.push_back({"last_h", *cure.last_h});
  result.push_back({"shrink_left", cure.shrink_left});
  return result;
}

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
    curls();
    return std::move(findings_);
  }

 private:
  Named named(std::size_t sheet) const {
    return {"sheet", id(sheet), workings_.grades[sheet].label, size_um(sheet)};
  }
  /// Scratches by what made them, with the size that its grain has worn to.
  static Named named(const Scratches& found) {
    return {found.sheet ? "sheet" : "grade", std::string(found.by), "", found.size_um};
  }
  double size_um(std::size_t sheet) const { return workings_.grades[sheet].median_um; }
  const std::string& id(std::size_t sheet) const { return workings_.stack.sheets[sheet].id; }
  void add(Finding finding) { findings_.push_back(std::move(finding)); }

  /// A finding about one sheet of the sequence.
  Finding about(FindingKind kind, Severity severity, std::size_t sheet,
                std::vector<Quantity> numbers = {}) const {
    return {.kind = kind,
            .severity = severity,
            .sheets = {id(sheet)},
            .about = {named(sheet)},
            .numbers = std::move(numbers)};
  }

  /// The same about a zone too.
  Finding in_zone(std::size_t zone, Finding finding) const {
    finding.zone = workings_.job.zones[zone].name;
    return finding;
  }

  void ratios() {
    for_each_step(workings_, sequence_.sheets,
                  [&](std::optional<Before> before, std::size_t sheet) {
                    for (const Scratches& found : finds(workings_, before, sheet)) {
                      ratio(found, sheet);
                      if (fragile(workings_, before, found, sheet)) on_the_edge(found, sheet);
                    }
                  });
  }

  /// A step that keeps max_ratio as long as the sizes are as they are said to be.
  void on_the_edge(const Scratches& found, std::size_t fine) {
    Finding step = about(
        FindingKind::fragile_step, Severity::note, fine,
        {{"ratio", found.size_um / size_um(fine)}, {"max_ratio", workings_.job.rules.max_ratio}});
    step.about.push_back(named(found));
    if (found.sheet) step.sheets.insert(step.sheets.begin(), std::string(found.by));
    add(std::move(step));
  }

  void ratio(const Scratches& found, std::size_t fine) {
    const Rules& rules = workings_.job.rules;
    const double coarse_um = found.size_um;
    const double ratio = coarse_um / size_um(fine);
    const StepFit fit = fit_of(coarse_um, size_um(fine), rules);
    Finding step = about(FindingKind::not_finer, Severity::error, fine, {{"ratio", ratio}});
    step.about.push_back(named(found));
    if (found.sheet) step.sheets.insert(step.sheets.begin(), std::string(found.by));
    if (ratio <= 1.0) {
      add(std::move(step));
    } else if (fit == StepFit::too_long && !workings_.reach_um[fine]) {
      step.kind = FindingKind::step_too_long;
      step.numbers.push_back({"max_ratio", rules.max_ratio});
      step.bridges = bridges(coarse_um, size_um(fine), rules);
      add(std::move(step));
    } else if (fit == StepFit::too_short) {
      step.kind = FindingKind::step_too_short;
      step.severity = Severity::warning;
      step.numbers.push_back({"min_ratio", rules.min_ratio});
      add(std::move(step));
    }
  }

  /// A compound takes out scratches down to its reach, and levels nothing.
  void compounds() {
    for_each_step(
        workings_, sequence_.sheets, [&](std::optional<Before> before, std::size_t sheet) {
          if (compound_on_peel(workings_, before, sheet)) {
            add(about(FindingKind::scratch_too_deep, Severity::error, sheet));
          } else if (too_deep_um(workings_, before, sheet) > 0) {
            const Scratches deepest = *deepest_found(workings_, before, sheet);
            add(about(
                FindingKind::scratch_too_deep, Severity::error, sheet,
                {{"reach_um", *workings_.reach_um[sheet]}, {"scratch_um", deepest.scratch_um}}));
            findings_.back().about.push_back(named(deepest));
          }
        });
  }

  void repeats() {
    for (std::size_t i = 0; i < sequence_.steps(); ++i) {
      const auto end = sequence_.sheets.begin() + static_cast<std::ptrdiff_t>(i);
      if (std::find(sequence_.sheets.begin(), end, sequence_.sheets[i]) == end) continue;
      add(about(FindingKind::repeated_sheet, Severity::warning, sequence_.sheets[i]));
    }
  }

  /// A soft face follows the orange peel and takes film from its valleys too: compared with a rigid one.
  void levelling() {
    constexpr double worth_saying = 1.25;
    const std::size_t sheet = sequence_.sheets.front();
    for (std::size_t i = 0; i < workings_.job.zones.size(); ++i) {
      const Zone& zone = workings_.job.zones[i];
      if (workings_.starts[i] || !is_levelled(zone)) continue;
      const Block tool = leveller_of(workings_.work[sheet][i]);
      const double usual_mpa = workings_.work[sheet][i].tool.modulus_mpa;
      const double soft_um = removal_um(workings_, std::nullopt, sheet, i);
      const double rigid_um =
          levelling_removal_um({.peel_um = zone.peel_um,
                                .wavelength_mm = zone.peel_wavelength_mm,
                                .modulus_mpa = std::numeric_limits<double>::infinity(),
                                .pressure_kpa = tool.pressure_kpa(),
                                .residual_um = workings_.job.rules.residual_peel_um});
      if (soft_um <= worth_saying * rigid_um) continue;
      Finding soft = in_zone(i, about(FindingKind::soft_first, Severity::warning, sheet,
                                      {{"modulus_mpa", tool.modulus_mpa},
                                       {"removal_um", soft_um},
                                       {"hard_removal_um", rigid_um}}));
      soft.about.push_back({"block", tool.name});
      if (tool.modulus_mpa < usual_mpa) soft.numbers.push_back({"usual_modulus_mpa", usual_mpa});
      add(std::move(soft));
    }
  }

  void paper() {
    for_each_step(workings_, sequence_,
                  [&](std::optional<Before> before, std::size_t sheet, double overcut) {
                    const std::vector<Effort> step = efforts(workings_, before, sheet, overcut);
                    if (micro_short(workings_, step, sheet) == 0) return;
                    add(about(FindingKind::paper_short, Severity::error, sheet,
                              {{"sheets_needed", sheets_used(step)},
                               {"on_hand", *workings_.stack.sheets[sheet].on_hand}}));
                  });
  }

  void film() {
    const std::vector<std::optional<std::int64_t>> budget = budgets_pm(workings_);
    for (std::size_t i = 0; i < budget.size(); ++i) {
      if (!budget[i]) continue;
      for (std::size_t steps = 1; steps <= sequence_.steps(); ++steps) {
        const auto so_many = static_cast<std::ptrdiff_t>(steps);
        const std::vector sheets(sequence_.sheets.begin(), sequence_.sheets.begin() + so_many);
        const std::vector overcuts(sequence_.overcuts.begin(),
                                   sequence_.overcuts.begin() + so_many);
        const std::int64_t depth = summed(workings_, sheets, overcuts).depth_pm[i];
        if (depth <= *budget[i]) continue;
        Finding deep = about(FindingKind::film_short, Severity::error, sequence_.sheets[steps - 1],
                             {{"depth_um", static_cast<double>(depth) / pm_per_um},
                              {"budget_um", *workings_.budget_um[i]}});
        add_still(still_of(workings_, sequence_.sheets[steps - 1]), deep.numbers);
        add(in_zone(i, std::move(deep)));
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
    add(in_zone(zone, about(FindingKind::round_entered, Severity::error, sequence_.sheets.back(),
                            {{"depth_um", depth_um},
                             {"film_um", film_um},
                             {"below_um", workings_.job.zones[zone].below_um}})));
    if (workings_.job.coating.redissolves.value_or(false))
      findings_.back().about.push_back({"film", "all rounds"});
  }

  void target() {
    const auto first =
        std::find_if(sequence_.sheets.begin(), sequence_.sheets.end(),
                     [&](std::size_t sheet) { return meets_target(workings_, sheet); });
    // The first sheet keeps off edges, so that another may have to follow.
    const auto enough =
        first == sequence_.sheets.begin() && passes_some_by(workings_) ? first + 1 : first;
    const std::size_t last = sequence_.sheets.back();
    if (first == sequence_.sheets.end() || !meets_target(workings_, last)) {
      Finding missed = about(FindingKind::target_missed, Severity::error, last,
                             figures_of(workings_.job.target));
      missed.about.push_back({"target", workings_.job.target.label});
      if (!workings_.job.target.rub_out.empty())
        missed.about.push_back({"rub_out", workings_.job.target.rub_out});
      add(std::move(missed));
    } else if (enough + 1 < sequence_.sheets.end()) {
      add(about(FindingKind::after_target, Severity::warning, *first));
    }
    sheen();
  }

  void sheen() {
    const std::optional<double> high_gu = workings_.job.target.gloss_high_gu;
    if (!high_gu) return;
    const std::size_t last = sequence_.sheets.back();
    for (std::size_t zone = 0; zone < workings_.job.zones.size(); ++zone) {
      const double reading_gu = ending(workings_, last, zone).reading_gu;
      if (reading_gu <= *high_gu) continue;
      Finding over =
          in_zone(zone, about(FindingKind::sheen_over, Severity::warning, last,
                              {{"reading_gu", reading_gu}, {"gloss_high_gu", *high_gu}}));
      over.about.push_back({"sheen", workings_.job.target.label});
      add(std::move(over));
    }
  }

  void prices() {
    if (workings_.job.prefer != Objective::cost) return;
    for (const std::size_t sheet : sequence_.sheets) {
      if (workings_.stack.sheets[sheet].price) continue;
      add(about(FindingKind::price_missing, Severity::warning, sheet));
    }
  }

  /// A wheel that nobody can judge is used, but never silently.
  void wheels() {
    std::set<std::size_t> seen;
    for (const std::size_t sheet : sequence_.sheets) {
      const Sheet& wheeled = workings_.stack.sheets[sheet];
      if (!wheel_unknown(workings_.job, wheeled) || !seen.insert(sheet).second) continue;
      const Wheel* wheel = wheel_of(wheeled);
      add(about(FindingKind::wheel_unknown, Severity::warning, sheet,
                {{"surface_speed_m_s",
                  wheel ? wheel->surface_speed_m_s() : machine_of(wheeled)->top_speed_m_s()}}));
      add_still(still_of(workings_, sheet), findings_.back().numbers);
      findings_.back().about.push_back({"surface", workings_.job.coating.name});
    }
  }

  /// A sheen that is not polished shows the curls of a machine that comes last.
  void curls() {
    const std::size_t last = sequence_.sheets.back();
    const Sheet& sheet = workings_.stack.sheets[last];
    if (!workings_.job.target.gloss_high_gu || polish_of(sheet)) return;
    for (std::size_t zone = 0; zone < workings_.job.zones.size(); ++zone) {
      if (!workings_.work[last][zone].machine) continue;
      Finding show = about(FindingKind::curls_show, Severity::warning, last, {});
      show.about.push_back({"machine", machine_of(sheet)->name});
      add(std::move(show));
      return;
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

/// What there is to say of the films before any sequence: a zone without a budget may not be touched.
inline std::vector<Finding> film_findings(const Workings& workings) {
  std::vector<Finding> result;
  const std::vector<std::optional<std::int64_t>> budget = budgets_pm(workings);
  for (std::size_t i = 0; i < budget.size(); ++i) {
    if (budget[i] != detail::no_budget_pm) continue;
    const Zone& zone = workings.job.zones[i];
    Finding& thin = result.emplace_back();
    thin.kind = FindingKind::film_too_thin;
    thin.severity = Severity::error;
    thin.zone = zone.name;
    thin.numbers = {{"film_um", zone.film->mean_um},
                    {"film_sd_um", spot_sd_um(*zone.film)},
                    {"reserve_um", workings.job.rules.reserve_um},
                    {"cut_through", cut_through_of(workings.job, zone, zone.block, 0.0)},
                    {"cut_through_limit", workings.job.rules.cut_through_limit}};
    if (zone.film->readings > 0)
      thin.numbers.push_back({"readings", static_cast<double>(zone.film->readings)});
  }
  return result;
}

/// What there is to say of a job and its tools before any sequence: its films, its cure, its wheels, its machines.
inline std::vector<Finding> job_findings(const Workings& workings) {
  std::vector<Finding> result = film_findings(workings);
  if (const CureState cure = cure_of(workings.job); !cure.hard) {
    result.push_back({.kind = FindingKind::young_coat,
                      .severity = Severity::warning,
                      .sheets = {},
                      .numbers = detail::figures_of(cure)});
  }
  if (workings.job.age_h && !rules_of_cure(workings.job)) {
    result.push_back({.kind = FindingKind::cure_unknown,
                      .severity = Severity::warning,
                      .sheets = {},
                      .about = {{"coating", workings.job.coating.name}},
                      .numbers = {{"age_h", *workings.job.age_h}}});
  }
  for (const std::vector<Finding>& more :
       {wheel_findings_in(workings), weight_findings(workings), machine_limits(workings)})
    result.insert(result.end(), more.begin(), more.end());
  return result;
}

/// What there is to say of the defects that are taken down before a sequence: tall ones must not be sanded out flat.
inline std::vector<Finding> defect_findings(const std::vector<LocalStep>& steps) {
  std::vector<Finding> result;
  for (const LocalStep& step : steps) {
    if (!step.work.shaved) continue;
    Finding& tall = result.emplace_back();
    tall.kind = FindingKind::tall_defect;
    tall.severity = Severity::warning;
    tall.zone = step.zone;
    tall.about = {{"defect", std::string(to_string(step.defect.kind))}};
    tall.numbers = {
        {"height_um", step.defect.height_um},     {"tape_um", step.work.tape_um},
        {"residual_um", step.work.residual_um},   {"local_minutes", step.work.local.minutes},
        {"flat_minutes", step.work.flat.minutes}, {"flat_film_um", step.work.flat.film_um}};
  }
  return result;
}

}  // namespace levigate
