// What to buy before a day of work. The one question that takes a drawer with open labels.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/risk/buying.hpp"
#include "levigate/risk/simulate_options.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// What to buy: sheets, the one kind that shortens the day most, and whether open labels matter.
///
/// Sheets: the plan from the sheets whose labels are settled is worked out draw by draw. Each step has its sheets at one quantile, the
/// least at which the whole sheets of all steps suffice in nine of ten draws.
///
/// Offers: one kind more in the drawer, with no limit of sheets, and the quickest plan anew. Tried are the labels given; without any,
/// all grades of the drawer's systems, by each of its makers, on the backings that it has of that maker in that system. Grades coarser
/// than the coarsest sheet, and of a median below half of the finest, are left out. Minutes within 3 % count as equal, so that what saves
/// less is no offer.
///
/// Labels: the plan under each meaning of an open label, and under each of the others together. One that no system has is tried as every
/// FEPA P grade in the drawer's range.
///
/// @param job      as it was before the first step
/// @param stack    the paper on hand; labels may be open
/// @param shop     what journals taught; none: nothing
/// @param journal  entries of this job, in order
/// @param labels   that a shop sells; empty: see above
/// @param options  draws, seed, threads, progress
/// @return         facts of all three; minutes at usual numbers [min]
/// Throws:    as Bench, plan() and simulate(); BadInput where open labels have more than 256 meanings together;
///            AmbiguousLabel, UnknownGrade for a label of `labels` that does not settle its size
/// NaN:       rejected
/// Accuracy:  that of plan(); sheets those of the draws
/// Source:    that an offer has the backing and price of its maker's other sheets: assumption
Buying buy(const Job& job, const Stack& stack, const std::optional<Shop>& shop = std::nullopt,
           const std::vector<Entry>& journal = {}, const std::vector<std::string>& labels = {},
           const SimulateOptions& options = {});

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/risk/work/buy.hpp"
#endif
