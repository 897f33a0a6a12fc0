// The work behind risk/compare.hpp: defines what it declares.
#pragma once

#include <string>
#include <vector>

#include "levigate/risk/compare.hpp"

#include "levigate/bench/work/laid.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/risk/work/paired.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Comparison compare(const Bench& bench, const std::vector<std::string>& sequence,
                                 const SimulateOptions& options) {
  detail::require_simulable(options, "compare");
  Comparison result{evaluate(bench, sequence), plan(bench), 0, options.seed};
  if (!result.best.found) return result;
  const Workings& workings = detail::workings_now(bench.laid());
  result.minutes =
      detail::paired_minutes(bench, detail::paired_sequence(workings, result.taken),
                             detail::paired_sequence(workings, result.best), options, result.draws);
  return result;
}

}  // namespace levigate
