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

inline std::string sentence_of(const Unmatched& unmatched) {
  const auto name = [&](std::size_t at) {
    return at < unmatched.names.size() ? unmatched.names[at] : std::string();
  };
  switch (unmatched.kind) {
    case UnmatchedKind::other_job: return "It is of another job, '" + name(0) + "'.";
    case UnmatchedKind::no_such_zone: return "The job has no zone '" + name(0) + "'.";
    case UnmatchedKind::no_such_sheet: return "The stack has no sheet '" + name(0) + "'.";
    case UnmatchedKind::no_minutes: return "It tells no minutes.";
    case UnmatchedKind::not_ended: return "The step with " + name(0) + " was begun and not ended.";
    case UnmatchedKind::goes_back:
      return "It goes back from " + name(0) + " to " + name(1) +
             ": what had to be removed is not known.";
    case UnmatchedKind::step_known_in_part: return "A part of this step was learned before.";
    case UnmatchedKind::unnamed_coating:
      return "The coating has no name of its own to learn it under.";
    case UnmatchedKind::unnamed_backing:
      return "The backing has no name of its own to learn it under.";
    case UnmatchedKind::nothing_to_remove: return "Nothing was to be removed there, as computed.";
    case UnmatchedKind::took_no_minutes: return "It took no minutes.";
    case UnmatchedKind::names_no_zone: return "It names no zone.";
    case UnmatchedKind::no_scratch: return "It reads no width and no roughness.";
    case UnmatchedKind::solid: return "The work is a solid and has no film.";
    case UnmatchedKind::film_of_readings: return "The job's film is from readings, not from coats.";
    case UnmatchedKind::edge: return "An edge holds a share of the film only.";
    case UnmatchedKind::sanded_before: return "The zone had been sanded before it was read.";
    case UnmatchedKind::no_readings: return "It holds no readings.";
    case UnmatchedKind::not_a_number: return "It holds a reading that is no number.";
    case UnmatchedKind::film_known: return "The film of this zone was learned before.";
  }
  return "";
}

inline std::string sentence_of(const Outlier& outlier) {
  const std::string unit = outlier.kind == ObservedKind::minutes ? " min" : " um";
  const int decimals = outlier.kind == ObservedKind::scratch ? 2 : 1;
  return (outlier.kind == ObservedKind::film ? "film" : outlier.sheet) +
         (outlier.zone.empty() ? "" : " on " + outlier.zone) + " at " + outlier.place.at + ": " +
         fixed(outlier.actual, decimals) + unit + " where " + fixed(outlier.predicted, decimals) +
         unit + " is computed, " + fixed(std::abs(outlier.t), 1) + " spreads " +
         (outlier.t > 0 ? "above" : "below") +
         " what all else lets expect. It is set aside, and stays in the journal.";
}

inline std::string counted(std::size_t count, const std::string& one) {
  return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

inline std::string ratio_text(double ratio) { return fixed(ratio, ratio < 10 ? 1 : 0); }

/// "2.3 times slower than the profiles say, 1.9 to 2.8", or quicker.
inline std::string pace_text(double minutes, double low, double high) {
  const bool slower = minutes >= 1.0;
  if (!slower) std::tie(minutes, low, high) = std::tuple(1 / minutes, 1 / high, 1 / low);
  return ratio_text(minutes) + " times " + (slower ? "slower" : "quicker") +
         " than the profiles say, " + ratio_text(low) + " to " + ratio_text(high);
}

inline std::string sentence_of(const LearnedLine& line) {
  if (line.quantity == "minutes") {
    return (line.subject == "you" ? "Whatever the paper, you are "
                                  : "With " + line.subject + " you are ") +
           pace_text(line.value, line.low, line.high) + ", from " +
           counted(line.observations, "step") + ".";
  }
  if (line.quantity == "scratches") {
    return "Scratches of " + line.subject + " are " + ratio_text(line.value) +
           " times as deep as computed, " + ratio_text(line.low) + " to " + ratio_text(line.high) +
           ", from " + counted(line.observations, "reading") + ".";
  }
  if (line.quantity == "film_um") {
    return "Films of " + line.subject + " differ by " + fixed(line.value, 1) +
           " um from what their coats say, " + fixed(line.low, 1) + " to " + fixed(line.high, 1) +
           ", from " + counted(line.observations, "film") + ".";
  }
  return counted(line.observations, "line") + " of this journal " +
         (line.observations == 1 ? "was" : "were") + " learned before.";
}

}  // namespace detail

}  // namespace levigate
