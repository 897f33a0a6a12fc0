// The work behind risk/buy.hpp: defines what it declares.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/risk/buy.hpp"

#include "levigate/bench/bench.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/plan/work/plan_body.hpp"
#include "levigate/risk/work/offers.hpp"
#include "levigate/risk/work/open_labels.hpp"
#include "levigate/risk/work/sheets_needed.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Buying buy(const Job& job, const Stack& stack, const std::optional<Shop>& shop,
                         const std::vector<Entry>& journal, const std::vector<std::string>& labels,
                         const SimulateOptions& options) {
  detail::require_simulable(options, "buy");
  Stack settled = without_sheets(stack);
  for (const Sheet& sheet : stack.sheets) {
    if (!detail::open_label(sheet, bare_number_of(stack, sheet))) settled.sheets.push_back(sheet);
  }
  const Bench bench(job, settled, shop, journal);
  const Plan best = plan(detail::workings_now(bench.laid()));
  Buying result;
  result.job = job.name;
  result.found = best.found;
  result.why = best.why;
  result.seed = options.seed;
  if (best.found) detail::tell_sheets_needed(bench, best, options, result);
  detail::Offers(bench, labels).tell(result);
  result.labels = detail::OpenLabels(bench, stack).told();
  return result;
}

}  // namespace levigate
