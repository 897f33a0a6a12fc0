// The work behind recover/go_back.hpp: defines what it declares.
#pragma once

#include <string>
#include <vector>

#include "levigate/recover/go_back.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/work/film_walk.hpp"
#include "levigate/recover/work/go_back_body.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK WayBack go_back(const Job& job, const Stack& stack, const std::vector<DoneStep>& done,
                              const Mark& mark) {
  const Workings workings = levigate::workings(job, stack);
  return go_back(workings, done, mark, detail::standing_of(workings, job, done, {}));
}

}  // namespace levigate
