// Sentences on what a journal teaches, and what it does not.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <tuple>

#include "levigate/detail/text.hpp"
#include "levigate/journal/learn.hpp"
#include "levigate/journal/observe.hpp"
#include "levigate/journal/report.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string reason_of(const Unmatched& unmatched) {
  const auto name = [&](std::size_t at) {
    return at < unmatched.names.size() ? unmatched.names[at] : std::string();
  };
  switch (unmatched.kind) {
    case UnmatchedKind::other_job: return "It belongs to another job, '" + name(0) + "'.";
    case UnmatchedKind::no_such_zone: return "The job has no zone '" + name(0) + "'.";
    case UnmatchedKind::no_such_sheet: return "The stack has no sheet '" + name(0) + "'.";
    case UnmatchedKind::no_minutes: return "It gives no minutes.";
    case UnmatchedKind::not_ended: return "The step with " + name(0) + " began and did not end.";
    case UnmatchedKind::goes_back:
      return "It goes back from " + name(0) + " to " + name(1) +
             ". The removal it needed is not known.";
    case UnmatchedKind::step_known_in_part: return "The shop already learned a part of this step.";
    case UnmatchedKind::unnamed_coating:
      return "The coating has no name of its own. Learning needs one.";
    case UnmatchedKind::unnamed_backing:
      return "The backing has no name of its own. Learning needs one.";
    case UnmatchedKind::unnamed_machine:
      return "The machine has no name of its own. Learning needs one.";
    case UnmatchedKind::hand_and_machine:
      return "Its minutes are of a machine and of the hand in one. Record each zone by itself.";
    case UnmatchedKind::nothing_to_remove:
      return "By the computed plan, nothing had to come off there.";
    case UnmatchedKind::took_no_minutes: return "Its minutes are not above 0.";
    case UnmatchedKind::names_no_zone: return "It names no zone.";
    case UnmatchedKind::no_scratch: return "It gives no width and no roughness.";
    case UnmatchedKind::solid: return "The work is a solid and has no film.";
    case UnmatchedKind::film_of_readings:
      return "The film of the job comes from readings, not from coats.";
    case UnmatchedKind::edge: return "An edge holds only a share of the film.";
    case UnmatchedKind::sanded_before: return "Somebody sanded the zone before this reading.";
    case UnmatchedKind::no_readings: return "It gives no readings.";
    case UnmatchedKind::not_a_number: return "One of its readings is not a number.";
    case UnmatchedKind::reading_contradicts:
      return "The reading contradicts the coats or another reading. Read the film again.";
    case UnmatchedKind::film_known: return "The shop already learned the film of this zone.";
    case UnmatchedKind::no_such_tool:
      return "Neither the job nor a profile has a block '" + name(0) + "'.";
    case UnmatchedKind::patch_too_thin:
      return "Too little came off the patch. It must be more than twice its error.";
  }
  return "";
}

/// Why, after its place: "Line 5, n400: It gives no minutes."
inline std::string sentence_of(const Unmatched& unmatched) {
  const std::string reason = reason_of(unmatched);
  if (unmatched.place.line == 0) return reason;
  return "Line " + std::to_string(unmatched.place.line) +
         (unmatched.sheet.empty() ? "" : ", " + unmatched.sheet) + ": " + reason;
}

/// What the plan makes of what learning sets aside.
inline std::string still_used_text(ObservedKind kind) {
  switch (kind) {
    case ObservedKind::minutes:
      return "The plan counts the step. Learning does not use its minutes yet.";
    case ObservedKind::scratch: return "Learning does not use it yet.";
    case ObservedKind::film: return "The plan uses it. Learning does not use it yet.";
  }
  return "";
}

inline std::string sentence_of(const Outlier& outlier) {
  const std::string unit = outlier.kind == ObservedKind::minutes ? " min" : " um";
  const int decimals = outlier.kind == ObservedKind::scratch ? 2 : 1;
  return (outlier.kind == ObservedKind::film ? "film" : outlier.sheet) +
         (outlier.zone.empty() ? "" : " on " + outlier.zone) + " at " + outlier.place.at + ": " +
         fixed(outlier.actual, decimals) + unit + " read, " + fixed(outlier.predicted, decimals) +
         unit + " computed. That is " + fixed(std::abs(outlier.t), 1) + " standard deviations " +
         (outlier.t > 0 ? "above" : "below") + " what all other entries suggest. " +
         still_used_text(outlier.kind) + " It stays in the journal.";
}

inline std::string counted(std::size_t count, const std::string& one) {
  return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

inline std::string ratio_text(double ratio) { return fixed(ratio, ratio < 10 ? 1 : 0); }

/// "2.3 times slower than the profiles say. The range is 1.9 to 2.8", or quicker.
inline std::string pace_text(double minutes, double low, double high) {
  const bool slower = minutes >= 1.0;
  if (!slower) std::tie(minutes, low, high) = std::tuple(1 / minutes, 1 / high, 1 / low);
  return ratio_text(minutes) + " times " + (slower ? "slower" : "quicker") +
         " than the profiles say. The range is " + ratio_text(low) + " to " + ratio_text(high);
}

inline std::string sentence_of(const LearnedLine& line) {
  if (line.quantity == "minutes") {
    return (line.subject == "you" ? "Over all papers you are "
                                  : "With " + line.subject + " you are ") +
           pace_text(line.value, line.low, line.high) + ", from " +
           counted(line.observations, "step") + ".";
  }
  if (line.quantity == "scratches") {
    return "Scratches of " + line.subject + " are " + ratio_text(line.value) +
           " times as deep as computed. The range is " + ratio_text(line.low) + " to " +
           ratio_text(line.high) + ", from " + counted(line.observations, "reading") + ".";
  }
  if (line.quantity == "film_um") {
    return "Films of " + line.subject + " differ by " + fixed(line.value, 1) +
           " um from what their coats say. The range is " + fixed(line.low, 1) + " to " +
           fixed(line.high, 1) + ", from " + counted(line.observations, "film") + ".";
  }
  return "The shop already knew " + counted(line.observations, "line") + " of this journal.";
}

}  // namespace detail

}  // namespace levigate
