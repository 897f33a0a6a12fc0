// Orange peel by its look. Generated from data/profiles/peel_heights.json by data/generate.py: do not edit.
#pragma once

#include <span>
#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct PeelHeightProfile {
  std::string_view name;
  std::string_view note;
  std::span<const std::string_view> also;  ///< other names that people call it by
  Sourced peel_um;
  Sourced peel_wavelength_mm;
};

// clang-format off
inline constexpr std::string_view peel_height_also_0[] = {"light", "fine peel"};
inline constexpr std::string_view peel_height_also_1[] = {"medium", "usual peel", "normal peel"};
inline constexpr std::string_view peel_height_also_2[] = {"heavy", "coarse peel"};

inline constexpr PeelHeightProfile peel_height_table[] = {
    {"light peel", "the lamp's edge wobbles; seen only at a low angle",
     peel_height_also_0,  // also
     {10.0, 5.0, 15.0, {Basis::assumption, "sprayed lacquer has waves of 1 to 10 um amplitude, common practice without a source, so 2 to 20 um peak to valley; the words stand a factor of 2 apart on the deep side, as peel that was taken for too flat costs film; chosen here"}},  // peel_um
     {3.0, 0.8, 8.0, {Basis::assumption, "between the short and the long waves of instruments, 0.3 to 1.2 and 1.2 to 12 mm, from memory; chosen here"}},  // peel_wavelength_mm
    },
    {"medium peel", "seen at arm's length; a usual coat from the gun",
     peel_height_also_1,  // also
     {20.0, 14.0, 28.0, {Basis::assumption, "sprayed lacquer has waves of 1 to 10 um amplitude, common practice without a source, so 2 to 20 um peak to valley; the words stand a factor of 2 apart on the deep side, as peel that was taken for too flat costs film; chosen here"}},  // peel_um
     {3.0, 0.8, 8.0, {Basis::assumption, "between the short and the long waves of instruments, 0.3 to 1.2 and 1.2 to 12 mm, from memory; chosen here"}},  // peel_wavelength_mm
    },
    {"heavy peel", "felt with a finger nail; the lamp's edge breaks up",
     peel_height_also_2,  // also
     {40.0, 28.0, 60.0, {Basis::assumption, "sprayed lacquer has waves of 1 to 10 um amplitude, common practice without a source, so 2 to 20 um peak to valley; the words stand a factor of 2 apart on the deep side, as peel that was taken for too flat costs film; chosen here"}},  // peel_um
     {3.0, 0.8, 8.0, {Basis::assumption, "between the short and the long waves of instruments, 0.3 to 1.2 and 1.2 to 12 mm, from memory; chosen here"}},  // peel_wavelength_mm
    },
};

inline constexpr TableField<PeelHeightProfile> peel_height_columns[] = {
    {"peel_um", &PeelHeightProfile::peel_um},
    {"peel_wavelength_mm", &PeelHeightProfile::peel_wavelength_mm},
};
// clang-format on

}  // namespace levigate
