// What the card says of care: how far an edge may still be sanded, when to clean the paper and when to change it.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/text/work/flowed.hpp"
#include "levigate/text/work/stop_line.hpp"
#include "levigate/text/work/wheel_notes.hpp"

namespace levigate::inline v0 {

namespace detail {

/// How far the film lets the edges be worked in a step, where the steps after it have theirs; empty where there is none.
inline std::string edges_text(const Plan& plan, std::size_t index) {
  std::string strokes, wheel;
  for (std::size_t i = 0; i < plan.steps[index].zones.size(); ++i) {
    const ZoneStep& zone = plan.steps[index].zones[i];
    if (!zone.worked) continue;
    if (zone.left_s) wheel += (wheel.empty() ? "" : " ") + edge_at_wheel_text(zone);
    if (!zone.strokes_left) continue;
    const double count = std::floor(spare_share(plan, index, i) * *zone.strokes_left);
    strokes += strokes.empty() ? fmt::format("The film allows about {:.0f} more strokes along {}",
                                             count, zone.zone)
                               : fmt::format(", {:.0f} along {}", count, zone.zone);
  }
  if (!strokes.empty()) strokes += ".";
  return flowed({strokes, wheel});
}

/// Whether paper must be cleaned and changed in a day. A compound that is rubbed by hand is charged instead, and outlasts it.
inline bool asks_for_care(const Step& step) {
  constexpr double day_minutes = 480;  // of work
  return step.change_every_minutes && *step.change_every_minutes <= day_minutes;
}

/// When to clean the sheet of a step; empty at a wheel, which is charged and not rinsed.
inline std::string cleaning_text(const Step& step) {
  if (!asks_for_care(step)) return "";
  if (step.machine && step.rinse_every_minutes)
    return fmt::format("clean the sheet every {:.0f} s of work, by extraction or by hand",
                       60.0 * *step.rinse_every_minutes);
  if (!step.rinse_every_strokes) return "";
  return fmt::format("rinse or wipe about every {:.0f} strokes", *step.rinse_every_strokes);
}

/// What several sheets ask for alike.
struct AskedAlike {
  std::string what;
  std::vector<std::string> sheets;
};

/// Adds what a sheet asks for to those that ask for the same.
inline void ask(std::vector<AskedAlike>& asked, const std::string& what, const std::string& sheet) {
  const auto alike = std::find_if(asked.begin(), asked.end(),
                                  [&](const AskedAlike& one) { return one.what == what; });
  (alike == asked.end() ? asked.emplace_back(AskedAlike{what, {}}) : *alike)
      .sheets.push_back(sheet);
}

/// Care of the paper in all steps: what the first asks for, then which sheets ask for something else.
inline std::string care_text(const Plan& plan) {
  std::vector<AskedAlike> cleaning, changing;
  for (const Step& step : plan.steps) {
    const std::string clean = cleaning_text(step);
    if (clean.empty()) continue;
    ask(cleaning, clean, step.sheet);
    ask(changing, fmt::format("after {:.0f} min", *step.change_every_minutes), step.sheet);
  }
  if (cleaning.empty()) return "";
  std::string text = cleaning[0].what + ".";
  text[0] = static_cast<char>(text[0] - 'a' + 'A');
  for (std::size_t i = 1; i < cleaning.size(); ++i)
    text += fmt::format(" With {}, {}.", list_text(cleaning[i].sheets), cleaning[i].what);
  text += " Change " + changing[0].what + " of work";
  for (std::size_t i = 1; i < changing.size(); ++i)
    text += fmt::format(", {} {}", list_text(changing[i].sheets), changing[i].what);
  return text + ".";
}

}  // namespace detail

}  // namespace levigate
