// The job as it stands after what was done: plan() of it is the plan of what remains.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// The job after the steps done. plan() of it plans what remains. It does not repeat sheets that are done, unless the work needs
/// it.
///
/// A worked zone carries the scratches of its last sheet. Its defects and its peel are gone. Its film is the later gauge reading,
/// less the rounds below the last one. Without a reading it is the earlier film less the removal:
///
///   read:  mean' = mean_read - below_um,   sd' = sd_read,   mean_se'^2 = mean_se_read^2 + u(below_um)^2
///   else:  mean' = mean - R,   sd' = sqrt(sd^2 + (removed_cv R)^2),   R the film taken off so far
///
/// A gauge sees every round, and rounds given by their coats are as uncertain as a wet comb: u is
/// uncertainty_um() of it.
/// R is what each step says, else what the scratches it found ask for, or the peel. Unevenness counts once: that of R is in sd',
/// that of what is still to come in the budget of the plan. Here the two are independent. In the plan of the whole
/// job they add up at one spot. A new budget is therefore a little larger than what was left of the old one.
/// What is uncertain about the film (its standard errors) stays as it was. A zone that no step worked stays as it is.
///
/// @param job    as it was before the first of the steps
/// @param stack  with the sheets of the steps; its on_hand is not counted down
/// @param done   the steps, in order; one without zones worked all that a plan would have it work
/// @param films  by the name of the zone: of all rounds, as a gauge reads them, read since the last step
/// @return       the job; where every zone meets the target, plan() says that nothing is to be done
/// Throws:    BadInput for a sheet or zone that is not there, a zone named twice, a step that is not finer than what a zone
///            carried where neither removal_um nor films tells what it took off, and where no film above the reserve is left;
///            OutOfRange for removal_um outside 0 to 10 000; what plan() throws for the job
/// NaN:       rejected
/// Accuracy:  that of plan()
/// Source:    that of plan(); gauge_table; independent unevenness: assumption
Job present(const Job& job, const Stack& stack, const std::vector<DoneStep>& done,
            const std::map<std::string, Film>& films = {});

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/recover/work/present.hpp"
#endif
