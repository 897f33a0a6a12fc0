// The work behind surface/sheen_bands.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/surface/sheen_bands.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/sheen_band_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK const SheenBand& band_named(std::string_view scheme, std::string_view name) {
  std::vector<std::string_view> schemes, names;
  for (const SheenBand& band : sheen_band_table) {
    if (schemes.empty() || schemes.back() != band.scheme) schemes.push_back(band.scheme);
    if (band.scheme != scheme) continue;
    if (band.name == name) return band;
    names.push_back(band.name);
  }
  if (names.empty()) {
    throw BadInput::of("scheme", detail::unknown_name_text("scheme", scheme, schemes));
  }
  throw BadInput(detail::unknown_name_text("sheen of scheme " + std::string(scheme), name, names));
}

LEVIGATE_WORK bool holds(const SheenBand& band, double gloss_gu,
                         std::optional<double> gloss_85_gu) {
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

LEVIGATE_WORK std::vector<SheenBand> bands_of(double gloss_gu, std::optional<double> gloss_85_gu) {
  std::vector<SheenBand> bands;
  std::copy_if(std::begin(sheen_band_table), std::end(sheen_band_table), std::back_inserter(bands),
               [&](const SheenBand& band) { return holds(band, gloss_gu, gloss_85_gu); });
  return bands;
}

}  // namespace levigate
