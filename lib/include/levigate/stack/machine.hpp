// A hand-held machine as a tool: its pad, how that moves, and the hand that guides it.
// What it does to a coat with compound is in wheel/machine.hpp.
#pragma once

#include <numbers>
#include <string>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/stack/speed.hpp"
#include "levigate/units.hpp"

namespace levigate::inline v0 {

/// A hand-held sander or polisher. Its spindle turns the pad, or leads it round a small orbit; a pad on an orbit may turn freely too.
struct Machine {
  std::string name = "own machine";
  double pad_mm = 0;
  bool square = false;
  double orbit_mm = 0;
  double rpm = 0;
  double free_rpm = 0;
  double rated_rpm = 0;
  double force_n = 0;
  double feed_m_s = 0;
  double modulus_mpa = 0;
  double friction = 0;
  double heat_share = 0;
  double duty = 0;
  double keep_off_mm = 0;

  /// Whether it is a rotary: its pad turns with the spindle.
  bool is_rotary() const noexcept { return orbit_mm == 0.0; }
  /// Whether it takes compound. Else it takes paper alone.
  bool polishes() const noexcept { return friction > 0.0; }
  /// Turns of the pad about its own centre [1/min].
  double pad_rpm() const noexcept { return is_rotary() ? rpm : free_rpm; }
  /// Mean speed of the pad on the work [m/s]: see pad_speed_m_s().
  double speed_m_s() const { return pad_speed_m_s(pad_mm, pad_rpm(), orbit_mm, rpm); }
  /// The highest speed of any point of the pad [m/s]: rim and orbit together.
  double top_speed_m_s() const {
    return pad_speed_m_s(pad_mm, 0.0, orbit_mm, rpm) + surface_speed_m_s(pad_mm, pad_rpm());
  }
  /// Area of the pad, which is taken to lie on the work with all of it.
  double area_cm2() const noexcept { return room_cm2(0.0); }
  /// The same of a pad that is wider by a margin all round.
  double room_cm2(double margin_mm) const noexcept {
    const double wide_mm = pad_mm + 2.0 * margin_mm;
    return (square ? 1.0 : std::numbers::pi / 4.0) * wide_mm * wide_mm / 100.0;
  }
  double pressure_kpa() const noexcept { return kpa_from_n_per_cm2(force_n, area_cm2()); }

  friend bool operator==(const Machine&, const Machine&) = default;
};

/// Throws: OutOfRange where it runs above its rating, or pressure or speed cannot be. BadInput where a rotary or a square pad is
///         said to spin freely, or friction is told without heat_share.
void require_machine_runs(const Machine& machine, std::string_view where);

template <std::same_as<Machine> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Machine", "A hand-held sander or polisher, and the hand that guides it.",
        member<&Value::name>("name", "name of the profile, or the user's own").optional(),
        member<&Value::pad_mm>("pad_mm", Within{10, 1000},
                               "diameter of the pad, or the side of a square one")
            .is(Input::believed),
        member<&Value::square>("square", "whether the pad is square").left_out_as_made(),
        member<&Value::orbit_mm>("orbit_mm", Within{0, 100},
                                 "diameter of the orbit of the pad's centre; 0: a rotary")
            .is(Input::pace),
        member<&Value::rpm>("rpm", Within{1, 1e5},
                            "of the spindle: orbits, or turns of a rotary, a minute")
            .is(Input::pace),
        member<&Value::free_rpm>("free_rpm", Within{0, 1e4},
                                 "free spinning of a pad on an orbit, under load")
            .optional()
            .is(Input::pace),
        member<&Value::rated_rpm>("rated_rpm", Within{1, 1e5}, "of the spindle that is allowed")
            .is(Input::chosen),
        member<&Value::force_n>("force_n", Within{1e-3, 1e4},
                                "on the work, with the weight of the machine")
            .is(Input::believed),
        member<&Value::feed_m_s>("feed_m_s", Within{1e-4, 10}, "speed at which it is guided")
            .is(Input::believed),
        member<&Value::modulus_mpa>("modulus_mpa", Within{1e-3, 1e5}, "of the face of the pad")
            .is(Input::believed),
        member<&Value::friction>("friction", Within{0, 10},
                                 "coefficient of friction with compound; 0: it takes paper alone")
            .optional()
            .is(Input::believed),
        member<&Value::heat_share>("heat_share", Within{0, 1},
                                   "of the heat of compound work that enters the work")
            .optional()
            .is(Input::believed),
        member<&Value::duty>("duty", Within{0.01, 1}, "share of the time spent on the work")
            .is(Input::pace),
        member<&Value::keep_off_mm>("keep_off_mm", Within{0, 1000},
                                    "how far the pad stays from every edge")
            .is(Input::chosen))
        .rule(rule_by<&require_machine_runs>);

/// Modulus that film is counted for where this machine levels [MPa]: the low end of the band of the profile of its name where it has
/// that profile's number, as nobody measured its pad. A softer pad takes more film. Else its own.
double soft_modulus_mpa(const Machine& machine);

/// The machine of that name in the profiles. Its rated_rpm is no rating of a real machine.
/// Throws: BadInput where there is none, naming the nearest.
Machine machine_named(std::string_view name);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/stack/work/machine.hpp"
#endif
