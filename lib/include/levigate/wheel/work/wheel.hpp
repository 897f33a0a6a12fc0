// The work behind wheel/wheel.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/wheel/wheel.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/speed.hpp"
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

}  // namespace levigate
