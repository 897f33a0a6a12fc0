// Whether a drawer of paper makes sense: labels, order, doubles, gaps, stray grains.
#pragma once

#include <vector>

#include "levigate/error.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/stack/step_rule.hpp"

namespace levigate::inline v0 {

/// The fewest standard grades that bridge a gap, for each system sold as coated abrasive that has them.
std::vector<Bridge> bridges(double coarse_um, double fine_um, const StepRule& rule);

/// Everything to say of a stack under the step-up rule, in this order: labels, single sheets, numbers, neighbours by size.
/// Throws: BadInput, OutOfRange where the stack or the rule is not valid; labels never throw here
std::vector<Finding> check(const Stack& stack, const StepRule& rule = {});

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/stack/work/check.hpp"
#endif
