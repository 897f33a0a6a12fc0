// Spray guns by name. Generated from data/profiles/guns.json by data/generate.py: do not edit.
#pragma once

#include <span>
#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct GunProfile {
  std::string_view name;
  std::string_view note;
  std::span<const std::string_view> also;  ///< other names that people call it by
  Sourced transfer_efficiency;
  Sourced loss_share;
  Sourced film_cv;
};

// clang-format off
inline constexpr std::string_view gun_also_0[] = {"HVLP"};
inline constexpr std::string_view gun_also_1[] = {"high pressure", "conventional gun"};
inline constexpr std::string_view gun_also_2[] = {"air-assisted"};

inline constexpr GunProfile gun_table[] = {
    {"high volume low pressure", "",
     gun_also_0,  // also
     {0.6, 0.4, 0.75, {Basis::from_memory, "65 % is what rules ask of such a gun on a test panel, from memory; narrow work gets less"}},  // transfer_efficiency
     {0.1, 0.05, 0.25, {Basis::assumption, "what stays in the cup, the hose and the strainer, of what is mixed; chosen here"}},  // loss_share
     {0.08, 0.04, 0.15, {Basis::assumption, "spread from spot to spot over the mean, of a film sprayed by hand in crossed passes; chosen here"}},  // film_cv
    },
    {"conventional", "air at full pressure",
     gun_also_1,  // also
     {0.35, 0.2, 0.5, {Basis::from_memory, "a third of the paint reaches the work, order of magnitude from memory"}},  // transfer_efficiency
     {0.1, 0.05, 0.25, {Basis::assumption, "what stays in the cup, the hose and the strainer, of what is mixed; chosen here"}},  // loss_share
     {0.08, 0.04, 0.15, {Basis::assumption, "spread from spot to spot over the mean, of a film sprayed by hand in crossed passes; chosen here"}},  // film_cv
    },
    {"air-assisted airless", "",
     gun_also_2,  // also
     {0.6, 0.4, 0.75, {Basis::from_memory, "order of magnitude from memory"}},  // transfer_efficiency
     {0.15, 0.05, 0.3, {Basis::assumption, "pump and hose hold more than a cup; chosen here"}},  // loss_share
     {0.08, 0.04, 0.15, {Basis::assumption, "spread from spot to spot over the mean, of a film sprayed by hand in crossed passes; chosen here"}},  // film_cv
    },
};

inline constexpr TableField<GunProfile> gun_columns[] = {
    {"transfer_efficiency", &GunProfile::transfer_efficiency},
    {"loss_share", &GunProfile::loss_share},
    {"film_cv", &GunProfile::film_cv},
};
// clang-format on

}  // namespace levigate
