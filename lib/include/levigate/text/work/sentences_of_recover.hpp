// Sentences on marks and the way back from them.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/fact.hpp"
#include "levigate/recover/cause.hpp"
#include "levigate/recover/go_back.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/need.hpp"
#include "levigate/text/work/facts.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What the mark asks for against what the film affords.
inline std::string asks_text(const WayBack& way) {
  const std::vector<Need>& needs = way.diagnosis.needs;
  return "the mark asks for " + fixed(need_quantile_um(needs, 0.1), 1) + " to " +
         fixed(need_quantile_um(needs, 0.9), 1) + " um, and the film of zone '" +
         way.diagnosis.mark.zone + "' affords " +
         fixed(way.film_um.value_or(std::numeric_limits<double>::infinity()), 1) + " um more: ";
}

/// How many such marks a cause leaves in a zone like this.
inline std::string expected_text(double many) {
  if (many >= 1000.0) return "It leaves more than a thousand such in a zone like this.";
  if (many >= 1.5) return "It leaves " + fixed(many, 0) + " such in a zone like this.";
  if (many >= 0.7) return "It leaves about one such in a zone like this.";
  if (many >= 0.001)
    return "One zone like this in " + fixed(1.0 / many, 0) + " has such a mark from it.";
  return "Fewer than one zone like this in a thousand has such a mark from it.";
}

inline std::string cause_text(const Evidence& evidence) {
  return (evidence.stray ? "a stray grain under " : "") + evidence.sheet + " (step " +
         fixed(evidence.numbers, "step", 0) + " here), " +
         of_hundred(value_of(evidence.numbers, "probability")) + ".";
}

inline std::string depth_text(const Evidence& evidence) {
  return "Scratches of " + evidence.sheet + " reach " + fixed(evidence.numbers, "scratch_um", 2) +
         " um and " +
         (value_of(evidence.numbers, "removal_um") > 0
              ? fixed(evidence.numbers, "removal_um", 2) + " um came off since"
              : "nothing came off since") +
         (evidence.stray ? ": a grain coarser than its own went under it." : ".");
}

inline std::string strokes_text(const Evidence& evidence) {
  return "It runs at " + fixed(evidence.numbers, "mark_deg", 0) + " degrees; " + evidence.sheet +
         " ran at " + fixed(evidence.numbers, "strokes_deg", 0);
}

inline std::string sentence_of(const Evidence& evidence) {
  const std::vector<Quantity>& numbers = evidence.numbers;
  const std::string kind(to_string(evidence.mark));
  switch (evidence.kind) {
    case EvidenceKind::witness_line:
      return "A witness line is where the last round is sanded through: no step takes it out.";
    case EvidenceKind::wave_seen:
      return figure(numbers, "height_um")
                 ? "A wave of " + fixed(numbers, "height_um", 1) +
                       " um from peak to valley is peel that was left."
                 : "A wave is peel that was left; how high was not measured.";
    case EvidenceKind::haze_seen:
      return "Haze is scratches narrower than " + fixed(numbers, "shows_um", 1) +
             " um, too many to be told apart and deeper than those of the finish.";
    case EvidenceKind::width_seen:
      return "A " + kind + " " + fixed(numbers, "width_um", 1) + " um wide is " +
             fixed(numbers, "depth_um", 2) + " um deep.";
    case EvidenceKind::lamp_seen:
      return "A " + kind + " that shows in the light of the room is some " +
             fixed(numbers, "lamp_width_um", 0) + " um wide or more, so " +
             fixed(numbers, "lamp_depth_um", 2) + " um deep or more.";
    case EvidenceKind::sun_seen:
      return "A " + kind + " that shows in the sun only is between " +
             fixed(numbers, "shows_um", 1) + " and " + fixed(numbers, "lamp_width_um", 0) +
             " um wide, so " + fixed(numbers, "shows_depth_um", 2) + " to " +
             fixed(numbers, "lamp_depth_um", 2) + " um deep.";
    case EvidenceKind::peel_may_stay:
      return "Peel of " + fixed(numbers, "residual_um", 1) +
             " um may stay by the rules, and this is hardly more.";
    case EvidenceKind::no_peel:
      return "No step here had peel to level: it was there before, or came after.";
    case EvidenceKind::finish:
      return "Scratches stand out from this finish from " + fixed(numbers, "shows_um", 1) +
             " um on: what is narrower is the finish. A finer one takes it out.";
    case EvidenceKind::elsewhere:
      return "No step that was done leaves such a mark: it came from elsewhere, as a knock or a "
             "cloth.";
    case EvidenceKind::likeliest: return "Most likely " + cause_text(evidence);
    case EvidenceKind::depth: return depth_text(evidence);
    case EvidenceKind::expected: return expected_text(value_of(numbers, "expected"));
    case EvidenceKind::missed:
      return "In " + of_hundred(value_of(numbers, "probability")) + " such cases " +
             evidence.sheet + " missed the spot.";
    case EvidenceKind::along: return strokes_text(evidence) + ", the same way.";
    case EvidenceKind::across:
      return strokes_text(evidence) + ", another way: strokes that turned.";
    case EvidenceKind::other_cause: return "Else " + cause_text(evidence);
    case EvidenceKind::wash:
      return "Wash the work and your hands, and take a fresh " + evidence.sheet + ".";
    case EvidenceKind::ask_which_way:
      return "Which way it runs, against the ways of the steps, would tell more.";
  }
  return "";
}

inline std::string sentence_of(const WayBack& way) {
  if (!way.no_way) return "";
  const std::string zone = "zone '" + way.diagnosis.mark.zone + "'";
  switch (*way.no_way) {
    case NoWay::witness_line:
      return "the last round is sanded through in " + zone +
             ": whatever comes off makes the ring larger";
    case NoWay::unexplained:
      return "no step that was done in " + zone +
             " explains the mark, so how deep it is is not known";
    case NoWay::out_of_reach:
      return "no sheet that worked " + zone + " takes out what it asks for, " +
             fixed(way.diagnosis.needs.empty() ? 0 : way.diagnosis.needs.front().need_um, 1) +
             " um or more";
    case NoWay::film_short: return asks_text(way) + "that is not enough";
    case NoWay::not_worth:
      return asks_text(way) + "the chance that this is enough does not pay for the try";
  }
  return "";
}

inline std::string sentence_of(Remedy remedy) {
  switch (remedy) {
    case Remedy::spot_repair:
      return "Spot repair: level the spot, clean, spray it again, let it cure, and start over "
             "there.";
    case Remedy::another_round:
      return "Another round over the whole zone: scuff, clean, spray, let it cure, and plan it "
             "anew.";
  }
  return "";
}

}  // namespace detail

}  // namespace levigate
