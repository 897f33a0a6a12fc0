// The work behind recover/policy.hpp: defines what it declares.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "levigate/recover/policy.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/recover/need.hpp"
#include "levigate/recover/work/require_policy.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Policy best_policy(const std::vector<Need>& needs, const std::vector<Climb>& climbs,
                                 double film_um, double stop_minutes) {
  detail::require_policy(needs, film_um, stop_minutes, "best_policy");
  const std::size_t count = needs.size();
  std::vector<double> left(count + 1, 0.0);  // chance that the need is one of those from here on
  for (std::size_t i = count; i-- > 0;) left[i] = left[i + 1] + needs[i].probability;

  struct Choice {
    double minutes;
    std::optional<Attempt> attempt;
  };
  std::vector<Choice> best(count + 1, {0.0, std::nullopt});  // by number of needs met in vain
  for (std::size_t met = count; met-- > 0;) {
    Choice& choice = best[met];
    choice.minutes = stop_minutes;
    const double off_um = met == 0 ? 0.0 : needs[met - 1].need_um;
    for (std::size_t next = met; next < count && needs[next].need_um <= film_um; ++next) {
      const double again = left[next + 1] / left[met] * best[next + 1].minutes;
      const double deep_um = needs[next].need_um - off_um;
      for (std::size_t k = 0; k < climbs.size(); ++k) {
        if (deep_um > climbs[k].reach_um) continue;
        if (deep_um < climbs[k].above_um && next + 1 < count) continue;
        if (off_um + detail::climb_um(climbs[k], deep_um) > film_um) continue;
        const double minutes = detail::climb_minutes(climbs[k], deep_um) + again;
        if (minutes < choice.minutes) choice = {minutes, Attempt{k, next}};
      }
    }
  }
  Policy result{.attempts = {}, .expected_minutes = best[0].minutes, .gone_chance = 0};
  for (std::size_t met = 0; met < count && best[met].attempt;) {
    result.attempts.push_back(*best[met].attempt);
    met = best[met].attempt->need + 1;
    result.gone_chance = 1.0 - left[met] / left[0];
  }
  return result;
}

}  // namespace levigate
