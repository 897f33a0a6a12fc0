// The work behind wheel/wheel.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/wheel/wheel.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/wheel/speed.hpp"
#include "levigate/wheel/wheel_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Wheel wheel_named(std::string_view name) {
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

LEVIGATE_WORK void validate(const Wheel& wheel, std::string_view where) {
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

LEVIGATE_WORK Block block_of(const Wheel& wheel) {
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

LEVIGATE_WORK Wheel wheel_of(const Block& block) {
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

}  // namespace levigate
