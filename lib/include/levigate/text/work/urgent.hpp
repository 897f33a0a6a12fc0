// What a finisher must know before the first step, in one line each: waiting, readings that contradict, rules that the work breaks.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/detail/moment.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/fact.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/text/work/facts.hpp"
#include "levigate/text/work/measure.hpp"
#include "levigate/text/work/phrases.hpp"
#include "levigate/text/work/sentences_of_finding.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Findings in short, for who stands at the bench.
class UrgentFinding {
 public:
  UrgentFinding(const Finding& finding, const Measure& measure)
      : finding_(finding), measure_(measure) {}

  /// Empty where it changes nothing at the bench, or stands in a row of the sheet.
  std::string text() const {
    const std::string first = named_at(finding_.about, 0).name;
    const std::string second = named_at(finding_.about, 1).name;
    switch (finding_.kind) {
      case FindingKind::paper_short:
        return figure(finding_.numbers, "sheets_needed")
                   ? first + " needs " + told("sheets_needed", 1) + " sheets. The stack has " +
                         told("on_hand", 1) + "."
                   : "The stack has no sheet of " + first + " left.";
      case FindingKind::step_too_long:
        return second + " to " + first + " is too long a step: " + told("ratio", 2) +
               " times finer.";
      case FindingKind::not_finer:
        return first + " is not finer than " + second + ". It undoes the step before.";
      case FindingKind::scratch_too_deep:
        return figure(finding_.numbers, "reach_um")
                   ? first + " does not take out the scratches of " + second + "."
                   : first + " is a compound and cannot level orange peel.";
      case FindingKind::film_too_thin:
        return "Do not sand " + finding_.zone + ": its film is too thin.";
      case FindingKind::film_short:
        return first + " takes " + finding_.zone + " down by " + depth("depth_um") +
               " in all. Its film budget is " + depth("budget_um") + ".";
      case FindingKind::round_entered:
        return name_of(finding_.about, "film").empty()
                   ? finding_.zone + ": the last round is sanded through. A witness line will show."
                   : finding_.zone + ": the film is sanded through. The bottom will show.";
      case FindingKind::soft_first:
        return figure(finding_.numbers, "usual_modulus_mpa")
                   ? "Nobody measured the pad of the " + block() +
                         ". The film is counted for a soft one."
                   : "Levelling " + finding_.zone + " with " + block() + " costs " +
                         depth("removal_um") + " of film. A soft face follows the peel.";
      case FindingKind::target_missed: return "The last step misses the goal.";
      case FindingKind::sheen_over: return finding_.zone + " ends with more sheen than the goal.";
      case FindingKind::cure_unknown:
        return "How long " + name_of(finding_.about, "coating") +
               " cures is not known here. Follow its data sheet.";
      case FindingKind::wheel_speed: return first + ": the speed is outside the coat's limits.";
      case FindingKind::wheel_heat: return first + ": a spot gets too warm in one pass.";
      case FindingKind::wheel_unknown:
        return first + ": no limits of speed and heat are known for this coat. Try scrap first.";
      case FindingKind::reading_contradicts:
        return "The gauge read " + level("read_um") + " on " + finding_.zone + ", " +
               level("expected_um") + " was expected. The thinner counts. Read again.";
      case FindingKind::job_name_near:
        return "The journal has lines of job '" + second + "', nearly '" + first +
               "'. They do not count here.";
      case FindingKind::rest_due: return rest_due();
      case FindingKind::mark_open:
        return "Open mark: " + first + " on " + finding_.zone + ". go-back tells the way.";
      case FindingKind::paper_overused:
        return "The journal used more of " + first + " than was on hand. Count the sheets.";
      case FindingKind::machine_narrow:
        return finding_.zone + " may be narrow. The " + name_of(finding_.about, "machine") +
               " may cut through at an edge there.";
      case FindingKind::curls_show:
        return first + " leaves curls that show. Rub the last grade by hand along the grain.";
      case FindingKind::piece_too_heavy:
        return "The piece is too heavy for a wheel. Use a hand-held polisher.";
      case FindingKind::piece_unweighed:
        return "Weigh the piece before you hold it to the wheel. It may be too heavy.";
      case FindingKind::ambiguous_label:
      case FindingKind::unknown_label:
      case FindingKind::step_too_short:
      case FindingKind::repeated_sheet: return where_an_error();
      case FindingKind::extrapolated_size:
      case FindingKind::misleading_numbers:  // in the row of its step
      case FindingKind::near_duplicate:
      case FindingKind::gap:
      case FindingKind::coarse_tail:
      case FindingKind::price_missing:
      case FindingKind::fragile_step:
      case FindingKind::after_target:
      case FindingKind::tall_defect:  // in the rows before the first step
      case FindingKind::young_coat:   // the wait says it
      case FindingKind::paper_counted_off:
      case FindingKind::label_by_rule:
      case FindingKind::machine_by_hand:  // in the notes of its step, as machine_strip
      case FindingKind::machine_strip: return "";
    }
    return "";
  }

 private:
  std::string told(std::string_view name, int decimals) const {
    return fixed(finding_.numbers, name, decimals);
  }
  std::string depth(std::string_view name) const {
    return measure_.depth_text(value_of(finding_.numbers, name));
  }
  std::string level(std::string_view name) const {
    return measure_.level_text(value_of(finding_.numbers, name));
  }
  std::string block() const { return name_of(finding_.about, "block"); }

  std::string where_an_error() const {
    return finding_.severity == Severity::error ? sentence_of(finding_) + "." : "";
  }

  std::string rest_due() const {
    const std::string not_before = name_of(finding_.about, "not_before");
    return (moment_fault(not_before).empty()
                ? "Not before " + spoken_moment(not_before) + ": level"
                : "Wait " + told("rest_h", 0) + " h after levelling. Then level") +
           " once more with " + list_text(finding_.sheets) + ".";
  }

  const Finding& finding_;
  const Measure& measure_;
};

/// Sheets of which one draw in ten, or more, wants more than is on hand.
inline std::vector<std::string> paper_that_may_run_out(const Simulation& simulation) {
  constexpr double one_in_ten = 0.1;  // then p90 of a step is more than there is
  std::vector<std::string> lines;
  for (const SimulatedStep& step : simulation.steps) {
    if (!step.paper_short || step.paper_short->share <= one_in_ten) continue;
    lines.push_back(fmt::format("{} may run out. {:.0f} sheets are enough in 9 of 10 cases.",
                                step.sheet, std::ceil(step.sheets_used.p90)));
  }
  return lines;
}

/// All that concerns this work, errors first.
inline std::vector<std::string> urgent_lines(const Plan& plan, const Simulation* simulation,
                                             const Measure& measure) {
  std::set<std::string> used;
  for (const Step& step : plan.steps) used.insert(step.sheet);
  const auto concerns = [&](const Finding& finding) {
    return !plan.found || finding.sheets.empty() || finding.kind == FindingKind::rest_due ||
           std::any_of(finding.sheets.begin(), finding.sheets.end(),
                       [&](const std::string& id) { return used.count(id) > 0; });
  };
  std::vector<std::string> lines;
  if (plan.wait) lines.push_back(wait_text(*plan.wait));
  for (const Severity severity : {Severity::error, Severity::warning, Severity::note}) {
    for (const Finding& finding : plan.findings) {
      if (finding.severity != severity || !concerns(finding)) continue;
      const std::string line = UrgentFinding(finding, measure).text();
      if (!line.empty() && std::find(lines.begin(), lines.end(), line) == lines.end())
        lines.push_back(line);
    }
  }
  if (simulation) {
    for (std::string& line : paper_that_may_run_out(*simulation)) lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace detail

}  // namespace levigate
