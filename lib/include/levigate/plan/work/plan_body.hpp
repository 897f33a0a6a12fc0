// plan() and evaluate() of Workings.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/findings.hpp"
#include "levigate/plan/work/instructions.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/plan_of_sequence.hpp"
#include "levigate/plan/work/reliance.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/sunlight.hpp"
#include "levigate/plan/work/why.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The plan of one of the sequences found, or why there is none.
inline Plan plan_choosing(const Workings& workings, Shared& shared,
                          const std::vector<Sequence>& found, const Sequence* chosen) {
  const Job& job = workings.job;
  Plan result;
  if (!chosen) {
    tell_job(workings, result);
    result.why = why_no_plan(workings);
  } else {
    result = plan_of_sequence(workings, *chosen, shared);
    result.relies_on = reliances(workings, result.exact);
    for (const Sequence& point : tradeoff(found)) {
      result.tradeoff.push_back(plan_of_sequence(workings, point, shared));
    }
  }
  for (const std::vector<Finding>& more :
       {job_findings(workings), check(workings.stack, job.rules)}) {
    result.findings.insert(result.findings.begin(), more.begin(), more.end());
  }
  result.cautions = cautions(job);
  return result;
}

}  // namespace detail

/// plan() of what is laid out.
inline Plan plan(const Workings& workings) {
  detail::Shared shared(workings);
  const std::vector<Sequence> found = sequences_of(workings, shared.sun);
  return detail::plan_choosing(workings, shared, found,
                               found.empty() ? nullptr : &best(found, workings.job.prefer));
}

/// evaluate() of what is laid out.
inline Plan evaluate(const Workings& workings, const std::vector<std::string>& sequence) {
  if (sequence.empty())
    throw BadInput("sequence is empty: it needs at least one sheet, in evaluate");
  std::vector<std::size_t> sheets;
  for (const std::string& id : sequence) {
    sheets.push_back(sheet_called(workings.stack, workings.grades, id));
  }
  detail::Shared shared(workings);
  Plan result = plan_of_sequence(workings, summed_in_sun(workings, shared.sun, sheets), shared);
  std::vector<std::string> ids;
  for (const std::size_t sheet : sheets) ids.push_back(workings.stack.sheets[sheet].id);
  const std::vector<Finding> of_job = findings_on(job_findings(workings), ids);
  result.findings.insert(result.findings.begin(), of_job.begin(), of_job.end());
  result.relies_on = reliances(workings, result.exact);
  result.cautions = cautions(workings.job);
  return result;
}

}  // namespace levigate
