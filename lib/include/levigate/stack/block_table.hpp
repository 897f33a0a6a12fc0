// Blocks and pads by name. Generated from data/profiles/blocks.json by data/generate.py: do not edit.
#pragma once

#include <span>
#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct BlockProfile {
  std::string_view name;
  std::string_view note;
  std::span<const std::string_view> also;  ///< other names that people call it by
  Sourced modulus_mpa;
  Sourced area_cm2;
  Sourced force_n;
  Sourced speed_m_s;
  Sourced duty;
  Sourced wrap;
};

// clang-format off
inline constexpr std::string_view block_also_0[] = {"block", "wood block", "wooden block", "acrylic block", "hard sanding block"};
inline constexpr std::string_view block_also_1[] = {"cork", "cork sanding block"};
inline constexpr std::string_view block_also_2[] = {"rubber", "rubber sanding block"};
inline constexpr std::string_view block_also_3[] = {"small block", "stick", "sanding stick"};
inline constexpr std::string_view block_also_4[] = {"foam", "soft pad", "hand pad", "sponge", "foam interface"};
inline constexpr std::string_view block_also_5[] = {"felt", "felt pad"};

inline constexpr BlockProfile block_table[] = {
    {"hard block", "hardwood, acrylic or metal face",
     block_also_0,  // also
     {1000.0, 300.0, 3000.0, {Basis::assumption, "chosen for the face that lies on the work; no measurement at hand"}},  // modulus_mpa
     {87.5, 50.0, 120.0, {Basis::common_practice, "usual sizes of hand blocks and pads"}},  // area_cm2
     {15.0, 10.0, 20.0, {Basis::common_practice, "hand pressure on a block, 10 to 20 N on 70 mm x 125 mm"}},  // force_n
     {0.45, 0.25, 0.6, {Basis::common_practice, "strokes of 100 to 200 mm, one to two double strokes a second; 0.45 is 150 mm at one and a half, and few keep up more than 0.6"}},  // speed_m_s
     {0.6, 0.4, 0.8, {Basis::assumption, "rest of the time goes to rinsing, wiping and looking"}},  // duty
     {1.6, 1.0, 2.0, {Basis::assumption, "paper that goes round the sides of the block"}},  // wrap
    },
    {"cork block", "cork face",
     block_also_1,  // also
     {15.0, 5.0, 45.0, {Basis::assumption, "chosen for the face that lies on the work; no measurement at hand"}},  // modulus_mpa
     {87.5, 50.0, 120.0, {Basis::common_practice, "usual sizes of hand blocks and pads"}},  // area_cm2
     {15.0, 10.0, 20.0, {Basis::common_practice, "hand pressure on a block, 10 to 20 N on 70 mm x 125 mm"}},  // force_n
     {0.45, 0.25, 0.6, {Basis::common_practice, "strokes of 100 to 200 mm, one to two double strokes a second; 0.45 is 150 mm at one and a half, and few keep up more than 0.6"}},  // speed_m_s
     {0.6, 0.4, 0.8, {Basis::assumption, "rest of the time goes to rinsing, wiping and looking"}},  // duty
     {1.6, 1.0, 2.0, {Basis::assumption, "paper that goes round the sides of the block"}},  // wrap
    },
    {"rubber block", "solid rubber face",
     block_also_2,  // also
     {3.0, 1.0, 9.0, {Basis::assumption, "chosen for the face that lies on the work; no measurement at hand"}},  // modulus_mpa
     {87.5, 50.0, 120.0, {Basis::common_practice, "usual sizes of hand blocks and pads"}},  // area_cm2
     {15.0, 10.0, 20.0, {Basis::common_practice, "hand pressure on a block, 10 to 20 N on 70 mm x 125 mm"}},  // force_n
     {0.45, 0.25, 0.6, {Basis::common_practice, "strokes of 100 to 200 mm, one to two double strokes a second; 0.45 is 150 mm at one and a half, and few keep up more than 0.6"}},  // speed_m_s
     {0.6, 0.4, 0.8, {Basis::assumption, "rest of the time goes to rinsing, wiping and looking"}},  // duty
     {1.6, 1.0, 2.0, {Basis::assumption, "paper that goes round the sides of the block"}},  // wrap
    },
    {"small hard block", "small hard face for corners, narrow parts and local work",
     block_also_3,  // also
     {1000.0, 300.0, 3000.0, {Basis::assumption, "chosen for the face that lies on the work; no measurement at hand"}},  // modulus_mpa
     {15.0, 6.0, 25.0, {Basis::common_practice, "usual sizes of hand blocks and pads"}},  // area_cm2
     {4.0, 2.0, 6.0, {Basis::common_practice, "hand pressure on a block, 10 to 20 N on 70 mm x 125 mm"}},  // force_n
     {0.45, 0.25, 0.6, {Basis::common_practice, "strokes of 100 to 200 mm, one to two double strokes a second; 0.45 is 150 mm at one and a half, and few keep up more than 0.6"}},  // speed_m_s
     {0.6, 0.4, 0.8, {Basis::assumption, "rest of the time goes to rinsing, wiping and looking"}},  // duty
     {1.8, 1.0, 2.0, {Basis::assumption, "paper that goes round the sides of the block"}},  // wrap
    },
    {"foam pad", "soft hand pad",
     block_also_4,  // also
     {0.2, 0.07, 0.6, {Basis::assumption, "chosen for the face that lies on the work; no measurement at hand"}},  // modulus_mpa
     {60.0, 30.0, 100.0, {Basis::common_practice, "usual sizes of hand blocks and pads"}},  // area_cm2
     {8.0, 5.0, 12.0, {Basis::common_practice, "hand pressure on a block, 10 to 20 N on 70 mm x 125 mm"}},  // force_n
     {0.45, 0.25, 0.6, {Basis::common_practice, "strokes of 100 to 200 mm, one to two double strokes a second; 0.45 is 150 mm at one and a half, and few keep up more than 0.6"}},  // speed_m_s
     {0.6, 0.4, 0.8, {Basis::assumption, "rest of the time goes to rinsing, wiping and looking"}},  // duty
     {1.0, 1.0, 2.0, {Basis::assumption, "paper that goes round the sides of the block"}},  // wrap
    },
    {"felt block", "wool felt on a firm back, for rubbing with paste",
     block_also_5,  // also
     {3.0, 1.0, 9.0, {Basis::assumption, "as the felt of a wheel; no measurement at hand"}},  // modulus_mpa
     {60.0, 30.0, 120.0, {Basis::common_practice, "usual sizes of hand blocks and pads"}},  // area_cm2
     {15.0, 10.0, 20.0, {Basis::common_practice, "hand pressure on a block, 10 to 20 N on 70 mm x 125 mm"}},  // force_n
     {0.45, 0.25, 0.6, {Basis::common_practice, "strokes of 100 to 200 mm, one to two double strokes a second; 0.45 is 150 mm at one and a half, and few keep up more than 0.6"}},  // speed_m_s
     {0.6, 0.4, 0.8, {Basis::assumption, "rest of the time goes to rinsing, wiping and looking"}},  // duty
     {1.0, 1.0, 2.0, {Basis::assumption, "paste lies on the face alone"}},  // wrap
    },
};

inline constexpr TableField<BlockProfile> block_columns[] = {
    {"modulus_mpa", &BlockProfile::modulus_mpa},
    {"area_cm2", &BlockProfile::area_cm2},
    {"force_n", &BlockProfile::force_n},
    {"speed_m_s", &BlockProfile::speed_m_s},
    {"duty", &BlockProfile::duty},
    {"wrap", &BlockProfile::wrap},
};
// clang-format on

}  // namespace levigate
