// What two hands hold to a wheel. Generated from data/profiles/handling.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct HandlingProfile {
  std::string_view name;
  std::string_view note;
  Sourced most_kg;
  Sourced unweighed_cm2;
};

// clang-format off
inline constexpr HandlingProfile handling_table[] = {
    {"two hands", "what two hands hold to a wheel on a pedestal",
     {5.0, 3.0, 8.0, {Basis::assumption, "heaviest piece that two hands hold to a rim that pulls at it; no measurement at hand"}},  // most_kg
     {2000.0, 1000.0, 4000.0, {Basis::assumption, "area of one zone from which a piece whose weight is not told may be too heavy: about 40 cm x 50 cm"}},  // unweighed_cm2
    },
};

inline constexpr TableField<HandlingProfile> handling_columns[] = {
    {"most_kg", &HandlingProfile::most_kg},
    {"unweighed_cm2", &HandlingProfile::unweighed_cm2},
};
// clang-format on

}  // namespace levigate
