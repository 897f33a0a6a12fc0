// The other ways that a plan was chosen from, as a table.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <set>
#include <string>
#include <vector>

#include "levigate/plan/plan_values.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/phrases.hpp"

namespace levigate::inline v0 {

namespace detail {

inline void say_tradeoff(Page& page, const Plan& plan) {
  if (plan.tradeoff.size() < 2) return;
  constexpr std::size_t most = 10;
  page.title(fmt::format(
      "Other ways, at usual numbers: {} in all. None is beaten in all of time with going back, "
      "film, cost and steps on the edge of max_ratio.",
      plan.tradeoff.size()));
  std::vector<std::vector<std::string>> rows;
  const std::size_t last = plan.tradeoff.size() - 1;
  const std::size_t shown = std::min(most, plan.tradeoff.size());
  const auto is_taken = [&](const Plan& way) {
    return std::equal(
        way.steps.begin(), way.steps.end(), plan.steps.begin(), plan.steps.end(),
        [](const Step& a, const Step& b) { return a.sheet == b.sheet && a.overcut == b.overcut; });
  };
  std::set<std::size_t> places;
  for (std::size_t i = 0; i < shown; ++i)  // evenly spread, both ends among them
    places.insert(i * last / (shown - 1));
  for (std::size_t i = 0; i <= last; ++i) {
    if (is_taken(plan.tradeoff[i])) places.insert(i);
  }
  for (const std::size_t i : places) {
    const Plan& way = plan.tradeoff[i];
    const auto edge = std::count_if(way.steps.begin(), way.steps.end(),
                                    [](const Step& step) { return step.fragile; });
    rows.push_back({duration_text(way.total.minutes), duration_text(expected_minutes(way)),
                    way.total.film ? percent_text(*way.total.film) : "-",
                    fmt::format("{:.2f}", way.total.cost), std::to_string(edge),
                    sequence_text(way) + (is_taken(way) ? " (this card)" : "")});
  }
  page.table({{"time", true},
              {"with going back", true},
              {"film", true},
              {"cost", true},
              {"edge", true},
              {"sheets"}},
             rows);
  page.say("  ",
           "Times with going back within 3 % of the least count as equal. Of these, a plan for "
           "least time takes the fewest steps on that edge, then the least film.");
}

}  // namespace detail

}  // namespace levigate
