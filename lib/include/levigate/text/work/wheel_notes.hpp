// What the card says of a step at a buffing wheel: its numbers, and the cautions of the work.
#pragma once

#include <fmt/format.h>

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/outcome.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/speed.hpp"
#include "levigate/surface/wheel_limits.hpp"
#include "levigate/text/work/layout.hpp"
#include "levigate/wheel/caution.hpp"
#include "levigate/wheel/pass.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Rim speed, dwell and its limit, film of a pass and passes in each zone, of a step on a wheel. See wheel_pass().
inline std::string wheel_text(const Job& job, const Wheel& wheel, const Step& step) {
  std::string text = fmt::format("Rim {:.1f} m/s at {:.0f} rpm, work fed at {:.0f} mm/s.",
                                 wheel.surface_speed_m_s(), wheel.rpm, 1e3 * wheel.feed_m_s);
  const std::optional<WheelLimits>& limits = job.coating.limits;
  if (!limits) {
    return text + fmt::format(
                      " Warning: {:.1f} m/s may be too fast or too hot. The speed and heat "
                      "that this coating stands are not known. Try it on scrap first.",
                      wheel.surface_speed_m_s());
  }
  std::vector<std::string> passes;
  std::set<double> counts;
  WheelPass pass;
  for (std::size_t i = 0; i < step.zones.size(); ++i) {
    const ZoneStep& zone = step.zones[i];
    if (zone.travel_m <= 0.0) continue;
    const double rate_um_per_m =
        zone.removal_um * job.zones[i].area_cm2 / (wheel.area_cm2() * zone.travel_m);
    pass = wheel_pass(wheel, *limits, rate_um_per_m, zone.removal_um);
    passes.push_back(fmt::format("{:.0f} on {}", pass.passes, zone.zone));
    counts.insert(pass.passes);
  }
  if (passes.empty()) return text;
  const std::string everywhere = fmt::format("{:.0f} over every spot", pass.passes);
  return text + fmt::format(
                    " A spot stays {:.2f} s under the face and warms by {:.0f} K; too warm after "
                    "{:.2f} s. One pass takes {:.3f} um. Passes: {}.",
                    pass.dwell_s, pass.rise_k, pass.dwell_limit_s, pass.film_per_pass_um,
                    counts.size() == 1 ? everywhere : list_text(passes));
}

/// The cautions of wheel work, in the step that comes first to a wheel.
inline void say_wheel_cautions(Page& page) {
  page.say("  ", "At the wheel:");
  for (const WheelCaution& caution : wheel_cautions) page.say("  - ", caution.text);
}

}  // namespace detail

}  // namespace levigate
