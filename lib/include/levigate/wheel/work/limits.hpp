// The work behind wheel/limits.hpp: defines what it declares.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "levigate/wheel/limits.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/wheel_limits.hpp"
#include "levigate/surface/work/wheel_limits.hpp"
#include "levigate/wheel/limit_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK WheelLimits wheel_limits_named(std::string_view name) {
  std::vector<std::string_view> known;
  for (const CoatingProfile& p : coating_table) {
    const std::optional<WheelLimits> limits = detail::limits_of(p);
    if (!limits) continue;
    if (detail::is_called(p, name)) return *limits;
    known.push_back(p.name);
  }
  for (const LimitProfile& p : limit_table) {
    if (detail::is_called(p, name)) return detail::limits_from(p.speed_m_s, p.effusivity, p.rise_k);
    known.push_back(p.name);
  }
  throw BadInput(detail::unknown_name_text("surface under a wheel", name, known));
}

}  // namespace levigate
