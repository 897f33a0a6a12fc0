// Sheets that suffice for a plan in nine of ten draws.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/bench/work/laid.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/buying.hpp"
#include "levigate/risk/simulate_options.hpp"
#include "levigate/risk/work/drawn_bench.hpp"
#include "levigate/risk/work/simulate_body.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Tells the pieces of each step at the least quantile at which those of all steps suffice in nine of ten draws.
inline void tell_sheets_needed(const Bench& bench, const Plan& plan, const SimulateOptions& options,
                               Buying& buying) {
  const Workings& workings = workings_now(bench.laid());
  const std::vector<std::vector<double>> used = drawn_sheets(
      bench, sheets_of(workings.stack, plan), overcuts_of(workings, plan), options, options.seed);
  const std::size_t draws = used.front().size();
  std::vector<std::vector<double>> sorted = used;
  for (std::vector<double>& column : sorted) std::sort(column.begin(), column.end());
  std::vector<double> pieces(used.size());
  std::size_t enough = 0;
  for (std::size_t at = (9 * draws + 9) / 10 - 1; at < draws && 10 * enough < 9 * draws; ++at) {
    for (std::size_t step = 0; step < used.size(); ++step)
      pieces[step] = std::max(1.0, std::ceil(sorted[step][at]));
    enough = 0;
    for (std::size_t draw = 0; draw < draws; ++draw) {
      bool suffice = true;
      for (std::size_t step = 0; step < used.size(); ++step)
        suffice = suffice && used[step][draw] <= pieces[step];
      if (suffice) ++enough;
    }
  }
  buying.draws = static_cast<std::int64_t>(draws);
  buying.enough = static_cast<double>(enough) / static_cast<double>(draws);
  for (std::size_t i = 0; i < used.size(); ++i) {
    const Step& step = plan.steps[i];
    const std::optional<double> on_hand =
        bench.stack().sheets[sheet_index(bench.stack(), step.sheet)].on_hand;
    SheetsNeeded& one = buying.sheets.emplace_back();
    one.sheet = step.sheet;
    one.label = step.label;
    one.maker = step.maker;
    one.usual = sorted[i][(draws + 1) / 2 - 1];
    one.pieces = pieces[i];
    one.on_hand = on_hand;
    one.buy = on_hand ? std::max(0.0, std::ceil(pieces[i] - *on_hand)) : 0.0;
  }
}

}  // namespace detail

}  // namespace levigate
