// Where to go back to for a mark: which step first, how much to take off with it, and what if the mark is seen again.
#pragma once

#include <vector>

#include "levigate/plan/job.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/way_back.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// Where to go back to for a mark, by dynamic programming: best_policy() over how deep the mark is by diagnose().
///
/// Going back to a step takes off what the steps after it do not take off anyway, up to a depth. The later steps then follow as
/// in the plan, and the finisher looks again. Where little may be enough, as for haze, the result tries finer steps first.
/// The legs say the same as a hand works it, with looks at even depths: best_legs(), on a patch round the mark or on the whole
/// zone, whichever is expected to take less. patch_width_mm() says how wide. A try pays a look and every change; a leg pays
/// no change to go on with the last sheet after a look. There is no way back where no leg is worth a look.
/// The tries are for one mark. A second call with these tries among the steps done takes the mark for a new one. There is no way
/// back if the first try does not pay or the film does not allow it. film_um is what the budget of the zone
/// (rules.cut_through_limit) leaves. Another round costs round_minutes and all steps again.
///
/// @param job    whose zones, coating and rules count
/// @param stack  the sheets that the steps name
/// @param done   the steps, in order, at least one of them in the zone of the mark
/// @param mark   what an inspection showed
/// @return       the tries in order, or why there are none and what remains
/// Throws:    what diagnose() throws
/// NaN:       rejected
/// Accuracy:  exact for the needs of diagnose(), which are rounded up to a tenth
/// Source:    best_policy(); minutes and film as in plan()
WayBack go_back(const Job& job, const Stack& stack, const std::vector<DoneStep>& done,
                const Mark& mark);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/recover/work/go_back.hpp"
#endif
