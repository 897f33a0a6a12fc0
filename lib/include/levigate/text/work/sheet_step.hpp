// What a bench sheet says of one step.
#pragma once

#include <fmt/format.h>

#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/fact.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/text/sheet_facts.hpp"
#include "levigate/text/work/facts.hpp"
#include "levigate/text/work/instruction_text.hpp"
#include "levigate/text/work/machine_notes.hpp"
#include "levigate/text/work/measure.hpp"
#include "levigate/text/work/odds.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/stop_line.hpp"
#include "levigate/text/work/sun_text.hpp"
#include "levigate/text/work/upkeep.hpp"
#include "levigate/text/work/wheel_notes.hpp"

namespace levigate::inline v0 {

namespace detail {

/// "about 3 h 21 min (1 h 26 min to 7 h 48 min)"; without a simulation as the plan has it.
inline std::string time_text(double minutes, const Interval* interval) {
  if (!interval) return duration_text(minutes);
  constexpr double hour = 59.5;  // as duration_text() has it
  const std::string low = interval->p90 < hour && interval->p10 >= 0.5
                              ? fmt::format("{:.0f}", interval->p10)
                              : duration_text(interval->p10);
  return fmt::format("{} ({} to {})", expected_duration(*interval), low,
                     duration_text(interval->p90));
}

/// Makes the facts of one step.
class SheetOfStep {
 public:
  /// `minutes`: of the step in a simulation; may be null.
  SheetOfStep(const Plan& plan, std::size_t index, const Interval* minutes, const Measure& measure)
      : plan_(plan),
        index_(index),
        step_(plan.steps[index]),
        minutes_(minutes),
        measure_(measure) {}

  SheetStep made() const {
    SheetStep sheet{
        .take = fmt::format("{}, {} ({}){}", step_.sheet, step_.label, measure_.size(step_.size_um),
                            step_.maker.empty() ? "" : ", " + step_.maker),
        .beware = beware(),
        .way = (step_.levels ? "Level the orange peel. " : "") +
               way_text(step_, index_ + 1 == plan_.steps.size()),
        .look = done_text(step_),
        .notes = notes(),
        .zones = {},
        .time = time_text(step_.minutes, minutes_),
        .upkeep = upkeep()};
    for (std::size_t i = 0; i < step_.zones.size(); ++i) sheet.zones.push_back(zone(i));
    return sheet;
  }

 private:
  /// Sheets with the same or a misleading number.
  std::string beware() const {
    std::string text;
    for (const Finding& finding : plan_.findings) {
      if (finding.kind != FindingKind::misleading_numbers) continue;
      const std::string coarse = named_at(finding.about, 0).name;
      const std::string fine = named_at(finding.about, 1).name;
      if (coarse != step_.sheet && fine != step_.sheet) continue;
      text +=
          (text.empty() ? "" : " ") + (fine == step_.sheet ? "Not " + coarse + ", which is coarser."
                                                           : "Not " + fine + ", which is finer.");
    }
    return text;
  }

  /// By what minutes at usual numbers grow to the median of the step.
  double pace() const {
    return minutes_ && step_.minutes > 0.0 ? minutes_->p50 / step_.minutes : 1.0;
  }

  SheetZone zone(std::size_t i) const {
    const ZoneStep& zone = step_.zones[i];
    SheetZone row{.zone = zone.zone,
                  .tool = zone.tool,
                  .take_off = measure_.depth(zone.removal_um),
                  .time = {},
                  .stop = {},
                  .chance = {},
                  .worked = zone.worked};
    if (zone.passed_by) {
      row.take_off = *zone.passed_by == PassedBy::not_levelled ? "keep off" : "pass by";
      row.tool.clear();
      return row;
    }
    if (zone.removal_um == 0.0) row.take_off = "light pass";
    if (zone.removal_um > 0.0) row.time = duration_text(pace() * zone.minutes);
    row.stop = stop(i);
    if (zone.cut_through && *zone.cut_through >= told_share_of_limit * plan_.cut_through_limit)
      row.chance = chance_text(*zone.cut_through);
    return row;
  }

  std::string stop(std::size_t i) const {
    if (!plan_.zones[i].film_um) return "no gauge line";
    const std::optional<double> reading_um = stop_reading_um(plan_, index_, i);
    return reading_um ? measure_.stop_level(*reading_um) : "no limit";
  }

  std::vector<std::string> notes() const {
    std::vector<std::string> lines;
    const auto add = [&](std::string line) {
      if (!line.empty()) lines.push_back(std::move(line));
    };
    if (is_longer(plan_, step_)) add(longer_text(plan_, step_));
    if (step_.wheel) wheel(*step_.wheel, lines);
    if (step_.machine) machine(*step_.machine, lines);
    add(edges());
    if (step_.rest_h) {
      add(fmt::format("Then wait {:.0f} h: part of the peel comes back. Level once more with {}.",
                      *step_.rest_h, step_.sheet));
    }
    return lines;
  }

  /// How much further an edge may be worked beyond the step, in whole strokes or passes. What the steps after it need is kept for them.
  std::string edges() const {
    std::vector<std::string> strokes, passes;
    for (std::size_t i = 0; i < step_.zones.size(); ++i) {
      const ZoneStep& zone = step_.zones[i];
      const double share = spare_share(plan_, index_, i);
      const auto add = [&](std::vector<std::string>& list, double count) {
        if (zone.worked && std::isfinite(count))
          list.push_back(fmt::format("{:.0f} on {}", std::floor(count), zone.zone));
      };
      if (zone.strokes_left) add(strokes, share * *zone.strokes_left);
      if (zone.left_s && step_.wheel) add(passes, share * *zone.left_s / step_.wheel->dwell_s);
    }
    if (!strokes.empty()) return "Strokes beyond this, at most: " + list_text(strokes) + ".";
    return passes.empty() ? "" : "Passes beyond this, at most: " + list_text(passes) + ".";
  }

  std::string standing_still(const StandingStill& still) const {
    return "One second of standing still takes " + measure_.fine_depth(still.film_um) + " off" +
           (still.rise_k ? " and warms the spot by " + measure_.rise(*still.rise_k) : "") + ".";
  }

  static std::string too_warm_after(const std::optional<double>& limit_s) {
    return limit_s ? fmt::format(" A spot is too warm after {:.2f} s.", *limit_s)
                   : " No limits of speed and heat are known for this coating. Try scrap first.";
  }

  void wheel(const WheelStep& wheel, std::vector<std::string>& lines) const {
    const std::string passes = passes_text(step_);
    lines.push_back(fmt::format("Wheel at {:.0f} rpm, {} at the rim. Feed {}.{}", wheel.rpm,
                                measure_.speed(wheel.rim_m_s), measure_.speed(wheel.feed_m_s),
                                passes.empty() ? "" : " Passes: " + passes + "."));
    lines.push_back(standing_still(wheel.still) + too_warm_after(wheel.dwell_limit_s));
  }

  void machine(const MachineStep& machine, std::vector<std::string>& lines) const {
    lines.push_back(fmt::format("{}: {:.0f} {} a minute. Guide it at {}.", machine.name,
                                machine.rpm, machine.orbit_mm > 0.0 ? "orbits" : "turns",
                                measure_.speed(machine.feed_m_s)));
    lines.push_back(standing_still(machine.still) + (machine.dwell_s
                                                         ? too_warm_after(machine.dwell_limit_s)
                                                         : " Wipe dry and look for deeper curls."));
    if (machine.keep_off_mm > 0.0) {
      lines.push_back(fmt::format(
          "Keep the pad {} {} off every edge. Rub that strip by hand: its minutes are extra.",
          measure_.length(machine.keep_off_mm), measure_.length_unit()));
    }
    const std::vector<std::string> zones = zones_by_hand(step_);
    if (!zones.empty()) lines.push_back("By hand, one way: " + list_text(zones) + ".");
  }

  std::string upkeep() const {
    if (!asks_for_care(step_)) return "";
    const std::string change =
        fmt::format("New piece after {:.0f} min.", *step_.change_every_minutes);
    if (step_.rinse_every_strokes)
      return fmt::format("Rinse every {:.0f} strokes. {}", *step_.rinse_every_strokes, change);
    if (step_.rinse_every_minutes)
      return fmt::format("Clean the sheet every {:.0f} s. {}", 60.0 * *step_.rinse_every_minutes,
                         change);
    return change;
  }

  const Plan& plan_;
  std::size_t index_;
  const Step& step_;
  const Interval* minutes_;
  const Measure& measure_;
};

}  // namespace detail

}  // namespace levigate
