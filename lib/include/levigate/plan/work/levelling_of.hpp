// What levelling the orange peel of a zone takes with a tool.
#pragma once

#include "levigate/plan/job.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/levelling.hpp"
#include "levigate/surface/shrink_back.hpp"

namespace levigate::inline v0 {

/// Film that a tool takes to level a peel of that height and of the zone's wavelength [um]: levelling_removal_um().
inline double levelling_of(const Zone& zone, const Block& tool, double peel_um,
                           double residual_um) {
  return levelling_removal_um({.peel_um = peel_um,
                               .wavelength_mm = zone.peel_wavelength_mm,
                               .modulus_mpa = tool.modulus_mpa,
                               .pressure_kpa = tool.pressure_kpa(),
                               .residual_um = residual_um});
}

/// Takes the peel that the zone's own block levelled, unread, for another height: the film that is left is what that would leave.
inline void set_levelled_peel(const Job& job, Zone& zone, double peel_um) {
  const double residual_um = job.rules.residual_peel_um;
  const double more_um = levelling_of(zone, zone.block, peel_um, residual_um) -
                         levelling_of(zone, zone.block, zone.levelled_peel_um, residual_um);
  zone.film->mean_um -= more_um * with_shrink_back(job.coating.shrink_back);
}

}  // namespace levigate
