// How well orange peel is told. Generated from data/profiles/peel.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct PeelProfile {
  std::string_view name;
  std::string_view note;
  Sourced factor;
};

// clang-format off
inline constexpr PeelProfile peel_table[] = {
    {"by eye", "judged from its look, without anything to compare",
     {1.4, 1.2, 2.0, {Basis::assumption, "two in three judge the height within this factor either way; chosen here"}},  // factor
    },
    {"usual", "nobody told it: that of a usual coat is taken",
     {1.7, 1.4, 2.2, {Basis::assumption, "light and heavy peel stand a factor of 2 from a usual one, and nine in ten coats lie within a factor of 2.4 of it; chosen here"}},  // factor
    },
    {"comparison plate", "compared with plates of known height",
     {1.2, 1.1, 1.4, {Basis::assumption, "plates stand about a factor of 1.5 apart, and one picks the nearest; chosen here"}},  // factor
    },
    {"profile", "read from a profile of the surface, as of a dial gauge drawn over it",
     {1.05, 1.02, 1.15, {Basis::assumption, "the waves differ from place to place by more than the gauge errs; chosen here"}},  // factor
    },
};

inline constexpr TableField<PeelProfile> peel_columns[] = {
    {"factor", &PeelProfile::factor},
};
// clang-format on

}  // namespace levigate
