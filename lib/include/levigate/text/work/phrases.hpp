// Phrases about plans that several texts share.
#pragma once

#include <fmt/format.h>

#include <cmath>
#include <cstddef>
#include <optional>
#include <string>

#include "levigate/detail/moment.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/plan/cure_wait.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/text/work/sun_text.hpp"

namespace levigate::inline v0 {

namespace detail {

/// "Not before Thursday 26 November 2026, 14:00, after 9 h of waiting.": whole hours, never too few.
inline std::string wait_text(const CureWait& wait) {
  const std::string hours = fmt::format("{:.0f} h", std::ceil(wait.wait_h));
  if (wait.not_before.empty()) return "Not before " + hours + " from now.";
  return fmt::format("Not before {}, after {} of waiting.", spoken_moment(wait.not_before), hours);
}

/// The zone of a step that has used most of its budget.
inline std::size_t worst_zone(const Step& step) {
  std::size_t worst = 0;
  const auto share = [&](std::size_t i) { return step.zones[i].film_used.value_or(0.0); };
  for (std::size_t i = 1; i < step.zones.size(); ++i) {
    if (share(i) > share(worst)) worst = i;
  }
  return worst;
}

inline std::string percent_text(double share) {
  if (std::isinf(share)) return "no budget";
  return share > 10.0 ? "over 1000 %" : fmt::format("{:.0f} %", 100.0 * share);
}

/// Ids of the sheets of a plan, coarse to fine. A step that takes off more than the rules ask for says how much.
inline std::string sequence_text(const Plan& plan) {
  std::string text;
  for (const Step& step : plan.steps) {
    text += (text.empty() ? "" : ", ") + step.sheet;
    if (is_longer(plan, step))
      text += fmt::format(" for {:.1f} times as long", *step.overcut / plan.overcut);
  }
  return text;
}

inline double all_sheets(const Plan& plan) {
  double sum = 0;
  for (const Step& step : plan.steps) sum += step.sheets_used;
  return sum;
}

/// "80", or of a band "20 to 35".
inline std::string gloss_text(double low_gu, const std::optional<double>& high_gu) {
  const std::string low = fmt::format("{:.0f}", low_gu);
  return high_gu ? fmt::format("{} to {:.0f}", low, *high_gu) : low;
}

inline std::string goal_text(const Target& target) {
  const std::string last =
      target.rub_out.empty() ? "" : ", rubbed out one way with " + target.rub_out;
  if (target.gloss_gu) {
    return (target.label.empty() ? "" : target.label + ", ") +
           fmt::format("{} GU at {:.0f} degrees in every zone",
                       gloss_text(*target.gloss_gu, target.gloss_high_gu), target.angle_deg) +
           last;
  }
  const std::string size = target.size_um ? size_text(*target.size_um) : "";
  return (target.label.empty() ? "grain of " + size + " or finer"
                               : target.label + " (" + size + ") or finer") +
         last;
}

}  // namespace detail

}  // namespace levigate
