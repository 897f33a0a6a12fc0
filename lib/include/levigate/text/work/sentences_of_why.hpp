// Sentences on why there is no plan.
#pragma once

#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/text/work/facts.hpp"
#include "levigate/text/work/sentences_of_finding.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string target_text(const Target& target) {
  return target_text(target.size_um, target.gloss_gu, target.gloss_high_gu, target.label);
}

inline std::string nearest_text(const Nearest& nearest, bool by_size) {
  return "; the nearest is " + nearest.sheet + " with " +
         (by_size ? size_text(nearest.size_um) : fixed(nearest.gloss_gu, 1) + " GU") +
         (nearest.too_near_to_work ? " in zone " + nearest.zone + ", which it is too near to work"
                                   : "") +
         (nearest.wheel_refused ? ", whose wheel the coat does not stand" : "");
}

inline std::string gap_text(const Gap& gap) {
  const std::string text = "from " + gap.coarse + " (" + size_text(gap.coarse_um) + ") to " +
                           gap.fine + " (" + size_text(gap.fine_um) + ") is a ratio of " +
                           fixed(gap.ratio, 2);
  return gap.bridges.empty() ? text + ", which no standard grade bridges"
                             : text + "; bought, " + bridged(gap.bridges) + " would bridge it";
}

/// The lifts that would yield a plan, one after another.
inline std::string lifts_text(const Why& why) {
  std::vector<std::string> lifts;
  if (why.largest_min_ratio) {
    lifts.push_back("the largest min_ratio that would do is " + fixed(*why.largest_min_ratio, 4));
  }
  if (why.smallest_max_ratio) {
    std::vector<std::string> gaps;
    for (const Gap& gap : why.gaps) gaps.push_back(gap_text(gap));
    lifts.push_back("the smallest max_ratio that would do is " + fixed(*why.smallest_max_ratio, 4) +
                    ": " + list_text(gaps, "; "));
  }
  if (why.too_deep_um) {
    lifts.push_back("compound " + why.compound + " meets scratches that are " +
                    fixed(*why.too_deep_um, 2) +
                    " um too deep for it: a finer paper before it would help");
  }
  if (why.film_short_um) {
    lifts.push_back("zone " + why.zone + " is short of film by " + fixed(*why.film_short_um, 2) +
                    " um in the plan that spares it most, its budget being " +
                    fixed(why.budget_um.value_or(0.0), 2) + " um");
  }
  if (!why.paper.empty()) {
    std::vector<std::string> texts;
    for (const PaperShort& p : why.paper) {
      texts.push_back(p.sheet + " needs " + fixed(p.needed, 2) + " sheets with " +
                      fixed(p.on_hand, 2) + " on hand");
    }
    lifts.push_back("paper runs out: " + list_text(texts));
  }
  return list_text(lifts, "; ") + ".";
}

inline std::string sentence_of(const Why& why) {
  switch (why.kind) {
    case WhyKind::done:
      return "Nothing to do: every zone already meets the target, " + target_text(why.target) + ".";
    case WhyKind::no_sheets: return "No plan: the stack has no sheets.";
    case WhyKind::out_of_reach:
      return "No plan: no sheet meets the target, " + target_text(why.target) +
             (why.nearest ? nearest_text(*why.nearest, why.target.size_um.has_value()) : "") + ".";
    case WhyKind::one_limit: return "No plan. Lifting one limit would do: " + lifts_text(why);
    case WhyKind::several_limits:
      return "No plan, and no single limit is to blame: " + lifts_text(why);
    case WhyKind::different_limits:
      return "No plan: each way breaks more than one limit, and not the same ones. To see them, "
             "evaluate " +
             list_text(why.sheets, ", ") + ".";
    case WhyKind::carried_finer:
      return "No plan: no sheet that meets the target is finer than " + why.carried +
             ", which the work carries.";
    case WhyKind::compounds_only:
      return "No plan: only compounds meet the target, with no paper before them, and they cannot "
             "level orange peel.";
  }
  return "";
}

}  // namespace detail

}  // namespace levigate
