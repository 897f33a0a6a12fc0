// The part of a card where there is no plan: why, and what would help.
#pragma once

#include <fmt/format.h>

#include <cmath>
#include <string>

#include "levigate/detail/text.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/sentences_of_finding.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Why there is no plan, and what would help.
inline void say_no_plan(Page& page, const Plan& plan) {
  page.blank();
  if (!plan.why) return;
  const Why& why = *plan.why;
  page.say("", sentence(why));
  if (why.blocked_by == Blocker::done) {
    const std::string open = marks_open_text(plan.findings);
    if (!open.empty()) page.say("", open);
    return;
  }
  page.title("What would help:");
  if (why.blocked_by == Blocker::target) {
    page.say("  - ",
             why.most_gu
                 ? "Set a lower goal. No sheet helps."
                 : "Get a sheet that meets the goal, or set a goal that the drawer can meet.");
  }
  for (const Gap& gap : why.gaps) {
    if (gap.bridges.empty()) continue;
    page.say("  - ", to_buy("Between " + gap.coarse + " and " + gap.fine, gap.bridges) + ".");
  }
  if (why.smallest_max_ratio && !why.gaps.empty()) {
    page.say("  - ", fmt::format("Allow a max_ratio of {}. The long steps then take longer.",
                                 fixed(std::ceil(*why.smallest_max_ratio * 1e3) / 1e3, 3)));
  }
  if (why.too_deep_um) {
    page.say("  - ", fmt::format("Go finer with paper before {}, or get a compound that takes "
                                 "out scratches {:.2f} um deeper.",
                                 why.compound, *why.too_deep_um));
  }
  for (const FilmNeeded& film : why.films) {
    const std::string more =
        film.needed_um
            ? fmt::format("Give {} a film of {:.0f} um on the mean", film.zone, *film.needed_um)
            : fmt::format("Read a film gauge at more spots of {}", film.zone);
    page.say("  - ", more +
                         ", or go less deep there. Start with finer paper, use a harder block, "
                         "or leave some orange peel.");
  }
  for (const PaperShort& paper : why.paper) {
    page.say("  - ",
             fmt::format("Get more of {}. The plan needs {:.1f} sheets, the stack has {:g}.",
                         paper.sheet, paper.needed, paper.on_hand));
  }
}

}  // namespace detail

}  // namespace levigate
