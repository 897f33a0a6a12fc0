// What a step at a buffing wheel, or with a hand-held machine, asks of the tool and of the hand.
#pragma once

#include <optional>
#include <string>

#include "levigate/describe.hpp"
#include "levigate/wheel/standing_still.hpp"

namespace levigate::inline v0 {

/// What a step at a buffing wheel asks of wheel and hand. See wheel_pass().
struct WheelStep {
  double rim_m_s = 0;
  double rpm = 0;
  double feed_m_s = 0;
  double dwell_s = 0;
  double film_per_pass_um = 0;
  std::optional<double> rise_k{};
  std::optional<double> dwell_limit_s{};
  StandingStill still{};

  friend bool operator==(const WheelStep&, const WheelStep&) = default;
};

template <std::same_as<WheelStep> Value>
inline constexpr auto described<Value> = describe<Value>(
    "WheelStep", "Settings and figures of a step at a buffing wheel.",
    member<&Value::rim_m_s>("rim_m_s", at_least(0), "speed of the rim"),
    member<&Value::rpm>("rpm", at_least(0), "turns per minute"),
    member<&Value::feed_m_s>("feed_m_s", at_least(0), "speed at which the work passes"),
    member<&Value::dwell_s>("dwell_s", at_least(0),
                            "time that a spot stays under the face in one pass"),
    member<&Value::film_per_pass_um>("film_per_pass_um", at_least(0), "film that one pass takes"),
    member<&Value::rise_k>(
        "rise_k", at_least(0),
        "by which a pass warms a spot; none where the limits of the coating are not known"),
    member<&Value::dwell_limit_s>("dwell_limit_s", at_least(0),
                                  "stay after which a spot is too warm; none as rise_k"),
    member<&Value::still>("still", "what one second of standing still costs a spot"));

/// Settings and figures of a step with a hand-held machine.
struct MachineStep {
  std::string name;
  double speed_m_s = 0;
  double rpm = 0;
  double orbit_mm = 0;
  double feed_m_s = 0;
  double keep_off_mm = 0;
  std::optional<double> dwell_s{};
  std::optional<double> rise_k{};
  std::optional<double> dwell_limit_s{};
  StandingStill still{};

  friend bool operator==(const MachineStep&, const MachineStep&) = default;
};

template <std::same_as<MachineStep> Value>
inline constexpr auto described<Value> = describe<Value>(
    "MachineStep", "Settings and figures of a step with a hand-held machine.",
    member<&Value::name>("name", "of the machine; it works the zones whose tool has this name"),
    member<&Value::speed_m_s>("speed_m_s", at_least(0), "mean speed of the pad on the work"),
    member<&Value::rpm>("rpm", at_least(0), "orbits, or turns of a rotary, a minute"),
    member<&Value::orbit_mm>("orbit_mm", at_least(0), "diameter of the orbit; 0: a rotary"),
    member<&Value::feed_m_s>("feed_m_s", at_least(0), "speed at which it is guided"),
    member<&Value::keep_off_mm>("keep_off_mm", at_least(0),
                                "how far the pad stays from every edge; the strip is hand work"),
    member<&Value::dwell_s>("dwell_s", at_least(0),
                            "with compound: time that a spot stays under the pad in one pass"),
    member<&Value::rise_k>("rise_k", at_least(0),
                           "with compound: by which a pass warms a spot, at most; none where the "
                           "limits of the coating are not known"),
    member<&Value::dwell_limit_s>("dwell_limit_s", at_least(0),
                                  "stay after which a spot is too warm; none as rise_k"),
    member<&Value::still>("still", "what one second of standing still costs a spot, at most"));

}  // namespace levigate
