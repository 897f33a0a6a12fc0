// The work behind wheel/machine.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "levigate/wheel/machine.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/fact.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/wheel/finding.hpp"
#include "levigate/wheel/heat.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::vector<WheelFinding> machine_findings(const Machine& machine,
                                                         const WheelLimits& limits,
                                                         std::string_view surface) {
  validate(machine, "machine_findings");
  validate(limits, "machine_findings");
  std::vector<WheelFinding> result;
  if (!machine.polishes()) return result;
  const std::vector<Named> about{{"machine", machine.name}, {"surface", std::string(surface)}};
  const double speed_m_s = machine.top_speed_m_s();
  if (speed_m_s > limits.speed_high_m_s) {
    result.push_back({WheelFindingKind::wheel_too_fast,
                      Severity::error,
                      about,
                      {{"surface_speed_m_s", speed_m_s},
                       {"speed_low_m_s", limits.speed_low_m_s},
                       {"speed_high_m_s", limits.speed_high_m_s},
                       {"rpm", machine.rpm * limits.speed_high_m_s / speed_m_s}}});
  }
  const WheelHeatInput heat = heat_of(machine, limits);
  const double spot_s = dwell_s(machine);
  const double most_s = dwell_limit_s(heat, limits.rise_k);
  if (spot_s > most_s) {
    const double rise_k = temperature_rise_k(heat, spot_s);
    result.push_back({WheelFindingKind::dwell_too_long,
                      Severity::error,
                      about,
                      {{"dwell_s", spot_s},
                       {"rise_k", rise_k},
                       {"rise_limit_k", limits.rise_k},
                       {"dwell_limit_s", most_s},
                       {"least_feed_m_s", machine.pad_mm / detail::mm_per_m / most_s},
                       {"most_force_n", machine.force_n * limits.rise_k / rise_k}}});
  }
  return result;
}

}  // namespace levigate
