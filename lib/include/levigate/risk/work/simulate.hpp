// The work behind risk/simulate.hpp: defines what it declares.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "levigate/risk/simulate.hpp"

#include "levigate/bench/bench.hpp"
#include "levigate/bench/work/laid.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/simulate_options.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/risk/work/paired.hpp"
#include "levigate/risk/work/simulate_body.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Simulation simulate(const Bench& bench, const Plan& plan,
                                  const SimulateOptions& options) {
  constexpr auto where = "simulate";
  detail::require_simulable(options, where);
  const Workings& workings = detail::workings_now(bench.laid());
  const std::vector<std::size_t> sheets = detail::sheets_of(workings.stack, plan);
  const std::vector<double> overcuts = detail::overcuts_of(workings, plan);
  double spots = 0;
  for (const Zone& zone : workings.job.zones) spots += zone.film ? detail::spots_of(zone) : 0.0;
  detail::require_range(spots * static_cast<double>(options.draws), 0.0, detail::most_spot_draws,
                        "spots (one per cm2) times draws", "", where);
  Simulation result = detail::with_draws(bench, sheets, overcuts, options, options.seed,
                                         [&](const auto& work, const Setup& setup) {
                                           return detail::simulated(work, setup, options);
                                         });
  if (const auto before = detail::before_learning(workings, plan)) {
    SimulateOptions as_many = options;
    as_many.draws = result.draws;
    as_many.progress = {};
    std::int64_t draws = 0;
    result.before_learning = detail::paired_minutes(
        bench, *before, detail::paired_sequence(workings, plan), as_many, draws);
  }
  return result;
}

LEVIGATE_WORK Simulation simulate(const Job& job, const Stack& stack, const Plan& plan,
                                  const SimulateOptions& options) {
  return simulate(Bench(job, stack), plan, options);
}

}  // namespace levigate
