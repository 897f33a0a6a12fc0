// What the card says of a step at a buffing wheel: its numbers, and the cautions of the work.
#pragma once

#include <fmt/format.h>

#include <set>
#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/sentences_of_finding.hpp"
#include "levigate/text/work/sentences_of_wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

/// "5 over every spot", or by zone "5 on top and 1 on edges"; empty where there is nothing to take off.
inline std::string passes_text(const Step& step) {
  std::vector<std::string> zones;
  std::set<double> counts;
  for (const ZoneStep& zone : step.zones) {
    if (zone.passes.value_or(0.0) <= 0.0) continue;
    zones.push_back(fmt::format("{:.0f} on {}", *zone.passes, zone.zone));
    counts.insert(*zone.passes);
  }
  return counts.size() == 1 ? fmt::format("{:.0f} over every spot", *counts.begin())
                            : list_text(zones);
}

/// Rim speed, dwell and its limit, film of a pass and passes in each zone, of a step on a wheel. And what standing still costs.
inline std::string wheel_text(const WheelStep& wheel, const std::string& passes) {
  std::string text =
      fmt::format("Rim speed {:.1f} m/s at {:.0f} rpm. Feed the work at {:.0f} mm/s.",
                  wheel.rim_m_s, wheel.rpm, 1e3 * wheel.feed_m_s);
  if (!wheel.rise_k || !wheel.dwell_limit_s) {
    text += fmt::format(
        " Warning: {:.1f} m/s may be too fast or too hot. No limits of speed and heat are known "
        "for this coating. Try it on scrap first.",
        wheel.rim_m_s);
  } else if (!passes.empty()) {
    text += fmt::format(
        " A spot stays {:.2f} s under the face and warms by {:.0f} K. It is too warm after {:.2f} "
        "s. One pass takes {:.3f} um off. Passes: {}.",
        wheel.dwell_s, *wheel.rise_k, *wheel.dwell_limit_s, wheel.film_per_pass_um, passes);
  }
  return text + " " + still_text(wheel.still.film_um, wheel.still.rise_k) + ".";
}

/// Warns at the step that the piece may be too heavy for the wheel.
inline void say_unweighed(Page& page, const Plan& plan) {
  for (const Finding& finding : plan.findings) {
    if (finding.kind == FindingKind::piece_unweighed)
      page.say("  ", "Warning: " + sentence_of(finding) + ".");
  }
}

/// "19 s and 63 passes": how far an edge may still be worked at a wheel.
inline std::string edge_at_wheel_text(const ZoneStep& zone) {
  return fmt::format(
      "The film allows about {:.{}f} s more at the wheel along {}. That is {:.0f} passes.",
      *zone.left_s, *zone.left_s < 9.95 ? 1 : 0, zone.zone, zone.passes_left.value_or(0.0));
}

/// The cautions of wheel work, in the step that comes first to a wheel.
inline void say_wheel_cautions(Page& page, const Step& step) {
  page.say("  ", "At the wheel:");
  for (const Caution& caution : step.cautions) page.say("  - ", caution.text);
}

}  // namespace detail

}  // namespace levigate
