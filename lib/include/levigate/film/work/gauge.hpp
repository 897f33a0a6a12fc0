// The work behind film/gauge.hpp: defines what it declares.
#pragma once

#include <string_view>

#include "levigate/film/gauge.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/film/gauge_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Gauge gauge_named(std::string_view name) {
  const GaugeProfile& p = detail::profile_named(gauge_table, name, "gauge");
  return {p.fixed_um.value, p.share.value};
}

}  // namespace levigate
