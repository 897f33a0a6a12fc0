// Hand-held machines by name. Generated from data/profiles/machines.json by data/generate.py: do not edit.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct MachineProfile {
  std::string_view name;
  std::string_view note;
  std::span<const std::string_view> also;  ///< other names that people call it by
  Sourced pad_mm;
  Sourced rpm;
  Sourced rated_rpm;
  Sourced force_n;
  Sourced feed_m_s;
  Sourced modulus_mpa;
  Sourced duty;
  Sourced keep_off_mm;
  std::optional<Sourced> orbit_mm;
  std::optional<Sourced> free_rpm;
  std::optional<Sourced> friction;
  std::optional<Sourced> heat_share;
};

// clang-format off
inline constexpr std::string_view machine_also_0[] = {"rotary", "rotary buffer"};
inline constexpr std::string_view machine_also_1[] = {"DA", "DA polisher", "dual action", "orbital polisher"};
inline constexpr std::string_view machine_also_2[] = {"random orbit", "random orbital sander", "RO sander"};
inline constexpr std::string_view machine_also_3[] = {"sheet sander", "quarter-sheet sander", "orbital sander"};

inline constexpr MachineProfile machine_table[] = {
    {"rotary polisher", "a pad on the spindle, turned as it turns",
     machine_also_0,  // also
     {180.0, 125.0, 200.0, {Basis::common_practice, "usual pads of 125 to 200 mm; no source"}},  // pad_mm
     {1200.0, 800.0, 2000.0, {Basis::common_practice, "polishing at 800 to 2000 turns a minute; no source"}},  // rpm
     {2000.0, 1500.0, 3000.0, {Basis::assumption, "what the pad is used at here, not a rating: the number printed on the pad or in the machine's manual stands above it, and a faster one must state its own"}},  // rated_rpm
     {30.0, 15.0, 60.0, {Basis::assumption, "weight of the machine and a light to firm hand; no measurement at hand"}},  // force_n
     {0.15, 0.05, 0.3, {Basis::assumption, "the machine kept moving, a hand's breadth or two a second; no measurement at hand"}},  // feed_m_s
     {0.05, 0.015, 0.15, {Basis::assumption, "a foam or wool pad, chosen as the loose face of a wheel; no measurement at hand"}},  // modulus_mpa
     {0.6, 0.4, 0.8, {Basis::assumption, "rest of the time goes to spreading compound, wiping, looking and letting it cool"}},  // duty
     {30.0, 15.0, 50.0, {Basis::assumption, "the rim of the pad cuts an edge through in a moment, and catches on it; no measurement at hand"}},  // keep_off_mm
     {},  // orbit_mm
     {},  // free_rpm
     Sourced{0.4, 0.2, 0.6, {Basis::assumption, "foam or wool with compound on a coat, as cloth on a wheel; no measurement at hand"}},  // friction
     Sourced{0.5, 0.3, 0.9, {Basis::assumption, "of the heat that enters the work rather than the pad; no measurement at hand"}},  // heat_share
    },
    {"dual-action polisher", "a pad that orbits and spins freely",
     machine_also_1,  // also
     {150.0, 125.0, 180.0, {Basis::common_practice, "usual pads of 125 to 180 mm; no source"}},  // pad_mm
     {4000.0, 2500.0, 5500.0, {Basis::common_practice, "usual settings of 2500 to 5500 orbits a minute; no source"}},  // rpm
     {5500.0, 4800.0, 6800.0, {Basis::assumption, "what the pad is used at here, not a rating: the number printed on the pad or in the machine's manual stands above it, and a faster one must state its own"}},  // rated_rpm
     {40.0, 20.0, 70.0, {Basis::assumption, "weight of the machine and a light to firm hand; no measurement at hand"}},  // force_n
     {0.15, 0.05, 0.3, {Basis::assumption, "the machine kept moving, a hand's breadth or two a second; no measurement at hand"}},  // feed_m_s
     {0.05, 0.015, 0.15, {Basis::assumption, "a foam or wool pad, chosen as the loose face of a wheel; no measurement at hand"}},  // modulus_mpa
     {0.6, 0.4, 0.8, {Basis::assumption, "rest of the time goes to spreading compound, wiping, looking and letting it cool"}},  // duty
     {20.0, 10.0, 40.0, {Basis::assumption, "a pad that tips over an edge bears on it alone; no measurement at hand"}},  // keep_off_mm
     Sourced{15.0, 8.0, 21.0, {Basis::common_practice, "usual orbits of 8 to 21 mm; no source"}},  // orbit_mm
     Sourced{150.0, 20.0, 400.0, {Basis::assumption, "how fast the pad spins under load; no measurement at hand"}},  // free_rpm
     Sourced{0.4, 0.2, 0.6, {Basis::assumption, "foam or wool with compound on a coat, as cloth on a wheel; no measurement at hand"}},  // friction
     Sourced{0.5, 0.3, 0.9, {Basis::assumption, "of the heat that enters the work rather than the pad; no measurement at hand"}},  // heat_share
    },
    {"random-orbit sander", "a round pad that orbits and spins freely, for paper",
     machine_also_2,  // also
     {150.0, 125.0, 150.0, {Basis::common_practice, "usual pads of 125 and 150 mm; no source"}},  // pad_mm
     {9000.0, 4000.0, 12000.0, {Basis::common_practice, "usual settings of 4000 to 12 000 orbits a minute; no source"}},  // rpm
     {12000.0, 10000.0, 13000.0, {Basis::assumption, "what the pad is used at here, not a rating: the number printed on the pad or in the machine's manual stands above it, and a faster one must state its own"}},  // rated_rpm
     {25.0, 12.0, 45.0, {Basis::assumption, "weight of the machine and a light to firm hand; no measurement at hand"}},  // force_n
     {0.05, 0.02, 0.15, {Basis::assumption, "a slow even walk over the work, half a hand's breadth a second; no measurement at hand"}},  // feed_m_s
     {0.5, 0.1, 2.0, {Basis::assumption, "the foam under the sheet, chosen between a hand pad of foam and a rubber block; no measurement at hand"}},  // modulus_mpa
     {0.7, 0.5, 0.85, {Basis::assumption, "rest of the time goes to wiping, looking and moving the cable"}},  // duty
     {10.0, 5.0, 25.0, {Basis::assumption, "a pad that tips over an edge bears on it alone; no measurement at hand"}},  // keep_off_mm
     Sourced{3.0, 2.5, 5.0, {Basis::common_practice, "2.5 to 3 mm for finishing, 5 mm for all work; no source"}},  // orbit_mm
     Sourced{200.0, 20.0, 600.0, {Basis::assumption, "how fast the pad spins under load; no measurement at hand"}},  // free_rpm
     {},  // friction
     {},  // heat_share
    },
    {"finishing sander", "a square pad that orbits and does not turn, for a quarter of a sheet",
     machine_also_3,  // also
     {108.0, 95.0, 115.0, {Basis::common_practice, "a quarter of a usual sheet; no source"}},  // pad_mm
     {12000.0, 9000.0, 14000.0, {Basis::common_practice, "usual 10 000 to 14 000 orbits a minute; no source"}},  // rpm
     {14000.0, 12000.0, 14000.0, {Basis::assumption, "what the pad is used at here, not a rating: the number printed on the pad or in the machine's manual stands above it, and a faster one must state its own"}},  // rated_rpm
     {15.0, 8.0, 30.0, {Basis::assumption, "weight of the machine and a light to firm hand; no measurement at hand"}},  // force_n
     {0.05, 0.02, 0.15, {Basis::assumption, "a slow even walk over the work, half a hand's breadth a second; no measurement at hand"}},  // feed_m_s
     {0.5, 0.1, 2.0, {Basis::assumption, "the foam under the sheet, chosen between a hand pad of foam and a rubber block; no measurement at hand"}},  // modulus_mpa
     {0.7, 0.5, 0.85, {Basis::assumption, "rest of the time goes to wiping, looking and moving the cable"}},  // duty
     {10.0, 5.0, 20.0, {Basis::assumption, "a pad that tips over an edge bears on it alone; no measurement at hand"}},  // keep_off_mm
     Sourced{2.0, 1.5, 2.5, {Basis::common_practice, "usual orbits of 1.5 to 2.5 mm; no source"}},  // orbit_mm
     {},  // free_rpm
     {},  // friction
     {},  // heat_share
    },
};

inline constexpr TableField<MachineProfile> machine_columns[] = {
    {"pad_mm", &MachineProfile::pad_mm},
    {"rpm", &MachineProfile::rpm},
    {"rated_rpm", &MachineProfile::rated_rpm},
    {"force_n", &MachineProfile::force_n},
    {"feed_m_s", &MachineProfile::feed_m_s},
    {"modulus_mpa", &MachineProfile::modulus_mpa},
    {"duty", &MachineProfile::duty},
    {"keep_off_mm", &MachineProfile::keep_off_mm},
    {"orbit_mm", nullptr, &MachineProfile::orbit_mm},
    {"free_rpm", nullptr, &MachineProfile::free_rpm},
    {"friction", nullptr, &MachineProfile::friction},
    {"heat_share", nullptr, &MachineProfile::heat_share},
};
// clang-format on

}  // namespace levigate
