// Film on edges. Generated from data/profiles/edges.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct EdgeProfile {
  std::string_view name;
  std::string_view note;
  Sourced sharp_share;
  Sourced eased_share;
  Sourced eased_radius_mm;
  Sourced bearing_share;
  Sourced strip_mm;
};

// clang-format off
inline constexpr EdgeProfile edge_table[] = {
    {"default", "films thin at an edge by surface tension; a fat edge 1 to 10 mm in also occurs",
     {0.5, 0.3, 0.7, {Basis::common_practice, "plan with half the flat film on a sharp edge"}},  // sharp_share
     {0.8, 0.7, 0.9, {Basis::common_practice, "plan with 80 % of the flat film on a 2 mm radius"}},  // eased_share
     {2.0, 1.5, 3.0, {Basis::common_practice, "plan with 80 % of the flat film on a 2 mm radius"}},  // eased_radius_mm
     {0.1, 0.03, 0.3, {Basis::assumption, "share of a soft pad's area that bears where it is drawn along an edge; chosen here"}},  // bearing_share
     {10.0, 5.0, 20.0, {Basis::assumption, "width of the strip that counts as the edge, where nobody told its area; it moves minutes, not depths; chosen here"}},  // strip_mm
    },
};

inline constexpr TableField<EdgeProfile> edge_columns[] = {
    {"sharp_share", &EdgeProfile::sharp_share},
    {"eased_share", &EdgeProfile::eased_share},
    {"eased_radius_mm", &EdgeProfile::eased_radius_mm},
    {"bearing_share", &EdgeProfile::bearing_share},
    {"strip_mm", &EdgeProfile::strip_mm},
};
// clang-format on

}  // namespace levigate
