// The work behind text/bench_card.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/text/bench_card.hpp"

#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/local.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/surface/defect.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/flowed.hpp"
#include "levigate/text/work/how_told.hpp"
#include "levigate/text/work/instruction_text.hpp"
#include "levigate/text/work/machine_notes.hpp"
#include "levigate/text/work/no_plan.hpp"
#include "levigate/text/work/odds.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/phrases.hpp"
#include "levigate/text/work/say_findings.hpp"
#include "levigate/text/work/sentences_of_change.hpp"
#include "levigate/text/work/step_figures.hpp"
#include "levigate/text/work/tradeoff.hpp"
#include "levigate/text/work/trust.hpp"
#include "levigate/text/work/upkeep.hpp"
#include "levigate/text/work/wheel_notes.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Writes the parts of a card.
class BenchCard {
 public:
  /// `simulation` may be absent.
  BenchCard(const Plan& plan, const Simulation* simulation) : plan_(plan), simulation_(simulation) {
    for (const Step& step : plan.steps) used_.insert(step.sheet);
    if (simulation) require_simulation_of(plan, *simulation);
  }

  std::string text() && {
    header();
    zones();
    change();
    cautions();
    if (plan_.found) {
      before();
      page_.blank();
      for (std::size_t i = 0; i < plan_.steps.size(); ++i) step(i);
      say_film_by_step(page_, plan_);
      say_step_figures(page_, plan_, simulation_);
      if (const std::string care = care_text(plan_); !care.empty()) page_.say("  ", care);
      if (simulation_) say_odds(page_, plan_, *simulation_);
      say_tradeoff(page_, plan_);
    } else {
      say_no_plan(page_, plan_);
    }
    findings();
    if (plan_.found) say_trust(page_, plan_);
    return std::move(page_).text();
  }

 private:
  void header() {
    page_.say("Plan explained: ", plan_.job);
    page_.rule('=');
    if (plan_.wait) page_.say("", wait_text(*plan_.wait));
    for (const Finding& finding : plan_.findings) {
      if (finding.kind == FindingKind::young_coat ||
          finding.kind == FindingKind::reading_contradicts ||
          finding.kind == FindingKind::job_name_near || finding.kind == FindingKind::rest_due ||
          finding.kind == FindingKind::mark_open)
        page_.say("", sentence(finding) + ".");
    }
    if (const std::string text = soft_pad_text(plan_); !text.empty()) page_.say("", text);
    page_.say("",
              fmt::format("On {}, {}. Goal: {}.", plan_.coating,
                          zones_differ() ? "zones in different states" : stands(plan_.scratched_by),
                          goal_text(plan_.target)));
    if (plan_.found) totals();
    page_.blank();
  }

  /// How long it takes, what to lay out, what it uses, and what the sun will show.
  void totals() {
    const Totals& total = plan_.total;
    const std::string strip = strip_text(plan_);
    page_.say("", fmt::format("{}{}, {}{}{}", plan_.wait ? "When it is cured: " : "",
                              steps_text(plan_.steps.size()), duration(total.minutes),
                              strip.empty() ? "" : " " + strip, rests()));
    std::string text =
        fmt::format("Lay out: {}. It uses {:.1f} sheets", layout(), all_sheets(plan_));
    if (total.cost > 0) text += fmt::format(", paper for {:.2f}", total.cost);
    text += ".";
    if (total.film) {
      const Step& last = plan_.steps.back();
      const std::string& worst = last.zones[worst_zone(last)].zone;
      text += std::isinf(*total.film) ? " Zone " + worst + " has no film budget."
                                      : fmt::format(" It uses {} of the film budget in {}.",
                                                    percent_text(*total.film), worst);
    }
    page_.say("", text);
    page_.say("",
              "In the sun: " +
                  sun_text(plan_, simulation_ ? simulation_->minutes.p50 / total.minutes : 1.0));
  }

  /// "1 step", "4 steps".
  static std::string steps_text(std::size_t steps) {
    return fmt::format("{} {}", steps, steps == 1 ? "step" : "steps");
  }

  /// How long it takes: the median and its range where a simulation tells them, else these minutes, said to be at usual numbers.
  std::string duration(double minutes) const {
    if (!simulation_) return usual_numbers_duration(minutes) + ".";
    return expected_duration(simulation_->minutes) + ". " + usual_range(simulation_->minutes);
  }

  /// The rest that a step asks for; empty where none does.
  std::string rests() const {
    for (std::size_t i = 0; i < plan_.steps.size(); ++i) {
      if (plan_.steps[i].rest_h)
        return fmt::format(" Wait {:.0f} h after step {} beside that.", *plan_.steps[i].rest_h,
                           i + 1);
    }
    return "";
  }

  /// Sheets to fetch before the hands are wet, whole ones.
  std::string layout() const {
    std::vector<std::string> pieces;
    for (const Step& step : plan_.steps) {
      pieces.push_back(
          fmt::format("{:.0f} {}", std::max(1.0, std::ceil(step.sheets_used)), step.sheet));
    }
    return list_text(pieces, ", ");
  }

  /// "as sprayed", "scratched by P800"
  static std::string stands(const std::string& label) {
    return label.empty() ? "as sprayed" : "scratched by " + label;
  }

  /// Whether some zone does not stand as the job starts.
  bool zones_differ() const {
    return std::any_of(plan_.zones.begin(), plan_.zones.end(),
                       [&](const PlannedZone& zone) { return zone.stands != plan_.scratched_by; });
  }

  void zones() {
    std::vector<Page::Column> columns{
        {"zone"}, {"area, cm2", true}, {"block"}, {"film, um", true}, {"may go down, um", true}};
    if (zones_differ()) columns.push_back({"state"});
    std::vector<std::vector<std::string>> rows;
    bool film = false;
    for (const PlannedZone& zone : plan_.zones) {
      film = film || zone.film_um;
      std::vector<std::string>& row = rows.emplace_back(std::vector<std::string>{
          shortened(zone.zone, 24), fmt::format("{:.0f}", zone.area_cm2), shortened(zone.block, 18),
          zone.film_um
              ? fmt::format("{:.0f} +- {:.0f}", *zone.film_um, zone.film_sd_um.value_or(0.0))
              : "none",
          zone.budget_um ? fixed(*zone.budget_um, 1) : "no limit"});
      if (!zones_differ()) continue;
      row.push_back(zone.stands.empty() ? "as sprayed" : "at " + shortened(zone.stands, 14));
    }
    page_.table(columns, rows);
    if (!film) return;
    if (plan_.one_round) {
      page_.say(
          "  ",
          "Rounds of this coating melt together. No witness line shows between them. The film "
          "counts all rounds.");
    }
    page_.say("  ", fmt::format("Go no deeper. There the chance is {} that less than {:.0f} um of "
                                "film stays somewhere.",
                                chance_text(plan_.cut_through_limit), plan_.reserve_um));
    say_how_told(page_, plan_);
  }

  void step(std::size_t i) {
    const Step& step = plan_.steps[i];
    const std::string tool = tool_of_all(step);
    std::string head = fmt::format("{}{}, {} ({}", step.sheet, tool.empty() ? "" : " with " + tool,
                                   step.label, size_text(step.size_um));
    if (step.size_ratio) head += fmt::format(", {:.2f} times finer", *step.size_ratio);
    head += step.maker.empty() ? ")" : "), " + step.maker;
    if (!step.wheel) head += fmt::format("; {:.1f} sheets", step.sheets_used);
    page_.say(fmt::format("Step {} of {}: ", i + 1, plan_.steps.size()), head);
    page_.say("  ", flowed({instruction(step, i + 1 == plan_.steps.size()), tools_text(step),
                            is_longer(plan_, step) ? longer_text(plan_, step) : "", done_text(step),
                            edges_text(plan_, i), rest_text(step)}));
    if (step.wheel) wheel(step);
    if (step.machine) say_machine(page_, plan_, step);
  }

  /// The tool of a step that takes one to all zones it works, where the table of zones has another; empty elsewhere.
  std::string tool_of_all(const Step& step) const {
    std::string tool;
    bool other = false;
    for (std::size_t at = 0; at < step.zones.size(); ++at) {
      const ZoneStep& zone = step.zones[at];
      if (!zone.worked) continue;
      if (!tool.empty() && zone.tool != tool) return "";
      tool = zone.tool;
      other = other || tool != plan_.zones[at].block;
    }
    return other ? tool : "";
  }

  /// The tools of a step where the table of zones has another: "Use felt pad on lid and rim."
  std::string tools_text(const Step& step) const {
    if (!tool_of_all(step).empty()) return "";
    std::string text;
    for (std::size_t at = 0; at < step.zones.size(); ++at) {
      const ZoneStep& zone = step.zones[at];
      if (!zone.worked || zone.tool == plan_.zones[at].block) continue;
      if (step.machine && zone.tool == step.machine->name) continue;  // how to guide it is told
      text += fmt::format("{}Use {} on {}.", text.empty() ? "" : " ", zone.tool, zone.zone);
    }
    return text;
  }

  void wheel(const Step& step) {
    page_.say("  ", wheel_text(*step.wheel, passes_text(step)));
    say_unweighed(page_, plan_);
    const auto first = std::find_if(plan_.steps.begin(), plan_.steps.end(),
                                    [](const Step& other) { return other.wheel.has_value(); });
    if (first->sheet == step.sheet) {
      say_wheel_cautions(page_, step);
    } else {
      page_.say("  ", fmt::format("At the wheel: follow the notes of step {}. Use a separate wheel "
                                  "for each compound.",
                                  first - plan_.steps.begin() + 1));
    }
  }

  /// Work on runs and the like, which levelling must not find.
  void before() {
    if (plan_.before.empty()) return;
    page_.title("Before the first step:");
    double minutes = 0;
    for (const LocalStep& local : plan_.before) {
      const Defect& defect = local.defect;
      minutes += local.work.local.minutes;
      page_.say("  - ", fmt::format("{}{}: {} {} of {:.0f} um, {:g} by {:g} mm, with {}. {}.",
                                    local.work.shaved ? "Warning: " : "", local.zone, defect.count,
                                    named(defect), defect.height_um, defect.width_mm,
                                    defect.length_mm, local.block, sentence(local.work)));
    }
    page_.say("  ", fmt::format("{} in all. Done when a straight edge does not rock on the spot "
                                "and the patch is dull all over.",
                                duration_text(minutes)));
  }

  static std::string named(const Defect& defect) {
    return std::string(to_string(defect.kind)) + (defect.count > 1 ? "s" : "");
  }

  /// Whether a finding matters to who works by this card. What is said of two neighbours in the drawer
  /// matters where both are used; of a misleading number, where one of the two might be taken.
  bool concerns(const Finding& finding) const {
    if (finding.kind == FindingKind::rest_due || finding.kind == FindingKind::paper_counted_off ||
        finding.kind == FindingKind::paper_overused)
      return true;
    if (!plan_.found || finding.severity == Severity::error || finding.sheets.empty()) return true;
    const auto used = [&](const std::string& id) { return used_.count(id) > 0; };
    const bool neighbours = finding.kind == FindingKind::near_duplicate ||
                            finding.kind == FindingKind::gap ||
                            finding.kind == FindingKind::coarse_tail;
    return neighbours ? std::all_of(finding.sheets.begin(), finding.sheets.end(), used)
                      : std::any_of(finding.sheets.begin(), finding.sheets.end(), used);
  }

  /// Whether the work before the first step warns of it.
  bool warned_before(const Finding& finding) const {
    return plan_.found && finding.kind == FindingKind::tall_defect &&
           std::any_of(plan_.before.begin(), plan_.before.end(), [&](const LocalStep& local) {
             return local.work.shaved && local.zone == finding.zone;
           });
  }

  void findings() {
    std::vector<Finding> shown;
    std::size_t others = 0;
    for (const Finding& finding : plan_.findings) {
      if (warned_before(finding)) continue;
      if (concerns(finding))
        shown.push_back(finding);
      else
        ++others;
    }
    if (shown.empty() && others == 0) return;
    const std::string more =
        others == 0 ? "" : fmt::format(" ({} more in the check of the stack)", others);
    page_.title(shown.empty() ? "Found in the drawer: nothing that concerns this plan" + more + "."
                              : "Found in the drawer and in the plan" + more + ":");
    say_findings(page_, shown);
  }

  void change() {
    if (!plan_.change) return;
    page_.title("What was learned changes the plan:");
    for (const std::string& text : change_texts(*plan_.change)) page_.say("  - ", text + ".");
    if (simulation_ && simulation_->before_learning)
      page_.say("  - ", "That sequence " + slower_text(*simulation_->before_learning) + ".");
  }

  void cautions() {
    if (plan_.cautions.empty()) return;
    page_.title("Before you start:");
    for (const Caution& caution : plan_.cautions) {
      page_.say("  - ", caution.text);
    }
  }

  const Plan& plan_;
  const Simulation* simulation_;
  std::set<std::string> used_;
  Page page_;
};

}  // namespace detail

LEVIGATE_WORK std::string card(const Plan& plan) { return detail::BenchCard(plan, nullptr).text(); }

LEVIGATE_WORK std::string card(const Plan& plan, const Simulation& simulation) {
  return detail::BenchCard(plan, &simulation).text();
}

}  // namespace levigate
