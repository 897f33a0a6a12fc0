// Sentences on what learning did to a plan.
#pragma once

#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/change.hpp"
#include "levigate/text/work/sentences_of_finding.hpp"

namespace levigate::inline v0 {

namespace detail {

/// "a-p400", "a-p400 for 1.5 times as long"
inline std::string chosen_text(const ChosenStep& step) {
  const std::string longer =
      step.longer > 1.0 + 1e-9 ? " for " + fixed(step.longer, 1) + " times as long" : "";
  return step.sheet + longer;
}

inline std::string first_change_text(const LearnedChange& change) {
  const std::string step = "Step " + std::to_string(change.step);
  if (change.was && change.now)
    return step + " is " + chosen_text(*change.now) + " instead of " + chosen_text(*change.was);
  if (change.now) return step + ", " + chosen_text(*change.now) + ", is new";
  return step + ", " + chosen_text(*change.was) + ", is left out";
}

/// "2 sheets of", "1 sheet of"
inline std::string sheets_text(double sheets) {
  return fixed(sheets, 0) + (sheets == 1.0 ? " sheet" : " sheets");
}

inline std::string more_sheets_text(const MoreSheets& more) {
  const std::string with = "With " + sheets_text(more.sheets) + " more of " + more.sheet + ", ";
  if (more.less_minutes < 0.5) return with + "the plan takes as long";
  return with + "the plan takes " + fixed(more.less_minutes, 0) + " min less";
}

inline std::string cause_text(const LearnedCause& cause) {
  const std::string times = fixed(cause.factor, 2) + " times ";
  switch (cause.kind) {
    case LearnedKind::hand:
      return std::string("The ") + (cause.factor < 1.0 ? "slower" : "quicker") +
             " hand does it alone: " + times + "the computed work in a minute";
    case LearnedKind::rate:
      return "The rate of " + cause.backing + " does it alone: " + times + "the computed one";
    case LearnedKind::scratch:
      return "The scratches of " + cause.backing + " do it alone: " + times + "as deep as computed";
    case LearnedKind::film: {
      const double offset_um = cause.offset_um.value_or(0.0);
      return "The film does it alone: " + fixed(std::abs(offset_um), 1) + " um " +
             (offset_um < 0.0 ? "thinner" : "thicker") + " than its coats say";
    }
  }
  return "";
}

/// Why the sequence before is not the best now.
inline std::vector<std::string> reason_texts(const LearnedChange& change) {
  std::vector<std::string> result;
  const std::string minutes = fixed(std::abs(change.more_minutes), 0) + " min ";
  switch (change.reason) {
    case ChangeReason::no_plan_before: return {"Without what was learned there is no plan"};
    case ChangeReason::blocked:
      for (const Finding& finding : change.findings) result.push_back(sentence_of(finding));
      return result;
    case ChangeReason::minutes:
      return {"That sequence now takes " + minutes + "more, with going back"};
    case ChangeReason::fragile:
      return {"Within 3 % it takes as long, but has more steps on the edge of max_ratio"};
    case ChangeReason::film: return {"Within 3 % it takes as long, but uses more film"};
    case ChangeReason::cost: return {"That sequence now costs more"};
    case ChangeReason::steps: return {"That sequence has more steps"};
    case ChangeReason::tie: return {"Both are equal now. The order of the stack decides"};
  }
  return result;
}

/// All of it, a sentence or more each, without the last full stop.
inline std::vector<std::string> change_texts(const LearnedChange& change) {
  std::vector<std::string> result;
  if (change.was || change.now) result.push_back(first_change_text(change));
  if (!change.before.empty()) {
    std::vector<std::string> before;
    for (const ChosenStep& step : change.before) before.push_back(chosen_text(step));
    result.push_back("Without what was learned: " + list_text(before, ", "));
  }
  for (std::string& text : reason_texts(change)) result.push_back(std::move(text));
  for (const MoreSheets& more : change.more_sheets) result.push_back(more_sheets_text(more));
  bool alone = false;
  for (const LearnedCause& cause : change.learned) {
    if (!cause.alone) continue;
    alone = true;
    result.push_back(cause_text(cause));
  }
  if (!alone) result.push_back("No learned number does it alone");
  return result;
}

inline std::string sentence_of(const LearnedChange& change) {
  std::string text;
  for (const std::string& one : change_texts(change)) text += (text.empty() ? "" : ". ") + one;
  return text;
}

}  // namespace detail

}  // namespace levigate
