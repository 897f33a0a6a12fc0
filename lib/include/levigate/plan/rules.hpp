// The rules a plan keeps. Every default has its basis in data/profiles/rules.json.
#pragma once

#include <string_view>

#include "levigate/stack/step_rule.hpp"

namespace levigate::inline v0 {

/// min_ratio and max_ratio of a step, and the rest.
struct Rules : StepRule {
  /// Removed by a step, as a multiple of the scratch depth its predecessor left.
  double overcut = rule_table[0].overcut.value;
  /// Share of the scratches that the scratch depth covers.
  double scratch_quantile = rule_table[0].scratch_quantile.value;
  /// Orange peel that may stay, peak to valley [um].
  double residual_peel_um = rule_table[0].residual_peel_um.value;
  /// Washing and changing, once a step [min].
  double change_minutes = rule_table[0].change_minutes.value;
  /// Film that must stay everywhere [um].
  double reserve_um = rule_table[0].reserve_um.value;
  /// Unevenness of removal by hand, standard deviation over mean.
  double removed_cv = rule_table[0].removed_cv.value;
  /// Accepted chance of cutting through somewhere in a zone.
  double cut_through_limit = rule_table[0].cut_through_limit.value;
};

/// Throws: OutOfRange where a rule is outside its range; BadInput unless min_ratio < max_ratio.
inline void validate(const Rules& rules, std::string_view where) {
  validate(static_cast<const StepRule&>(rules), where);
  detail::require_range(rules.overcut, 1.0, 20.0, "overcut", "", where);
  detail::require_range(rules.scratch_quantile, 0.5, 1.0 - 1e-9, "scratch_quantile", "", where);
  detail::require_range(rules.residual_peel_um, 0.001, 1e4, "residual_peel_um", "um", where);
  detail::require_range(rules.change_minutes, 0.0, 1e4, "change_minutes", "min", where);
  detail::require_range(rules.reserve_um, 0.0, 1e4, "reserve_um", "um", where);
  detail::require_range(rules.removed_cv, 0.0, 1.0, "removed_cv", "", where);
  detail::require_range(rules.cut_through_limit, 1e-12, 0.5, "cut_through_limit", "", where);
}

}  // namespace levigate
