// What to measure before a day of work, ranked by how far it narrows the minutes for the time it takes.
#pragma once

#include "levigate/bench/bench.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/risk/calibration.hpp"
#include "levigate/risk/simulate.hpp"

namespace levigate::inline v0 {

/// What to measure for a plan. A patch is worked with each backing of the plan, as its sheet comes first; of each kind the best one
/// is kept.
///
/// A reading changes what is believed as learn() would take it. How far it narrows the belief hangs on its error alone, not on what
/// is read: the belief after it has the same means, noise and one more observation. The plan is simulated with it.
///
///   gain_per_hour = ln(fold_before / fold_after) / (minutes / 60),   fold = P90 / P10 of the minutes
///
/// @param bench    job, stack, shop and journal
/// @param plan     of what is left to do there
/// @param options  of the simulations, each with the same draws
/// @return         measurements, the best first; none of a kind that does not apply
/// Throws:    as simulate()
/// NaN:       does not occur
/// Accuracy:  that of quantiles of so many draws; the same draws before and after
/// Source:    Belief; patch_table, prior_table
Calibration calibrate(const Bench& bench, const Plan& plan, const SimulateOptions& options = {});

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/risk/work/calibrate.hpp"
#endif
