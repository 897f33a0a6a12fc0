// The bench card: a plan explained, from its zones over its steps to what its figures rest on.
#pragma once

#include <string>

#include "levigate/error.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/risk/simulation.hpp"

namespace levigate::inline v0 {

/// The bench card of a plan: plain text, at most card_columns wide. Its minutes are at usual numbers, and it says so.
std::string card(const Plan& plan);

/// The same with how the plan may turn out. Its minutes of steps are medians, with what they lie between four times in five; a
/// section on time, paper and film follows the steps.
/// Throws: BadInput where the simulation has not the steps and zones of the plan
std::string card(const Plan& plan, const Simulation& simulation);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/bench_card.hpp"
#endif
