// A buffing wheel and how it is used: size, speed, face, and the hand that holds the work against it.
#pragma once

#include <cmath>
#include <string>
#include <string_view>

#include "levigate/detail/profile.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/units.hpp"
#include "levigate/wheel/speed.hpp"
#include "levigate/wheel/wheel_table.hpp"

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
inline Wheel wheel_named(std::string_view name) {
  const WheelProfile& p = detail::profile_named(wheel_table, name, "wheel");
  return {.name = std::string(p.name),
          .diameter_mm = p.diameter_mm.value,
          .rpm = p.rpm.value,
          .rated_rpm = p.rated_rpm.value,
          .width_mm = p.width_mm.value,
          .contact_mm = p.contact_mm.value,
          .force_n = p.force_n.value,
          .feed_m_s = p.feed_m_s.value,
          .modulus_mpa = p.modulus_mpa.value,
          .friction = p.friction.value,
          .heat_share = p.heat_share.value,
          .duty = p.duty.value};
}

/// Throws: OutOfRange where a member is outside its range, the wheel runs above its rating, the arc of
///         contact is longer than the wheel is wide across, or pressure or rim speed cannot be.
inline void validate(const Wheel& wheel, std::string_view where) {
  detail::require_range(wheel.diameter_mm, 10.0, 2000.0, "diameter_mm", "mm", where);
  detail::require_range(wheel.rated_rpm, 1.0, 1e5, "rated_rpm", "1/min", where);
  detail::require_range(wheel.rpm, 1.0, 1e5, "rpm", "1/min", where);
  if (wheel.rpm > wheel.rated_rpm) {
    throw OutOfRange("rpm = " + detail::number_text(wheel.rpm) +
                     " 1/min is above the wheel's rated_rpm = " +
                     detail::number_text(wheel.rated_rpm) + " 1/min, in " + std::string(where));
  }
  detail::require_range(wheel.width_mm, 0.5, 1000.0, "width_mm", "mm", where);
  detail::require_range(wheel.contact_mm, 0.1, wheel.diameter_mm, "contact_mm (up to diameter_mm)",
                        "mm", where);
  detail::require_range(wheel.force_n, 1e-3, 1e4, "force_n", "N", where);
  detail::require_range(wheel.pressure_kpa(), 0.01, 1e3,
                        "pressure_kpa (force_n over width_mm times contact_mm)", "kPa", where);
  detail::require_range(wheel.feed_m_s, 1e-4, 10.0, "feed_m_s", "m/s", where);
  detail::require_range(wheel.modulus_mpa, 1e-3, 1e5, "modulus_mpa", "MPa", where);
  detail::require_range(wheel.friction, 1e-3, 10.0, "friction", "", where);
  detail::require_range(wheel.heat_share, 1e-3, 1.0, "heat_share", "", where);
  detail::require_range(wheel.duty, 0.01, 1.0, "duty", "", where);
  detail::require_range(wheel.surface_speed_m_s(), 1e-3, 100.0, "surface speed", "m/s", where);
}

/// The wheel as a tool of the planner. The abrasive is the compound on its face, so it takes no paper.
/// Throws: as validate().
inline Block block_of(const Wheel& wheel) {
  validate(wheel, "wheel '" + wheel.name + "'");
  return {.name = wheel.name,
          .modulus_mpa = wheel.modulus_mpa,
          .area_cm2 = wheel.area_cm2(),
          .force_n = wheel.force_n,
          .speed_m_s = wheel.surface_speed_m_s(),
          .duty = wheel.duty,
          .wrap = 0.0,
          .wheel = WheelFace{.diameter_mm = wheel.diameter_mm,
                             .rpm = wheel.rpm,
                             .rated_rpm = wheel.rated_rpm,
                             .width_mm = wheel.width_mm,
                             .contact_mm = wheel.contact_mm,
                             .feed_m_s = wheel.feed_m_s,
                             .friction = wheel.friction,
                             .heat_share = wheel.heat_share}};
}

/// The wheel that block_of() made a block of. Throws: BadInput where the block is none.
inline Wheel wheel_of(const Block& block) {
  if (!block.wheel) throw BadInput("block '" + block.name + "' is no wheel, in wheel_of");
  const WheelFace& face = *block.wheel;
  return {.name = block.name,
          .diameter_mm = face.diameter_mm,
          .rpm = face.rpm,
          .rated_rpm = face.rated_rpm,
          .width_mm = face.width_mm,
          .contact_mm = face.contact_mm,
          .force_n = block.force_n,
          .feed_m_s = face.feed_m_s,
          .modulus_mpa = block.modulus_mpa,
          .friction = face.friction,
          .heat_share = face.heat_share,
          .duty = block.duty};
}

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
