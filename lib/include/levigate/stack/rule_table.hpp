// Default rules. Generated from data/profiles/rules.json by data/generate.py: do not edit.
#pragma once

#include <string_view>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

struct RuleProfile {
  std::string_view name;
  std::string_view note;
  Sourced max_ratio;
  Sourced min_ratio;
  Sourced short_share;
  Sourced scratch_quantile;
  Sourced residual_peel_um;
  Sourced change_minutes;
  Sourced reserve_um;
  Sourced removed_cv;
  Sourced cut_through_limit;
};

// clang-format off
inline constexpr RuleProfile rule_table[] = {
    {"default", "",
     {1.75, 1.5, 2.0, {Basis::common_practice, "in size at most 2, rather 1.5: the middle; printed sequences jump by 1.5 to 2.5 in grade number"}},  // max_ratio
     {1.15, 1.05, 1.25, {Basis::common_practice, "neighbouring grades leave nearly equal scratches; on oak P120 to P180 lie close together: Gurau, COST E53 conference (2010)"}},  // min_ratio
     {0.001, 0.0001, 0.01, {Basis::assumption, "share of the spots where a step may stop short of the scratches before it; with the default of removed_cv a step takes off 1.86 times their depth, as the trade sands about as long again once they are gone"}},  // short_share
     {0.99, 0.95, 0.999, {Basis::assumption, "share of the scratches that the next step must remove"}},  // scratch_quantile
     {0.5, 0.2, 1.0, {Basis::assumption, "peak to valley that no longer shows under a polish"}},  // residual_peel_um
     {2.0, 1.0, 5.0, {Basis::common_practice, "washing the work, the block and the hands between two grades"}},  // change_minutes
     {10.0, 5.0, 36.0, {Basis::assumption, "film that must stay everywhere; a car maker's bulletin of 1986 asks for 36 um of clear"}},  // reserve_um
     {0.15, 0.05, 0.3, {Basis::assumption, "how unevenly a hand removes film from spot to spot"}},  // removed_cv
     {0.01, 0.001, 0.05, {Basis::assumption, "chance of cutting through anywhere in a zone that is accepted"}},  // cut_through_limit
    },
};

inline constexpr TableField<RuleProfile> rule_columns[] = {
    {"max_ratio", &RuleProfile::max_ratio},
    {"min_ratio", &RuleProfile::min_ratio},
    {"short_share", &RuleProfile::short_share},
    {"scratch_quantile", &RuleProfile::scratch_quantile},
    {"residual_peel_um", &RuleProfile::residual_peel_um},
    {"change_minutes", &RuleProfile::change_minutes},
    {"reserve_um", &RuleProfile::reserve_um},
    {"removed_cv", &RuleProfile::removed_cv},
    {"cut_through_limit", &RuleProfile::cut_through_limit},
};
// clang-format on

}  // namespace levigate
