// Why a step is taken to have made a mark, in words.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/cause.hpp"
#include "levigate/recover/inspection_table.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/work/layer.hpp"
#include "levigate/recover/work/visible.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string of_hundred(double probability) {
  if (probability > 0.995) return "over 99 of 100";
  if (probability < 0.005) return "under 1 of 100";
  return fixed(100.0 * probability, 0) + " of 100";
}

/// What was seen, and how deep that is; shows_um: width from which a scratch stands out.
inline std::string seen_text(const levigate::Mark& mark, double shows_um, double flank_deg) {
  const std::string kind(to_string(mark.kind));
  const auto deep = [&](double width_um) {
    return fixed(depth_of_width_um(width_um, flank_deg), 2);
  };
  if (mark.kind == MarkKind::witness_line)
    return "A witness line is where the last round is sanded through: no step takes it out.";
  if (mark.kind == MarkKind::wave) {
    return mark.height_um ? "A wave of " + fixed(*mark.height_um, 1) +
                                " um from peak to valley is peel that was left."
                          : "A wave is peel that was left; how high was not measured.";
  }
  if (mark.kind == MarkKind::haze)
    return "Haze is scratches narrower than " + fixed(shows_um, 1) +
           " um, too many to be told apart and deeper than those of the finish.";
  if (mark.width_um)
    return "A " + kind + " " + fixed(*mark.width_um, 1) + " um wide is " + deep(*mark.width_um) +
           " um deep.";
  const double lamp_um = lamp_width_um(shows_um);
  if (mark.seen == Seen::lamp)
    return "A " + kind + " that shows in the light of the room is some " + fixed(lamp_um, 0) +
           " um wide or more, so " + deep(lamp_um) + " um deep or more.";
  return "A " + kind + " that shows in the sun only is between " + fixed(shows_um, 1) + " and " +
         fixed(lamp_um, 0) + " um wide, so " + deep(shows_um) + " to " + deep(lamp_um) +
         " um deep.";
}

inline const Layer& layer_of_step(const std::vector<Layer>& layers, std::size_t step) {
  return *std::find_if(layers.begin(), layers.end(),
                       [&](const Layer& layer) { return layer.step == step; });
}

/// The number of a step among those of the zone, from 1.
inline std::ptrdiff_t number_here(const std::vector<Layer>& layers, std::size_t step) {
  return 1 + std::count_if(layers.begin(), layers.end(),
                           [&](const Layer& layer) { return layer.step < step; });
}

/// What a cause has to do with its depth: how deep its scratches are, and what came off since.
inline std::string depth_text(const std::vector<Layer>& layers, const Cause& cause) {
  const Layer& layer = layer_of_step(layers, cause.step);
  double since_um = 0;
  for (const Layer& later : layers) {
    if (later.step > cause.step) since_um += later.removal_um;
  }
  const std::string off = since_um > 0 ? fixed(since_um, 2) + " um came off since"
                                       : std::string("nothing came off since");
  if (cause.stray)
    return "Scratches of " + cause.sheet + " reach " + fixed(layer.scratch_um, 2) + " um and " +
           off + ": a grain coarser than its own went under it.";
  return "Scratches of " + cause.sheet + " reach " + fixed(layer.scratch_um, 2) + " um and " + off +
         ".";
}

/// The step that most likely missed the spot, where it is likelier than not that one did.
inline std::string missed_text(const Workings& workings, const std::vector<Layer>& layers,
                               const Cause& cause) {
  const Layer* most = nullptr;
  for (const Layer& layer : layers) {
    if (!most || cause.missed[layer.step] > cause.missed[most->step]) most = &layer;
  }
  if (cause.missed[most->step] < 0.5) return "";
  return "In " + of_hundred(cause.missed[most->step]) + " such cases " +
         workings.stack.sheets[most->sheet].id + " missed the spot.";
}

/// How many such marks a cause leaves in a zone like this.
inline std::string expected_text(const Cause& cause) {
  const double many = cause.expected;
  if (many >= 1000.0) return "It leaves more than a thousand such in a zone like this.";
  if (many >= 1.5) return "It leaves " + fixed(many, 0) + " such in a zone like this.";
  if (many >= 0.7) return "It leaves about one such in a zone like this.";
  if (many >= 0.001)
    return "One zone like this in " + fixed(1.0 / many, 0) + " has such a mark from it.";
  return "Fewer than one zone like this in a thousand has such a mark from it.";
}

inline std::string way_text(const levigate::Mark& mark, const std::vector<Layer>& layers,
                            const Cause& cause) {
  const Layer& layer = layer_of_step(layers, cause.step);
  if (!mark.direction_deg || !layer.direction_deg) return "";
  const double apart = angle_between_deg(*mark.direction_deg, *layer.direction_deg);
  const double sd_deg = inspection_table[0].direction_sd_deg.value;
  const std::string ran = "It runs at " + fixed(*mark.direction_deg, 0) + " degrees; " +
                          cause.sheet + " ran at " + fixed(*layer.direction_deg, 0);
  return ran + (apart <= 2.0 * sd_deg ? ", the same way." : ", another way: strokes that turned.");
}

}  // namespace detail

/// The evidence for the causes of a diagnosis, a sentence each. Causes of less than worth_naming are left out.
/// Throws: nothing that diagnose() would not
inline std::vector<std::string> evidence(const Workings& workings, const std::vector<Layer>& layers,
                                         const Diagnosis& diagnosis) {
  const Mark& mark = diagnosis.mark;
  std::vector<std::string> result{
      detail::seen_text(mark, diagnosis.shows_um, workings.model.flank_deg)};
  if (mark.kind == MarkKind::witness_line) return result;
  if (diagnosis.causes.empty()) {
    const double stays_um = workings.job.rules.residual_peel_um;
    if (mark.kind == MarkKind::wave && mark.height_um && *mark.height_um <= 2.0 * stays_um)
      result.push_back("Peel of " + detail::fixed(stays_um, 1) +
                       " um may stay by the rules, and this is hardly more.");
    else if (mark.kind == MarkKind::wave)
      result.push_back("No step here had peel to level: it was there before, or came after.");
    else if (mark.width_um && *mark.width_um < diagnosis.shows_um)
      result.push_back("Scratches stand out from this finish from " +
                       detail::fixed(diagnosis.shows_um, 1) +
                       " um on: what is narrower is the finish. A finer one takes it out.");
    else
      result.push_back(
          "No step that was done leaves such a mark: it came from elsewhere, as a "
          "knock or a cloth.");
    return result;
  }
  const Cause& first = diagnosis.causes.front();
  const auto name = [&](const Cause& cause) {
    return (cause.stray ? "a stray grain under " : "") + cause.sheet + " (step " +
           std::to_string(detail::number_here(layers, cause.step)) + " here), " +
           detail::of_hundred(cause.probability);
  };
  const auto say = [&](const std::string& text) {
    if (!text.empty()) result.push_back(text);
  };
  say("Most likely " + name(first) + ".");
  if (mark.kind == MarkKind::wave) return result;
  say(detail::depth_text(layers, first));
  say(detail::expected_text(first));
  say(detail::missed_text(workings, layers, first));
  say(detail::way_text(mark, layers, first));
  constexpr double worth_naming = 0.05;
  for (std::size_t i = 1; i < diagnosis.causes.size(); ++i) {
    if (diagnosis.causes[i].probability >= worth_naming)
      say("Else " + name(diagnosis.causes[i]) + ".");
  }
  if (first.stray) say("Wash the work and your hands, and take a fresh " + first.sheet + ".");
  if (!mark.direction_deg && first.probability < 0.9 && mark.kind != MarkKind::swirl)
    say("Which way it runs, against the ways of the steps, would tell more.");
  return result;
}

}  // namespace levigate
