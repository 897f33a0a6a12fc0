// The work behind text/bench_card.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "levigate/text/bench_card.hpp"

#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/local.hpp"
#include "levigate/plan/outcome.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/defect.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/layout.hpp"
#include "levigate/text/work/no_plan.hpp"
#include "levigate/text/work/odds.hpp"
#include "levigate/text/work/phrases.hpp"
#include "levigate/text/work/say_findings.hpp"
#include "levigate/text/work/step_text.hpp"
#include "levigate/text/work/trust.hpp"
#include "levigate/text/work/upkeep.hpp"
#include "levigate/text/work/wheel_notes.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Writes the parts of a card.
class BenchCard {
 public:
  /// `simulation` may be absent.
  BenchCard(const Job& job, const Stack& stack, const Plan& plan, const Simulation* simulation)
      : job_(job), stack_(stack), plan_(plan), simulation_(simulation) {
    for (const Step& step : plan.steps) {
      if (step.zones.size() != job.zones.size()) {
        throw BadInput("the plan has other zones than the job '" + job.name + "'");
      }
      used_.insert(step.sheet);
    }
    if (simulation) require_simulation_of(job, plan, *simulation);
  }

  std::string text() && {
    header();
    zones();
    cautions();
    if (plan_.found) {
      before();
      for (std::size_t i = 0; i < plan_.steps.size(); ++i) step(i);
      totals();
      if (simulation_) say_odds(page_, job_, plan_, *simulation_);
      tradeoff();
    } else {
      say_no_plan(page_, plan_);
    }
    findings();
    if (plan_.found) say_trust(page_, stack_, plan_);
    return std::move(page_).text();
  }

 private:
  const Sheet& sheet(const Step& step) const {
    return stack_.sheets[sheet_index(stack_, step.sheet)];
  }
  Block block(const Step& step, std::size_t zone) const {
    const Sheet& s = sheet(step);
    const Tool* tool = tool_of(s);
    return tool ? face_of(*tool) : job_.zones[zone].block;
  }

  void header() {
    page_.rule('=');
    page_.say("Bench card: ", job_.name);
    page_.say("", fmt::format("On {}, {}. Goal: {}.", job_.coating.name,
                              zones_differ() ? "zones as they stand" : state_text(job_.zones[0]),
                              goal_text(job_.target)));
    if (plan_.found) {
      page_.say("", fmt::format("{} steps, {}. Lay out: {}.", plan_.steps.size(),
                                duration_text(plan_.total.minutes), layout()));
    }
    page_.rule('=');
  }

  /// Sheets to fetch before the hands are wet, whole ones.
  std::string layout() const {
    std::vector<std::string> pieces;
    for (const Step& step : plan_.steps) {
      pieces.push_back(fmt::format(
          "{:.0f}{} of {}", std::max(1.0, std::ceil(step.sheets_used)),
          pieces.empty() ? step.sheets_used > 1 ? " sheets" : " sheet" : "", step.sheet));
    }
    return list_text(pieces);
  }

  /// "as sprayed", "scratched by P800"
  std::string state_text(const Zone& zone) const {
    const std::optional<Carried> carried = carried_in(job_, zone);
    return carried ? "scratched by " + carried->grade.label : "as sprayed";
  }

  /// Whether some zone does not stand as the job starts.
  bool zones_differ() const {
    return std::any_of(job_.zones.begin(), job_.zones.end(),
                       [](const Zone& zone) { return zone.carries.has_value(); });
  }

  void zones() {
    const bool coat = job_.coating.kind == CoatingKind::coat;
    std::vector<Page::Column> columns{
        {"zone"}, {"area, cm2", true}, {"block"}, {"film, um", true}, {"may go down, um", true}};
    if (zones_differ()) columns.push_back({"stands"});
    std::vector<std::vector<std::string>> rows;
    for (const Zone& zone : job_.zones) {
      std::vector<std::string>& row = rows.emplace_back(std::vector<std::string>{
          shortened(zone.name, 24), fmt::format("{:.0f}", zone.area_cm2),
          shortened(zone.block.name, 18),
          zone.film ? fmt::format("{:.0f} +- {:.0f}", zone.film->mean_um, spot_sd_um(*zone.film))
                    : "none",
          zone.film ? fixed(budget_of(job_, zone), 1) : "no limit"});
      if (!zones_differ()) continue;
      const std::optional<Carried> carried = carried_in(job_, zone);
      row.push_back(carried ? "at " + shortened(carried->grade.label, 14) : "as sprayed");
    }
    page_.table(columns, rows);
    if (!coat) return;
    page_.say("  ",
              fmt::format("Not deeper: at that depth the chance that less than {:.0f} um stay "
                          "somewhere in the zone is {}.",
                          job_.rules.reserve_um, chance_text(job_.rules.cut_through_limit)));
  }

  void step(std::size_t i) {
    const Step& step = plan_.steps[i];
    const std::string& maker = sheet(step).maker;
    page_.blank();
    page_.rule('-');
    page_.say(fmt::format("Step {} of {}: ", i + 1, plan_.steps.size()),
              fmt::format("take {}, {} ({}){}", step.sheet, step.label, size_text(step.size_um),
                          maker.empty() ? "" : ", " + maker));
    page_.say("  ", instruction(job_, stack_, plan_, i));
    zone_table(step);
    page_.say("  ", done_text(job_, stack_, plan_, i));
    if (on_wheel(stack_, step)) wheel(i);
    page_.say(
        "  ",
        duration_text(step.minutes) + " with washing and changing" +
            (on_wheel(stack_, step) ? "." : fmt::format("; {:.1f} sheets.", step.sheets_used)));
    if (simulation_) {
      page_.say("  ", "Four times in five that takes " +
                          usual_duration(simulation_->steps[i].minutes) + ".");
    }
    for (const std::string& line : upkeep(step, sheet(step), block(step, 0), 1.0))
      page_.say("  ", line);
    after_step(step);
  }

  void wheel(std::size_t i) {
    const Step& step = plan_.steps[i];
    page_.say("  ", wheel_text(job_, *wheel_of(sheet(step)), step));
    const auto first = std::find_if(plan_.steps.begin(), plan_.steps.end(),
                                    [&](const Step& other) { return on_wheel(stack_, other); });
    if (first->sheet == step.sheet) {
      say_wheel_cautions(page_);
    } else {
      page_.say("  ", fmt::format("At the wheel: what stands at step {}. A wheel of its own for "
                                  "each compound.",
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
                fmt::format("{}: {} {} of {:.0f} um, {:g} by {:g} mm, with {}: {}.", local.zone,
                            defect.count, named(defect), defect.height_um, defect.width_mm,
                            defect.length_mm, local.block, sentence(local.work)));
    }
    page_.say("  ", fmt::format("{} in all. Done when a straight edge does not rock on the spot "
                                "and the sanded patch is dull all over.",
                                duration_text(minutes)));
  }

  static std::string named(const Defect& defect) {
    return std::string(to_string(defect.kind)) + (defect.count > 1 ? "s" : "");
  }

  void zone_table(const Step& step) {
    std::vector<std::vector<std::string>> rows;
    for (std::size_t i = 0; i < step.zones.size(); ++i) {
      const ZoneStep& zone = step.zones[i];
      const bool carried = carried_in(job_, job_.zones[i]).has_value();
      const bool light = zone.removal_um == 0.0;
      rows.push_back({shortened(zone.zone, 24), shortened(block(step, i).name, 18),
                      !zone.worked ? (carried ? "pass by" : "keep off")
                      : light      ? "light pass"
                                   : fixed(zone.removal_um, zone.removal_um < 0.1 ? 2 : 1),
                      light ? "-" : duration_text(zone.minutes),
                      zone.film_left_um ? fixed(*zone.film_left_um, 0) : "-",
                      zone.cut_through ? chance_text(*zone.cut_through) : "-"});
    }
    page_.table({{"zone"},
                 {"with"},
                 {"take off, um", true},
                 {"time", true},
                 {"left, um", true},
                 {"cut through", true}},
                rows);
  }

  void after_step(const Step& step) {
    const std::size_t worst = worst_zone(job_, step);
    std::string text;
    if (const auto left_um = step.zones[worst].film_left_um) {
      text = fmt::format(
          "Film in the worst zone, {}: {:.1f} um left, {} of what may go is gone.",
          step.zones[worst].zone, *left_um,
          percent_text(budget_share(job_, job_.zones[worst], step.zones[worst].depth_um)));
    }
    if (!text.empty()) page_.say("  ", text);
    const auto least = [&](double ZoneStep::*gloss_gu) {
      const auto lower = [&](const ZoneStep& a, const ZoneStep& b) {
        return a.*gloss_gu < b.*gloss_gu;
      };
      return *std::min_element(step.zones.begin(), step.zones.end(), lower).*gloss_gu;
    };
    page_.say("  ", fmt::format("Gloss, at least: {:.0f} GU at 20, {:.0f} GU at 60, {:.0f} GU at "
                                "85 degrees.",
                                least(&ZoneStep::gloss_20_gu), least(&ZoneStep::gloss_gu),
                                least(&ZoneStep::gloss_85_gu)));
  }

  void totals() {
    const Totals& total = plan_.total;
    page_.blank();
    page_.rule('-');
    std::string text = fmt::format("{} steps, {}, {:.1f} sheets", total.steps,
                                   duration_text(total.minutes), all_sheets(plan_));
    if (total.cost > 0) text += fmt::format(", paper for {:.2f}", total.cost);
    if (total.film) {
      const Step& last = plan_.steps.back();
      text += fmt::format("; {} of what may go is gone in {}", percent_text(*total.film),
                          last.zones[worst_zone(job_, last)].zone);
    }
    page_.say("In all: ", text + ".");
  }

  void tradeoff() {
    if (plan_.tradeoff.size() < 2) return;
    constexpr std::size_t most = 10;
    page_.title(
        fmt::format("Other ways, by time. None of the {} is beaten in time, film and cost at once.",
                    plan_.tradeoff.size()));
    std::vector<std::vector<std::string>> rows;
    const std::size_t last = plan_.tradeoff.size() - 1;
    const std::size_t shown = std::min(most, plan_.tradeoff.size());
    for (std::size_t i = 0; i < shown; ++i) {  // evenly spread, both ends among them
      const Plan& way = plan_.tradeoff[i * last / (shown - 1)];
      const bool taken = way.exact.sheets == plan_.exact.sheets;
      rows.push_back({duration_text(way.total.minutes),
                      way.total.film ? percent_text(*way.total.film) : "-",
                      fmt::format("{:.2f}", way.total.cost),
                      sequence_text(way) + (taken ? " (this card)" : "")});
    }
    page_.table({{"time", true}, {"film", true}, {"cost", true}, {"sheets"}}, rows);
  }

  /// Whether a finding matters to who works by this card. What is said of two neighbours in the drawer
  /// matters where both are used; of a misleading number, where one of the two might be taken.
  bool concerns(const Finding& finding) const {
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
      page_.say("  ",
                fmt::format("{} more do not touch this card; the check of the stack lists them.",
                            others));
    }
  }

  void cautions() {
    if (plan_.cautions.empty()) return;
    page_.title("Before you start:");
    for (const Caution& caution : plan_.cautions) {
      page_.say("  - ", caution.text);
    }
  }

  const Job& job_;
  const Stack& stack_;
  const Plan& plan_;
  const Simulation* simulation_;
  std::set<std::string> used_;
  Page page_;
};

}  // namespace detail

LEVIGATE_WORK std::string card(const Job& job, const Stack& stack, const Plan& plan) {
  return detail::BenchCard(job, stack, plan, nullptr).text();
}

LEVIGATE_WORK std::string card(const Job& job, const Stack& stack, const Plan& plan,
                               const Simulation& simulation) {
  return detail::BenchCard(job, stack, plan, &simulation).text();
}

}  // namespace levigate
