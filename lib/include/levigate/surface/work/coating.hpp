// The work behind surface/coating.hpp: defines what it declares.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "levigate/surface/coating.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/detail/work/filled.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/wheel_limits.hpp"
#include "levigate/surface/work/wheel_limits.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Coating coating_named(std::string_view name) {
  const CoatingProfile& row = detail::profile_named(coating_table, name, "coating");
  Coating coating = detail::filled<Coating>(row, coating_columns);
  coating.kind = row.kind;
  coating.two_part = row.two_part;
  if (row.redissolves) coating.redissolves = row.redissolves->value;
  coating.cure = detail::cure_of(row);
  if (row.comes_back && row.rest_h)
    coating.shrink_back = ShrinkBack{row.comes_back->value, row.rest_h->value};
  coating.limits = detail::limits_of(row);
  return coating;
}

}  // namespace levigate
