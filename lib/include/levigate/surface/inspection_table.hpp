// What an inspection sees, and how marks come about. Generated from data/profiles/inspection.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct InspectionProfile {
  std::string_view name;
  std::string_view note;
  Sourced sunlight_um;
  Sourced lamp_um;
  Sourced lamp_ratio;
  Sourced finish_per_spot;
  Sourced finish_cover_share;
  Sourced cluster_count;
  Sourced loupe_log_sd;
  Sourced comparison_log_sd;
  Sourced direction_sd_deg;
  Sourced other_direction_share;
  Sourced arc_share_tool;
  Sourced arc_share_machine;
  Sourced arc_share_block;
  Sourced missed_share;
  Sourced stray_per_m2;
  Sourced stray_size_ratio;
  Sourced haze_cover;
  Sourced look_minutes;
  Sourced round_minutes;
  Sourced worth_look_share;
  Sourced legs_most;
  Sourced looks_most;
  Sourced hollow_slope_um_per_mm;
};

// clang-format off
inline constexpr InspectionProfile inspection_table[] = {
    {"default", "what an eye sees on the finished work, how marks come about, and what looking and another round take",
     {2.0, 1.0, 5.0, {Basis::common_practice, "narrowest scratch that a halogen lamp of 100 to 200 W shows on glass, part at 350 to 450 mm; the sun on a coat is taken to show the same"}},  // sunlight_um
     {20.0, 10.0, 40.0, {Basis::common_practice, "narrowest scratch that two fluorescent lamps of 30 W show on glass; the light of a room is taken to show the same"}},  // lamp_um
     {2.0, 1.5, 3.0, {Basis::assumption, "on a coarse finish, width that the light of a room shows over the width that the sun shows, where that is more than lamp_um"}},  // lamp_ratio
     {0.01, 0.001, 0.1, {Basis::assumption, "scratches of the last step on 1 cm2 beyond a depth from which a scratch stands out from the finish"}},  // finish_per_spot
     {0.1, 0.03, 0.3, {Basis::assumption, "share of the cover that shows as haze which the last step's own scratches reach beyond the depth of the finish"}},  // finish_cover_share
     {3.0, 2.0, 5.0, {Basis::assumption, "scratches that make a cluster where they are not counted"}},  // cluster_count
     {0.15, 0.05, 0.3, {Basis::assumption, "a width read off a scale of 10 to 20 um a line to about a seventh"}},  // loupe_log_sd
     {0.5, 0.3, 0.7, {Basis::assumption, "a width told by eye beside a known one: right within a factor of 1.6 two times in three"}},  // comparison_log_sd
     {15.0, 5.0, 30.0, {Basis::assumption, "strokes of one step by hand, and the reading of the angle"}},  // direction_sd_deg
     {0.1, 0.02, 0.3, {Basis::assumption, "strokes that run any way: turning, ends, corners"}},  // other_direction_share
     {0.5, 0.2, 0.9, {Basis::assumption, "scratches of a pad or wheel that is its own tool that run in arcs"}},  // arc_share_tool
     {0.95, 0.8, 1.0, {Basis::assumption, "scratches of a hand-held machine that run in arcs or curls: all but stray grains that are dragged"}},  // arc_share_machine
     {0.05, 0.0, 0.2, {Basis::assumption, "scratches of paper on a block that run in arcs"}},  // arc_share_block
     {0.02, 0.005, 0.1, {Basis::assumption, "share of the area that a step works less than it should, for each step alone"}},  // missed_share
     {1.0, 0.1, 10.0, {Basis::assumption, "scratches of stray grain in a step, where paper and work are washed between grades"}},  // stray_per_m2
     {10.0, 3.0, 30.0, {Basis::assumption, "largest stray grain over the grain of the sheet; sizes up to it are even in logarithm"}},  // stray_size_ratio
     {0.05, 0.02, 0.1, {Basis::assumption, "share of the surface under scratches too fine to be told apart from which haze shows"}},  // haze_cover
     {3.0, 1.0, 10.0, {Basis::assumption, "wash, dry, carry into the light and look"}},  // look_minutes
     {240.0, 120.0, 480.0, {Basis::assumption, "hands on for another round: scuff, clean, mask, spray, clean the gun; without the days of curing"}},  // round_minutes
     {0.1, 0.05, 0.2, {Basis::assumption, "share of marks gone from which a first look with a sheet is worth it; a hand that finds fewer gone goes back further, or gives up"}},  // worth_look_share
     {4.0, 2.0, 6.0, {Basis::assumption, "sheets in turn that a hand keeps in mind on the way back"}},  // legs_most
     {4.0, 2.0, 6.0, {Basis::assumption, "looks in a row with one sheet before a hand changes its way"}},  // looks_most
     {0.15, 0.02, 0.5, {Basis::assumption, "slope at which a bent reflection begins to show: a reflection turns by twice the slope, and an eye tells one minute of arc, 0.29 um per mm; low: an eye that tells bent lines better; high: the steepest slope of 0.5 um of peel over 3 mm, which no longer shows under a polish"}},  // hollow_slope_um_per_mm
    },
};

inline constexpr TableField<InspectionProfile> inspection_columns[] = {
    {"sunlight_um", &InspectionProfile::sunlight_um},
    {"lamp_um", &InspectionProfile::lamp_um},
    {"lamp_ratio", &InspectionProfile::lamp_ratio},
    {"finish_per_spot", &InspectionProfile::finish_per_spot},
    {"finish_cover_share", &InspectionProfile::finish_cover_share},
    {"cluster_count", &InspectionProfile::cluster_count},
    {"loupe_log_sd", &InspectionProfile::loupe_log_sd},
    {"comparison_log_sd", &InspectionProfile::comparison_log_sd},
    {"direction_sd_deg", &InspectionProfile::direction_sd_deg},
    {"other_direction_share", &InspectionProfile::other_direction_share},
    {"arc_share_tool", &InspectionProfile::arc_share_tool},
    {"arc_share_machine", &InspectionProfile::arc_share_machine},
    {"arc_share_block", &InspectionProfile::arc_share_block},
    {"missed_share", &InspectionProfile::missed_share},
    {"stray_per_m2", &InspectionProfile::stray_per_m2},
    {"stray_size_ratio", &InspectionProfile::stray_size_ratio},
    {"haze_cover", &InspectionProfile::haze_cover},
    {"look_minutes", &InspectionProfile::look_minutes},
    {"round_minutes", &InspectionProfile::round_minutes},
    {"worth_look_share", &InspectionProfile::worth_look_share},
    {"legs_most", &InspectionProfile::legs_most},
    {"looks_most", &InspectionProfile::looks_most},
    {"hollow_slope_um_per_mm", &InspectionProfile::hollow_slope_um_per_mm},
};
// clang-format on

}  // namespace levigate
