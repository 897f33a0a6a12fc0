// Names of sheen by gloss as printed. Generated from data/standards/sheen_bands.json by data/generate.py: do not edit.
#pragma once

#include <optional>
#include <string_view>

#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// A name of sheen and the gloss it stands for, limits included; a limit that is not printed is absent.
struct SheenBand {
  std::string_view scheme;
  std::string_view name;
  std::optional<double> low_gu;      ///< at 60 degrees [GU]
  std::optional<double> high_gu;     ///< at 60 degrees [GU]
  std::optional<double> low_85_gu;   ///< at 85 degrees [GU]
  std::optional<double> high_85_gu;  ///< at 85 degrees [GU]
  Source source;
};

// clang-format off
inline constexpr SheenBand sheen_band_table[] = {
    {"institute", "matte / flat", 0, 5, 0, 10, {Basis::common_practice, "gloss levels of a painters' institute"}},
    {"institute", "velvet", 0, 10, 10, 35, {Basis::common_practice, "gloss levels of a painters' institute"}},
    {"institute", "eggshell", 10, 25, 10, 35, {Basis::common_practice, "gloss levels of a painters' institute"}},
    {"institute", "satin", 20, 35, 35, {}, {Basis::common_practice, "gloss levels of a painters' institute"}},
    {"institute", "semi-gloss", 35, 70, {}, {}, {Basis::common_practice, "gloss levels of a painters' institute"}},
    {"institute", "gloss", 70, 85, {}, {}, {Basis::common_practice, "gloss levels of a painters' institute"}},
    {"institute", "high gloss", 85, {}, {}, {}, {Basis::common_practice, "gloss levels of a painters' institute"}},
    {"trade", "matt", 1, 8, {}, {}, {Basis::common_practice, "a trade page on sheen"}},
    {"trade", "semi-matt", 9, 40, {}, {}, {Basis::common_practice, "a trade page on sheen"}},
    {"trade", "semi-gloss", 41, 70, {}, {}, {Basis::common_practice, "a trade page on sheen"}},
    {"trade", "gloss", 71, 90, {}, {}, {Basis::common_practice, "a trade page on sheen"}},
    {"trade", "high gloss", 91, 97, {}, {}, {Basis::common_practice, "a trade page on sheen"}},
    {"EN 13300", "dead matt", {}, {}, 0, 5, {Basis::from_memory, "EN 13300, from memory"}},
    {"EN 13300", "matt", {}, {}, 5, 10, {Basis::from_memory, "EN 13300, from memory"}},
    {"EN 13300", "mid sheen", 0, 60, 10, {}, {Basis::from_memory, "EN 13300, from memory"}},
    {"EN 13300", "gloss", 60, {}, {}, {}, {Basis::from_memory, "EN 13300, from memory"}},
};
// clang-format on

}  // namespace levigate
