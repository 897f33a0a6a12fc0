// How far to trust a card: what its figures rest on, and which inputs change them most.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
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
#include "levigate/text/work/step_figures.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string basis_text(Basis basis) {
  if (basis == Basis::user) return "given by you";
  if (basis == Basis::published_table) return "from a published table";
  return std::string(to_string(basis));
}

/// What the sizes of the plan rest on that were not read in a standard.
inline void say_size_bases(Page& page, const Plan& plan) {
  std::string told;
  for (const Basis basis : choices<Basis>) {
    if (basis == Basis::standard || basis == Basis::computed) continue;
    std::vector<std::string> labels;
    for (const Step& step : plan.steps) {
      if (step.size_basis == basis) labels.push_back(step.label);
    }
    if (!labels.empty()) told += fmt::format(" {}: {}.", list_text(labels), basis_text(basis));
  }
  if (!told.empty()) page.say("  - ", "Sizes not from a standard." + told);
}

inline std::string film_text(double share) {
  return share > 1.0 ? "too deep" : fixed(100.0 * share, 0);
}

/// An end of a band, with two digits or all before the point: "0.15", "17", "250".
inline std::string band_text(double value) {
  return std::abs(value) < 10.0 ? fmt::format("{:.2g}", value) : fixed(value, 0);
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
    const auto ends = [](const std::string& low, const std::string& high) {
      return low == high ? low : low + " to " + high;
    };
    rows.push_back(
        {ends(minutes_number(minutes + r.minutes_low), minutes_number(minutes + r.minutes_high)),
         plan.total.film ? ends(film_text(film + r.film_low), film_text(film + r.film_high)) : "-",
         band_text(r.low) + " to " + band_text(r.high), r.quantity + ", " + r.subject});
  }
  if (rows.empty()) return;
  page.say("  - ", "These inputs change the plan most, each alone within its range:");
  page.table({{"minutes"}, {"film, %"}, {"range", true}, {"input"}}, rows);
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
           "Depths rest on the film and orange peel that you gave. They also rest on assumed "
           "hardness, backing and block. If the work shows otherwise, trust the work.");
  say_size_bases(page, plan);
  say_reliances(page, plan);
}

}  // namespace detail

}  // namespace levigate
