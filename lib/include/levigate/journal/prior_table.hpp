// What is believed before any journal. Generated from data/profiles/prior.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct PriorProfile {
  std::string_view name;
  std::string_view note;
  Sourced minutes_noise;
  Sourced scratch_noise;
  Sourced noise_weight;
  Sourced film_noise_um;
  Sourced usual_film_um;
  Sourced common_wear_share;
  Sourced coat_density_g_cm3;
  Sourced coat_density_share;
  Sourced weighing_error_g;
};

// clang-format off
inline constexpr PriorProfile prior_table[] = {
    {"default", "",
     {0.3, 0.2, 0.5, {Basis::assumption, "a step takes a third more or less from one day to the next"}},  // minutes_noise
     {0.2, 0.1, 0.3, {Basis::assumption, "a loupe reads to a fifth"}},  // scratch_noise
     {4.0, 2.0, 10.0, {Basis::assumption, "both noises are held loosely, as four observations"}},  // noise_weight
     {5.0, 2.0, 10.0, {Basis::assumption, "by how much the mean film of the same coats varies from job to job: a tenth of a usual round, by hand"}},  // film_noise_um
     {60.0, 40.0, 100.0, {Basis::assumption, "two coats of 30 um, about what a round of a clear coat leaves"}},  // usual_film_um
     {0.5, 0.0, 1.0, {Basis::assumption, "a cutting efficiency belongs to coating and abrasive together; half of what is open is laid to either"}},  // common_wear_share
     {1.2, 1.1, 1.3, {Basis::from_memory, "dry clear coats weigh 1.1 to 1.3 g/cm3"}},  // coat_density_g_cm3
     {0.06, 0.03, 0.1, {Basis::from_memory, "share by which the density of a dry clear coat may be off"}},  // coat_density_share
     {0.01, 0.005, 0.02, {Basis::from_memory, "a kitchen balance of 0.01 g reads to its last digit"}},  // weighing_error_g
    },
};

inline constexpr TableField<PriorProfile> prior_columns[] = {
    {"minutes_noise", &PriorProfile::minutes_noise},
    {"scratch_noise", &PriorProfile::scratch_noise},
    {"noise_weight", &PriorProfile::noise_weight},
    {"film_noise_um", &PriorProfile::film_noise_um},
    {"usual_film_um", &PriorProfile::usual_film_um},
    {"common_wear_share", &PriorProfile::common_wear_share},
    {"coat_density_g_cm3", &PriorProfile::coat_density_g_cm3},
    {"coat_density_share", &PriorProfile::coat_density_share},
    {"weighing_error_g", &PriorProfile::weighing_error_g},
};
// clang-format on

}  // namespace levigate
