// A sequence that one is used to against the best plan: slower in how many of a hundred cases, and by how much.
#pragma once

#include <string>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/error.hpp"
#include "levigate/risk/comparison.hpp"
#include "levigate/risk/simulate_options.hpp"

namespace levigate::inline v0 {

/// A sequence taken as given beside the best plan of the same bench. Both are worked out in each draw, with the same numbers: what
/// makes one slow makes the other slow too, so that their difference is known far better than the minutes of either.
///
///   minutes = minutes of the draw x (1 + back / minutes at usual numbers)
///
/// @param bench     where both start from, with what its shop knows
/// @param sequence  ids or labels of sheets, in order; see sheet_called()
/// @param options   draws, seed, threads, progress
/// @return          both plans, and their minutes [min] over the draws
/// Throws:    as evaluate(), plan() and simulate()
/// NaN:       does not occur
/// Accuracy:  a share of n draws is within its exact interval in nine of ten cases; the same for any number of threads
/// Source:    draws of simulate(); that going back takes its usual share in each draw: assumption
Comparison compare(const Bench& bench, const std::vector<std::string>& sequence,
                   const SimulateOptions& options = {});

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/risk/work/compare.hpp"
#endif
