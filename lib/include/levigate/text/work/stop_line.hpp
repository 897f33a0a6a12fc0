// Where a gauge tells a finisher to stop.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>

#include "levigate/plan/plan_values.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The level at which a zone's budget ends, as a gauge would read it through all rounds; none on a solid, or without a limit.
///
///   film + below - budget
inline std::optional<double> budget_ends_um(const PlannedZone& zone) {
  if (!zone.film_um || !zone.budget_um || std::isinf(*zone.budget_um)) return std::nullopt;
  return *zone.film_um + zone.below_um.value_or(0.0) - *zone.budget_um;
}

/// The reading at which a zone must not be worked further in a step. The steps after it, and the scratches that the last one leaves,
/// must still fit into the budget: a budget counts scratches, and a gauge does not.
///
///   budget_ends + (depth after the last step - removed through this step)
///
/// The reading is the mean of the zone, as film and depth are.
inline std::optional<double> stop_reading_um(const Plan& plan, std::size_t step, std::size_t zone) {
  const std::optional<double> ends_um = budget_ends_um(plan.zones[zone]);
  if (!ends_um) return std::nullopt;
  double removed_um = 0;
  for (std::size_t i = 0; i <= step; ++i) removed_um += plan.steps[i].zones[zone].removal_um;
  return *ends_um + (plan.steps.back().zones[zone].depth_um - removed_um);
}

/// Of what the budget still allows a zone after a step, the share that the steps after it leave: 0 where they take all of it.
///
///   (budget - depth after the last step) / (budget - depth after this step)
inline double spare_share(const Plan& plan, std::size_t step, std::size_t zone) {
  const std::optional<double>& budget_um = plan.zones[zone].budget_um;
  if (!budget_um || std::isinf(*budget_um)) return 1.0;
  const double left_um = *budget_um - plan.steps[step].zones[zone].depth_um;
  const double spare_um = *budget_um - plan.steps.back().zones[zone].depth_um;
  return left_um > 0.0 ? std::clamp(spare_um / left_um, 0.0, 1.0) : 0.0;
}

}  // namespace detail

}  // namespace levigate
