// Constants of the model. Generated from data/profiles/model.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct ModelProfile {
  std::string_view name;
  std::string_view note;
  Sourced flank_deg;
  Sourced packing;
  Sourced size_exponent;
  Sourced saturation_um;
};

// clang-format off
inline constexpr ModelProfile model_table[] = {
    {"default", "",
     {11.0, 8.0, 16.0, {Basis::computed, "fitted to printed Ra of grain up to 40 um: paper and paste on tool steel, US numbers on stainless steel (data/reference/roughness.json); the band covers the other tables of that range"}},  // flank_deg
     {0.5, 0.3, 0.7, {Basis::common_practice, "closed coat: 0.3 to 0.7 grains on an area of the size squared"}},  // packing
     {0.5, 0.41, 0.65, {Basis::published_table, "belts of P60, P120 and P180 give 0.65 on softwood and 0.41 on hardwood: Sydor et al., Appl. Sci. 11(6):2860 (2021), doi 10.3390/app11062860; the value between them is chosen here"}},  // size_exponent
     {100.0, 60.0, 150.0, {Basis::from_memory, "power law and saturation near 100 um: Avient 1960; Larsen-Badse 1968; the band around it is chosen here"}},  // saturation_um
    },
};

inline constexpr TableField<ModelProfile> model_columns[] = {
    {"flank_deg", &ModelProfile::flank_deg},
    {"packing", &ModelProfile::packing},
    {"size_exponent", &ModelProfile::size_exponent},
    {"saturation_um", &ModelProfile::saturation_um},
};
// clang-format on

}  // namespace levigate
