// The budget of a zone of a job, and its chance of cutting through.
#pragma once

#include <algorithm>

#include "levigate/film/budget.hpp"
#include "levigate/film/common_errors.hpp"
#include "levigate/film/cut_through.hpp"
#include "levigate/film/film.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/levelling.hpp"
#include "levigate/surface/peel.hpp"
#include "levigate/surface/shrink_back.hpp"

namespace levigate::inline v0 {

/// The errors that all spots of a zone on a coat share, where this tool levels its peel, or the zone's own did so unread.
inline CommonErrors common_errors_of(const Job& job, const Zone& zone, const Block& tool) {
  CommonErrors errors{.mean_se_um = zone.film->mean_se_um,
                      .sd_se_um = zone.film->sd_se_um,
                      .readings = static_cast<double>(zone.film->readings)};
  const bool to_level = has_peel_to_level(job, zone);
  errors.peel_um = to_level ? zone.peel_um : zone.levelled_peel_um;
  if (errors.peel_um <= 0) return errors;
  errors.peel_factor = peel_factor(zone.peel_how).value;
  const Block& leveller = to_level ? tool : zone.block;
  errors.critical_um =
      critical_amplitude_um(zone.peel_wavelength_mm, leveller.modulus_mpa, leveller.pressure_kpa());
  errors.residual_um = job.rules.residual_peel_um;
  // Crests are then cut alone, as with a rigid block.
  if (errors.critical_um <= 0.5 * errors.residual_um) errors.critical_um = 0;
  // What comes back is levelled too. The depth goes in proportion where all three do.
  const double more = with_shrink_back(job.coating.shrink_back);
  errors.peel_um *= more;
  errors.critical_um *= more;
  errors.residual_um *= more;
  return errors;
}

/// Spots of a zone: one per cm2, at least one.
inline double spots_in(const Zone& zone) { return std::max(1.0, zone.area_cm2); }

/// What the budget of a zone on a coat hangs on, where this tool levels it.
inline BudgetInput budget_input(const Job& job, const Zone& zone, const Block& tool) {
  return {.mean_um = zone.film->mean_um,
          .sd_um = zone.film->sd_um,
          .removed_cv = job.rules.removed_cv,
          .reserve_um = job.rules.reserve_um,
          .spots = spots_in(zone),
          .cut_through_limit = job.rules.cut_through_limit,
          .common = common_errors_of(job, zone, tool)};
}

/// Depth that a zone on a coat can afford where its own block levels it [um]: see depth_budget_um().
inline double budget_of(const Job& job, const Zone& zone) {
  return depth_budget_um(budget_input(job, zone, zone.block));
}

/// Chance of cutting through a zone on a coat at a depth, where this tool levelled it: see cut_through().
inline double cut_through_of(const Job& job, const Zone& zone, const Block& tool, double depth_um) {
  const BudgetInput input = budget_input(job, zone, tool);
  return cut_through({.depth_um = depth_um,
                      .mean_um = input.mean_um,
                      .sd_um = input.sd_um,
                      .removed_cv = input.removed_cv,
                      .reserve_um = input.reserve_um,
                      .spots = input.spots,
                      .common = input.common});
}

}  // namespace levigate
