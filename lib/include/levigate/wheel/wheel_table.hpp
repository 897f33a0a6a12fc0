// Buffing wheels by name. Generated from data/profiles/wheels.json by data/generate.py: do not edit.
#pragma once

#include <span>
#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct WheelProfile {
  std::string_view name;
  std::string_view note;
  std::span<const std::string_view> also;  ///< other names that people call it by
  Sourced diameter_mm;
  Sourced rpm;
  Sourced rated_rpm;
  Sourced width_mm;
  Sourced contact_mm;
  Sourced force_n;
  Sourced feed_m_s;
  Sourced modulus_mpa;
  Sourced friction;
  Sourced heat_share;
  Sourced duty;
};

// clang-format off
inline constexpr std::string_view wheel_also_0[] = {"flannel", "flannel wheel", "loose flannel wheel"};
inline constexpr std::string_view wheel_also_1[] = {"muslin", "muslin wheel", "loose muslin wheel", "loose cotton"};
inline constexpr std::string_view wheel_also_2[] = {"sewn wheel", "stitched wheel", "stitched", "sewn cotton"};
inline constexpr std::string_view wheel_also_3[] = {"felt wheel"};

inline constexpr WheelProfile wheel_table[] = {
    {"loose flannel", "loose cotton flannel, for the last compound",
     wheel_also_0,  // also
     {355.6, 304.8, 406.4, {Basis::common_practice, "12 to 16 in on instrument lacquer; no source"}},  // diameter_mm
     {750.0, 700.0, 800.0, {Basis::common_practice, "700 to 800 rpm with wheels of 12 to 16 in on instrument lacquer; no source"}},  // rpm
     {1000.0, 800.0, 1000.0, {Basis::assumption, "what the wheel is used at here, not a rating: the number printed on the wheel or in its manual stands above it, and a faster wheel must state its own"}},  // rated_rpm
     {50.0, 25.0, 75.0, {Basis::common_practice, "usual widths of buffs, one or several sections side by side"}},  // width_mm
     {60.0, 30.0, 90.0, {Basis::assumption, "length of the arc that a work pressed by hand touches; no measurement at hand"}},  // contact_mm
     {15.0, 10.0, 40.0, {Basis::assumption, "light to firm hand pressure; no measurement at hand"}},  // force_n
     {0.2, 0.05, 0.4, {Basis::assumption, "the work kept moving, a hand's breadth or two a second; no measurement at hand"}},  // feed_m_s
     {0.05, 0.015, 0.15, {Basis::assumption, "stiffness of the running face, chosen between a hand pad of foam and a rubber block; no measurement at hand"}},  // modulus_mpa
     {0.4, 0.2, 0.6, {Basis::assumption, "cloth with compound on a coat; no measurement at hand"}},  // friction
     {0.5, 0.3, 0.9, {Basis::assumption, "of the heat that enters the work rather than the wheel; no measurement at hand"}},  // heat_share
     {0.5, 0.3, 0.7, {Basis::assumption, "rest of the time goes to turning the work, charging the wheel, wiping and letting it cool"}},  // duty
    },
    {"loose muslin", "loose cotton muslin",
     wheel_also_1,  // also
     {355.6, 304.8, 406.4, {Basis::common_practice, "12 to 16 in on instrument lacquer; no source"}},  // diameter_mm
     {750.0, 700.0, 800.0, {Basis::common_practice, "700 to 800 rpm with wheels of 12 to 16 in on instrument lacquer; no source"}},  // rpm
     {1000.0, 800.0, 1000.0, {Basis::assumption, "what the wheel is used at here, not a rating: the number printed on the wheel or in its manual stands above it, and a faster wheel must state its own"}},  // rated_rpm
     {50.0, 25.0, 75.0, {Basis::common_practice, "usual widths of buffs, one or several sections side by side"}},  // width_mm
     {50.0, 25.0, 80.0, {Basis::assumption, "length of the arc that a work pressed by hand touches; no measurement at hand"}},  // contact_mm
     {15.0, 10.0, 40.0, {Basis::assumption, "light to firm hand pressure; no measurement at hand"}},  // force_n
     {0.2, 0.05, 0.4, {Basis::assumption, "the work kept moving, a hand's breadth or two a second; no measurement at hand"}},  // feed_m_s
     {0.08, 0.025, 0.25, {Basis::assumption, "stiffness of the running face, chosen between a hand pad of foam and a rubber block; no measurement at hand"}},  // modulus_mpa
     {0.4, 0.2, 0.6, {Basis::assumption, "cloth with compound on a coat; no measurement at hand"}},  // friction
     {0.5, 0.3, 0.9, {Basis::assumption, "of the heat that enters the work rather than the wheel; no measurement at hand"}},  // heat_share
     {0.5, 0.3, 0.7, {Basis::assumption, "rest of the time goes to turning the work, charging the wheel, wiping and letting it cool"}},  // duty
    },
    {"sewn", "cotton in sewn rings, firmer, for cutting",
     wheel_also_2,  // also
     {355.6, 304.8, 406.4, {Basis::common_practice, "12 to 16 in on instrument lacquer; no source"}},  // diameter_mm
     {750.0, 700.0, 800.0, {Basis::common_practice, "700 to 800 rpm with wheels of 12 to 16 in on instrument lacquer; no source"}},  // rpm
     {1000.0, 800.0, 1000.0, {Basis::assumption, "what the wheel is used at here, not a rating: the number printed on the wheel or in its manual stands above it, and a faster wheel must state its own"}},  // rated_rpm
     {50.0, 25.0, 75.0, {Basis::common_practice, "usual widths of buffs, one or several sections side by side"}},  // width_mm
     {35.0, 15.0, 50.0, {Basis::assumption, "length of the arc that a work pressed by hand touches; no measurement at hand"}},  // contact_mm
     {15.0, 10.0, 30.0, {Basis::assumption, "light to firm hand pressure; no measurement at hand"}},  // force_n
     {0.2, 0.05, 0.4, {Basis::assumption, "the work kept moving, a hand's breadth or two a second; no measurement at hand"}},  // feed_m_s
     {0.5, 0.15, 1.5, {Basis::assumption, "stiffness of the running face, chosen between a hand pad of foam and a rubber block; no measurement at hand"}},  // modulus_mpa
     {0.4, 0.2, 0.6, {Basis::assumption, "cloth with compound on a coat; no measurement at hand"}},  // friction
     {0.5, 0.3, 0.9, {Basis::assumption, "of the heat that enters the work rather than the wheel; no measurement at hand"}},  // heat_share
     {0.5, 0.3, 0.7, {Basis::assumption, "rest of the time goes to turning the work, charging the wheel, wiping and letting it cool"}},  // duty
    },
    {"felt", "wool felt, hard, for edges and small faces",
     wheel_also_3,  // also
     {279.4, 254.0, 304.8, {Basis::common_practice, "a trade page: felt of 10 to 12 in on the edges of acrylic sheet"}},  // diameter_mm
     {1200.0, 950.0, 1720.0, {Basis::computed, "15.24 to 22.86 m/s at the rim of 254 to 304.8 mm: a trade page on felt at the edges of acrylic sheet"}},  // rpm
     {1720.0, 1200.0, 1720.0, {Basis::assumption, "what the wheel is used at here, not a rating: the number printed on the wheel or in its manual stands above it, and a faster wheel must state its own"}},  // rated_rpm
     {25.0, 12.0, 50.0, {Basis::common_practice, "usual widths of buffs, one or several sections side by side"}},  // width_mm
     {15.0, 5.0, 30.0, {Basis::assumption, "length of the arc that a work pressed by hand touches; no measurement at hand"}},  // contact_mm
     {6.0, 3.0, 12.0, {Basis::assumption, "light to firm hand pressure; no measurement at hand"}},  // force_n
     {0.2, 0.05, 0.4, {Basis::assumption, "the work kept moving, a hand's breadth or two a second; no measurement at hand"}},  // feed_m_s
     {3.0, 1.0, 9.0, {Basis::assumption, "stiffness of the running face, chosen between a hand pad of foam and a rubber block; no measurement at hand"}},  // modulus_mpa
     {0.4, 0.2, 0.6, {Basis::assumption, "cloth with compound on a coat; no measurement at hand"}},  // friction
     {0.5, 0.3, 0.9, {Basis::assumption, "of the heat that enters the work rather than the wheel; no measurement at hand"}},  // heat_share
     {0.5, 0.3, 0.7, {Basis::assumption, "rest of the time goes to turning the work, charging the wheel, wiping and letting it cool"}},  // duty
    },
};

inline constexpr TableField<WheelProfile> wheel_columns[] = {
    {"diameter_mm", &WheelProfile::diameter_mm},
    {"rpm", &WheelProfile::rpm},
    {"rated_rpm", &WheelProfile::rated_rpm},
    {"width_mm", &WheelProfile::width_mm},
    {"contact_mm", &WheelProfile::contact_mm},
    {"force_n", &WheelProfile::force_n},
    {"feed_m_s", &WheelProfile::feed_m_s},
    {"modulus_mpa", &WheelProfile::modulus_mpa},
    {"friction", &WheelProfile::friction},
    {"heat_share", &WheelProfile::heat_share},
    {"duty", &WheelProfile::duty},
};
// clang-format on

}  // namespace levigate
