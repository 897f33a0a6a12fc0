// A patch as calibrate proposes it. Generated from data/profiles/patch.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct PatchProfile {
  std::string_view name;
  std::string_view note;
  Sourced area_cm2;
  Sourced sanding_minutes;
  Sourced spots;
  Sourced gauging_minutes;
  Sourced weighing_minutes;
  Sourced noting_minutes;
  Sourced loupe_minutes;
};

// clang-format off
inline constexpr PatchProfile patch_table[] = {
    {"default", "",
     {100.0, 50.0, 200.0, {Basis::assumption, "small enough to spare and large enough to read"}},  // area_cm2
     {5.0, 3.0, 10.0, {Basis::assumption, "long enough to read what came off"}},  // sanding_minutes
     {10.0, 5.0, 20.0, {Basis::assumption, "fixed spots that a gauge reads before and after"}},  // spots
     {7.0, 5.0, 15.0, {Basis::assumption, "twenty readings at marked spots, by hand"}},  // gauging_minutes
     {20.0, 10.0, 60.0, {Basis::assumption, "two weighings, dried in between"}},  // weighing_minutes
     {1.0, 0.5, 2.0, {Basis::assumption, "a look at the clock"}},  // noting_minutes
     {5.0, 3.0, 10.0, {Basis::assumption, "ten scratches under the loupe"}},  // loupe_minutes
    },
};

inline constexpr TableField<PatchProfile> patch_columns[] = {
    {"area_cm2", &PatchProfile::area_cm2},
    {"sanding_minutes", &PatchProfile::sanding_minutes},
    {"spots", &PatchProfile::spots},
    {"gauging_minutes", &PatchProfile::gauging_minutes},
    {"weighing_minutes", &PatchProfile::weighing_minutes},
    {"noting_minutes", &PatchProfile::noting_minutes},
    {"loupe_minutes", &PatchProfile::loupe_minutes},
};
// clang-format on

}  // namespace levigate
