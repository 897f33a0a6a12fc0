// Compounds by name. Generated from data/profiles/compounds.json by data/generate.py: do not edit.
#pragma once

#include <span>
#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct CompoundProfile {
  std::string_view name;
  std::string_view note;
  std::span<const std::string_view> also;  ///< other names that people call it by
  Sourced size_um;
  Sourced worn_um;
  Sourced coarsest_paper_um;
  Sourced wear_share;
  Sourced tip_spread;
  Sourced modulus_mpa;
  Sourced life_m;
  Sourced clean_every_m;
  Sourced fade_m;
};

// clang-format off
inline constexpr std::string_view compound_also_0[] = {"cutting compound", "coarse compound", "rubbing compound", "heavy cut"};
inline constexpr std::string_view compound_also_1[] = {"medium compound", "medium cut"};
inline constexpr std::string_view compound_also_2[] = {"fine compound", "polish", "finishing polish", "fine cut"};
inline constexpr std::string_view compound_also_3[] = {"ultra-fine compound", "finest compound", "swirl remover"};

inline constexpr CompoundProfile compound_table[] = {
    {"cutting", "bar or liquid",
     compound_also_0,  // also
     {8.0, 5.0, 12.0, {Basis::common_practice, "generic sizes of the trade: cutting 5 to 12, medium 3 to 5, fine 1 to 3, ultra-fine at most 1 um; the value within is chosen here"}},  // size_um
     {4.0, 2.0, 12.0, {Basis::assumption, "many compounds break down in use; half of the size is chosen here"}},  // worn_um
     {15.3, 10.3, 18.3, {Basis::common_practice, "P1500 to P2000 come before a cutting compound; P1200 is taken as the coarsest it copes with"}},  // coarsest_paper_um
     {0.1, 0.03, 0.3, {Basis::from_memory, "loose grain wears a tenth of what held grain does, 0.0005 to 0.005 against 0.005 to 0.05: Hutchings, Tribology (1992), from memory; the value within is chosen here"}},  // wear_share
     {0.15, 0.09, 0.24, {Basis::assumption, "as waterproof paper; grain in wax on cloth, no measurement at hand"}},  // tip_spread
     {1.0, 0.3, 3.0, {Basis::assumption, "grain held by wax and thread, softer than a foam-backed sheet; chosen so that a fine compound ends above 85 GU at 60 degrees, as practice has it"}},  // modulus_mpa
     {20000.0, 5000.0, 60000.0, {Basis::assumption, "rim travel after which the face is raked clean and charged from the start"}},  // life_m
     {400.0, 200.0, 800.0, {Basis::assumption, "charged anew about every half minute at the rim speed of a lacquer wheel"}},  // clean_every_m
     {800.0, 250.0, 2400.0, {Basis::assumption, "rim travel over which the grain breaks down to its worn size; no measurement at hand"}},  // fade_m
    },
    {"medium", "bar or liquid",
     compound_also_1,  // also
     {4.0, 3.0, 5.0, {Basis::common_practice, "generic sizes of the trade: cutting 5 to 12, medium 3 to 5, fine 1 to 3, ultra-fine at most 1 um; the value within is chosen here"}},  // size_um
     {2.0, 1.0, 5.0, {Basis::assumption, "many compounds break down in use; half of the size is chosen here"}},  // worn_um
     {10.3, 8.4, 12.6, {Basis::common_practice, "P2000 by hand, as the sizes step down from the cutting compound; no source"}},  // coarsest_paper_um
     {0.1, 0.03, 0.3, {Basis::from_memory, "loose grain wears a tenth of what held grain does, 0.0005 to 0.005 against 0.005 to 0.05: Hutchings, Tribology (1992), from memory; the value within is chosen here"}},  // wear_share
     {0.15, 0.09, 0.24, {Basis::assumption, "as waterproof paper; grain in wax on cloth, no measurement at hand"}},  // tip_spread
     {1.0, 0.3, 3.0, {Basis::assumption, "grain held by wax and thread, softer than a foam-backed sheet; chosen so that a fine compound ends above 85 GU at 60 degrees, as practice has it"}},  // modulus_mpa
     {20000.0, 5000.0, 60000.0, {Basis::assumption, "rim travel after which the face is raked clean and charged from the start"}},  // life_m
     {400.0, 200.0, 800.0, {Basis::assumption, "charged anew about every half minute at the rim speed of a lacquer wheel"}},  // clean_every_m
     {800.0, 250.0, 2400.0, {Basis::assumption, "rim travel over which the grain breaks down to its worn size; no measurement at hand"}},  // fade_m
    },
    {"fine", "bar or liquid",
     compound_also_2,  // also
     {2.0, 1.0, 3.0, {Basis::common_practice, "generic sizes of the trade: cutting 5 to 12, medium 3 to 5, fine 1 to 3, ultra-fine at most 1 um; the value within is chosen here"}},  // size_um
     {1.0, 0.5, 3.0, {Basis::assumption, "many compounds break down in use; half of the size is chosen here"}},  // worn_um
     {7.2, 4.7, 8.4, {Basis::common_practice, "P3000 foam-backed comes before a polish; size extrapolated; no source"}},  // coarsest_paper_um
     {0.1, 0.03, 0.3, {Basis::from_memory, "loose grain wears a tenth of what held grain does, 0.0005 to 0.005 against 0.005 to 0.05: Hutchings, Tribology (1992), from memory; the value within is chosen here"}},  // wear_share
     {0.15, 0.09, 0.24, {Basis::assumption, "as waterproof paper; grain in wax on cloth, no measurement at hand"}},  // tip_spread
     {1.0, 0.3, 3.0, {Basis::assumption, "grain held by wax and thread, softer than a foam-backed sheet; chosen so that a fine compound ends above 85 GU at 60 degrees, as practice has it"}},  // modulus_mpa
     {20000.0, 5000.0, 60000.0, {Basis::assumption, "rim travel after which the face is raked clean and charged from the start"}},  // life_m
     {400.0, 200.0, 800.0, {Basis::assumption, "charged anew about every half minute at the rim speed of a lacquer wheel"}},  // clean_every_m
     {800.0, 250.0, 2400.0, {Basis::assumption, "rim travel over which the grain breaks down to its worn size; no measurement at hand"}},  // fade_m
    },
    {"ultra-fine", "liquid",
     compound_also_3,  // also
     {0.8, 0.3, 1.0, {Basis::common_practice, "generic sizes of the trade: cutting 5 to 12, medium 3 to 5, fine 1 to 3, ultra-fine at most 1 um; the value within is chosen here"}},  // size_um
     {0.5, 0.2, 1.0, {Basis::assumption, "many compounds break down in use; half of the size is chosen here"}},  // worn_um
     {2.0, 1.0, 3.0, {Basis::assumption, "takes the haze of a fine or medium compound, not scratches of paper; chosen here"}},  // coarsest_paper_um
     {0.1, 0.03, 0.3, {Basis::from_memory, "loose grain wears a tenth of what held grain does, 0.0005 to 0.005 against 0.005 to 0.05: Hutchings, Tribology (1992), from memory; the value within is chosen here"}},  // wear_share
     {0.15, 0.09, 0.24, {Basis::assumption, "as waterproof paper; grain in wax on cloth, no measurement at hand"}},  // tip_spread
     {1.0, 0.3, 3.0, {Basis::assumption, "grain held by wax and thread, softer than a foam-backed sheet; chosen so that a fine compound ends above 85 GU at 60 degrees, as practice has it"}},  // modulus_mpa
     {20000.0, 5000.0, 60000.0, {Basis::assumption, "rim travel after which the face is raked clean and charged from the start"}},  // life_m
     {400.0, 200.0, 800.0, {Basis::assumption, "charged anew about every half minute at the rim speed of a lacquer wheel"}},  // clean_every_m
     {800.0, 250.0, 2400.0, {Basis::assumption, "rim travel over which the grain breaks down to its worn size; no measurement at hand"}},  // fade_m
    },
};

inline constexpr TableField<CompoundProfile> compound_columns[] = {
    {"size_um", &CompoundProfile::size_um},
    {"worn_um", &CompoundProfile::worn_um},
    {"coarsest_paper_um", &CompoundProfile::coarsest_paper_um},
    {"wear_share", &CompoundProfile::wear_share},
    {"tip_spread", &CompoundProfile::tip_spread},
    {"modulus_mpa", &CompoundProfile::modulus_mpa},
    {"life_m", &CompoundProfile::life_m},
    {"clean_every_m", &CompoundProfile::clean_every_m},
    {"fade_m", &CompoundProfile::fade_m},
};
// clang-format on

}  // namespace levigate
