// The work behind text/calibration.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/text/calibration.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/text/work/command.hpp"
#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string title_text(const Measurement& one) {
  const std::string sheet = shortened(one.sheet, 24), tool = shortened(one.tool, 24);
  switch (one.kind) {
    case MeasurementKind::patch_gauged:
      return fmt::format("A patch with {} on the {}, by film gauge", sheet, tool);
    case MeasurementKind::patch_weighed:
      return fmt::format("A patch with {} on the {}, by weight", sheet, tool);
    case MeasurementKind::patch_levelled:
      return fmt::format("A patch with {} on the {}, by its shiny spots", sheet, tool);
    case MeasurementKind::scratch_read: return fmt::format("The scratches of {}, by loupe", sheet);
    case MeasurementKind::first_step: return fmt::format("The whole first step, {}", sheet);
  }
  return "";
}

/// How to do it.
inline std::string how_text(const Measurement& one) {
  const std::string area = fmt::format("{:.0f} cm2", one.area_cm2);
  const std::string minutes = duration_text(one.sanding_minutes);
  switch (one.kind) {
    case MeasurementKind::patch_gauged:
      return fmt::format(
          "Mark {} spots on {} and read the film at each. Sand for {}, wash, and read the same "
          "spots again.",
          patch_spots, area, minutes);
    case MeasurementKind::patch_weighed:
      return fmt::format(
          "Weigh a dry piece with this coat to {} g. Sand {} of it for {}, wash, dry, and weigh it "
          "again.",
          weighing_error_g, area, minutes);
    case MeasurementKind::patch_levelled:
      return fmt::format(
          "Sand {} of zone {} until the last shiny spot is gone. Note the minutes; expect {}.",
          area, shortened(one.zone, 24), minutes);
    case MeasurementKind::scratch_read:
      return "Look at ten scratches of this sheet with a measuring loupe. Note the width of the "
             "deepest usual ones.";
    case MeasurementKind::first_step:
      return "Do the first step of the plan in all its zones. Note its minutes without the change "
             "of sheets.";
  }
  return "";
}

inline std::string takes_text(const Measurement& one) {
  std::string text = fmt::format("It takes {}", duration_text(one.minutes));
  if (one.kind == MeasurementKind::first_step) return text + " beside the work of the day.";
  if (!(one.area_cm2 > 0.0)) return text + ".";
  return text + fmt::format(" in all. About {:.{}f} um of film comes off.", one.removal_um,
                            one.removal_um < 9.95 ? 1 : 0);
}

inline std::string range_text(const Interval& minutes) {
  return duration_text(minutes.p10) + " to " + duration_text(minutes.p90);
}

/// What it narrows.
inline std::string band_text(const Measurement& one) {
  const std::string now = fmt::format("In 4 of 5 cases the {} takes {} now.",
                                      one.kind == MeasurementKind::first_step ? "rest" : "work",
                                      range_text(one.minutes_before));
  if (!(one.gain_per_hour > 0.0)) return now + " This would not narrow it.";
  return now + fmt::format(" With this, expect a range such as {}.", range_text(one.minutes_after));
}

/// The command that records it.
inline Command record_command(const Measurement& one, std::string_view job) {
  Command line("record JOURNAL");
  const auto patch = [&] {
    line.word("patch worked").option("--job", job).option("--sheet", one.sheet);
    line.option("--tool", one.tool).option("--area-cm2", fmt::format("{}", one.area_cm2));
    line.to_fill("--minutes", "MINUTES");
  };
  switch (one.kind) {
    case MeasurementKind::patch_gauged:
      patch();
      line.to_fill("--before-um", "BEFORE ...").to_fill("--after-um", "AFTER ...");
      break;
    case MeasurementKind::patch_weighed:
      patch();
      line.to_fill("--before-g", "BEFORE").to_fill("--after-g", "AFTER");
      break;
    case MeasurementKind::patch_levelled:
      patch();
      line.option("--zone", one.zone);
      break;
    case MeasurementKind::scratch_read:
      line.word("scratch read").option("--job", job).option("--sheet", one.sheet);
      line.to_fill("--zone", "ZONE").to_fill("--width-um", "WIDTH");
      break;
    case MeasurementKind::first_step:
      line.word("step ended").option("--job", job).option("--sheet", one.sheet);
      if (one.overcut) line.option("--overcut", fmt::format("{:.2f}", *one.overcut));
      line.to_fill("--minutes", "MINUTES");
      break;
  }
  return line;
}

inline void say_measurements(Page& page, const Calibration& calibration) {
  for (std::size_t i = 0; i < calibration.measurements.size(); ++i) {
    const Measurement& one = calibration.measurements[i];
    page.title(fmt::format("{}. {}", i + 1, title_text(one)));
    page.say("  ", how_text(one));
    page.say("  ", takes_text(one));
    page.say("  ", band_text(one));
    page.say("  ", "Record it:");
    page.lines("    ", record_command(one, calibration.job).lines(card_columns - 4));
  }
}

inline bool has(const Calibration& calibration, MeasurementKind kind) {
  return std::any_of(calibration.measurements.begin(), calibration.measurements.end(),
                     [&](const Measurement& one) { return one.kind == kind; });
}

/// What the records are good for.
inline void say_learning(Page& page, const Calibration& calibration) {
  const auto say_command = [&](std::string_view lead, std::string_view command) {
    page.say("", lead);
    page.lines("    ", Command(command).lines(card_columns - 4));
  };
  page.blank();
  say_command("Let the shop learn from the records:", "learn JOB STACK JOURNAL --shop SHOP");
  say_command("Then plan with it:", "plan JOB STACK --shop SHOP");
  if (has(calibration, MeasurementKind::first_step))
    say_command("After the first step, plan the rest:",
                "plan JOB STACK --after JOURNAL --shop SHOP");
  page.title("Put your own in place of the words in capitals.");
  if (has(calibration, MeasurementKind::patch_gauged))
    page.say("", "BEFORE ... stands for a reading at each spot. AFTER ... has the same order.");
  if (has(calibration, MeasurementKind::patch_gauged) ||
      has(calibration, MeasurementKind::patch_weighed))
    page.say("",
             "Work a patch by gauge or weight on a spare piece. It needs the same coat at the same "
             "age. On the job itself the film that it takes off is missing later.");
  if (has(calibration, MeasurementKind::patch_levelled))
    page.say("",
             "A patch by its shiny spots does a part of the first step. Stop it there, and sand it "
             "no deeper with the rest.");
  page.say(
      "",
      "What each takes is an assumption. What it narrows comes from simulations, with a reading "
      "as expected.");
}

}  // namespace detail

LEVIGATE_WORK std::string calibration_card(const Calibration& calibration) {
  using detail::Page;
  Page page;
  page.rule('=');
  page.say("What to measure: ", calibration.job);
  page.rule('=');
  if (calibration.measurements.empty()) {
    page.say("", "No measurement would tell more of what is left to do.");
  } else {
    page.say("",
             fmt::format("In 4 of 5 cases the work takes {}. These measurements narrow that, the "
                         "best for its minutes first.",
                         detail::range_text(calibration.minutes)));
    detail::say_measurements(page, calibration);
    detail::say_learning(page, calibration);
  }
  page.title("Before you start:");
  for (const Caution& caution : calibration.cautions) page.say("  - ", caution.text);
  return std::move(page).text();
}

}  // namespace levigate
