// From the root of the checkout: the plan for the walnut clock case, as a sheet for the bench.
#include <iostream>

#include "levigate/io/json.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/text/bench_sheet.hpp"

int main() {
  const levigate::Job job = levigate::load_job("data/demo/job.json");
  const levigate::Stack stack = levigate::load_stack("data/demo/stack.json");
  const levigate::Plan plan = levigate::plan(job, stack);
  std::cout << levigate::sheet_text(levigate::bench_sheet(plan));
}
