// The work behind stack/machine.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/stack/machine.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/detail/work/filled.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/machine_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK void require_machine_runs(const Machine& machine, std::string_view where) {
  const auto no = [&](std::string_view member, const std::string& why, std::string_view with) {
    return BadInput::of(
        member, std::string(member) + " does not go with " + why + ", in " + std::string(where),
        {std::string(with)});
  };
  detail::require_range(machine.rpm, 1.0, machine.rated_rpm, "rpm (up to rated_rpm)", "1/min",
                        where);
  if (machine.free_rpm > 0.0 && machine.is_rotary())
    throw no("free_rpm", "a rotary: its spindle turns the pad", "orbit_mm");
  if (machine.square && machine.pad_rpm() > 0.0)
    throw no("square", "a pad that turns", machine.is_rotary() ? "orbit_mm" : "free_rpm");
  if (machine.polishes() != (machine.heat_share > 0.0))
    throw no("friction", "heat_share: both are above 0, or neither", "heat_share");
  detail::require_range(machine.pressure_kpa(), 0.01, 1e3, "pressure_kpa (force_n over the pad)",
                        "kPa", where);
  detail::require_range(machine.speed_m_s(), 1e-3, 100.0, "mean speed", "m/s", where);
}

LEVIGATE_WORK double soft_modulus_mpa(const Machine& machine) {
  for (const MachineProfile& profile : machine_table) {
    if (profile.name == machine.name && profile.modulus_mpa.value == machine.modulus_mpa)
      return profile.modulus_mpa.low;
  }
  return machine.modulus_mpa;
}

LEVIGATE_WORK Machine machine_named(std::string_view name) {
  Machine machine = detail::filled<Machine>(detail::profile_named(machine_table, name, "machine"),
                                            machine_columns);
  machine.square = machine.pad_rpm() == 0.0;  // of the profiles, pads that do not turn are square
  return machine;
}

}  // namespace levigate
