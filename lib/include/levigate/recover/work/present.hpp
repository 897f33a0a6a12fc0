// The work behind recover/present.hpp: defines what it declares.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "levigate/recover/present.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/film/film.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/work/present_body.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Job present(const Job& job, const Stack& stack, const std::vector<DoneStep>& done,
                          const std::map<std::string, Film>& films) {
  return present(workings(job, stack), job, done, films);
}

}  // namespace levigate
