// The work behind journal/observe.hpp: defines what it declares.
#pragma once

#include <vector>

#include "levigate/journal/observe.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/journal/struck.hpp"
#include "levigate/journal/work/observer.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Observed observe(const Job& job, const Stack& stack,
                               const std::vector<Entry>& entries) {
  const Workings workings = levigate::workings(job, stack);
  const std::vector<Entry> counted = without_struck(entries);
  return detail::Observer(counted, workings, job, 0).observe();
}

}  // namespace levigate
