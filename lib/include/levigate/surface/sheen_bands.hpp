// Names of sheen, dead matt to high gloss: what gloss a name stands for, and what names a gloss has.
// Names differ from scheme to scheme, so a name always goes with its scheme and its gloss units.
#pragma once

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/profile.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/sheen_band_table.hpp"

namespace levigate::inline v0 {

/// The band of that name in a scheme ("institute", "trade", "EN 13300").
/// Throws: BadInput where there is no such scheme or it has no such name, naming the nearest.
inline const SheenBand& band_named(std::string_view scheme, std::string_view name) {
  std::vector<std::string_view> schemes, names;
  for (const SheenBand& band : sheen_band_table) {
    if (schemes.empty() || schemes.back() != band.scheme) schemes.push_back(band.scheme);
    if (band.scheme != scheme) continue;
    if (band.name == name) return band;
    names.push_back(band.name);
  }
  if (names.empty()) throw BadInput(detail::unknown_name_text("scheme", scheme, schemes));
  throw BadInput(detail::unknown_name_text("sheen of scheme " + std::string(scheme), name, names));
}

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
inline bool holds(const SheenBand& band, double gloss_gu,
                  std::optional<double> gloss_85_gu = std::nullopt) {
  constexpr auto where = "holds";
  detail::require_range(gloss_gu, 0.0, 200.0, "gloss_gu", "GU", where);
  if (gloss_85_gu) detail::require_range(*gloss_85_gu, 0.0, 200.0, "gloss_85_gu", "GU", where);
  if (!gloss_85_gu && !band.low_gu && !band.high_gu) return false;
  const auto within = [](double reading, std::optional<double> low, std::optional<double> high) {
    const double whole = std::round(reading);
    return whole >= low.value_or(whole) && whole <= high.value_or(whole);
  };
  return within(gloss_gu, band.low_gu, band.high_gu) &&
         (!gloss_85_gu || within(*gloss_85_gu, band.low_85_gu, band.high_85_gu));
}

/// The bands that a gloss lies in, of all schemes in the order of the table. Bands overlap, and a
/// scheme may have none: the trade's names end at 97 GU.
///
/// @param gloss_gu     at 60 degrees [GU], 0 to 200
/// @param gloss_85_gu  at 85 degrees [GU], 0 to 200; nothing where not known
/// @return             the bands
/// Throws:    OutOfRange where a gloss is outside its range
/// NaN:       rejected as OutOfRange
/// Source:    data/standards/sheen_bands.json
inline std::vector<SheenBand> bands_of(double gloss_gu,
                                       std::optional<double> gloss_85_gu = std::nullopt) {
  std::vector<SheenBand> bands;
  std::copy_if(std::begin(sheen_band_table), std::end(sheen_band_table), std::back_inserter(bands),
               [&](const SheenBand& band) { return holds(band, gloss_gu, gloss_85_gu); });
  return bands;
}

}  // namespace levigate
