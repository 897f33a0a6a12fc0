// The work behind text/comparison.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/text/comparison.hpp"

#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/risk/comparison.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/machine_notes.hpp"
#include "levigate/text/work/odds.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/phrases.hpp"
#include "levigate/text/work/say_findings.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The column of one plan in a comparison.
inline std::vector<std::string> figures(const Plan& plan) {
  if (!plan.found || plan.steps.empty()) return std::vector<std::string>(11, "-");
  const Step& last = plan.steps.back();
  const ZoneStep& worst = last.zones[worst_zone(last)];
  return {fmt::format("{}", plan.steps.size()),
          duration_text(plan.total.minutes),
          duration_text(plan.steps.front().minutes),
          duration_text(plan.total.back_minutes),
          marks_text(all_marks(plan)),
          plan.total.film ? percent_text(*plan.total.film) : "-",
          worst.film_left_um ? fixed(*worst.film_left_um, 1) + " um" : "-",
          worst.cut_through ? chance_text(*worst.cut_through) : "-",
          fmt::format("{:.1f}", all_sheets(plan)),
          fmt::format("{:.2f}", plan.total.cost),
          fmt::format("{:.0f} GU", last.reading_gu)};
}

/// `comparison`: of these two plans, or null.
inline std::string comparison_text(const Plan& taken, const Plan& best,
                                   const Comparison* comparison) {
  const bool same =
      std::equal(taken.zones.begin(), taken.zones.end(), best.zones.begin(), best.zones.end(),
                 [](const PlannedZone& a, const PlannedZone& b) { return a.zone == b.zone; });
  if (!same)
    throw BadInput("the two plans have different zones, in the comparison for '" + taken.job + "'");
  constexpr std::string_view rows[] = {"steps",
                                       "time at usual numbers",
                                       "the same of the first step",
                                       "going back for marks, on the mean",
                                       "spots with a mark in the sun",
                                       "film budget used, worst zone",
                                       "film left in that zone",
                                       "chance of cutting through there",
                                       "sheets",
                                       "cost",
                                       "glossmeter at 60 degrees at the end"};
  const std::vector<std::string> left = figures(taken);
  const std::vector<std::string> right = figures(best);
  std::vector<std::vector<std::string>> cells;
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    cells.push_back({std::string(rows[i]), left[i], right[i]});
  }
  Page page;
  page.rule('=');
  page.say("Side by side: ", taken.job);
  page.rule('=');
  page.table({{""}, {"your sequence", true}, {"best plan", true}}, cells);
  const std::string strip = strip_text(taken);
  if (const std::string told = strip.empty() ? strip_text(best) : strip; !told.empty())
    page.say("", told);
  page.blank();
  page.say("Your sequence: ", sequence_text(taken) + ".");
  if (best.found) {
    page.say("Best plan:     ", sequence_text(best) + ".");
  } else if (best.why) {
    page.say("Best plan: ", sentence(*best.why));
  }
  if (comparison && comparison->minutes) {
    page.title(fmt::format("In {} simulated runs (seed {}), with the same draws for both:",
                           comparison->draws, comparison->seed));
    page.say("  ", "Your sequence " + slower_text(*comparison->minutes) +
                       ". These minutes include going back for marks.");
  }
  page.title(taken.findings.empty() ? "Your sequence breaks no rule." : "On your sequence:");
  say_findings(page, taken.findings);
  page.title(
      "Minutes and sheets are uncertain by a factor of 2 to 3 until you calibrate them. That goes "
      "for both columns.");
  return std::move(page).text();
}

}  // namespace detail

LEVIGATE_WORK std::string comparison_card(const Plan& taken, const Plan& best) {
  return detail::comparison_text(taken, best, nullptr);
}

LEVIGATE_WORK std::string comparison_card(const Comparison& comparison) {
  return detail::comparison_text(comparison.taken, comparison.best, &comparison);
}

}  // namespace levigate
