// Plans of many jobs at once, each alone with the same paper: for an order book, a study or a server.
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/progress.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// How many jobs are to be planned.
struct PlanManyOptions {
  std::optional<Rules> rules{};  ///< stand for those of each job; none: each job keeps its own
  unsigned threads = 0;  ///< 0: as many as the machine has, 1 to 1024; the result is the same
  Progress progress{};   ///< called on the caller's thread alone; false: stop with the jobs so far
};

/// A plan, or why there is none, and the bench that it was made on.
struct PlanOnBench {
  Bench bench;
  Plan plan;
};

/// What came of one job: its plan, or the error that plan() throws for it. The code of the error tells its class.
using PlanOrError = std::variant<PlanOnBench, Error>;

/// The best plan of each job, as plan() of plan/plan.hpp has it: each piece alone takes the whole stack. For pieces that share the paper
/// see plan_together() of risk/together.hpp.
///
/// A job that cannot be used costs the others nothing: its error stands in its place. A stack or rules that fit no job are thrown.
///
/// @param jobs     any number, planned in any order
/// @param stack    the paper on hand
/// @param options  see PlanManyOptions
/// @return         one for each job, in their order; fewer where progress stopped it: those of the first jobs
/// Throws:    what validate() and grades_of() throw for the stack; as validate(Rules); OutOfRange for more than 1024 threads; what
///            progress throws
/// Source:    -
std::vector<PlanOrError> plan_many(const std::vector<Job>& jobs, const Stack& stack,
                                   const PlanManyOptions& options = {});

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/bench/work/plan_many.hpp"
#endif
