// How far to trust a card: what its figures rest on, and which inputs change them most.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/reliance.hpp"
#include "levigate/source.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/phrases.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string basis_text(Basis basis) {
  if (basis == Basis::user) return "given by you";
  if (basis == Basis::published_table) return "from a published table";
  return std::string(to_string(basis));
}

/// Grades of the plan whose size was not read in a standard, by what it rests on instead.
inline void say_size_bases(Page& page, const Plan& plan) {
  for (const Basis basis : choices<Basis>) {
    if (basis == Basis::standard || basis == Basis::computed) continue;
    std::vector<std::string> labels;
    for (const Step& step : plan.steps) {
      if (step.size_basis == basis) labels.push_back(step.label);
    }
    if (labels.empty()) continue;
    page.say("  - ", fmt::format("Size of {}: {}, not from a standard.", list_text(labels),
                                 basis_text(basis)));
  }
}

inline std::string film_text(double share) {
  return share > 1.0 ? "too deep" : percent_text(share);
}

/// The inputs that change the figures most, each over its band. Rules are left out: somebody chose them.
inline void say_reliances(Page& page, const Plan& plan) {
  constexpr std::size_t most = 5;
  constexpr double worth_saying = 0.02;
  const double minutes = plan.total.minutes;
  const double film = plan.total.film.value_or(0.0);
  std::vector<std::vector<std::string>> rows;
  for (const Reliance& r : plan.relies_on) {
    if (rows.size() == most || r.influence < worth_saying) break;
    if (r.subject == "rule") continue;
    rows.push_back(
        {duration_text(minutes + r.minutes_low) + " to " + duration_text(minutes + r.minutes_high),
         plan.total.film ? film_text(film + r.film_low) + " to " + film_text(film + r.film_high)
                         : "-",
         fmt::format("{:.3g} to {:.3g}", r.low, r.high), r.quantity + " of " + r.subject});
  }
  if (rows.empty()) return;
  page.title(
      "Inputs that change the figures most, each changed alone within its range, with all others "
      "at usual numbers:");
  page.table({{"time"}, {"film"}, {"range", true}, {"input"}}, rows);
}

/// The closing part of a card.
inline void say_trust(Page& page, const Plan& plan) {
  page.title("How far to trust this card:");
  const bool learned =
      std::any_of(plan.relies_on.begin(), plan.relies_on.end(),
                  [](const Reliance& one) { return one.quantity == "learned_pace"; });
  page.say("  - ", learned ? "Minutes rest on the pace that journals showed. Its range stands in "
                             "the plan, with all other inputs."
                           : "Minutes, sheets and cost rest on removal rates. These are uncertain "
                             "by a factor of 2 to 3 until you calibrate them. Time the first step "
                             "and scale the others by it.");
  page.say("  - ",
           "Depths do not rest on the rates. They rest on the film and orange peel that you gave. "
           "They also rest on assumed hardness, backing and block. If the work shows otherwise, "
           "trust the work.");
  page.say("  - ",
           "Readings of a glossmeter are for grooves that run one way. There the range is across "
           "to along, with steep to flat flanks.");
  say_size_bases(page, plan);
  say_reliances(page, plan);
}

}  // namespace detail

}  // namespace levigate
