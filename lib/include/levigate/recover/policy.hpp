// Where to go back to, as a problem of choice alone: which steps, how much each takes off, and when to look.
// How deep a mark is is known by chance only. Each way back takes off as much as one likes. Whether that was enough shows at the end.
#pragma once

#include <algorithm>
#include <cstddef>
#include <limits>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/recover/need.hpp"

namespace levigate::inline v0 {

/// Going back to one step and climbing up again from it.
struct Climb {
  double fixed_minutes = 0;
  double minutes_per_um = 0;
  double above_um = 0;
  double reach_um = std::numeric_limits<double>::infinity();

  friend bool operator==(const Climb&, const Climb&) = default;
};

template <std::same_as<Climb> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Climb", "Going back to one step and climbing up again from it.",
    member<&Value::fixed_minutes>("fixed_minutes", at_least(0),
                                  "of the steps after it, changing, looking"),
    member<&Value::minutes_per_um>("minutes_per_um", at_least(0), "of the step itself"),
    member<&Value::above_um>("above_um", at_least(0), "that the steps after it take off anyway"),
    member<&Value::reach_um>("reach_um", at_least(0), "deepest that it takes out; null: any")
        .with_infinity("null"));

/// One try of a policy: go back to a step and take off what the needs up to one ask for.
struct Attempt {
  std::size_t climb = 0;  ///< index of the climb
  std::size_t need = 0;   ///< index of the deepest need that it meets
  friend bool operator==(const Attempt&, const Attempt&) = default;
};

/// What to try first, and what next each time the mark is seen again. After the last one, another round.
struct Policy {
  std::vector<Attempt> attempts;
  double expected_minutes = 0;  ///< another round, where it comes to that, included [min]
  double gone_chance = 0;       ///< that one of the attempts removes the mark
};

namespace detail {

/// What a climb takes off where `off_um` is needed [um]: at least what the steps after it take anyway.
inline double climb_um(const Climb& climb, double off_um) {
  return std::max(off_um, climb.above_um);
}

/// Minutes of a climb that takes off climb_um().
inline double climb_minutes(const Climb& climb, double off_um) {
  return climb.fixed_minutes + climb.minutes_per_um * (climb_um(climb, off_um) - climb.above_um);
}

}  // namespace detail

/// The policy of least expected minutes.
///
/// Once the needs up to a have been met in vain, so much was taken off in all: the state is a alone, and
///
///   V(a) = min( stop,  min over climb k and need b > a of  c_k(n_b - n_a) + P(need > n_b | need > n_a) V(b) )
///
/// where n_b stays within the film and the climb reaches it. A try ends at a need; only the last need may be passed, by a climb
/// whose later steps take off more. Where every climb reaches any depth, taking off anything else helps no policy, if a coarser
/// climb costs at least what the next finer one costs down to its above_um, as it does that on its way: minutes are linear in
/// what is taken off, so the ends of the range between two needs are the best of it. Ties: the shallower need, then the earlier
/// climb.
///
/// @param needs         from least to most, chances adding up to 1
/// @param climbs        ways back
/// @param film_um       that may still come off [um], 0 to infinity
/// @param stop_minutes  of giving up: another round [min]
/// @return              the policy; no attempts where giving up at once is best
/// Throws:    BadInput where needs are empty or do not ascend, OutOfRange where a number is outside its range
/// NaN:       rejected
/// Accuracy:  1e-12 relative; tests/property/policy_oracle_test.cpp holds it to all policies of small problems
/// Source:    R. Bellman, Dynamic Programming, 1957, from memory: the principle of optimality
Policy best_policy(const std::vector<Need>& needs, const std::vector<Climb>& climbs, double film_um,
                   double stop_minutes);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/recover/work/policy.hpp"
#endif
