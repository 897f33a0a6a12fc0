// Coatings and solids by name. Generated from data/profiles/coatings by data/generate.py: do not edit.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "levigate/choices.hpp"
#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

/// Whether there is a film that can be cut through.
enum class CoatingKind {
  coat,   ///< a film on something else: it has a budget
  solid,  ///< bare wood, metal, stone, acrylic: no film
};

constexpr std::string_view to_string(CoatingKind kind) noexcept {
  switch (kind) {
    case CoatingKind::coat: return "coat";
    case CoatingKind::solid: return "solid";
  }
  return "";
}

template <>
inline constexpr auto choices<CoatingKind> = std::to_array({CoatingKind::coat, CoatingKind::solid});

/// A coating as its file has it. What is not known of it is absent.
struct CoatingProfile {
  std::string_view name;
  std::string_view note;
  std::span<const std::string_view> also;  ///< other names that people call it by
  CoatingKind kind;
  bool two_part;
  std::optional<SourcedFact> redissolves;  ///< a fresh coat melts the one below
  Sourced hardness_mpa;
  Sourced cutting_efficiency;
  Sourced refractive_index;
  std::optional<Sourced> hard_cure_h;
  std::optional<Sourced> shrink;
  std::optional<Sourced> comes_back;
  std::optional<Sourced> rest_h;
  std::optional<Sourced> speed_m_s;
  std::optional<Sourced> effusivity;
  std::optional<Sourced> rise_k;
  std::optional<Sourced> volume_solids;
  std::optional<Sourced> dry_um_per_coat;
};

// clang-format off
inline constexpr std::string_view coating_also_0[] = {"2K urethane", "2K", "2K clear", "2K polyurethane", "two-pack urethane", "2-part urethane", "two-part polyurethane", "polyurethane two-part", "acrylic urethane", "automotive clear", "isocyanate-cured urethane"};
inline constexpr std::string_view coating_also_1[] = {"nitro", "nitro lacquer", "nitrocellulose", "NC lacquer"};
inline constexpr std::string_view coating_also_2[] = {"1K acrylic", "acrylic spray lacquer"};
inline constexpr std::string_view coating_also_3[] = {"polyester clear", "two-part polyester"};
inline constexpr std::string_view coating_also_4[] = {"UV", "UV-cured acrylic", "UV clear", "UV resin"};
inline constexpr std::string_view coating_also_5[] = {"waterborne lacquer", "water-based", "water-based lacquer", "waterbased clear", "water clear"};
inline constexpr std::string_view coating_also_6[] = {"French polish", "spirit varnish of shellac"};
inline constexpr std::string_view coating_also_7[] = {"varnish", "spar varnish", "oil-based varnish", "alkyd varnish", "oil-based polyurethane"};
inline constexpr std::string_view coating_also_8[] = {"epoxy resin", "epoxy clear"};
inline constexpr std::string_view coating_also_9[] = {"PMMA", "cast acrylic", "acrylic glass"};

inline constexpr CoatingProfile coating_table[] = {
    {"two-part urethane", "two-part polyurethane or acrylic urethane, fully cured",
     coating_also_0,  // also
     CoatingKind::coat,
     true,
     SourcedFact{false, {Basis::common_practice, "two components cross-link as they cure; a fresh coat keys to scratches only"}},  // redissolves
     {150.0, 100.0, 250.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.3, 0.15, 0.6, {Basis::from_memory, "share of a groove that leaves as chips under sharp fixed grain, the rest is pushed aside, from memory: Hutchings, Tribology (1992); the value is chosen here, with a flank of 11 degrees it makes a wear coefficient of 0.037, inside the 0.005 to 0.05 of two-body abrasion"}},  // cutting_efficiency
     {1.52, 1.49, 1.55, {Basis::from_memory, "usual index of cross-linked acrylic urethane, a little above acrylic, from memory"}},  // refractive_index
     Sourced{168.0, 72.0, 336.0, {Basis::common_practice, "about a week at room temperature; the data sheet decides"}},  // hard_cure_h
     Sourced{0.02, 0.0, 0.05, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
     {},  // comes_back
     {},  // rest_h
     Sourced{14.0, 11.17, 17.03, {Basis::common_practice, "wheels of 12 to 16 in at 700 to 800 rpm on instrument lacquer, computed from these; no source"}},  // speed_m_s
     Sourced{450.0, 350.0, 650.0, {Basis::assumption, "a coat of 80 to 200 um on wood warms under a lacquer wheel like a body of 460 to 560 by tests/property/wheel_heat_simulation_test.cpp, with binder of 573 and wood of 355 from memory; the safe side is chosen here"}},  // effusivity
     Sourced{40.0, 25.0, 60.0, {Basis::assumption, "softens from about 60 to 80 C when cured, order of magnitude from memory; the rise above a room of 20 C that stays below it is chosen here"}},  // rise_k
     Sourced{0.45, 0.35, 0.6, {Basis::from_memory, "usual share of the can's volume that stays, from memory; the data sheet decides"}},  // volume_solids
     Sourced{40.0, 25.0, 60.0, {Basis::common_practice, "usual dry film of a sprayed coat, no source; the data sheet decides"}},  // dry_um_per_coat
    },
    {"nitrocellulose lacquer", "",
     coating_also_1,  // also
     CoatingKind::coat,
     false,
     SourcedFact{true, {Basis::common_practice, "dries by loss of solvent alone; a fresh coat melts the one below"}},  // redissolves
     {120.0, 80.0, 180.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.3, 0.15, 0.6, {Basis::from_memory, "share of a groove that leaves as chips under sharp fixed grain, the rest is pushed aside, from memory: Hutchings, Tribology (1992); the value is chosen here, with a flank of 11 degrees it makes a wear coefficient of 0.037, inside the 0.005 to 0.05 of two-body abrasion"}},  // cutting_efficiency
     {1.51, 1.49, 1.53, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
     Sourced{504.0, 336.0, 1008.0, {Basis::common_practice, "two to six weeks, three is usual; the data sheet decides"}},  // hard_cure_h
     Sourced{0.1, 0.03, 0.2, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
     Sourced{0.05, 0.02, 0.15, {Basis::assumption, "share of a levelled depth that shows again as solvent leaves the film below; no measurement at hand"}},  // comes_back
     Sourced{72.0, 24.0, 336.0, {Basis::common_practice, "levelled lacquer rests for some days before it is polished, from one to two weeks where time allows; three are chosen here; no source"}},  // rest_h
     Sourced{14.0, 11.17, 17.03, {Basis::common_practice, "wheels of 12 to 16 in at 700 to 800 rpm on instrument lacquer, computed from these; no source"}},  // speed_m_s
     Sourced{450.0, 350.0, 650.0, {Basis::assumption, "a coat of 80 to 200 um on wood warms under a lacquer wheel like a body of 460 to 560 by tests/property/wheel_heat_simulation_test.cpp, with binder of 573 and wood of 355 from memory; the safe side is chosen here"}},  // effusivity
     Sourced{30.0, 15.0, 45.0, {Basis::assumption, "softens from about 50 to 70 C when cured, order of magnitude from memory; the rise above a room of 20 C that stays below it is chosen here"}},  // rise_k
     Sourced{0.2, 0.15, 0.25, {Basis::common_practice, "15 to 25 % by volume as sprayed, no source; the data sheet decides"}},  // volume_solids
     Sourced{17.0, 10.0, 25.0, {Basis::common_practice, "usual dry film of a sprayed coat, no source; the data sheet decides"}},  // dry_um_per_coat
    },
    {"acrylic lacquer", "",
     coating_also_2,  // also
     CoatingKind::coat,
     false,
     SourcedFact{true, {Basis::common_practice, "dries by loss of solvent alone; a fresh coat melts the one below"}},  // redissolves
     {120.0, 80.0, 180.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.3, 0.15, 0.6, {Basis::from_memory, "share of a groove that leaves as chips under sharp fixed grain, the rest is pushed aside, from memory: Hutchings, Tribology (1992); the value is chosen here, with a flank of 11 degrees it makes a wear coefficient of 0.037, inside the 0.005 to 0.05 of two-body abrasion"}},  // cutting_efficiency
     {1.49, 1.48, 1.51, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
     Sourced{504.0, 336.0, 1008.0, {Basis::common_practice, "two to six weeks, three is usual; the data sheet decides"}},  // hard_cure_h
     Sourced{0.08, 0.03, 0.2, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
     Sourced{0.05, 0.02, 0.15, {Basis::assumption, "share of a levelled depth that shows again as solvent leaves the film below; no measurement at hand"}},  // comes_back
     Sourced{72.0, 24.0, 336.0, {Basis::common_practice, "levelled lacquer rests for some days before it is polished, from one to two weeks where time allows; three are chosen here; no source"}},  // rest_h
     Sourced{14.0, 11.17, 17.03, {Basis::common_practice, "wheels of 12 to 16 in at 700 to 800 rpm on instrument lacquer, computed from these; no source"}},  // speed_m_s
     Sourced{450.0, 350.0, 650.0, {Basis::assumption, "a coat of 80 to 200 um on wood warms under a lacquer wheel like a body of 460 to 560 by tests/property/wheel_heat_simulation_test.cpp, with binder of 573 and wood of 355 from memory; the safe side is chosen here"}},  // effusivity
     Sourced{30.0, 15.0, 45.0, {Basis::assumption, "softens from about 50 to 70 C when cured, order of magnitude from memory; the rise above a room of 20 C that stays below it is chosen here"}},  // rise_k
     Sourced{0.2, 0.12, 0.3, {Basis::from_memory, "usual share of the can's volume that stays, from memory; the data sheet decides"}},  // volume_solids
     Sourced{17.0, 10.0, 25.0, {Basis::assumption, "taken for that of nitrocellulose lacquer; the data sheet decides"}},  // dry_um_per_coat
    },
    {"polyester", "two-part polyester for wood",
     coating_also_3,  // also
     CoatingKind::coat,
     false,
     SourcedFact{false, {Basis::common_practice, "cross-links as it cures; a fresh coat keys to scratches only"}},  // redissolves
     {200.0, 150.0, 250.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.3, 0.15, 0.6, {Basis::from_memory, "share of a groove that leaves as chips under sharp fixed grain, the rest is pushed aside, from memory: Hutchings, Tribology (1992); the value is chosen here, with a flank of 11 degrees it makes a wear coefficient of 0.037, inside the 0.005 to 0.05 of two-body abrasion"}},  // cutting_efficiency
     {1.55, 1.53, 1.57, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
     Sourced{72.0, 24.0, 168.0, {Basis::common_practice, "one to seven days; the data sheet decides"}},  // hard_cure_h
     Sourced{0.02, 0.0, 0.05, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
     {},  // comes_back
     {},  // rest_h
     Sourced{14.0, 11.17, 17.03, {Basis::common_practice, "wheels of 12 to 16 in at 700 to 800 rpm on instrument lacquer, computed from these; no source"}},  // speed_m_s
     Sourced{450.0, 350.0, 650.0, {Basis::assumption, "a coat of 80 to 200 um on wood warms under a lacquer wheel like a body of 460 to 560 by tests/property/wheel_heat_simulation_test.cpp, with binder of 573 and wood of 355 from memory; the safe side is chosen here"}},  // effusivity
     Sourced{45.0, 25.0, 65.0, {Basis::assumption, "softens from about 70 to 90 C when cured, order of magnitude from memory; the rise above a room of 20 C that stays below it is chosen here"}},  // rise_k
     Sourced{0.9, 0.6, 0.98, {Basis::from_memory, "usual share of the can's volume that stays, from memory; the data sheet decides"}},  // volume_solids
     Sourced{160.0, 100.0, 250.0, {Basis::common_practice, "usual dry film of a sprayed coat, no source; the data sheet decides"}},  // dry_um_per_coat
    },
    {"uv acrylic", "acrylate cured by ultraviolet light",
     coating_also_4,  // also
     CoatingKind::coat,
     false,
     SourcedFact{false, {Basis::common_practice, "cross-links under the lamp; a fresh coat keys to scratches only"}},  // redissolves
     {220.0, 150.0, 300.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.3, 0.15, 0.6, {Basis::from_memory, "share of a groove that leaves as chips under sharp fixed grain, the rest is pushed aside, from memory: Hutchings, Tribology (1992); the value is chosen here, with a flank of 11 degrees it makes a wear coefficient of 0.037, inside the 0.005 to 0.05 of two-body abrasion"}},  // cutting_efficiency
     {1.51, 1.49, 1.54, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
     Sourced{24.0, 1.0, 48.0, {Basis::common_practice, "hard under the lamp, left for a day; the data sheet decides"}},  // hard_cure_h
     Sourced{0.01, 0.0, 0.03, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
     {},  // comes_back
     {},  // rest_h
     Sourced{14.0, 11.17, 17.03, {Basis::common_practice, "wheels of 12 to 16 in at 700 to 800 rpm on instrument lacquer, computed from these; no source"}},  // speed_m_s
     Sourced{450.0, 350.0, 650.0, {Basis::assumption, "a coat of 80 to 200 um on wood warms under a lacquer wheel like a body of 460 to 560 by tests/property/wheel_heat_simulation_test.cpp, with binder of 573 and wood of 355 from memory; the safe side is chosen here"}},  // effusivity
     Sourced{45.0, 25.0, 65.0, {Basis::assumption, "softens from about 70 to 90 C when cured, order of magnitude from memory; the rise above a room of 20 C that stays below it is chosen here"}},  // rise_k
     Sourced{0.6, 0.3, 0.98, {Basis::assumption, "from thinned to solvent-free; chosen here, the data sheet decides"}},  // volume_solids
     Sourced{30.0, 15.0, 60.0, {Basis::assumption, "chosen here; the data sheet decides"}},  // dry_um_per_coat
    },
    {"water-borne", "water-borne acrylic or urethane dispersion for wood",
     coating_also_5,  // also
     CoatingKind::coat,
     false,
     SourcedFact{false, {Basis::common_practice, "its particles fuse as water leaves; a fresh coat fuses with a coat within the recoat window, and keys to scratches of an older one"}},  // redissolves
     {70.0, 40.0, 120.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.3, 0.15, 0.6, {Basis::from_memory, "share of a groove that leaves as chips under sharp fixed grain, the rest is pushed aside, from memory: Hutchings, Tribology (1992); the value is chosen here, with a flank of 11 degrees it makes a wear coefficient of 0.037, inside the 0.005 to 0.05 of two-body abrasion"}},  // cutting_efficiency
     {1.49, 1.47, 1.52, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
     Sourced{504.0, 168.0, 720.0, {Basis::common_practice, "one to four weeks; the data sheet decides"}},  // hard_cure_h
     Sourced{0.05, 0.02, 0.1, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
     {},  // comes_back
     {},  // rest_h
     Sourced{14.0, 11.17, 17.03, {Basis::common_practice, "wheels of 12 to 16 in at 700 to 800 rpm on instrument lacquer, computed from these; no source"}},  // speed_m_s
     Sourced{450.0, 350.0, 650.0, {Basis::assumption, "a coat of 80 to 200 um on wood warms under a lacquer wheel like a body of 460 to 560 by tests/property/wheel_heat_simulation_test.cpp, with binder of 573 and wood of 355 from memory; the safe side is chosen here"}},  // effusivity
     Sourced{25.0, 12.0, 40.0, {Basis::assumption, "softens from about 45 to 60 C when cured, order of magnitude from memory; the rise above a room of 20 C that stays below it is chosen here"}},  // rise_k
     Sourced{0.3, 0.25, 0.4, {Basis::from_memory, "usual share of the can's volume that stays, from memory; the data sheet decides"}},  // volume_solids
     Sourced{27.0, 20.0, 35.0, {Basis::common_practice, "usual dry film of a sprayed coat, no source; the data sheet decides"}},  // dry_um_per_coat
    },
    {"shellac", "",
     coating_also_6,  // also
     CoatingKind::coat,
     false,
     SourcedFact{true, {Basis::common_practice, "dries by loss of alcohol alone; a fresh coat melts the one below"}},  // redissolves
     {140.0, 100.0, 200.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.3, 0.15, 0.6, {Basis::from_memory, "share of a groove that leaves as chips under sharp fixed grain, the rest is pushed aside, from memory: Hutchings, Tribology (1992); the value is chosen here, with a flank of 11 degrees it makes a wear coefficient of 0.037, inside the 0.005 to 0.05 of two-body abrasion"}},  // cutting_efficiency
     {1.52, 1.51, 1.53, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
     Sourced{336.0, 72.0, 720.0, {Basis::common_practice, "days to a month, by the thickness of the film; the data sheet decides"}},  // hard_cure_h
     Sourced{0.08, 0.03, 0.15, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
     Sourced{0.05, 0.02, 0.15, {Basis::assumption, "share of a levelled depth that shows again as solvent leaves the film below; no measurement at hand"}},  // comes_back
     Sourced{48.0, 24.0, 168.0, {Basis::common_practice, "a levelled shellac rests for a day to a week before it is polished; two days are chosen here; no source"}},  // rest_h
     Sourced{14.0, 11.17, 17.03, {Basis::common_practice, "wheels of 12 to 16 in at 700 to 800 rpm on instrument lacquer, computed from these; no source"}},  // speed_m_s
     Sourced{450.0, 350.0, 650.0, {Basis::assumption, "a coat of 80 to 200 um on wood warms under a lacquer wheel like a body of 460 to 560 by tests/property/wheel_heat_simulation_test.cpp, with binder of 573 and wood of 355 from memory; the safe side is chosen here"}},  // effusivity
     Sourced{20.0, 10.0, 35.0, {Basis::assumption, "softens from about 40 to 60 C when cured, order of magnitude from memory; the rise above a room of 20 C that stays below it is chosen here"}},  // rise_k
     Sourced{0.12, 0.06, 0.2, {Basis::from_memory, "a cut of about 150 g to the litre, from memory"}},  // volume_solids
     Sourced{8.0, 3.0, 15.0, {Basis::assumption, "chosen here; a coat by pad leaves 1 to 3 um"}},  // dry_um_per_coat
    },
    {"oil varnish", "",
     coating_also_7,  // also
     CoatingKind::coat,
     false,
     SourcedFact{false, {Basis::common_practice, "cross-links with the oxygen of the air; a fresh coat keys to scratches only"}},  // redissolves
     {45.0, 20.0, 80.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.3, 0.15, 0.6, {Basis::from_memory, "share of a groove that leaves as chips under sharp fixed grain, the rest is pushed aside, from memory: Hutchings, Tribology (1992); the value is chosen here, with a flank of 11 degrees it makes a wear coefficient of 0.037, inside the 0.005 to 0.05 of two-body abrasion"}},  // cutting_efficiency
     {1.52, 1.49, 1.55, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
     Sourced{720.0, 336.0, 1440.0, {Basis::common_practice, "a month, by drier and weather; the data sheet decides"}},  // hard_cure_h
     Sourced{0.05, 0.02, 0.1, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
     {},  // comes_back
     {},  // rest_h
     Sourced{14.0, 11.17, 17.03, {Basis::common_practice, "wheels of 12 to 16 in at 700 to 800 rpm on instrument lacquer, computed from these; no source"}},  // speed_m_s
     Sourced{450.0, 350.0, 650.0, {Basis::assumption, "a coat of 80 to 200 um on wood warms under a lacquer wheel like a body of 460 to 560 by tests/property/wheel_heat_simulation_test.cpp, with binder of 573 and wood of 355 from memory; the safe side is chosen here"}},  // effusivity
     Sourced{20.0, 10.0, 35.0, {Basis::assumption, "softens from about 40 to 60 C when cured, order of magnitude from memory; the rise above a room of 20 C that stays below it is chosen here"}},  // rise_k
     Sourced{0.48, 0.38, 0.6, {Basis::from_memory, "usual share of the can's volume that stays, from memory; the data sheet decides"}},  // volume_solids
     Sourced{35.0, 25.0, 50.0, {Basis::common_practice, "usual dry film of a coat, no source; the data sheet decides"}},  // dry_um_per_coat
    },
    {"epoxy", "cured epoxy",
     coating_also_8,  // also
     CoatingKind::coat,
     false,
     SourcedFact{false, {Basis::common_practice, "two components cross-link as they cure; a fresh coat keys to scratches only"}},  // redissolves
     {220.0, 150.0, 300.0, {Basis::from_memory, "order of magnitude, from memory; a factor of 2 either way"}},  // hardness_mpa
     {0.3, 0.15, 0.6, {Basis::from_memory, "share of a groove that leaves as chips under sharp fixed grain, the rest is pushed aside, from memory: Hutchings, Tribology (1992); the value is chosen here, with a flank of 11 degrees it makes a wear coefficient of 0.037, inside the 0.005 to 0.05 of two-body abrasion"}},  // cutting_efficiency
     {1.56, 1.54, 1.58, {Basis::from_memory, "usual index of clear binders, from memory"}},  // refractive_index
     Sourced{168.0, 72.0, 336.0, {Basis::common_practice, "about a week at room temperature; the data sheet decides"}},  // hard_cure_h
     Sourced{0.01, 0.0, 0.03, {Basis::assumption, "share of the film lost between dry and fully cured, solvent leaving slowly; no measurement at hand"}},  // shrink
     {},  // comes_back
     {},  // rest_h
     Sourced{14.0, 11.17, 17.03, {Basis::common_practice, "wheels of 12 to 16 in at 700 to 800 rpm on instrument lacquer, computed from these; no source"}},  // speed_m_s
     Sourced{450.0, 350.0, 650.0, {Basis::assumption, "a coat of 80 to 200 um on wood warms under a lacquer wheel like a body of 460 to 560 by tests/property/wheel_heat_simulation_test.cpp, with binder of 573 and wood of 355 from memory; the safe side is chosen here"}},  // effusivity
     Sourced{35.0, 20.0, 50.0, {Basis::assumption, "softens from about 55 to 65 C when cured, order of magnitude from memory; the rise above a room of 20 C that stays below it is chosen here"}},  // rise_k
     Sourced{0.9, 0.5, 1.0, {Basis::from_memory, "usual share of the can's volume that stays, from memory; the data sheet decides"}},  // volume_solids
     Sourced{60.0, 40.0, 150.0, {Basis::assumption, "chosen here; the data sheet decides"}},  // dry_um_per_coat
    },
    {"acrylic sheet", "cast or moulded PMMA, no film",
     coating_also_9,  // also
     CoatingKind::solid,
     false,
     {},  // redissolves
     {200.0, 182.0, 224.0, {Basis::published_table, "Vickers hardness 18.6 to 21.2 of PMMA denture base, divided by 0.927: Bahrani et al., World J. Dent. 3(2):171-175 (2012), doi 10.5005/jp-journals-10015-1151; Evaluation of the Vickers hardness of denture base materials (2016)"}},  // hardness_mpa
     {0.3, 0.15, 0.6, {Basis::from_memory, "share of a groove that leaves as chips under sharp fixed grain, the rest is pushed aside, from memory: Hutchings, Tribology (1992); the value is chosen here, with a flank of 11 degrees it makes a wear coefficient of 0.037, inside the 0.005 to 0.05 of two-body abrasion"}},  // cutting_efficiency
     {1.49, 1.485, 1.495, {Basis::from_memory, "index of PMMA, from memory"}},  // refractive_index
     {},  // hard_cure_h
     {},  // shrink
     {},  // comes_back
     {},  // rest_h
     Sourced{12.2, 6.09, 20.33, {Basis::common_practice, "a trade page: at least 1200, up to 4000 ft/min on acrylic sheet"}},  // speed_m_s
     Sourced{570.0, 540.0, 600.0, {Basis::from_memory, "PMMA: conductivity 0.19 W/(m K), density 1190 kg/m3, heat capacity 1.4 to 1.5 kJ/(kg K), from memory"}},  // effusivity
     Sourced{45.0, 25.0, 65.0, {Basis::assumption, "softens from about 90 to 105 C when cured, order of magnitude from memory; the rise above a room of 20 C that stays below it is chosen here"}},  // rise_k
     {},  // volume_solids
     {},  // dry_um_per_coat
    },
};

inline constexpr TableField<CoatingProfile> coating_columns[] = {
    {"hardness_mpa", &CoatingProfile::hardness_mpa},
    {"cutting_efficiency", &CoatingProfile::cutting_efficiency},
    {"refractive_index", &CoatingProfile::refractive_index},
    {"hard_cure_h", nullptr, &CoatingProfile::hard_cure_h},
    {"shrink", nullptr, &CoatingProfile::shrink},
    {"comes_back", nullptr, &CoatingProfile::comes_back},
    {"rest_h", nullptr, &CoatingProfile::rest_h},
    {"speed_m_s", nullptr, &CoatingProfile::speed_m_s},
    {"effusivity", nullptr, &CoatingProfile::effusivity},
    {"rise_k", nullptr, &CoatingProfile::rise_k},
    {"volume_solids", nullptr, &CoatingProfile::volume_solids},
    {"dry_um_per_coat", nullptr, &CoatingProfile::dry_um_per_coat},
};
// clang-format on

}  // namespace levigate
