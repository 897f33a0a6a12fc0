// The work behind recover/diagnose.hpp: defines what it declares.
#pragma once

#include <vector>

#include "levigate/recover/diagnose.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/work/diagnose_body.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Diagnosis diagnose(const Job& job, const Stack& stack,
                                 const std::vector<DoneStep>& done, const Mark& mark) {
  return diagnose(workings(job, stack), done, mark);
}

}  // namespace levigate
