// The figures of a card over all its steps: film zone by zone, then minutes, budget and gloss step by step.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/phrases.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Minutes in a table: "35", "0.4", "under 0.1".
inline std::string minutes_number(double minutes) {
  if (minutes > 0.0 && minutes < 0.05) return "under 0.1";
  return fixed(minutes, minutes < 0.95 ? 1 : 0);
}

/// "1 b-400": a step as the head of a column.
inline std::string step_head(const Plan& plan, std::size_t step) {
  return shortened(fmt::format("{} {}", step + 1, plan.steps[step].sheet), 12);
}

/// Zones down, steps across, as many beside each other as fit; the others below.
inline void say_by_zone_and_step(Page& page, const Plan& plan, std::string_view title,
                                 const std::function<std::string(const ZoneStep&)>& cell) {
  std::size_t first = columns(title), widest = 0;
  for (const PlannedZone& zone : plan.zones)
    first = std::max(first, columns(shortened(zone.zone, 24)));
  for (std::size_t i = 0; i < plan.steps.size(); ++i) {
    widest = std::max(widest, columns(step_head(plan, i)));
    for (const ZoneStep& zone : plan.steps[i].zones) widest = std::max(widest, columns(cell(zone)));
  }
  const std::size_t steps = plan.steps.size();
  const std::size_t fit = std::max<std::size_t>(1, (card_columns - 2 - first) / (widest + 2));
  const std::size_t tables = std::max<std::size_t>(1, (steps + fit - 1) / fit);
  const std::size_t beside = (steps + tables - 1) / tables;
  for (std::size_t begin = 0; begin < steps; begin += beside) {
    const std::size_t end = std::min(begin + beside, steps);
    std::vector<std::string> heads;
    for (std::size_t i = begin; i < end; ++i) heads.push_back(step_head(plan, i));
    std::vector<Page::Column> titles{{title}};
    for (const std::string& head : heads) titles.push_back({head});
    std::vector<std::vector<std::string>> rows;
    for (std::size_t at = 0; at < plan.zones.size(); ++at) {
      std::vector<std::string>& row = rows.emplace_back();
      row.push_back(shortened(plan.zones[at].zone, 24));
      for (std::size_t i = begin; i < end; ++i) row.push_back(cell(plan.steps[i].zones[at]));
    }
    page.table(titles, rows);
  }
}

/// "17.2 in 35": um off and usual minutes; where a zone stands as before why.
inline std::string off_text(const ZoneStep& zone) {
  if (zone.passed_by) return *zone.passed_by == PassedBy::not_levelled ? "keep off" : "pass by";
  if (zone.removal_um == 0.0) return "light pass";
  return fmt::format("{} in {}", fixed(zone.removal_um, zone.removal_um < 0.1 ? 2 : 1),
                     minutes_number(zone.minutes));
}

/// "69, 0.32 %": um of film left, and the chance of cutting through where it is worth a word.
inline std::string left_text(const ZoneStep& zone) {
  if (!zone.film_left_um) return "-";
  const double chance = zone.cut_through.value_or(0.0);
  return fixed(*zone.film_left_um, 0) + (chance < 1e-4 ? "" : ", " + chance_text(chance));
}

/// What each step takes off in each zone, and the film that it leaves.
inline void say_film_by_step(Page& page, const Plan& plan) {
  page.title(
      "Film: um to take off in usual minutes, um left, chance of cutting through from 0.01 %:");
  say_by_zone_and_step(page, plan, "take off", off_text);
  const bool film = std::any_of(plan.zones.begin(), plan.zones.end(),
                                [](const PlannedZone& zone) { return zone.film_um.has_value(); });
  if (film) say_by_zone_and_step(page, plan, "left", left_text);
}

/// "about (low to high)" of the zone that reads least at 60 degrees: at 20, 60 and 85 degrees.
inline std::array<std::string, 3> readings_text(const Step& step, const SimulatedStep* simulated) {
  const auto dullest = std::min_element(
      step.zones.begin(), step.zones.end(), [](const ZoneStep& a, const ZoneStep& b) {
        return a.reading_60.expected_gu < b.reading_60.expected_gu;
      });
  const auto text = [](double about, double low, double high) {
    return fmt::format("{:.0f} ({:.0f} to {:.0f})", about, low, high);
  };
  if (simulated) {
    const SimulatedReading& drawn =
        simulated->zones[static_cast<std::size_t>(dullest - step.zones.begin())];
    const auto of = [&](const Interval& one) { return text(one.p50, one.p10, one.p90); };
    return {of(drawn.reading_20_gu), of(drawn.reading_60_gu), of(drawn.reading_85_gu)};
  }
  const auto of = [&](const Reading& one) {
    return text(one.expected_gu, one.low_gu, one.high_gu);
  };
  return {of(dullest->reading_20), of(dullest->reading_60), of(dullest->reading_85)};
}

/// "0, 1, 87": what the dullest zone mirrors alone at 20, 60 and 85 degrees.
inline std::string mirrored_text(const Step& step) {
  const auto least = [&](double ZoneStep::*gloss_gu) {
    const auto lower = [&](const ZoneStep& a, const ZoneStep& b) {
      return a.*gloss_gu < b.*gloss_gu;
    };
    return *std::min_element(step.zones.begin(), step.zones.end(), lower).*gloss_gu;
  };
  return fmt::format("{:.0f}, {:.0f}, {:.0f}", least(&ZoneStep::gloss_20_gu),
                     least(&ZoneStep::gloss_gu), least(&ZoneStep::gloss_85_gu));
}

/// Minutes, film budget and gloss of each step. `simulation` may be absent.
inline void say_step_figures(Page& page, const Plan& plan, const Simulation* simulation) {
  page.title(simulation
                 ? "Each step: minutes in all, most film budget used, GU of a glossmeter "
                   "(4 of 5 cases):"
                 : "Each step: minutes in all at usual numbers, most film budget used, GU of "
                   "a glossmeter (by lay and flank):");
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < plan.steps.size(); ++i) {
    const Step& step = plan.steps[i];
    const SimulatedStep* simulated = simulation ? &simulation->steps[i] : nullptr;
    const std::optional<double>& used = step.zones[worst_zone(step)].film_used;
    const auto [at_20, at_60, at_85] = readings_text(step, simulated);
    rows.push_back({std::to_string(i + 1),
                    simulated ? fmt::format("{} ({} to {})", minutes_number(simulated->minutes.p50),
                                            minutes_number(simulated->minutes.p10),
                                            minutes_number(simulated->minutes.p90))
                              : minutes_number(step.minutes),
                    used ? percent_text(*used) : "-", at_20, at_60, at_85, mirrored_text(step)});
  }
  page.table({{"step"},
              {"minutes"},
              {"film", true},
              {"20 degrees"},
              {"60 degrees"},
              {"85 degrees"},
              {"mirrors"}},
             rows);
  page.say("  ",
           "Mirrors: what it mirrors alone at 20, 60 and 85 degrees. Readings are for grooves that "
           "run one way. Their range is across to along, with steep to flat flanks.");
}

}  // namespace detail

}  // namespace levigate
