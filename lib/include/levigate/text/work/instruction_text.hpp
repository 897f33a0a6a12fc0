// What the card says of doing a step: which way, and by what one sees that it is done.
#pragma once

#include <fmt/format.h>

#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/text/work/phrases.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string way_text(const Step& step, bool last) {
  switch (step.way) {
    case StrokeWay::one_way:
      return step.wheel ? "Keep the work moving past the wheel, one way." : "Sand one way.";
    case StrokeWay::across_scratches: return "Sand one way, across the scratches that are there.";
    case StrokeWay::across_before:
      return std::string("Turn 90 degrees from the step before.") +
             (step.wheel ? " Keep the work moving past the wheel." : "");
    case StrokeWay::along_grain:
      return std::string("Sand along the grain") +
             (last ? ", in straight strokes from end to end." : ".");
    case StrokeWay::across_grain: return "Sand across the grain.";
    case StrokeWay::curls:
      return fmt::format(
          "Guide the {} in slow overlapping lanes. Go over them once more crosswise.",
          step.machine ? step.machine->name : "machine");
  }
  return "";
}

/// What to do, and which way.
inline std::string instruction(const Step& step, bool last) {
  std::string text = step.levels ? "Level the orange peel. " : "";
  return text + way_text(step, last);
}

inline std::string sign_text(DoneSign sign) {
  switch (sign) {
    case DoneSign::no_shiny_spot: return "no shiny low spot is left";
    case DoneSign::scratches_one_way: return "all scratches run one way";
    case DoneSign::scratches_your_way: return "all scratches run your way";
    case DoneSign::even_sheen: return "only an even sheen is left under a low light";
    case DoneSign::even_curls: return "only even curls are left under a low light";
  }
  return "";
}

/// The rest after levelling, and the film that it brings back; empty where nothing comes back.
inline std::string rest_text(const Step& step) {
  if (!step.rest_h) return "";
  std::vector<std::string> zones;
  for (const ZoneStep& zone : step.zones) {
    if (zone.comes_back_um)
      zones.push_back(fmt::format("{:.1f} um on {}", *zone.comes_back_um, zone.zone));
  }
  return fmt::format(
      "Then wait {:.0f} h. The coat shrinks back and part of the peel comes back. That is {}. "
      "Level "
      "it once more with {}. Film and time of this step hold that.",
      *step.rest_h, list_text(zones), step.sheet);
}

/// By what one sees that a step is done.
inline std::string done_text(const Step& step) {
  const std::string sign = sign_text(step.done);
  const std::string labels = list_text(step.takes_out);
  if (step.done == DoneSign::no_shiny_spot) {
    return "Done when " + sign + (labels.empty() ? "." : ", and no scratch of " + labels + ".");
  }
  return fmt::format(
      "Done when the scratches of {} are gone and {}.{}", labels, sign,
      step.done_gloss_gu
          ? " A glossmeter then reads " + gloss_text(*step.done_gloss_gu, step.done_gloss_high_gu) +
                (step.done_gloss_high_gu ? " GU" : " GU or more") +
                fmt::format(" at {:.0f} degrees.", step.done_angle_deg.value_or(60.0))
          : "");
}

}  // namespace detail

}  // namespace levigate
