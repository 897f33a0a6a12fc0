// Two plans side by side: the sequence one is used to, and the best from the same drawer.
#pragma once

#include <string>

#include "levigate/error.hpp"
#include "levigate/plan/plan_values.hpp"

namespace levigate::inline v0 {

/// The habitual sequence beside the best: figures, sheets, and every rule that the habitual one breaks.
/// Throws: BadInput where the two are plans of different zones
std::string comparison_card(const Plan& taken, const Plan& best);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/comparison.hpp"
#endif
