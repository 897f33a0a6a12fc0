// A plan worked out many times over, with every uncertain number drawn anew: what minutes, sheets and film may become.
#pragma once

#include "levigate/bench/bench.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/risk/simulate_options.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// A plan simulated. Each draw takes every believed input over its band, see drawn(). Rules that are choices stay the same. The
/// sequence is then computed again. With a shop, the minutes of removing 1 um are drawn from what journals taught, and so are the
/// scratches that were read. Film and
/// orange peel of each zone are drawn by their own errors, see drawn_film() and drawn_peel_um(). Every cm2 of a zone gets a film and a depth of its own: N(mean, sd) and D N(1, removed_cv).
///
/// A draw depends on the seed, its number and the names of inputs and zones: not on the number of draws, of threads or of other
/// inputs and zones. Where `progress` stops it, the result is that of the draws done, as if so many had been asked for.
///
/// @param bench    where the plan starts from; with a shop, the pace is drawn from what it knows, see PaceDraws
/// @param plan     whose sheets are worked in this order
/// @param options  draws, seed, threads, progress
/// @return         quantiles, means, shares; see Simulation for units
/// Throws:    BadInput where there is no plan, a sheet of it is not in the stack, or fewer than 10 draws take longer than spent_minutes; OutOfRange for draws outside 10 to 1e6, more
///            than 1024 threads, or more than 1e11 spots over all draws; what an input near an end of its band makes the formulas
///            throw; what progress throws
/// NaN:       does not occur
/// Accuracy:  the same to the bit for any number of threads; a share of n draws is within its exact interval in nine of ten cases
/// Source:    bands: data/profiles; independent inputs, a spot per cm2: assumptions
Simulation simulate(const Bench& bench, const Plan& plan, const SimulateOptions& options = {});

/// The same on a bench of a job and a stack alone.
Simulation simulate(const Job& job, const Stack& stack, const Plan& plan,
                    const SimulateOptions& options = {});

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/risk/work/simulate.hpp"
#endif
