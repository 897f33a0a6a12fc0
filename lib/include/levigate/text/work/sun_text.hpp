// What a plan says of the first look in the sun, and of steps that take off more for its sake.
#pragma once

#include <fmt/format.h>

#include <cmath>
#include <string>

#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/planned_zone.hpp"
#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

/// "about 6", "fewer than 1"
inline std::string marks_text(double spots) {
  return spots < 1.0 ? "fewer than 1" : fmt::format("about {:.0f}", spots);
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
  return fmt::format(
      "Expect {} spots with a mark. The chance that the first look finds none is {}. Going back "
      "then takes {} on the mean. Plan for {} with it.",
      marks_text(all_marks(plan)), sure_text(plan.total.clean_chance),
      duration_text(pace * plan.total.back_minutes), duration_text(pace * expected_minutes(plan)));
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
