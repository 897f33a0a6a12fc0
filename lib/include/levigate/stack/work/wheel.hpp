// The work behind stack/wheel.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>
#include <utility>

#include "levigate/stack/wheel.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK void require_runnable(const Wheel& wheel, std::string_view where) {
  if (wheel.rpm > wheel.rated_rpm) {
    Fault fault = detail::told(
        "rpm = " + detail::number_text(wheel.rpm) + " 1/min is above the wheel's rated_rpm = " +
        detail::number_text(wheel.rated_rpm) + " 1/min, in " + std::string(where));
    fault.quantity = "rpm";
    fault.value = wheel.rpm;
    fault.unit = "1/min";
    fault.high = wheel.rated_rpm;
    throw OutOfRange(std::move(fault));
  }
  detail::require_range(wheel.contact_mm, 0.1, wheel.diameter_mm, "contact_mm (up to diameter_mm)",
                        "mm", where);
  detail::require_range(wheel.pressure_kpa(), 0.01, 1e3,
                        "pressure_kpa (force_n over width_mm times contact_mm)", "kPa", where);
  detail::require_range(wheel.surface_speed_m_s(), 1e-3, 100.0, "surface speed", "m/s", where);
}

}  // namespace levigate
