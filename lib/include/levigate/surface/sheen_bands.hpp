// Names of sheen, dead matt to high gloss: what gloss a name stands for, and what names a gloss has.
// Names differ from scheme to scheme, so a name always goes with its scheme and its gloss units.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/surface/sheen_band_table.hpp"

namespace levigate::inline v0 {

/// The band of that name in a scheme ("institute", "trade", "EN 13300").
/// Throws: BadInput where there is no such scheme or it has no such name, naming the nearest.
const SheenBand& band_named(std::string_view scheme, std::string_view name);

/// Whether a gloss lies in a band. Readings are taken to whole gloss units, as the schemes print
/// them, and limits belong to the band: a reading on the limit of two lies in both. Limits at 85
/// degrees count only where that gloss is given; a band that has no others holds nothing without it.
///
/// @param band         one of sheen_band_table
/// @param gloss_gu     at 60 degrees [GU], 0 to 200
/// @param gloss_85_gu  at 85 degrees [GU], 0 to 200; nothing where not known
/// @return             whether it does
/// Throws:    OutOfRange where a gloss is outside its range
/// NaN:       rejected as OutOfRange
/// Source:    data/standards/sheen_bands.json
bool holds(const SheenBand& band, double gloss_gu,
           std::optional<double> gloss_85_gu = std::nullopt);

/// The bands that a gloss lies in, of all schemes in the order of the table. Bands overlap, and a
/// scheme may have none: the trade's names end at 97 GU.
///
/// @param gloss_gu     at 60 degrees [GU], 0 to 200
/// @param gloss_85_gu  at 85 degrees [GU], 0 to 200; nothing where not known
/// @return             the bands
/// Throws:    OutOfRange where a gloss is outside its range
/// NaN:       rejected as OutOfRange
/// Source:    data/standards/sheen_bands.json
std::vector<SheenBand> bands_of(double gloss_gu, std::optional<double> gloss_85_gu = std::nullopt);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/surface/work/sheen_bands.hpp"
#endif
