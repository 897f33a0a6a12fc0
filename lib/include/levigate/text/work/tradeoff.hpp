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

/// The sheets of a plan, with how many times as long as the rules ask: "b-pad, fine-bar (2.0 times)".
inline std::string short_sequence_text(const Plan& plan) {
  std::string text;
  for (const Step& step : plan.steps) {
    text += (text.empty() ? "" : ", ") + step.sheet;
    if (is_longer(plan, step)) text += fmt::format(" ({:.1f} times)", *step.overcut / plan.overcut);
  }
  return text;
}

inline void say_tradeoff(Page& page, const Plan& plan) {
  if (plan.tradeoff.size() < 2) return;
  constexpr std::size_t most = 6;
  std::vector<std::vector<std::string>> rows;
  const std::size_t last = plan.tradeoff.size() - 1;
  const std::size_t shown = std::min(most, plan.tradeoff.size());
  const auto is_taken = [&](const Plan& way) {
    return std::equal(
        way.steps.begin(), way.steps.end(), plan.steps.begin(), plan.steps.end(),
        [](const Step& a, const Step& b) { return a.sheet == b.sheet && a.overcut == b.overcut; });
  };
  std::set<std::size_t> taken, places;
  for (std::size_t i = 0; i <= last; ++i) {
    if (is_taken(plan.tradeoff[i])) taken.insert(i);
  }
  for (std::size_t count = shown; count > 1; --count) {  // evenly spread, both ends among them
    places = taken;
    for (std::size_t i = 0; i < count; ++i) places.insert(i * last / (count - 1));
    if (places.size() <= shown) break;
  }
  page.title(fmt::format(
      "Other ways, at usual numbers: {} of {}. The star marks this plan. None is beaten in all of "
      "time with going back, film, cost and steps on the edge of max_ratio.",
      places.size(), plan.tradeoff.size()));
  for (const std::size_t i : places) {
    const Plan& way = plan.tradeoff[i];
    const auto edge = std::count_if(way.steps.begin(), way.steps.end(),
                                    [](const Step& step) { return step.fragile; });
    rows.push_back({taken.count(i) > 0 ? "*" : "", duration_text(expected_minutes(way)),
                    way.total.film ? percent_text(*way.total.film) : "-",
                    fmt::format("{:.2f}", way.total.cost), std::to_string(edge),
                    short_sequence_text(way)});
  }
  page.table({{""}, {"time", true}, {"film", true}, {"cost", true}, {"edge", true}, {"sheets"}},
             rows);
  page.say("  ",
           "For least time, ways within 3 % are equal. Fewest on that edge wins, then least film.");
}

}  // namespace detail

}  // namespace levigate
