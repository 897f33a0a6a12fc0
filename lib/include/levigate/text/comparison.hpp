// Two plans side by side: the sequence one is used to, and the best from the same drawer.
#pragma once

#include <string>

#include "levigate/error.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/risk/comparison.hpp"

namespace levigate::inline v0 {

/// The habitual sequence beside the best: figures, sheets, and every rule that the habitual one breaks.
/// Throws: BadInput where the two are plans of different zones
std::string comparison_card(const Plan& taken, const Plan& best);

/// The same with how often the habitual one is slower over the same draws, and by how much.
/// Throws: as that
std::string comparison_card(const Comparison& comparison);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/comparison.hpp"
#endif
