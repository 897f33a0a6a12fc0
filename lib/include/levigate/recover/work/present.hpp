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
#include "levigate/recover/work/film_walk.hpp"
#include "levigate/recover/work/present_body.hpp"
#include "levigate/recover/work/zone_done.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Job present(const Job& job, const Stack& stack, const std::vector<DoneStep>& done,
                          const std::map<std::string, Film>& films) {
  std::vector<detail::FilmRead> reads;
  for (const auto& [name, film] : films)
    reads.push_back({.after_steps = done.size(), .zone = zone_index(job, name), .film = film});
  const Workings workings = levigate::workings(job, stack);
  return present(workings, job, detail::standing_of(workings, job, done, reads));
}

}  // namespace levigate
