// Sentences on marks and the way back from them.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/fact.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/need.hpp"
#include "levigate/recover/way_back.hpp"
#include "levigate/text/work/facts.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What the mark needs against what the film allows.
inline std::string asks_text(const WayBack& way) {
  const std::vector<Need>& needs = way.diagnosis.needs;
  return "The mark takes " + fixed(need_quantile_um(needs, 0.1), 1) + " to " +
         fixed(need_quantile_um(needs, 0.9), 1) + " um to remove. The film of zone '" +
         way.diagnosis.mark.zone + "' allows " +
         fixed(way.film_um.value_or(std::numeric_limits<double>::infinity()), 1) + " um more. ";
}

/// How many such marks a cause leaves in a zone like this.
inline std::string expected_text(double many) {
  if (many >= 1000.0) return "It leaves more than 1000 such marks in a zone like this.";
  if (many >= 1.5) return "It leaves " + fixed(many, 0) + " such marks in a zone like this.";
  if (many >= 0.7) return "It leaves about 1 such mark in a zone like this.";
  if (many >= 0.001)
    return "It leaves such a mark in 1 of " + fixed(1.0 / many, 0) + " zones like this.";
  return "It leaves such a mark in fewer than 1 of 1000 zones like this.";
}

inline std::string cause_text(const Evidence& evidence) {
  return (evidence.stray ? "a stray grain under " : "") + evidence.sheet + ", step " +
         fixed(evidence.numbers, "step", 0) + " in this zone (" +
         of_hundred(value_of(evidence.numbers, "probability")) + ").";
}

inline std::string depth_text(const Evidence& evidence) {
  return "Scratches of " + evidence.sheet + " reach " + fixed(evidence.numbers, "scratch_um", 2) +
         " um. " +
         (value_of(evidence.numbers, "removal_um") > 0
              ? fixed(evidence.numbers, "removal_um", 2) + " um came off since then."
              : "Nothing came off since then.") +
         (evidence.stray ? " A coarser grain was under it." : "");
}

inline std::string strokes_text(const Evidence& evidence) {
  return "The mark runs at " + fixed(evidence.numbers, "mark_deg", 0) + " degrees. " +
         evidence.sheet + " ran at " + fixed(evidence.numbers, "strokes_deg", 0) + " degrees";
}

inline std::string sentence_of(const Evidence& evidence) {
  const std::vector<Quantity>& numbers = evidence.numbers;
  const std::string kind(to_string(evidence.mark));
  switch (evidence.kind) {
    case EvidenceKind::witness_line:
      return "A witness line shows where the last round is sanded through. No step takes it out.";
    case EvidenceKind::bottom_shows:
      return "Rounds of this coating melt together. A ring shows where all of the film is sanded "
             "through. No step takes it out.";
    case EvidenceKind::wave_seen:
      return figure(numbers, "height_um")
                 ? "A wave of " + fixed(numbers, "height_um", 1) +
                       " um from peak to valley is orange peel that levelling left."
                 : "A wave is orange peel that levelling left. Its height is not known.";
    case EvidenceKind::haze_seen:
      return "Haze is many scratches narrower than " + fixed(numbers, "shows_um", 1) +
             " um. They are deeper than the scratches of the finish.";
    case EvidenceKind::width_seen:
      return "A " + kind + " " + fixed(numbers, "width_um", 1) + " um wide is " +
             fixed(numbers, "depth_um", 2) + " um deep.";
    case EvidenceKind::lamp_seen:
      return "A " + kind + " that shows in room light is about " +
             fixed(numbers, "lamp_width_um", 0) + " um wide or more. So it is " +
             fixed(numbers, "lamp_depth_um", 2) + " um deep or more.";
    case EvidenceKind::sun_seen:
      return "A " + kind + " that shows only in the sun is " + fixed(numbers, "shows_um", 1) +
             " to " + fixed(numbers, "lamp_width_um", 0) + " um wide. So it is " +
             fixed(numbers, "shows_depth_um", 2) + " to " + fixed(numbers, "lamp_depth_um", 2) +
             " um deep.";
    case EvidenceKind::peel_may_stay:
      return "The rules let " + fixed(numbers, "residual_um", 1) +
             " um of orange peel stay. This wave is hardly higher.";
    case EvidenceKind::no_peel:
      return "No step here had orange peel to level. The wave was there before, or came later.";
    case EvidenceKind::finish:
      return "On this finish, scratches show from a width of " + fixed(numbers, "shows_um", 1) +
             " um. Narrower scratches are the finish itself. A finer finish takes them out.";
    case EvidenceKind::elsewhere:
      return "None of the steps leaves such a mark. It came from something else, such as a knock "
             "or a cloth.";
    case EvidenceKind::likeliest: return "Most likely cause: " + cause_text(evidence);
    case EvidenceKind::depth: return depth_text(evidence);
    case EvidenceKind::expected: return expected_text(value_of(numbers, "expected"));
    case EvidenceKind::missed:
      return "In " + of_hundred(value_of(numbers, "probability")) + " such cases, " +
             evidence.sheet + " missed the spot.";
    case EvidenceKind::along: return strokes_text(evidence) + ", the same way.";
    case EvidenceKind::across:
      return strokes_text(evidence) + ", another way. A stroke that turned made the mark.";
    case EvidenceKind::other_cause: return "Other cause: " + cause_text(evidence);
    case EvidenceKind::wash:
      return "Wash the work and your hands. Take a fresh piece of " + evidence.sheet + ".";
    case EvidenceKind::strokes_untold:
      return "The way of the mark tells nothing yet: no step has the way of its strokes.";
    case EvidenceKind::ask_which_way:
      return "Give the direction of the mark. It helps to find the step.";
  }
  return "";
}

inline std::string sentence_of(const WayBack& way) {
  if (!way.no_way) return "";
  const std::string zone = "zone '" + way.diagnosis.mark.zone + "'";
  switch (*way.no_way) {
    case NoWay::witness_line:
      return "The last round is sanded through in " + zone + ". More sanding makes the ring larger";
    case NoWay::bottom_shows:
      return "All of the film is sanded through in " + zone +
             ". More sanding makes the ring larger";
    case NoWay::unexplained:
      return "None of the steps in " + zone + " explains the mark. So its depth is not known";
    case NoWay::out_of_reach:
      return "The mark takes " +
             fixed(way.diagnosis.needs.empty() ? 0 : way.diagnosis.needs.front().need_um, 1) +
             " um or more to remove. No sheet that worked " + zone + " takes that off";
    case NoWay::film_short: return asks_text(way) + "That is not enough";
    case NoWay::not_worth: return asks_text(way) + "The chance of success is too small for a try";
  }
  return "";
}

inline std::string sentence_of(Remedy remedy) {
  switch (remedy) {
    case Remedy::spot_repair:
      return "Spot repair: level the spot, clean it, spray it, let it cure and start over there.";
    case Remedy::another_round:
      return "Another round over the whole zone: scuff, clean, spray, let it cure and plan again.";
  }
  return "";
}

}  // namespace detail

}  // namespace levigate
