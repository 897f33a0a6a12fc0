// Learning from a journal: a shop's numbers after the entries of a job, what was set aside, and what teaches nothing.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/observe.hpp"
#include "levigate/journal/shop_factors.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// A shop after the entries of a job, by Bayes' rule: exact for the model
///
///   ln(minutes / predicted) = -ln duty_factor - ln rate_factor(coating, backing) + noise
///   ln(depth / predicted)   =  ln scratch_factor(coating, backing) + noise
///   film - expected         =  offset(coating) + noise
///
/// where the noise of the first two is learned too. What came off a patch is read with an error, which is added to the noise of its
/// minutes. Predicted is what is computed without any factor, but that what a step has
/// to remove counts with the scratch factors as they are after these entries: a deeper scratch is not taken for a slow hand. So
/// the order of entries, and learning in several goes, changes nothing while scratches were not read anew; observations set aside
/// are judged by the shop and the entries at hand.
///
/// Readings of a film count as in a plan (FilmSoFar), but that they contradict the coats by the prior of a wet comb. Those that do, or
/// contradict each other, teach nothing until the film is read again.
///
/// Lines of the job that the shop has learned are not learned again, so that one may learn from a journal whenever it has grown. A
/// job's name stands for one piece of work: the journal of another one needs another.
///
/// @param shop     what was known before; Shop{}: nothing
/// @param job      that the entries belong to
/// @param stack    that the sheets are of
/// @param entries  of one journal, in order, from its first line on
/// @return         the shop, observations set aside, and entries that teach nothing
/// Throws:    as observe(), validate(Shop)
/// NaN:       rejected in shop, job and stack; of entries see observe()
/// Accuracy:  1e-9 relative
/// Source:    Belief; prior_table, outlier_source
Learned learn(const Shop& shop, const Job& job, const Stack& stack,
              const std::vector<Entry>& entries);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/learn.hpp"
#endif
