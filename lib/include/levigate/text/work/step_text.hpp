// What to do in a step of a plan, in which direction, and when it is done.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/outcome.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/text/work/phrases.hpp"

namespace levigate::inline v0 {

namespace detail {

inline bool on_wheel(const Stack& stack, const Step& step) {
  return wheel_of(stack.sheets[sheet_index(stack, step.sheet)]) != nullptr;
}

/// A sheen that is not polished shows its scratches: they must all run along the grain.
inline bool along_grain(const Job& job, const Stack& stack, const Plan& plan) {
  return job.target.gloss_high_gu.has_value() && !on_wheel(stack, plan.steps.back());
}

/// What to do, and which way: each step across the one before.
inline std::string instruction(const Job& job, const Stack& stack, const Plan& plan,
                               std::size_t i) {
  const Step& step = plan.steps[i];
  const bool wheel = on_wheel(stack, step);
  const bool levels = i == 0 && starts_by_levelling(job);
  std::string text = levels ? "Level the orange peel. " : "";
  if (along_grain(job, stack, plan)) {
    const bool along = (plan.steps.size() - 1 - i) % 2 == 0;
    text += along ? "Sand along the grain" : "Sand across the grain";
    text += i + 1 == plan.steps.size() ? ", in straight strokes from end to end." : ".";
  } else if (i > 0) {
    text += "Turn 90 degrees from the step before.";
    if (wheel) text += " Keep the work moving past the wheel.";
  } else {
    text += levels ? "Sand one way." : "Sand one way, across the scratches that are there.";
  }
  if (step.size_ratio) text += fmt::format(" Grain {:.2f} times finer.", *step.size_ratio);
  return text;
}

/// The grades whose scratches a step takes out: that of the step before, and those of the zones that it is the first to work.
inline std::vector<std::string> labels_before(const Job& job, const Plan& plan, std::size_t i) {
  std::vector<std::string> labels;
  if (i > 0) labels.push_back(plan.steps[i - 1].label);
  for (std::size_t zone = 0; zone < job.zones.size(); ++zone) {
    const std::optional<Carried> carried = carried_in(job, job.zones[zone]);
    const bool worked_before = i > 0 && plan.steps[i - 1].zones[zone].worked;
    if (!carried || worked_before || !plan.steps[i].zones[zone].worked) continue;
    if (std::find(labels.begin(), labels.end(), carried->grade.label) == labels.end())
      labels.push_back(carried->grade.label);
  }
  return labels;
}

/// By what one sees that a step is done.
inline std::string done_text(const Job& job, const Stack& stack, const Plan& plan, std::size_t i) {
  const std::vector<std::string> labels = labels_before(job, plan, i);
  if (i == 0 && starts_by_levelling(job)) {
    return "Done when no shiny low spot is left" +
           (labels.empty() ? "." : ", and no scratch of " + list_text(labels) + ".");
  }
  const Step& step = plan.steps[i];
  const std::string rest = on_wheel(stack, step) ? "only an even sheen is left under a low light"
                           : along_grain(job, stack, plan) ? "all scratches run one way"
                                                           : "all scratches run your way";
  const bool last = i + 1 == plan.steps.size();
  return fmt::format("Done when the scratches of {} are gone and {}{}.", list_text(labels), rest,
                     last && job.target.gloss_gu
                         ? "; a glossmeter reads " + gloss_text(job.target) +
                               (job.target.gloss_high_gu ? " GU" : " GU or more")
                         : "");
}

}  // namespace detail

}  // namespace levigate
