// The plan: a sequence worked out step by step and zone by zone, with what it adds up to.
#pragma once

#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// The best plan for a job from a stack, with the whole trade-off beside it; or why there is none.
///
/// The choice is exact: among all sequences that keep the rules, none is better in what the job prefers. See search().
///
/// @code
/// const Job job = load_job("data/demo/job.json");
/// const Stack stack = load_stack("data/demo/stack.json");
/// const Plan best = plan(job, stack);
/// best.steps.size();         // 4
/// best.steps.front().sheet;  // "b-400"
/// @endcode
///
/// Throws:    BadInput, OutOfRange where job or stack cannot be used; UnknownGrade, AmbiguousLabel for a sheet
///            whose label does not settle its size
/// NaN:       rejected
/// Accuracy:  sums to a millisecond, a picometre and a hundredth of a cent; as a prediction, rates are uncertain by a
///            factor of 2 to 3 until calibrated
/// Source:    those of the formulas in surface/ and film/
Plan plan(const Job& job, const Stack& stack);

/// A sequence taken as given, by the ids or labels of its sheets, see sheet_called(): the same figures as a plan, and every rule it breaks as a finding.
///
/// Throws:    as plan(); BadInput for an empty sequence; what sheet_called() throws
/// NaN:       rejected
/// Accuracy:  that of plan()
/// Source:    that of plan()
Plan evaluate(const Job& job, const Stack& stack, const std::vector<std::string>& sequence);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/plan/work/plan.hpp"
#endif
