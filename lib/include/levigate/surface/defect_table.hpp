// How local defects are taken down. Generated from data/profiles/defects.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct DefectProfile {
  std::string_view name;
  std::string_view note;
  Sourced shave_above_um;
  Sourced tape_um;
  Sourced shave_minutes;
  Sourced mask_minutes;
  Sourced stroke_mm;
};

// clang-format off
inline constexpr DefectProfile defect_table[] = {
    {"default", "how a shop takes down runs, sags, drips, nibs and ridges",
     {100.0, 50.0, 200.0, {Basis::common_practice, "taller ones are shaved or scraped before they are blocked; runs and sags stand 50 to 500 um proud"}},  // shave_above_um
     {60.0, 40.0, 150.0, {Basis::assumption, "a thin clear tape; crepe masking tape is about twice as thick; measure yours"}},  // tape_um
     {1.0, 0.5, 3.0, {Basis::common_practice, "a minute or so with a blade or a card scraper, one run"}},  // shave_minutes
     {1.0, 0.5, 3.0, {Basis::common_practice, "tape round one run, on and off"}},  // mask_minutes
     {150.0, 100.0, 200.0, {Basis::common_practice, "strokes of 100 to 200 mm with a hand block"}},  // stroke_mm
    },
};

inline constexpr TableField<DefectProfile> defect_columns[] = {
    {"shave_above_um", &DefectProfile::shave_above_um},
    {"tape_um", &DefectProfile::tape_um},
    {"shave_minutes", &DefectProfile::shave_minutes},
    {"mask_minutes", &DefectProfile::mask_minutes},
    {"stroke_mm", &DefectProfile::stroke_mm},
};
// clang-format on

}  // namespace levigate
