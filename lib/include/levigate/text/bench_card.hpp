// The bench card: a plan as one works from it, step by step, readable aloud.
#pragma once

#include <string>

#include "levigate/error.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// The bench card of a plan: plain text, at most card_columns wide.
/// Throws: BadInput where the plan was not made from this job and stack
std::string card(const Job& job, const Stack& stack, const Plan& plan);

/// The same with how the plan may turn out: between what the minutes of each step lie, and a section on time, paper and film.
/// Throws: BadInput where plan or simulation were not made from this job and stack
std::string card(const Job& job, const Stack& stack, const Plan& plan,
                 const Simulation& simulation);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/bench_card.hpp"
#endif
