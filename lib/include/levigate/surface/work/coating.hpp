// The work behind surface/coating.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/surface/coating.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/coating_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Coating coating_named(std::string_view name) {
  const CoatingProfile& p = detail::profile_named(coating_table, name, "coating");
  return {std::string(p.name),      p.kind,    p.hardness_mpa.value, p.wear_coefficient.value,
          p.refractive_index.value, p.two_part};
}

LEVIGATE_WORK void validate(const Coating& coating, std::string_view where) {
  detail::require_range(coating.hardness_mpa, 1.0, 1e5, "hardness_mpa", "MPa", where);
  detail::require_range(coating.wear_coefficient, 1e-6, 1.0, "wear_coefficient", "", where);
  detail::require_range(coating.refractive_index, 1.01, 4.0, "refractive_index", "", where);
}

}  // namespace levigate
