// What came off a patch, and how sure that is: by a gauge, by a balance, or by the peel that it levelled.
#pragma once

#include <cmath>
#include <cstddef>
#include <span>

#include "levigate/film/gauge.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/levelling_of.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/peel.hpp"

namespace levigate::inline v0 {

/// A reading teaches nothing where its logarithm is less sure than that: too little came off.
inline constexpr double most_patch_log_sd = 0.5;

/// Film that came off a patch, and the standard error of its logarithm.
struct PatchRemoval {
  double removal_um = 0;
  double log_sd = 0;
};

/// What came off by a gauge that read the same spots before and after. Its fixed error is taken anew with each reading, its share
/// is common to all. What came off varies from spot to spot.
///
///   R = mean(before) - mean(after)
///   log_sd^2 = 2 fixed^2 / (n R^2) + share^2 + removed_cv^2 / n
///
/// @param before_um   thickness at each spot [um], one or more
/// @param after_um    at the same spots [um], as many
/// @param removed_cv  unevenness of what comes off (dimensionless), from 0 on
/// @return            R [um], not above 0 where nothing came off, and its error (dimensionless)
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-9 relative, as part of learn()
/// Source:    propagation of uncertainty; gauge_table
inline PatchRemoval gauged_removal(std::span<const double> before_um,
                                   std::span<const double> after_um, double removed_cv) {
  const Gauge gauge = gauge_named("ultrasonic");
  const auto n = static_cast<double>(before_um.size());
  double removal_um = 0;
  for (std::size_t i = 0; i < before_um.size(); ++i) removal_um += (before_um[i] - after_um[i]) / n;
  return {removal_um, std::hypot(std::sqrt(2.0 / n) * gauge.fixed_um / removal_um, gauge.share,
                                 removed_cv / std::sqrt(n))};
}

/// What came off a patch by its weight, dry each time.
///
///   R = 10^4 (before - after) / (density A),   log_sd^2 = 2 weighing_error_g^2 / (before - after)^2 + density_share^2
///
/// @param before_g  of the part [g]
/// @param after_g   the same [g]
/// @param area_cm2      of the patch A [cm2], above 0
/// @return              R [um], not above 0 where nothing came off, and its error (dimensionless)
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-9 relative, as part of learn()
/// Source:    propagation of uncertainty; prior_table
inline PatchRemoval weighed_removal(double before_g, double after_g, double area_cm2) {
  const double off_g = before_g - after_g;
  return {1e4 * off_g / (coat_density_g_cm3 * area_cm2),
          std::hypot(std::sqrt(2.0) * weighing_error_g / off_g, coat_density_share)};
}

/// What comes off until the shiny spots of a zone are gone. It is as sure as the height of its peel.
///
///   R = levelling_removal_um(),   log_sd = ln(R(peel x peel_factor) / R(peel))
///
/// @param zone         whose peel is levelled
/// @param tool         block or pad
/// @param residual_um  height of the peel that may stay [um]
/// @return             R [um], 0 where there is no peel to level, and its error (dimensionless)
/// Throws:    as levelling_removal_um()
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-9 relative, as part of learn()
/// Source:    that of levelling_removal_um(), peel_factor()
inline PatchRemoval levelled_removal(const Zone& zone, const Block& tool, double residual_um) {
  const auto removal_um = [&](double peel_um) {
    return levelling_of(zone, tool, peel_um, residual_um);
  };
  const double told_um = removal_um(zone.peel_um);
  if (!(told_um > 0.0)) return {told_um, 0};
  return {told_um, std::log(removal_um(zone.peel_um * peel_factor(zone.peel_how).value) / told_um)};
}

}  // namespace levigate
