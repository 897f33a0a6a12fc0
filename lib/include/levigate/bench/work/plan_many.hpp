// The work behind bench/plan_many.hpp: defines what it declares.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "levigate/bench/plan_many.hpp"

#include "levigate/bench/bench.hpp"
#include "levigate/detail/crew.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

inline PlanOrError plan_or_error(Job job, const Stack& stack, const std::optional<Rules>& rules) {
  if (rules) job.rules = *rules;
  try {
    Bench bench(std::move(job), stack);
    Plan found = plan(bench);
    return PlanOnBench{std::move(bench), std::move(found)};
  } catch (const Error& error) {
    return error;
  }
}

}  // namespace detail

LEVIGATE_WORK std::vector<PlanOrError> plan_many(const std::vector<Job>& jobs, const Stack& stack,
                                                 const PlanManyOptions& options) {
  detail::require_range(options.threads, 0.0, 1024.0, "threads", "", "plan_many");
  if (options.rules) validate(*options.rules, "plan_many");
  validate(stack);
  grades_of(stack);
  std::vector<std::optional<PlanOrError>> slots(jobs.size());
  const std::int64_t done =
      detail::share_out({.of = static_cast<std::int64_t>(jobs.size())}, options.threads,
                        options.progress, [&](std::int64_t i) {
                          const auto at = static_cast<std::size_t>(i);
                          slots[at] = detail::plan_or_error(jobs[at], stack, options.rules);
                        });
  slots.resize(static_cast<std::size_t>(done));
  std::vector<PlanOrError> result;
  result.reserve(slots.size());
  for (std::optional<PlanOrError>& slot : slots) result.push_back(std::move(*slot));
  return result;
}

}  // namespace levigate
