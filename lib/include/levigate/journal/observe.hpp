// What the entries of a journal show of a job: minutes, scratches and film as they were, each beside what was computed.
#pragma once

#include <vector>

#include "levigate/error.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// What the entries of a journal show of a job, each beside what is computed for this job and stack as they are.
///
/// Each zone has its own sequence: the sheets that entries name for it or for all zones. Minutes of a step in several entries add
/// up; where one of them is of all zones, so do the zones. A removal that an entry gives replaces the computed one. A width
/// tells a depth by depth_of_width_um(). The minutes of a patch are compared with those of what came off it, by gauge, by weight or
/// by the peel of a zone. What is of a coating or a backing without a name of its own teaches nothing.
///
/// @param job      that the entries belong to
/// @param stack    that the sheets are of
/// @param entries  of one journal, in order; those of other jobs are reported as unmatched
/// @return         observations, and entries that were meant to teach and do not, with the reason
/// Throws:    as workings(), counted()
/// NaN:       rejected in job and stack; an entry that holds one is reported as unmatched, or removal_um refused
/// Accuracy:  that of plan(), contact()
/// Source:    that of effort(), scratch_depth_um(), ra_um()
Observed observe(const Job& job, const Stack& stack, const std::vector<Entry>& entries);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/observe.hpp"
#endif
