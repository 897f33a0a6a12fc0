// A buffing wheel as a tool: size, speed, face, and the hand that holds the work against it.
// What it does to a coat is in wheel/.
#pragma once

#include <string>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/stack/speed.hpp"
#include "levigate/units.hpp"

namespace levigate::inline v0 {

/// A wheel with the work held against it.
struct Wheel {
  std::string name = "own wheel";
  double diameter_mm = 0;
  double rpm = 0;
  double rated_rpm = 0;
  double width_mm = 0;
  double contact_mm = 0;
  double force_n = 0;
  double feed_m_s = 0;
  double modulus_mpa = 0;
  double friction = 0;
  double heat_share = 0;
  double duty = 0;

  /// Speed of the rim [m/s]: see surface_speed_m_s() of stack/speed.hpp.
  double surface_speed_m_s() const { return levigate::surface_speed_m_s(diameter_mm, rpm); }
  double area_cm2() const noexcept { return width_mm * contact_mm / 100.0; }
  double pressure_kpa() const noexcept { return kpa_from_n_per_cm2(force_n, area_cm2()); }

  friend bool operator==(const Wheel&, const Wheel&) = default;
};

/// Throws: OutOfRange where the wheel runs above its rating, the arc of contact is longer than the wheel is wide across, or pressure
///         or rim speed cannot be.
void require_runnable(const Wheel& wheel, std::string_view where);

template <std::same_as<Wheel> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Wheel", "A buffing wheel, and the hand that holds the work against it.",
        member<&Value::name>("name", "name of the profile, or the user's own").optional(),
        member<&Value::diameter_mm>("diameter_mm", Within{10, 2000}, "of the wheel")
            .is(Input::pace),
        member<&Value::rpm>("rpm", Within{1, 1e5}, "turns per minute that it runs at")
            .is(Input::pace),
        member<&Value::rated_rpm>("rated_rpm", Within{1, 1e5},
                                  "turns per minute that its maker allows")
            .is(Input::chosen),
        member<&Value::width_mm>("width_mm", Within{0.5, 1000}, "of the running face")
            .is(Input::believed),
        member<&Value::contact_mm>("contact_mm", Within{0.1, 2000},
                                   "length of the arc that touches the work")
            .is(Input::believed),
        member<&Value::force_n>("force_n", Within{1e-3, 1e4}, "that presses the work to the face")
            .is(Input::believed),
        member<&Value::feed_m_s>("feed_m_s", Within{1e-4, 10}, "speed at which the work passes")
            .is(Input::believed),
        member<&Value::modulus_mpa>("modulus_mpa", Within{1e-3, 1e5}, "of the running face")
            .is(Input::believed),
        member<&Value::friction>("friction", Within{1e-3, 10},
                                 "coefficient of friction of face on work")
            .is(Input::believed),
        member<&Value::heat_share>("heat_share", Within{1e-3, 1},
                                   "of the heat that enters the work")
            .is(Input::believed),
        member<&Value::duty>("duty", Within{0.01, 1}, "share of the time that it touches the work")
            .is(Input::pace))
        .rule(rule_by<&require_runnable>);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/stack/work/wheel.hpp"
#endif
