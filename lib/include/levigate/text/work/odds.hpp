// What a card says of chance: how time, paper and film may turn out, from a simulation of its plan.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/risk/share.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/text/work/facts.hpp"
#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Throws: BadInput where a simulation has not the steps and zones of a plan.
inline void require_simulation_of(const Plan& plan, const Simulation& simulation) {
  std::vector<std::string> zones;  // a simulation knows those with film
  for (const PlannedZone& zone : plan.zones) {
    if (zone.film_um) zones.push_back(zone.zone);
  }
  const bool same =
      std::equal(plan.steps.begin(), plan.steps.end(), simulation.steps.begin(),
                 simulation.steps.end(),
                 [](const Step& a, const SimulatedStep& b) {
                   return a.sheet == b.sheet && a.zones.size() == b.zones.size();
                 }) &&
      std::equal(zones.begin(), zones.end(), simulation.zones.begin(), simulation.zones.end(),
                 [](const std::string& a, const SimulatedZone& b) { return a == b.zone; });
  if (!same) throw BadInput("the simulation is of another plan, in the card of '" + plan.job + "'");
}

/// The time to count on: the median.
inline std::string expected_duration(const Interval& minutes) {
  return "about " + duration_text(minutes.p50);
}

/// What it lies between four times in five, as a sentence.
inline std::string usual_range(const Interval& minutes) {
  return fmt::format("In 4 of 5 cases it takes {} to {}.", duration_text(minutes.p10),
                     duration_text(minutes.p90));
}

/// Minutes that no simulation stands behind: every input is at its value.
inline std::string usual_numbers_duration(double minutes) {
  return duration_text(minutes) + " at usual numbers";
}

/// "in no run; at most 0.30 %", "in 12 runs; 0.70 to 1.90 %": how often in the draws, and between what the chance lies.
inline std::string share_text(const Share& share, std::int64_t draws) {
  const auto percent = [](double part) { return fmt::format("{:.2f}", 100.0 * part); };
  const std::int64_t times = std::llround(share.share * static_cast<double>(draws));
  if (times == 0) return "in no run; at most " + percent(share.high) + " %";
  return fmt::format("in {} run{}; {} to {} %", times, times == 1 ? "" : "s", percent(share.low),
                     percent(share.high));
}

inline void say_film_odds(Page& page, const Plan& plan, const Simulation& simulation) {
  const auto usual = [](const Interval& one) {
    return fmt::format("{:.0f} to {:.0f}", one.p10, one.p90);
  };
  std::vector<std::vector<std::string>> rows;
  for (const SimulatedZone& zone : simulation.zones) {
    rows.push_back({shortened(zone.zone, 24), usual(zone.film_left_um), usual(zone.thinnest_um),
                    share_text(zone.cut_through, simulation.draws)});
  }
  page.table({{"zone"}, {"film left, um", true}, {"thinnest spot, um", true}, {"cut through"}},
             rows);
  page.say("  ",
           fmt::format(
               "In 4 of 5 runs, film and thinnest spot are within these limits. Cut through counts "
               "runs where less than {:.0f} um stayed somewhere, with the range of that chance.",
               plan.reserve_um));
}

/// Steps that may want more paper than there is.
inline void say_paper_odds(Page& page, const Simulation& simulation) {
  constexpr double worth_saying = 0.05;
  for (const SimulatedStep& step : simulation.steps) {
    if (!step.paper_short || step.paper_short->share < worth_saying) continue;
    page.say("  Paper: ",
             fmt::format(
                 "{:.0f} of 100 runs need more of {} than you have. {:.0f} are enough in 9 of 10.",
                 100.0 * step.paper_short->share, step.sheet, std::ceil(step.sheets_used.p90)));
  }
}

/// "is slower in 97 of 100 runs. The median is 34 min more, in 4 of 5 runs 12 to 80": a sequence beside another over the same draws.
inline std::string slower_text(const PairedMinutes& minutes) {
  const Interval& more = minutes.more;
  if (more.p10 == 0.0 && more.p90 == 0.0) return "takes as long in every run";
  const bool slower = more.p50 >= 0.0;
  const double sign = slower ? 1.0 : -1.0;
  return fmt::format(
      "is {} in {} runs. The median is {:.0f} min {}, in 4 of 5 runs {:.0f} to {:.0f}",
      slower ? "slower" : "quicker",
      of_hundred(slower ? minutes.slower.share : 1.0 - minutes.slower.share), std::abs(more.p50),
      slower ? "more" : "less", sign * (slower ? more.p10 : more.p90),
      sign * (slower ? more.p90 : more.p10));
}

/// The section of a card on how its plan may turn out.
inline void say_odds(Page& page, const Plan& plan, const Simulation& simulation) {
  page.title(fmt::format(
      "How it may turn out, from {} simulated runs (seed {}) that draw each uncertain input:",
      simulation.draws, simulation.seed));
  page.say("  Time: ", fmt::format("{} at usual numbers, as are times of zones and of other ways.",
                                   duration_text(plan.total.minutes)));
  page.say("  Sheets: ", fmt::format("{:.1f} are enough in 9 of 10 runs, {:.1f} in 5 of 10.",
                                     simulation.sheets.p90, simulation.sheets.p50));
  say_paper_odds(page, simulation);
  if (!simulation.zones.empty()) say_film_odds(page, plan, simulation);
}

}  // namespace detail

}  // namespace levigate
