// What a hand-held machine with compound does to a coat: heat, and what is to be said against it.
// A sander keeps out of this but for what it takes off where it stands still.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/stack/machine.hpp"
#include "levigate/surface/wheel_limits.hpp"
#include "levigate/wheel/finding.hpp"
#include "levigate/wheel/heat.hpp"
#include "levigate/wheel/pass.hpp"
#include "levigate/wheel/standing_still.hpp"

namespace levigate::inline v0 {

/// Time that a spot is under the pad in one pass, at most: where the middle of the pad goes over it [s].
inline double dwell_s(const Machine& machine) noexcept {
  return machine.pad_mm / detail::mm_per_m / machine.feed_m_s;
}

/// A machine with compound on a surface as the heat formulas take it. Its highest speed counts for the whole pad: a bound. Under
/// a rotary the warmest spot reaches 0.72 of it.
inline WheelHeatInput heat_of(const Machine& machine, const WheelLimits& limits) {
  return {.effusivity = limits.effusivity,
          .friction = machine.friction,
          .pressure_kpa = machine.pressure_kpa(),
          .speed_m_s = machine.top_speed_m_s(),
          .share = machine.heat_share};
}

/// One second of standing still, at the point of the pad that is fastest.
///
///   film = rate top speed 1 s,   rise = temperature_rise_k(1 s)
///
/// @param machine        as it runs
/// @param limits         of the surface; none: not known
/// @param rate_um_per_m  film removed per metre of sliding [um/m]
/// @return               film [um]; temperature rise [K], none of a sander or without limits
/// Throws:    as temperature_rise_k()
/// NaN:       NaN in the rate gives NaN film; elsewhere as temperature_rise_k()
/// Source:    geometry; temperature_rise_k() for the heat
inline StandingStill standing_still(const Machine& machine,
                                    const std::optional<WheelLimits>& limits,
                                    double rate_um_per_m) {
  StandingStill result{.film_um = rate_um_per_m * machine.top_speed_m_s()};
  if (limits && machine.polishes())
    result.rise_k = temperature_rise_k(heat_of(machine, *limits), 1.0);
  return result;
}

/// What there is to say against a machine with compound on a surface, by its name: too fast, or too hot in one pass. Slow is no fault of
/// a machine: the low ends of the bands are those of wheels. Nothing is said of a sander.
/// Throws: as validate() of either.
std::vector<WheelFinding> machine_findings(const Machine& machine, const WheelLimits& limits,
                                           std::string_view surface);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/wheel/work/machine.hpp"
#endif
