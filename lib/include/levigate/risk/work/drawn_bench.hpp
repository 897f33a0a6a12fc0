// What a simulation on a bench draws its inputs from, and the sequence of a plan on it.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/bench/work/laid.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/work/knobs.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/share.hpp"
#include "levigate/risk/simulate_options.hpp"
#include "levigate/risk/work/draw.hpp"
#include "levigate/risk/work/learned_inputs.hpp"
#include "levigate/risk/work/pace.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The sheets of a plan. Throws: BadInput where there is no plan, or a sheet of it is not in the stack.
inline std::vector<std::size_t> sheets_of(const Stack& stack, const Plan& plan) {
  if (plan.steps.empty()) {
    throw BadInput("there is no plan" +
                   (plan.why ? ", blocked by: " + std::string(to_string(plan.why->blocked_by))
                             : std::string()) +
                   ", in simulate");
  }
  std::vector<std::size_t> sheets;
  for (const Step& step : plan.steps) sheets.push_back(sheet_index(stack, step.sheet));
  return sheets;
}

/// The overcuts of the steps of a plan; the least where a step finds no scratches.
inline std::vector<double> overcuts_of(const Workings& workings, const Plan& plan) {
  std::vector<double> overcuts;
  for (const Step& step : plan.steps)
    overcuts.push_back(step.overcut.value_or(*workings.job.rules.overcut));
  return overcuts;
}

/// Share of the values that a test holds for, with its interval.
template <typename Value, typename Test>
Share share_of(const std::vector<Value>& values, Test test) {
  return exact_share(std::count_if(values.begin(), values.end(), test),
                     static_cast<std::int64_t>(values.size()));
}

/// Throws: OutOfRange for draws outside 10 to 1e6, more than 1024 threads, or spent_minutes outside 0 to 1e5.
inline void require_simulable(const SimulateOptions& options, std::string_view where) {
  require_range(static_cast<double>(options.draws), 10.0, 1e6, "draws", "", where);
  require_range(options.threads, 0.0, 1024.0, "threads", "", where);
  if (options.spent_minutes)
    require_range(*options.spent_minutes, 0.0, 1e5, "spent_minutes", "min", where);
}

/// Calls run(setup, inputs) for these sheets, with the inputs that the shop and the bands of a bench give.
template <typename Run>
auto with_inputs(const Bench& bench, const std::vector<std::size_t>& sheets, bool bands, Run run) {
  const Workings& workings = workings_now(bench.laid());
  const Setup setup = setup_of(workings, sheets);
  if (bench.shop() && !tells_pace(*bench.shop()))
    return run(setup, ScratchedInputs(setup, *bench.shop(), bands));
  if (bench.shop())
    return run(setup, LearnedInputs(setup, *bench.shop(), PaceDraws(*bench.shop(), setup), bands));
  return bands ? run(setup, DrawnInputs(setup)) : run(setup, GivenInputs{});
}

}  // namespace detail

}  // namespace levigate
