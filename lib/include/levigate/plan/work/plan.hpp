// The work behind plan/plan.hpp: defines what it declares.
#pragma once

#include <string>
#include <vector>

#include "levigate/plan/plan.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/work/plan_body.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Plan plan(const Job& job, const Stack& stack) { return plan(workings(job, stack)); }

LEVIGATE_WORK Plan evaluate(const Job& job, const Stack& stack,
                            const std::vector<std::string>& sequence) {
  return evaluate(workings(job, stack), sequence);
}

}  // namespace levigate
