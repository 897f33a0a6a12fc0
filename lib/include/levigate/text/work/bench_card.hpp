// The work behind text/bench_card.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <array>
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
#include "levigate/text/work/how_told.hpp"
#include "levigate/text/work/instruction_text.hpp"
#include "levigate/text/work/machine_notes.hpp"
#include "levigate/text/work/no_plan.hpp"
#include "levigate/text/work/odds.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/phrases.hpp"
#include "levigate/text/work/say_findings.hpp"
#include "levigate/text/work/sentences_of_change.hpp"
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
      for (std::size_t i = 0; i < plan_.steps.size(); ++i) step(i);
      totals();
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
    page_.rule('=');
    page_.say("Bench card: ", plan_.job);
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
    if (plan_.found) {
      const std::string strip = strip_text(plan_);
      page_.say(
          "", fmt::format("{}{}, {}.{}{} Lay out: {}.", plan_.wait ? "When it is cured: " : "",
                          steps_text(plan_.steps.size()), duration(plan_.total.minutes, whole()),
                          range(whole()) + (strip.empty() ? "" : " " + strip), rests(), layout()));
    }
    page_.rule('=');
  }

  /// "1 step", "4 steps".
  static std::string steps_text(std::size_t steps) {
    return fmt::format("{} {}", steps, steps == 1 ? "step" : "steps");
  }

  /// How long it takes: the median where a simulation tells it, else these minutes, said to be at usual numbers.
  static std::string duration(double minutes, const Interval* interval) {
    return interval ? expected_duration(*interval) : usual_numbers_duration(minutes);
  }

  /// And what that lies between, where a simulation tells it.
  static std::string range(const Interval* interval) {
    return interval ? " " + usual_range(*interval) : "";
  }

  const Interval* interval(std::size_t step) const {
    return simulation_ ? &simulation_->steps[step].minutes : nullptr;
  }
  const Interval* whole() const { return simulation_ ? &simulation_->minutes : nullptr; }

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
    page_.say("  ",
              fmt::format("Go no deeper. There the chance is {} that less than {:.0f} um of film "
                          "stays somewhere in the zone.",
                          chance_text(plan_.cut_through_limit), plan_.reserve_um));
    for (const PlannedZone& zone : plan_.zones) {
      if (zone.film_how) page_.say("  ", how_told_text(zone));
    }
  }

  void step(std::size_t i) {
    const Step& step = plan_.steps[i];
    page_.blank();
    page_.rule('-');
    page_.say(fmt::format("Step {} of {}: ", i + 1, plan_.steps.size()),
              fmt::format("take {}, {} ({}){}", step.sheet, step.label, size_text(step.size_um),
                          step.maker.empty() ? "" : ", " + step.maker));
    page_.say("  ", instruction(step, i + 1 == plan_.steps.size()));
    zone_table(step);
    if (is_longer(plan_, step)) page_.say("  ", longer_text(plan_, step));
    page_.say("  ", done_text(step));
    if (step.rest_h) page_.say("  ", rest_text(step));
    if (step.wheel) wheel(step);
    if (step.machine) say_machine(page_, plan_, step);
    page_.say("  ", "Takes " + duration(step.minutes, interval(i)) + " with washing and changing" +
                        (step.wheel ? "." : fmt::format("; {:.1f} sheets.", step.sheets_used)) +
                        range(interval(i)));
    for (const std::string& line : upkeep(step)) page_.say("  ", line);
    after_step(step);
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
      page_.say("  - ",
                fmt::format("{}: {} {} of {:.0f} um, {:g} by {:g} mm, with {}. {}.", local.zone,
                            defect.count, named(defect), defect.height_um, defect.width_mm,
                            defect.length_mm, local.block, sentence(local.work)));
    }
    page_.say("  ", fmt::format("{} in all. Done when a straight edge does not rock on the spot "
                                "and the patch is dull all over.",
                                duration_text(minutes)));
  }

  static std::string named(const Defect& defect) {
    return std::string(to_string(defect.kind)) + (defect.count > 1 ? "s" : "");
  }

  /// "17.2"; where it stands as before why, and where there is nothing to take off that.
  static std::string off(const ZoneStep& zone) {
    if (zone.passed_by) return *zone.passed_by == PassedBy::not_levelled ? "keep off" : "pass by";
    if (zone.removal_um == 0.0) return "light pass";
    return fixed(zone.removal_um, zone.removal_um < 0.1 ? 2 : 1);
  }

  void zone_table(const Step& step) {
    std::vector<std::vector<std::string>> rows;
    for (const ZoneStep& zone : step.zones) {
      rows.push_back({shortened(zone.zone, 24), shortened(zone.tool, 18), off(zone),
                      zone.removal_um == 0.0 ? "-" : duration_text(zone.minutes),
                      zone.film_left_um ? fixed(*zone.film_left_um, 0) : "-",
                      zone.cut_through ? chance_text(*zone.cut_through) : "-"});
    }
    page_.table({{"zone"},
                 {"with"},
                 {"take off, um", true},
                 {"usual time", true},
                 {"left, um", true},
                 {"cut through", true}},
                rows);
  }

  void after_step(const Step& step) {
    const ZoneStep& worst = step.zones[worst_zone(step)];
    if (worst.film_left_um && worst.film_used) {
      page_.say("  ",
                fmt::format("Film in the worst zone, {}: {:.1f} um left{}.", worst.zone,
                            *worst.film_left_um,
                            std::isinf(*worst.film_used) ? ". The zone has no film budget"
                                                         : ", " + percent_text(*worst.film_used) +
                                                               " of the film budget used"));
    }
    const auto least = [&](double ZoneStep::*gloss_gu) {
      const auto lower = [&](const ZoneStep& a, const ZoneStep& b) {
        return a.*gloss_gu < b.*gloss_gu;
      };
      return *std::min_element(step.zones.begin(), step.zones.end(), lower).*gloss_gu;
    };
    const auto dullest = std::min_element(
        step.zones.begin(), step.zones.end(), [](const ZoneStep& a, const ZoneStep& b) {
          return a.reading_60.expected_gu < b.reading_60.expected_gu;
        });
    const SimulatedReading* simulated =
        simulation_ ? &simulation_->steps[static_cast<std::size_t>(&step - plan_.steps.data())]
                           .zones[static_cast<std::size_t>(dullest - step.zones.begin())]
                    : nullptr;
    const auto told = [&](Reading ZoneStep::*plain, Interval SimulatedReading::*drawn,
                          std::string_view of = {}) {
      const Reading& usual = (*dullest).*plain;
      const auto [about, low, high] =
          simulated ? std::array{(simulated->*drawn).p50, (simulated->*drawn).p10,
                                 (simulated->*drawn).p90}
                    : std::array{usual.expected_gu, usual.low_gu, usual.high_gu};
      return fmt::format("{:.0f} GU ({:.0f} to {:.0f}{})", about, low, high, of);
    };
    page_.say("  ", "A glossmeter reads about " +
                        told(&ZoneStep::reading_60, &SimulatedReading::reading_60_gu,
                             simulated ? " in 4 of 5 cases" : " by lay and flank") +
                        " at 60 degrees. At 20 degrees it reads " +
                        told(&ZoneStep::reading_20, &SimulatedReading::reading_20_gu) +
                        ", at 85 degrees " +
                        told(&ZoneStep::reading_85, &SimulatedReading::reading_85_gu) + ".");
    page_.say(
        "  ",
        fmt::format("What it mirrors alone is {:.0f} GU at 20, {:.0f} GU at 60, {:.0f} GU at 85 "
                    "degrees.",
                    least(&ZoneStep::gloss_20_gu), least(&ZoneStep::gloss_gu),
                    least(&ZoneStep::gloss_85_gu)));
  }

  void totals() {
    const Totals& total = plan_.total;
    page_.blank();
    page_.rule('-');
    std::string text = fmt::format("{}, {}, {:.1f} sheets", steps_text(plan_.steps.size()),
                                   duration(total.minutes, whole()), all_sheets(plan_));
    if (total.cost > 0) text += fmt::format(", paper for {:.2f}", total.cost);
    if (total.film) {
      const Step& last = plan_.steps.back();
      const std::string& worst = last.zones[worst_zone(last)].zone;
      text += std::isinf(*total.film) ? ". Zone " + worst + " has no film budget"
                                      : fmt::format(". {} of the film budget used in {}",
                                                    percent_text(*total.film), worst);
    }
    page_.say("In all: ", text + "." + range(whole()));
    page_.say("In the sun: ", sun_text(plan_, whole() ? whole()->p50 / total.minutes : 1.0));
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

  void findings() {
    std::vector<Finding> shown;
    for (const Finding& finding : plan_.findings) {
      if (concerns(finding)) shown.push_back(finding);
    }
    const std::size_t others = plan_.findings.size() - shown.size();
    if (plan_.findings.empty()) return;
    page_.title("Found in the drawer and in the plan:");
    say_findings(page_, shown);
    if (others > 0) {
      page_.say(
          "  ",
          fmt::format("Findings that do not concern this card: {}. The check of the stack lists "
                      "them.",
                      others));
    }
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
