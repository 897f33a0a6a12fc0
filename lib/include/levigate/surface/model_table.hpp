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
};

// clang-format off
inline constexpr ModelProfile model_table[] = {
    {"default", "",
     {20.0, 10.0, 30.0, {Basis::from_memory, "blunt grain, flank 10 to 30 degrees to the surface: Rabinowicz, Friction and Wear of Materials; the value within it is chosen here"}},  // flank_deg
     {0.5, 0.3, 0.7, {Basis::common_practice, "closed coat: 0.3 to 0.7 grains on an area of the size squared"}},  // packing
     {0.5, 0.41, 0.65, {Basis::published_table, "belts of P60, P120 and P180 give 0.65 on softwood and 0.41 on hardwood: Sydor et al., Appl. Sci. 11(6):2860 (2021), doi 10.3390/app11062860; the value between them is chosen here"}},  // size_exponent
    },
};

inline constexpr TableField<ModelProfile> model_columns[] = {
    {"flank_deg", &ModelProfile::flank_deg},
    {"packing", &ModelProfile::packing},
    {"size_exponent", &ModelProfile::size_exponent},
};
// clang-format on

}  // namespace levigate
