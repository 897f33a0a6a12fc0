// What a plan says of the first look in the sun, and of steps that take off more for its sake.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/planned_zone.hpp"
#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

/// "about 6", "less than 1"
inline std::string marks_text(double spots) {
  return spots < 0.95 ? "less than 1" : fmt::format("about {:.0f}", spots);
}

/// What most of the marks are: scratches that a step should have taken out.
inline std::string most_marks_text(const Plan& plan) {
  const Step* most = nullptr;
  double spots = 0;
  for (const Step& step : plan.steps) {
    double here = 0;
    for (const ZoneStep& zone : step.zones) here += zone.marks;
    if (here > spots) {
      most = &step;
      spots = here;
    }
  }
  if (!most || spots < 0.5) return "";
  return fmt::format(" On {} of them {} leaves scratches of {}.", marks_text(spots), most->sheet,
                     most->takes_out.empty() ? "stray grain" : most->takes_out.front());
}

/// Spots of all zones that are expected to show a mark.
inline double all_marks(const Plan& plan) {
  double sum = 0;
  for (const PlannedZone& zone : plan.zones) sum += zone.marks;
  return sum;
}

/// Minutes as planned, and those of going back that are expected beside them.
inline double expected_minutes(const Plan& plan) {
  return plan.total.minutes + plan.total.back_minutes;
}

/// Chance in whole per cent.
inline std::string sure_text(double chance) {
  if (chance < 0.005) return "below 1 %";
  return chance > 0.995 ? "above 99 %" : fmt::format("{:.0f} %", 100.0 * chance);
}

/// `pace`: by which all minutes are longer than at usual numbers.
inline std::string sun_text(const Plan& plan, double pace) {
  const double back = std::round(pace * plan.total.back_minutes);
  const bool begun = std::any_of(plan.zones.begin(), plan.zones.end(),
                                 [](const PlannedZone& zone) { return !zone.stands.empty(); });
  return fmt::format(
      "Spots of 1 cm2 that will show a mark: {}.{} The chance that the first look finds none is "
      "{}. Going back for marks takes {} on average. Plan for {} with it.{}",
      marks_text(all_marks(plan)), most_marks_text(plan), sure_text(plan.total.clean_chance),
      duration_text(back), duration_text(std::round(pace * plan.total.minutes) + back),
      begun ? " Marks that the steps before this plan left are not counted." : "");
}

/// Whether a step takes off more than the rules ask for.
inline bool is_longer(const Plan& plan, const Step& step) {
  return step.overcut && *step.overcut > plan.overcut * (1.0 + 1e-9);
}

/// How much a step takes off, where that is more than the rules ask for.
inline std::string longer_text(const Plan& plan, const Step& step) {
  return fmt::format(
      "Sand {:.1f} times as long as the rules ask. It saves going back. Record it with overcut "
      "{:.2f}.",
      *step.overcut / plan.overcut, *step.overcut);
}

}  // namespace detail

}  // namespace levigate
