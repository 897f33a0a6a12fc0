// How much to spray before the job is sanded: asked of a bench whose films do not count yet.
#pragma once

#include "levigate/bench/bench.hpp"
#include "levigate/bench/spraying.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// The coats of the last round under which a plan exists, for the job before its first step. Films that the job states are left aside:
/// each zone is to be sprayed anew, with an error as of counted coats. An edge has its share of its flat's film, by its radius; one
/// without a radius is taken for sharp. No flat can have a coat less, the others as told.
///
///   film = coats dry_um_per_coat,   wet = dry (1 + thinner) / volume_solids
///   mix = area film (1 + thinner) / (volume_solids transfer_efficiency (1 - loss_share))
///   chance = product of 1 - cut_through() at the depth of the best plan
///
/// A way back is one more removal of all steps after the first, at least of the scratches that the last step leaves.
///
/// @param bench    job, stack and shop; the journal does not count
/// @param options  see SprayOptions for units and ranges
/// @return         coats, film and paint by zone; without zones, and with the reason, where no film is enough
/// Throws:    BadInput for a solid, for an unknown gun, for a coating without usual numbers where they are not given; OutOfRange
///            where an option is outside its range
/// NaN:       rejected
/// Accuracy:  that of cut_through(); paint is known to about a factor of 1.5
/// Source:    conservation of volume; data/profiles/coatings, guns.json, gauges.json
Spraying how_much_to_spray(const Bench& bench, const SprayOptions& options = {});

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/bench/work/spray.hpp"
#endif
