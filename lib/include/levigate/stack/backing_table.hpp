// Backings by name. Generated from data/profiles/backings.json by data/generate.py: do not edit.
#pragma once

#include <span>
#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct BackingProfile {
  std::string_view name;
  std::string_view note;
  std::span<const std::string_view> also;  ///< other names that people call it by
  Sourced tip_spread;
  Sourced modulus_mpa;
  Sourced life_m;
  Sourced clean_every_m;
  Sourced fade_m;
  Sourced floor;
};

// clang-format off
inline constexpr std::string_view backing_also_0[] = {"paper", "wet and dry", "wet or dry", "wet/dry", "wet/dry paper", "wet and dry paper", "waterproof paper", "wet sanding paper"};
inline constexpr std::string_view backing_also_1[] = {"film-backed", "polyester film", "lapping film", "plastic film"};
inline constexpr std::string_view backing_also_2[] = {"cloth-backed", "cotton cloth", "linen"};
inline constexpr std::string_view backing_also_3[] = {"foam", "foam disc", "foam sheet", "foam pad", "foam-backed pad", "pad"};

inline constexpr BackingProfile backing_table[] = {
    {"latex paper", "waterproof paper for wet sanding, latex-saturated",
     backing_also_0,  // also
     {0.15, 0.09, 0.24, {Basis::assumption, "Gaussian heights as in Xi and Zhou, Int. J. Mach. Tools Manuf. 45:365-372 (2005); the spread itself is chosen here"}},  // tip_spread
     {20.0, 5.0, 80.0, {Basis::assumption, "chosen for the backing and its bond under a single grain; no measurement at hand"}},  // modulus_mpa
     {200.0, 70.0, 600.0, {Basis::common_practice, "hand sheets last 5 to 15 min wet on lacquer, 1 to 5 min dry"}},  // life_m
     {10.0, 5.0, 20.0, {Basis::common_practice, "rinsed or wiped about every half minute of strokes"}},  // clean_every_m
     {30.0, 10.0, 90.0, {Basis::assumption, "decay to a floor that is not zero as on belts: Ockajova et al., BioResources 11(2):5242-5254 (2016); the length is chosen here"}},  // fade_m
     {0.4, 0.2, 0.64, {Basis::assumption, "decay to a floor that is not zero as on belts: Ockajova et al., BioResources 11(2):5242-5254 (2016); the floor is chosen here"}},  // floor
    },
    {"film", "polyester film, grain laid flat",
     backing_also_1,  // also
     {0.08, 0.048, 0.128, {Basis::assumption, "Gaussian heights as in Xi and Zhou, Int. J. Mach. Tools Manuf. 45:365-372 (2005); the spread itself is chosen here"}},  // tip_spread
     {60.0, 15.0, 240.0, {Basis::assumption, "chosen for the backing and its bond under a single grain; no measurement at hand"}},  // modulus_mpa
     {300.0, 100.0, 900.0, {Basis::common_practice, "hand sheets last 5 to 15 min wet on lacquer, 1 to 5 min dry"}},  // life_m
     {10.0, 5.0, 20.0, {Basis::common_practice, "rinsed or wiped about every half minute of strokes"}},  // clean_every_m
     {30.0, 10.0, 90.0, {Basis::assumption, "decay to a floor that is not zero as on belts: Ockajova et al., BioResources 11(2):5242-5254 (2016); the length is chosen here"}},  // fade_m
     {0.4, 0.2, 0.64, {Basis::assumption, "decay to a floor that is not zero as on belts: Ockajova et al., BioResources 11(2):5242-5254 (2016); the floor is chosen here"}},  // floor
    },
    {"cloth", "cotton or polyester cloth",
     backing_also_2,  // also
     {0.2, 0.12, 0.32, {Basis::assumption, "Gaussian heights as in Xi and Zhou, Int. J. Mach. Tools Manuf. 45:365-372 (2005); the spread itself is chosen here"}},  // tip_spread
     {30.0, 7.5, 120.0, {Basis::assumption, "chosen for the backing and its bond under a single grain; no measurement at hand"}},  // modulus_mpa
     {600.0, 200.0, 1800.0, {Basis::common_practice, "hand sheets last 5 to 15 min wet on lacquer, 1 to 5 min dry"}},  // life_m
     {10.0, 5.0, 20.0, {Basis::common_practice, "rinsed or wiped about every half minute of strokes"}},  // clean_every_m
     {30.0, 10.0, 90.0, {Basis::assumption, "decay to a floor that is not zero as on belts: Ockajova et al., BioResources 11(2):5242-5254 (2016); the length is chosen here"}},  // fade_m
     {0.4, 0.2, 0.64, {Basis::assumption, "decay to a floor that is not zero as on belts: Ockajova et al., BioResources 11(2):5242-5254 (2016); the floor is chosen here"}},  // floor
    },
    {"foam-backed", "film or fabric with grain on a foam layer",
     backing_also_3,  // also
     {0.12, 0.072, 0.192, {Basis::assumption, "Gaussian heights as in Xi and Zhou, Int. J. Mach. Tools Manuf. 45:365-372 (2005); the spread itself is chosen here"}},  // tip_spread
     {4.0, 1.0, 16.0, {Basis::assumption, "chosen for the backing and its bond under a single grain; no measurement at hand"}},  // modulus_mpa
     {400.0, 130.0, 1200.0, {Basis::common_practice, "hand sheets last 5 to 15 min wet on lacquer, 1 to 5 min dry"}},  // life_m
     {10.0, 5.0, 20.0, {Basis::common_practice, "rinsed or wiped about every half minute of strokes"}},  // clean_every_m
     {40.0, 13.0, 120.0, {Basis::assumption, "decay to a floor that is not zero as on belts: Ockajova et al., BioResources 11(2):5242-5254 (2016); the length is chosen here"}},  // fade_m
     {0.5, 0.25, 0.8, {Basis::assumption, "decay to a floor that is not zero as on belts: Ockajova et al., BioResources 11(2):5242-5254 (2016); the floor is chosen here"}},  // floor
    },
};

inline constexpr TableField<BackingProfile> backing_columns[] = {
    {"tip_spread", &BackingProfile::tip_spread},
    {"modulus_mpa", &BackingProfile::modulus_mpa},
    {"life_m", &BackingProfile::life_m},
    {"clean_every_m", &BackingProfile::clean_every_m},
    {"fade_m", &BackingProfile::fade_m},
    {"floor", &BackingProfile::floor},
};
// clang-format on

}  // namespace levigate
