// The step-up rule: how much finer the next sheet may be.
#pragma once

#include <string>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/grade/ratio.hpp"
#include "levigate/stack/rule_table.hpp"

namespace levigate::inline v0 {

/// A step from a sheet of size d1 to a finer one of size d2 is allowed where
/// min_ratio <= d1/d2 <= max_ratio. Source of the defaults: data/profiles/rules.json.
struct StepRule {
  double min_ratio = rule_table[0].min_ratio.value;
  double max_ratio = rule_table[0].max_ratio.value;

  friend bool operator==(const StepRule&, const StepRule&) = default;
};

/// How a step lies to the rule.
enum class StepFit { too_short, allowed, too_long };

/// How a step from coarse_um [um] to fine_um [um] lies to the rule.
///
/// @param coarse_um  size stepped from [um], above 0
/// @param fine_um    size stepped to [um], above 0
/// @param rule       the bounds
/// @return           its fit; bounds count as allowed, see ratio_within()
/// Throws:    nothing
/// NaN:       too_short
/// Source:    the step-up rule, common practice
inline StepFit fit_of(double coarse_um, double fine_um, const StepRule& rule) {
  if (ratio_within(coarse_um, fine_um, rule.min_ratio, rule.max_ratio)) return StepFit::allowed;
  return coarse_um / fine_um > rule.max_ratio ? StepFit::too_long : StepFit::too_short;
}

/// Throws: BadInput unless min_ratio < max_ratio.
inline void require_room(const StepRule& rule, std::string_view where) {
  if (rule.min_ratio < rule.max_ratio) return;
  throw BadInput::of("min_ratio",
                     "min_ratio = " + detail::number_text(rule.min_ratio) +
                         " must be below max_ratio = " + detail::number_text(rule.max_ratio) +
                         ", in " + std::string(where),
                     {"max_ratio"});
}

/// The two members, for this description and that of all rules.
template <typename Owner>
inline constexpr Member max_ratio_member =
    member<&StepRule::max_ratio, Owner>("max_ratio", Within{1, 1e3}, "largest size ratio of a step")
        .is(Input::chosen)
        .optional();
template <typename Owner>
inline constexpr Member min_ratio_member =
    member<&StepRule::min_ratio, Owner>("min_ratio", Within{1, 1e3},
                                        "smallest size ratio of a step")
        .is(Input::chosen)
        .optional();

template <std::same_as<StepRule> Value>
inline constexpr auto described<Value> = describe<Value>("StepRule",
                                                         "How much finer the next sheet may be.",
                                                         max_ratio_member<StepRule>,
                                                         min_ratio_member<StepRule>)
                                             .rule(rule_by<&require_room>);

}  // namespace levigate
