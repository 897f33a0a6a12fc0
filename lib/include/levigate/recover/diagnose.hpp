// Which step made a mark, and how much has to come off until it is gone.
#pragma once

#include <vector>

#include "levigate/plan/job.hpp"
#include "levigate/recover/cause.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// The same from a job and a stack.
Diagnosis diagnose(const Job& job, const Stack& stack, const std::vector<DoneStep>& done,
                   const Mark& mark);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/recover/work/diagnose.hpp"
#endif
