// The work behind journal/learn.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "levigate/journal/learn.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/faults.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/journal/shop_factors.hpp"
#include "levigate/journal/struck.hpp"
#include "levigate/journal/work/learn_films.hpp"
#include "levigate/journal/work/learn_pace.hpp"
#include "levigate/journal/work/learn_scratches.hpp"
#include "levigate/journal/work/observer.hpp"
#include "levigate/plan/factors.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The row of a job, made where there is none.
inline LearnedJob& job_row(std::vector<LearnedJob>& jobs, const std::string& name) {
  const auto row = std::find_if(jobs.begin(), jobs.end(),
                                [&](const LearnedJob& one) { return one.job == name; });
  return row != jobs.end() ? *row : jobs.emplace_back(LearnedJob{name});
}

}  // namespace detail

LEVIGATE_WORK Learned learn(const Shop& shop, const Job& job, const Stack& stack,
                            const std::vector<Entry>& all) {
  const std::vector<Entry> entries = without_struck(all);
  validate(shop);
  const auto lines = static_cast<std::size_t>(std::count_if(
      entries.begin(), entries.end(), [&](const Entry& entry) { return entry.job == job.name; }));
  Learned learned{shop, {}, {}};
  std::size_t known = 0;
  if (lines > 0) {
    LearnedJob& row = detail::job_row(learned.shop.jobs, job.name);
    known = row.lines;
    learned.lines_before = std::min(known, lines);
    row.lines = std::max(known, lines);
  }
  const auto observed = [&](const Factors& factors) {
    const Workings workings = levigate::workings(job, stack, factors);
    return detail::Observer(entries, workings, job, known).observe();
  };
  const Observed seen = observed({});
  learned.unmatched = seen.unmatched;
  learned = detail::learn_films(std::move(learned), seen.films);
  learned = detail::learn_scratches(std::move(learned), seen.scratches);
  Factors scratches;
  for (const SheetFactors& sheet : factors_of(learned.shop, job, stack).sheets) {
    scratches.sheets.push_back({.rate = 1, .scratch = sheet.scratch});
  }
  return detail::learn_pace(std::move(learned), observed(scratches).paces);
}

}  // namespace levigate
