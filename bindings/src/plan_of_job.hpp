// A plan in Python remembers what it was made for, so that it can be printed and drawn.
#pragma once

#include <memory>

#include "levigate/plan/plan.hpp"

namespace levigate_python {

struct PlanOfJob {
  std::shared_ptr<const levigate::Job> job;
  std::shared_ptr<const levigate::Stack> stack;
  levigate::Plan plan;
};

}  // namespace levigate_python
