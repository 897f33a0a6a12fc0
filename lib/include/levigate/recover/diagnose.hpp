// Which step made a mark, and how much has to come off until it is gone.
#pragma once

#include <vector>

#include "levigate/plan/job.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// Which step made a mark, by Bayes' rule.
///
/// Each step leaves scratches of its own grain and, now and then, of a stray grain; what later steps took off since decides
/// how many of which depth are left (MarkSource). At the spot of the mark as much may have come off as elsewhere, or more or
/// less of it by removed_cv, or one step may have missed it (spot_nodes). The chance of a cause is the share it has in all
/// marks of this kind, width and way:
///
///   scratch           density at its depth, and nothing else that shows on the spot
///   cluster, swirl    at least so many of one source, the deepest at its depth; a swirl runs in an arc
///   haze              share of the surface under scratches too fine to be told apart
///   wave              the levelling step, where there was peel
///   witness line      no step: the round is sanded through; where rounds melt together, all of them are
///
/// The depth that has to come off counts what comes off unevenly: a spot that got less gets less again.
///
/// @param job    whose zones, coating and rules count
/// @param stack  the sheets that the steps name
/// @param done   the steps, in order
/// @param mark   what an inspection showed
/// @return       causes and needs; no causes where no step that was done explains the mark, with the reason in signs
/// Throws:    BadInput for a sheet or zone that is not there, for a mark that contradicts itself, where nothing was done in
///            the zone; OutOfRange for a member outside its range
/// NaN:       rejected
/// Accuracy:  chances to 0.01 as a result of the model; as a statement on the world no better than the assumptions of
///            data/profiles/inspection.json, all of them named there
/// Source:    model: contact(), removal; a Poisson process thinned by wear: computed
Diagnosis diagnose(const Job& job, const Stack& stack, const std::vector<DoneStep>& done,
                   const Mark& mark);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/recover/work/diagnose.hpp"
#endif
