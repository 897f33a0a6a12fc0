// What one second of standing still at a wheel costs a spot of the work.
#pragma once

#include <optional>

#include "levigate/describe.hpp"
#include "levigate/wheel/heat.hpp"
#include "levigate/wheel/pass.hpp"

namespace levigate::inline v0 {

/// What a spot loses, and by how much it warms, in one second under the face.
struct StandingStill {
  double film_um = 0;
  std::optional<double> rise_k{};

  friend bool operator==(const StandingStill&, const StandingStill&) = default;
};

template <std::same_as<StandingStill> Value>
inline constexpr auto described<Value> =
    describe<Value>("StandingStill", "What one second of standing still at a wheel costs a spot.",
                    member<&Value::film_um>("film_um", at_least(0), "that goes"),
                    member<&Value::rise_k>(
                        "rise_k", at_least(0),
                        "by which it warms; none where the limits of the coating are not known"));

/// One second of standing still.
///
///   film = rate speed 1 s,   rise = temperature_rise_k(1 s)
///
/// @param wheel          as it runs
/// @param limits         of the surface; none: not known
/// @param rate_um_per_m  film removed per metre of rim travel [um/m]
/// @return               film [um], temperature rise [K]
/// Throws:    as temperature_rise_k()
/// NaN:       NaN in the rate gives NaN film; elsewhere as temperature_rise_k()
/// Source:    geometry; temperature_rise_k() for the heat
inline StandingStill standing_still(const Wheel& wheel, const std::optional<WheelLimits>& limits,
                                    double rate_um_per_m) {
  StandingStill result{.film_um = rate_um_per_m * wheel.surface_speed_m_s()};
  if (limits) result.rise_k = temperature_rise_k(heat_of(wheel, *limits), 1.0);
  return result;
}

}  // namespace levigate
