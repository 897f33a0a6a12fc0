// The work behind text/bench_sheet.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/text/bench_sheet.hpp"

#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/plan/local.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/sheet_facts.hpp"
#include "levigate/text/shown_units.hpp"
#include "levigate/text/work/machine_notes.hpp"
#include "levigate/text/work/measure.hpp"
#include "levigate/text/work/odds.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/phrases.hpp"
#include "levigate/text/work/sentences_of_surface.hpp"
#include "levigate/text/work/sheet_html.hpp"
#include "levigate/text/work/sheet_step.hpp"
#include "levigate/text/work/sheet_text.hpp"
#include "levigate/text/work/short_cautions.hpp"
#include "levigate/text/work/stop_line.hpp"
#include "levigate/text/work/sun_text.hpp"
#include "levigate/text/work/urgent.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Makes the facts of a bench sheet.
class SheetOfPlan {
 public:
  /// `simulation` may be absent.
  SheetOfPlan(const Plan& plan, const Simulation* simulation, ShownUnits units)
      : plan_(plan), simulation_(simulation), measure_(units) {
    if (simulation) require_simulation_of(plan, *simulation);
  }

  BenchSheet made() && {
    sheet_.job = plan_.job;
    sheet_.on = "On " + plan_.coating + ", " + stands() + ".";
    sheet_.goal = goal();
    sheet_.film_unit = measure_.film_unit();
    sheet_.urgent = urgent_lines(plan_, simulation_, measure_);
    sheet_.cautions = short_cautions(plan_);
    sheet_.more = "\"levigate plan --explain\" prints the explanation.";
    for (std::size_t i = 0; i < plan_.zones.size(); ++i) sheet_.bars.push_back(bar(i));
    if (!plan_.found) {
      sheet_.no_plan = plan_.why ? ended(sentence(*plan_.why)) : "No plan for this job.";
      return std::move(sheet_);
    }
    sheet_.time = time();
    sheet_.lay_out = lay_out();
    for (const LocalStep& local : plan_.before) sheet_.before.push_back(task(local));
    sheet_.before_done = "Done when a straight edge does not rock on the spot.";
    for (std::size_t i = 0; i < plan_.steps.size(); ++i) {
      const Interval* minutes = simulation_ ? &simulation_->steps[i].minutes : nullptr;
      sheet_.steps.push_back(SheetOfStep(plan_, i, minutes, measure_).made());
      for (const SheetZone& zone : sheet_.steps.back().zones)
        sheet_.chances = sheet_.chances || !zone.chance.empty();
    }
    reading();
    sun();
    return std::move(sheet_);
  }

 private:
  static std::string ended(std::string text) {
    if (!text.ends_with('.')) text += '.';
    return text;
  }

  /// "as sprayed", "scratched by P800"
  std::string stands() const {
    const bool differ =
        std::any_of(plan_.zones.begin(), plan_.zones.end(),
                    [&](const PlannedZone& zone) { return zone.stands != plan_.scratched_by; });
    if (differ) {
      std::vector<std::string> zones;
      for (const PlannedZone& zone : plan_.zones)
        zones.push_back(zone.zone + " " +
                        (zone.stands.empty() ? "as sprayed" : "at " + zone.stands));
      return list_text(zones);
    }
    return plan_.scratched_by.empty() ? "as sprayed" : "scratched by " + plan_.scratched_by;
  }

  std::string goal() const {
    const Target& target = plan_.target;
    if (!target.size_um) return "Goal: " + goal_text(target) + ".";
    const std::string size = measure_.size(*target.size_um);
    return "Goal: " +
           (target.label.empty() ? "grain of " + size : target.label + " (" + size + ")") +
           " or finer" +
           (target.rub_out.empty() ? "" : ", rubbed out one way with " + target.rub_out) + ".";
  }

  const Interval* whole() const { return simulation_ ? &simulation_->minutes : nullptr; }

  std::string time() const {
    std::string text =
        fmt::format("{} step{}, {}.", plan_.steps.size(), plan_.steps.size() == 1 ? "" : "s",
                    time_text(plan_.total.minutes, whole()));
    text += simulation_ ? " Times in brackets hold in 4 of 5 cases."
                        : " Times are at usual numbers. Time the first step and scale the others.";
    for (std::size_t i = 0; i < plan_.steps.size(); ++i) {
      if (plan_.steps[i].rest_h)
        text += fmt::format(" A wait of {:.0f} h after step {} is extra.", *plan_.steps[i].rest_h,
                            i + 1);
    }
    return text;
  }

  std::string lay_out() const {
    std::vector<std::string> sheets;
    for (std::size_t i = 0; i < plan_.steps.size(); ++i) {
      const Step& step = plan_.steps[i];
      const double usual = std::max(1.0, std::ceil(step.sheets_used));
      const double many = simulation_ ? std::ceil(simulation_->steps[i].sheets_used.p90) : usual;
      sheets.push_back(fmt::format(
          "{:.0f}{} {}", usual, many > usual ? fmt::format(" to {:.0f}", many) : "", step.sheet));
    }
    return "Lay out: " + list_text(sheets, ", ") + ".";
  }

  SheetTask task(const LocalStep& local) const {
    const Defect& defect = local.defect;
    const std::string unit = measure_.length_unit();
    return {.zone = local.zone,
            .what = fmt::format(
                "{} {}{}, {} high, {} by {} {}", defect.count, to_string(defect.kind),
                defect.count > 1 ? "s" : "", measure_.level_text(defect.height_um),
                measure_.length(defect.width_mm), measure_.length(defect.length_mm), unit),
            .tool = local.block,
            .how = local_way_text(local.work, measure_.level_text(local.work.tape_um)) + ".",
            .time = duration_text(local.work.local.minutes)};
  }

  SheetBar bar(std::size_t i) const {
    const PlannedZone& zone = plan_.zones[i];
    SheetBar row{.zone = zone.zone,
                 .area_cm2 = zone.area_cm2,
                 .area = measure_.area(zone.area_cm2),
                 .film_um = zone.film_um,
                 .below_um = zone.below_um.value_or(0.0),
                 .stop_um = budget_ends_um(zone),
                 .takes_um = {},
                 .film = "no film figure",
                 .stop = {},
                 .takes = {}};
    for (const Step& step : plan_.steps) row.takes_um.push_back(step.zones[i].removal_um);
    if (!zone.film_um) return row;
    if (plan_.found) {
      std::vector<std::string> takes;
      for (const double take_um : row.takes_um) takes.push_back(measure_.depth(take_um));
      row.takes = "The steps take off " + list_text(takes) + " " + measure_.film_unit();
    }
    row.film = measure_.level_text(*zone.film_um) + " of film";
    if (row.below_um > 0.0)
      row.film += " on " + measure_.level_text(row.below_um) + " of rounds below";
    row.stop = row.stop_um ? "budget ends at " + measure_.stop_level(*row.stop_um) + " " +
                                 measure_.film_unit()
                           : "no limit";
    return row;
  }

  /// What nobody told and the plan takes as usual; empty where all was told.
  std::string usual_text() const {
    const auto any = [&](auto usual) {
      return std::any_of(plan_.zones.begin(), plan_.zones.end(), usual);
    };
    std::vector<std::string> taken;
    if (any([](const PlannedZone& zone) { return zone.usual_spread; }))
      taken.push_back("spread of the film");
    if (any([](const PlannedZone& zone) { return zone.peel_how == PeelHow::usual; }))
      taken.push_back("height of the peel");
    if (any([](const PlannedZone& zone) { return zone.usual_wavelength_mm.has_value(); }))
      taken.push_back("width of its waves");
    return taken.empty() ? "" : "Nobody told, so taken as usual: " + list_text(taken) + ".";
  }

  /// How to read gauge lines and chances.
  void reading() {
    std::vector<std::string> now;
    bool below = false;
    for (const PlannedZone& zone : plan_.zones) {
      if (!zone.film_um) continue;
      below = below || zone.below_um.value_or(0.0) > 0.0;
      now.push_back(zone.zone + " " + measure_.level(*zone.film_um + zone.below_um.value_or(0.0)));
    }
    if (const std::string usual = usual_text(); !usual.empty()) sheet_.reading.push_back(usual);
    sheet_.gauge = !now.empty();
    if (sheet_.gauge) {
      sheet_.reading.push_back(
          "Stop in a zone where the mean of a few gauge readings is below its stop line.");
      if (below)
        sheet_.reading.push_back(
            "A gauge reads all rounds. Above its stop line you stay in the last one.");
      if (plan_.one_round)
        sheet_.reading.push_back("Rounds of this coat melt together. The lines count all of them.");
      sheet_.reading.push_back((plan_.wait ? "Gauge when cured: " : "Gauge now: ") +
                               list_text(now) + " " + measure_.film_unit() +
                               ". If less, plan again.");
    }
    if (sheet_.chances) {
      sheet_.reading.push_back(
          fmt::format("Risk: chance of less than {} left somewhere. Below {} it is left out.",
                      measure_.level_text(plan_.reserve_um),
                      chance_text(told_share_of_limit * plan_.cut_through_limit)));
    }
  }

  void sun() {
    const double pace = whole() ? whole()->p50 / plan_.total.minutes : 1.0;
    const double back = std::round(pace * plan_.total.back_minutes);
    const bool begun = std::any_of(plan_.zones.begin(), plan_.zones.end(),
                                   [](const PlannedZone& zone) { return !zone.stands.empty(); });
    sheet_.sun.push_back(fmt::format("Look for scratches in the sun. Spots with a mark: {}.{}",
                                     marks_text(all_marks(plan_)), most_marks_text(plan_)));
    sheet_.sun.push_back(
        fmt::format("Chance of none at the first look: {}. Plan {} for going back, {} in all.{}",
                    sure_text(plan_.total.clean_chance), duration_text(back),
                    duration_text(std::round(pace * plan_.total.minutes) + back),
                    begun ? " Marks of steps before this plan are not counted." : ""));
  }

  const Plan& plan_;
  const Simulation* simulation_;
  Measure measure_;
  BenchSheet sheet_;
};

}  // namespace detail

LEVIGATE_WORK BenchSheet bench_sheet(const Plan& plan, ShownUnits units) {
  return detail::SheetOfPlan(plan, nullptr, units).made();
}

LEVIGATE_WORK BenchSheet bench_sheet(const Plan& plan, const Simulation& simulation,
                                     ShownUnits units) {
  return detail::SheetOfPlan(plan, &simulation, units).made();
}

LEVIGATE_WORK std::string sheet_text(const BenchSheet& sheet) {
  return detail::SheetText(sheet).text();
}

LEVIGATE_WORK std::string sheet_html(const BenchSheet& sheet) {
  return detail::SheetHtml(sheet).text();
}

}  // namespace levigate
