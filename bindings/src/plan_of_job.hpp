// A plan in Python remembers what it was made for, so that it can be printed, drawn and simulated.
#pragma once

#include <utility>

#include "levigate/bench/bench.hpp"
#include "levigate/plan/plan.hpp"

namespace levigate_python {

struct PlanOfJob {
  levigate::Bench bench;
  levigate::Plan plan;

  /// The job that it is a plan of: what is left to do.
  const levigate::Job& job() const { return levigate::present(bench); }
  const levigate::Stack& stack() const { return bench.stack(); }
};

inline PlanOfJob plan_of(const levigate::Bench& bench) { return {bench, levigate::plan(bench)}; }

inline PlanOfJob evaluated(const levigate::Bench& bench, const std::vector<std::string>& sequence) {
  return {bench, levigate::evaluate(bench, sequence)};
}

}  // namespace levigate_python
