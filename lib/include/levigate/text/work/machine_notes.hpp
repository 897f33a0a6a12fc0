// What the card says of a step with a hand-held machine: its numbers, what stays with the hand, and the cautions of the work.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/fact.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/text/work/facts.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/sentences_of_finding.hpp"
#include "levigate/text/work/sentences_of_wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

/// How the machine moves, and what standing still costs.
inline std::string machine_text(const MachineStep& machine) {
  std::string text = fmt::format(
      "{:.0f} {} a minute, {:.1f} m/s on the mean. Guide it at {:.0f} mm/s.", machine.rpm,
      machine.orbit_mm > 0.0 ? "orbits" : "turns", machine.speed_m_s, 1e3 * machine.feed_m_s);
  if (machine.dwell_s && machine.rise_k) {
    text += fmt::format(
        " A spot stays up to {:.2f} s under the pad and warms by up to {:.0f} K. It is too warm "
        "after {:.2f} s.",
        *machine.dwell_s, *machine.rise_k, machine.dwell_limit_s.value_or(0.0));
  } else if (machine.dwell_s) {
    text +=
        " Warning: no limits of speed and heat are known for this coating. Try it on scrap first.";
  }
  return text + " " + still_text(machine.still.film_um, machine.still.rise_k) + ".";
}

/// That the plan counts the pad that levels as soft, as nobody measured it; empty where it does not.
inline std::string soft_pad_text(const Plan& plan) {
  for (const Finding& finding : plan.findings) {
    if (finding.kind != FindingKind::soft_first || !figure(finding.numbers, "usual_modulus_mpa"))
      continue;
    return fmt::format(
        "Nobody measured how stiff the pad of the {} is. The film is counted for a soft one of {} "
        "MPa. Measure it and tell its modulus_mpa.",
        name_of(finding.about, "block"), number_text(value_of(finding.numbers, "modulus_mpa")));
  }
  return "";
}

/// That the strip along edges is not in the minutes of a plan; empty where no machine leaves one.
inline std::string strip_text(const Plan& plan) {
  const bool strip = std::any_of(plan.steps.begin(), plan.steps.end(), [](const Step& step) {
    return step.machine && step.machine->keep_off_mm > 0.0;
  });
  return strip ? "The strip along edges that stays with the hand is not in these minutes." : "";
}

/// The zones of the step that the hand works.
inline std::vector<std::string> zones_by_hand(const Step& step) {
  std::vector<std::string> zones;
  for (const ZoneStep& zone : step.zones) {
    if (zone.worked && zone.tool != step.machine->name) zones.push_back(zone.zone);
  }
  return zones;
}

/// What stays with the hand.
inline std::string hand_text(const Step& step) {
  std::string text;
  if (step.machine->keep_off_mm > 0.0) {
    text = fmt::format("Keep the pad {:.0f} mm off every edge. Rub that strip by hand with {}.",
                       step.machine->keep_off_mm, step.sheet);
  }
  const std::vector<std::string> zones = zones_by_hand(step);
  if (!zones.empty()) {
    text += (text.empty() ? "" : " ") +
            fmt::format("By hand alone: {}. Rub there one way.", list_text(zones));
  }
  return text;
}

/// All that a step with a machine asks for; its cautions where it is the first of the plan.
inline void say_machine(Page& page, const Plan& plan, const Step& step) {
  page.say("  ", machine_text(*step.machine));
  if (const std::string text = hand_text(step); !text.empty()) page.say("  ", text);
  for (const Finding& finding : plan.findings) {
    if (finding.kind == FindingKind::machine_narrow &&
        std::count(finding.sheets.begin(), finding.sheets.end(), step.sheet) > 0)
      page.say("  ", "Warning: " + sentence_of(finding) + ".");
  }
  if (!step.machine->dwell_s) {
    page.say("  ",
             "Curls have no direction. Crossing strokes does not show old scratches here. Wipe "
             "dry and look for deeper curls.");
  }
  const auto first = std::find_if(plan.steps.begin(), plan.steps.end(),
                                  [](const Step& other) { return other.machine.has_value(); });
  if (&*first != &step) return;
  page.say("  ", "With the machine:");
  for (const Caution& caution : step.cautions) page.say("  - ", caution.text);
}

}  // namespace detail

}  // namespace levigate
