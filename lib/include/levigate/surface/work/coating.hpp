// The work behind surface/coating.hpp: defines what it declares.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "levigate/surface/coating.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/wheel_limits.hpp"
#include "levigate/surface/work/wheel_limits.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Coating coating_named(std::string_view name) {
  const CoatingProfile& p = detail::profile_named(coating_table, name, "coating");
  return {.name = std::string(p.name),
          .kind = p.kind,
          .hardness_mpa = p.hardness_mpa.value,
          .wear_coefficient = p.wear_coefficient.value,
          .refractive_index = p.refractive_index.value,
          .two_part = p.two_part,
          .redissolves = p.redissolves ? std::optional(p.redissolves->value) : std::nullopt,
          .cure = detail::cure_of(p),
          .limits = detail::limits_of(p)};
}

LEVIGATE_WORK void validate(const Coating& coating, std::string_view where) {
  detail::require_range(coating.hardness_mpa, 1.0, 1e5, "hardness_mpa", "MPa", where);
  detail::require_range(coating.wear_coefficient, 1e-6, 1.0, "wear_coefficient", "", where);
  detail::require_range(coating.refractive_index, 1.01, 4.0, "refractive_index", "", where);
  if (coating.cure) validate(*coating.cure, std::string(where) + ", cure");
  if (coating.limits) validate(*coating.limits, std::string(where) + ", limits");
}

}  // namespace levigate
