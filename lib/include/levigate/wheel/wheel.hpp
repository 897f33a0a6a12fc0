// A buffing wheel and how it is used: size, speed, face, and the hand that holds the work against it.
#pragma once

#include <cmath>
#include <string>
#include <string_view>

#include "levigate/stack/block.hpp"
#include "levigate/units.hpp"
#include "levigate/wheel/speed.hpp"

namespace levigate::inline v0 {

/// A wheel with the work held against it.
struct Wheel {
  std::string name;
  double diameter_mm = 0;  ///< [mm], 10 to 2000
  double rpm = 0;          ///< turns per minute it runs at [1/min], 1 to rated_rpm
  double rated_rpm = 0;    ///< turns per minute that its maker allows [1/min], 1 to 100 000
  double width_mm = 0;     ///< of the running face [mm], 0.5 to 1000
  double contact_mm = 0;   ///< length of the arc that touches the work [mm], 0.1 to diameter_mm
  double force_n = 0;      ///< that presses the work to the face [N], 0.001 to 10 000
  double feed_m_s = 0;     ///< speed at which the work passes [m/s], 0.0001 to 10
  double modulus_mpa = 0;  ///< of the running face [MPa], 0.001 to 100 000
  double friction = 0;     ///< coefficient of friction of face on work (dimensionless), 0.001 to 10
  double heat_share = 0;   ///< of the heat that enters the work (dimensionless), 0.001 to 1
  double duty = 0;         ///< share of the time that it touches the work, 0.01 to 1

  /// Speed of the rim [m/s]: see surface_speed_m_s() of wheel/speed.hpp.
  double surface_speed_m_s() const { return levigate::surface_speed_m_s(diameter_mm, rpm); }
  double area_cm2() const noexcept { return width_mm * contact_mm / 100.0; }
  double pressure_kpa() const noexcept { return kpa_from_n_per_cm2(force_n, area_cm2()); }

  friend bool operator==(const Wheel&, const Wheel&) = default;
};

/// The wheel of that name in the profiles. Its rated_rpm is no rating of a real wheel: whoever runs one
/// faster than the profile must state what is printed on it.
/// Throws: BadInput where there is none, naming the nearest.
Wheel wheel_named(std::string_view name);

/// Throws: OutOfRange where a member is outside its range, the wheel runs above its rating, the arc of
///         contact is longer than the wheel is wide across, or pressure or rim speed cannot be.
void validate(const Wheel& wheel, std::string_view where);

/// The wheel as a tool of the planner. The abrasive is the compound on its face, so it takes no paper.
/// Throws: as validate().
Block block_of(const Wheel& wheel);

/// The wheel that block_of() made a block of. Throws: BadInput where the block is none.
Wheel wheel_of(const Block& block);

/// The same wheel with another diameter at the same rpm and face load. A cylinder pressed to a flat
/// touches along an arc that grows as the root of its diameter (Hertz). Then rim speed grows as the
/// diameter, the rise of temperature in one pass as its power 3/4, the film one pass takes as the
/// diameter.
///
///   contact' = contact sqrt(diameter' / diameter)
///
/// @param wheel        to start from
/// @param diameter_mm  of the other wheel [mm], 10 to 2000
/// @return             the other wheel
/// Throws:    as validate(), for either wheel
/// NaN:       rejected
/// Source:    from memory: Hertz's line contact; that a buff obeys it is an assumption
inline Wheel with_diameter(Wheel wheel, double diameter_mm) {
  validate(wheel, "with_diameter");
  wheel.contact_mm *= std::sqrt(diameter_mm / wheel.diameter_mm);
  wheel.diameter_mm = diameter_mm;
  validate(wheel, "with_diameter");
  return wheel;
}

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/wheel/work/wheel.hpp"
#endif
