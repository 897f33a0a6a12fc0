// The work behind text/when_done.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <string>
#include <utility>

#include "levigate/text/when_done.hpp"

#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/journal/report.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/odds.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/phrases.hpp"
#include "levigate/text/work/say_findings.hpp"
#include "levigate/text/work/sentences_of_finding.hpp"

namespace levigate::inline v0 {

namespace detail {

inline void say_minutes_left(Page& page, const WhenDone& when) {
  if (when.wait) page.say("", wait_text(*when.wait));
  if (when.done) {
    page.say("", "0 min left: every zone meets the target.");
  } else if (when.minutes) {
    page.say("", fmt::format(
                     "{} left. {}{}", duration_text(when.minutes->p50), usual_range(*when.minutes),
                     when.rest_h ? fmt::format(" Wait {:.0f} h beside that.", *when.rest_h) : ""));
  } else if (when.why && when.why->blocked_by == Blocker::done) {
    page.say("", "Every zone meets the target. " + marks_open_text(when.findings));
  } else if (when.why) {
    page.say("", "There is no plan of the rest. " + sentence(*when.why));
  }
  if (!when.step) return;
  page.say("", fmt::format("Step under way: {}, {} so far. {} left. {}", when.step->sheet,
                           duration_text(when.step->spent_minutes),
                           duration_text(when.step->minutes.p50), usual_range(when.step->minutes)));
}

inline void say_pace(Page& page, const WhenDone& when) {
  page.title("Your pace:");
  if (when.pace.empty()) page.say("  ", "No step of the journal shows it yet.");
  for (const LearnedLine& line : when.pace) page.say("  ", sentence(line));
}

inline void say_paper_left(Page& page, const WhenDone& when) {
  if (when.paper.empty()) return;
  page.title("Paper:");
  for (const PaperLeft& paper : when.paper) {
    page.say("  ", fmt::format("{}: {:.1f} used, {} left, {:.1f} to come.", paper.sheet, paper.used,
                               paper.on_hand ? fmt::format("{:.1f}", *paper.on_hand) : "no count",
                               paper.needed));
  }
}

}  // namespace detail

LEVIGATE_WORK std::string when_done_card(const WhenDone& when) {
  detail::Page page;
  page.rule('=');
  page.say("When done: ", when.job);
  detail::say_findings(page, when.findings);
  detail::say_minutes_left(page, when);
  page.rule('=');
  if (!when.sheets.empty()) page.say("Steps left: ", detail::list_text(when.sheets, ", ") + ".");
  detail::say_pace(page, when);
  detail::say_paper_left(page, when);
  return std::move(page).text();
}

}  // namespace levigate
