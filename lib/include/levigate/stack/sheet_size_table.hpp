// Usual sizes of a sheet by its backing. Generated from data/profiles/sheets.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct SheetSizeProfile {
  std::string_view name;
  std::string_view note;
  Sourced width_mm;
  Sourced height_mm;
};

// clang-format off
inline constexpr SheetSizeProfile sheet_size_table[] = {
    {"latex paper", "as sold, of this backing",
     {230.0, 76.0, 300.0, {Basis::common_practice, "usual sheet of 9 by 11 in, 229 by 279 mm, sold as 230 by 280 mm"}},  // width_mm
     {280.0, 100.0, 300.0, {Basis::common_practice, "usual sheet of 9 by 11 in, 229 by 279 mm, sold as 230 by 280 mm"}},  // height_mm
    },
    {"film", "as sold, of this backing",
     {216.0, 76.0, 300.0, {Basis::common_practice, "usual sheet of 8.5 by 11 in"}},  // width_mm
     {280.0, 100.0, 300.0, {Basis::common_practice, "usual sheet of 8.5 by 11 in"}},  // height_mm
    },
    {"cloth", "as sold, of this backing",
     {230.0, 76.0, 300.0, {Basis::common_practice, "usual sheet of 9 by 11 in, 229 by 279 mm, sold as 230 by 280 mm"}},  // width_mm
     {280.0, 100.0, 300.0, {Basis::common_practice, "usual sheet of 9 by 11 in, 229 by 279 mm, sold as 230 by 280 mm"}},  // height_mm
    },
    {"foam-backed", "as sold, of this backing",
     {150.0, 76.0, 170.0, {Basis::assumption, "usual pad for the hand; makers differ; chosen here"}},  // width_mm
     {115.0, 76.0, 170.0, {Basis::assumption, "usual pad for the hand; makers differ; chosen here"}},  // height_mm
    },
};

inline constexpr TableField<SheetSizeProfile> sheet_size_columns[] = {
    {"width_mm", &SheetSizeProfile::width_mm},
    {"height_mm", &SheetSizeProfile::height_mm},
};
// clang-format on

}  // namespace levigate
