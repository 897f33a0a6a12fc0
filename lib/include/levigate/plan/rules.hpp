// The rules a plan keeps. Every default has its basis in data/profiles/rules.json.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "levigate/stack/step_rule.hpp"

namespace levigate::inline v0 {

/// What a step may take off over the scratch depth before it (dimensionless).
inline constexpr Within overcut_range{1, 20};

/// min_ratio and max_ratio of a step, and the rest.
struct Rules : StepRule {
  std::optional<double> overcut{};
  double short_share = rule_table[0].short_share.value;
  double scratch_quantile = rule_table[0].scratch_quantile.value;
  double residual_peel_um = rule_table[0].residual_peel_um.value;
  double change_minutes = rule_table[0].change_minutes.value;
  double reserve_um = rule_table[0].reserve_um.value;
  double removed_cv = rule_table[0].removed_cv.value;
  double cut_through_limit = rule_table[0].cut_through_limit.value;

  friend bool operator==(const Rules&, const Rules&) = default;
};

/// Throws: BadInput unless min_ratio < max_ratio.
inline void require_room_of(const Rules& rules, std::string_view where) {
  require_room(rules, where);
}

template <std::same_as<Rules> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Rules", "The rules that a plan keeps. What is not given is the default.",
        max_ratio_member<Rules>, min_ratio_member<Rules>,
        member<&Value::overcut>("overcut", overcut_range,
                                "removed by a step, over the scratch depth before it; else it "
                                "follows from removed_cv and short_share")
            .is(Input::chosen),
        member<&Value::short_share>("short_share", Within{1e-9, 0.5},
                                    "share of the spots where a step may stop short of the "
                                    "scratches before it")
            .is(Input::chosen)
            .optional(),
        member<&Value::scratch_quantile>("scratch_quantile", Within{0.5, 1.0 - 1e-9},
                                         "share of the scratches that their depth covers")
            .is(Input::chosen)
            .optional(),
        member<&Value::residual_peel_um>("residual_peel_um", Within{0.001, 1e4},
                                         "orange peel that may stay, peak to valley")
            .is(Input::chosen)
            .optional(),
        member<&Value::change_minutes>("change_minutes", Within{0, 1e4},
                                       "washing and changing, once a step")
            .is(Input::believed)
            .optional(),
        member<&Value::reserve_um>("reserve_um", Within{0, 1e4}, "film that must stay everywhere")
            .is(Input::chosen)
            .optional(),
        member<&Value::removed_cv>("removed_cv", Within{0, 1},
                                   "unevenness of removal by hand, spread over mean")
            .is(Input::chosen)
            .optional(),
        member<&Value::cut_through_limit>("cut_through_limit", Within{1e-12, 0.5},
                                          "accepted chance of cutting through a zone")
            .is(Input::chosen)
            .optional())
        .rule(rule_by<&require_room_of>);

/// What a step takes off on the mean, over the depth of the scratches before it: as the rules say, else so much that no more than
/// short_share of the spots stop short of that depth.
///
///   overcut = 1 / (1 - z removed_cv),   Q(z) = short_share
///
/// @param rules  validated
/// @return       overcut (dimensionless), 1 to 20
/// Throws:    BadInput where that is more than 20: the hand is too uneven for so small a share
/// NaN:       rejected by validate()
/// Accuracy:  1e-14 relative up to 2
/// Source:    removal normal from spot to spot with removed_cv, as in cut_through(): assumption
double overcut_of(const Rules& rules);

/// What a step may take off over the scratch depth before it, for the search to choose from: overcut_of(), and where the rules do
/// not state it, half as much again and twice as much.
///
/// @param rules  validated
/// @return       overcuts (dimensionless), the least first
/// Throws:    as overcut_of()
/// NaN:       rejected by validate()
/// Accuracy:  that of overcut_of()
/// Source:    half as much again and twice as much: assumption
std::vector<double> overcuts_of(const Rules& rules);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/plan/work/rules.hpp"
#endif
