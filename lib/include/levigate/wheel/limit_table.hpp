// Speed and heat that a surface stands that is no coating, by name. Generated from data/profiles/heat.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct LimitProfile {
  std::string_view name;
  std::string_view note;
  Sourced speed_m_s;
  Sourced effusivity;
  Sourced rise_k;
};

// clang-format off
inline constexpr LimitProfile limit_table[] = {
    {"acrylic sheet edges", "edges, with felt; not for large flat faces",
     {19.0, 15.23, 22.87, {Basis::common_practice, "a trade page: 3000 to 4500 ft/min with felt on the edges of acrylic sheet, not on large flat areas: heat"}},  // speed_m_s
     {570.0, 540.0, 600.0, {Basis::from_memory, "PMMA: conductivity 0.19 W/(m K), density 1190 kg/m3, heat capacity 1.4 to 1.5 kJ/(kg K), from memory"}},  // effusivity
     {45.0, 25.0, 65.0, {Basis::assumption, "softens from about 90 to 105 C when cured, order of magnitude from memory; the rise above a room of 20 C that stays below it is chosen here"}},  // rise_k
    },
    {"metal", "bare metal, held in the hand",
     {35.56, 30.47, 38.11, {Basis::published_table, "7000 ft/min for a bright and 6000 for a satin finish on stainless steel: Metal Finishing Guidebook 2011-13, pp. 28-33; 7500 as an average for metal: a trade page"}},  // speed_m_s
     {8000.0, 7000.0, 37000.0, {Basis::from_memory, "stainless steel about 8000, brass 20 000, copper 37 000, from memory; the least is used"}},  // effusivity
     {30.0, 20.0, 40.0, {Basis::assumption, "a part at about 50 C is too hot to hold: chosen here"}},  // rise_k
    },
};

inline constexpr TableField<LimitProfile> limit_columns[] = {
    {"speed_m_s", &LimitProfile::speed_m_s},
    {"effusivity", &LimitProfile::effusivity},
    {"rise_k", &LimitProfile::rise_k},
};
// clang-format on

}  // namespace levigate
