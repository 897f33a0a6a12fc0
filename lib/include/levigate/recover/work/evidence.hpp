// Why a step is taken to have made a mark.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <vector>

#include "levigate/fact.hpp"
#include "levigate/plan/work/coat_of.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/work/layer.hpp"
#include "levigate/recover/work/visible.hpp"
#include "levigate/surface/inspection_table.hpp"
#include "levigate/surface/scratch_width.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What was seen, and how deep that is; shows_um: width from which a scratch stands out.
inline Evidence seen(const Workings& workings, const levigate::Mark& mark, double shows_um) {
  const auto deep_um = [&](double width_um) {
    return depth_of_width_um(width_um, workings.model.flank_deg);
  };
  Evidence result{.kind = EvidenceKind::witness_line, .mark = mark.kind};
  if (mark.kind == MarkKind::witness_line) {
    if (rounds_melt(workings.job)) result.kind = EvidenceKind::bottom_shows;
    return result;
  }
  if (mark.kind == MarkKind::wave) {
    result.kind = EvidenceKind::wave_seen;
    if (mark.height_um) result.numbers = {{"height_um", *mark.height_um}};
  } else if (mark.kind == MarkKind::haze) {
    result.kind = EvidenceKind::haze_seen;
    result.numbers = {{"shows_um", shows_um}};
  } else if (mark.width_um) {
    result.kind = EvidenceKind::width_seen;
    result.numbers = {{"width_um", *mark.width_um}, {"depth_um", deep_um(*mark.width_um)}};
  } else {
    const double lamp_um = lamp_width_um(shows_um);
    result.kind = mark.seen == Seen::lamp ? EvidenceKind::lamp_seen : EvidenceKind::sun_seen;
    result.numbers = {{"shows_um", shows_um},
                      {"shows_depth_um", deep_um(shows_um)},
                      {"lamp_width_um", lamp_um},
                      {"lamp_depth_um", deep_um(lamp_um)}};
  }
  return result;
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
inline Evidence depth_of(const std::vector<Layer>& layers, Evidence about, const Cause& cause) {
  double since_um = 0;
  for (const Layer& later : layers) {
    if (later.step > cause.step) since_um += later.removal_um;
  }
  about.kind = EvidenceKind::depth;
  about.numbers = {{"scratch_um", layer_of_step(layers, cause.step).scratch_um},
                   {"removal_um", since_um}};
  return about;
}

/// The step that most likely missed the spot, where it is likelier than not that one did.
inline std::optional<Evidence> missed(const Workings& workings, const std::vector<Layer>& layers,
                                      Evidence about, const Cause& cause) {
  const Layer* most = nullptr;
  for (const Layer& layer : layers) {
    if (!most || cause.missed[layer.step] > cause.missed[most->step]) most = &layer;
  }
  if (cause.missed[most->step] < 0.5) return std::nullopt;
  about.kind = EvidenceKind::missed;
  about.sheet = workings.stack.sheets[most->sheet].id;
  about.numbers = {{"probability", cause.missed[most->step]}};
  return about;
}

/// The way the mark runs against that of the strokes, where both are known.
inline std::optional<Evidence> way(const levigate::Mark& mark, const std::vector<Layer>& layers,
                                   Evidence about, const Cause& cause) {
  const Layer& layer = layer_of_step(layers, cause.step);
  if (!mark.direction_deg || !layer.direction_deg) return std::nullopt;
  const double apart = angle_between_deg(*mark.direction_deg, *layer.direction_deg);
  const double sd_deg = inspection_table[0].direction_sd_deg.value;
  about.kind = apart <= 2.0 * sd_deg ? EvidenceKind::along : EvidenceKind::across;
  about.numbers = {{"mark_deg", *mark.direction_deg}, {"strokes_deg", *layer.direction_deg}};
  return about;
}

/// Why no step made a mark.
inline Evidence no_cause(const Workings& workings, const Diagnosis& diagnosis) {
  const levigate::Mark& mark = diagnosis.mark;
  const double stays_um = workings.job.rules.residual_peel_um;
  Evidence result{.kind = EvidenceKind::elsewhere, .mark = mark.kind};
  if (mark.kind == MarkKind::wave && mark.height_um && *mark.height_um <= 2.0 * stays_um) {
    result.kind = EvidenceKind::peel_may_stay;
    result.numbers = {{"residual_um", stays_um}};
  } else if (mark.kind == MarkKind::wave) {
    result.kind = EvidenceKind::no_peel;
  } else if (mark.width_um && *mark.width_um < diagnosis.shows_um) {
    result.kind = EvidenceKind::finish;
    result.numbers = {{"shows_um", diagnosis.shows_um}};
  }
  return result;
}

}  // namespace detail

/// The evidence for the causes of a diagnosis. Causes of less than worth_naming are left out.
/// Throws: nothing that diagnose() would not
inline std::vector<Evidence> evidence(const Workings& workings, const std::vector<Layer>& layers,
                                      const Diagnosis& diagnosis) {
  const Mark& mark = diagnosis.mark;
  std::vector<Evidence> result{detail::seen(workings, mark, diagnosis.shows_um)};
  if (mark.kind == MarkKind::witness_line) return result;
  if (diagnosis.causes.empty()) {
    result.push_back(detail::no_cause(workings, diagnosis));
    return result;
  }
  const auto naming = [&](EvidenceKind kind, const Cause& cause) {
    const auto number = static_cast<double>(detail::number_here(layers, cause.step));
    return Evidence{kind,
                    mark.kind,
                    cause.sheet,
                    cause.stray,
                    {{"step", number}, {"probability", cause.probability}}};
  };
  const Cause& first = diagnosis.causes.front();
  result.push_back(naming(EvidenceKind::likeliest, first));
  if (mark.kind == MarkKind::wave) return result;
  const Evidence about{.kind = EvidenceKind::expected,
                       .mark = mark.kind,
                       .sheet = first.sheet,
                       .stray = first.stray};
  result.push_back(detail::depth_of(layers, about, first));
  result.push_back(about);
  result.back().numbers = {{"expected", first.expected}};
  if (const auto one = detail::missed(workings, layers, about, first)) result.push_back(*one);
  if (const auto one = detail::way(mark, layers, about, first)) result.push_back(*one);
  constexpr double worth_naming = 0.05;
  for (std::size_t i = 1; i < diagnosis.causes.size(); ++i) {
    if (diagnosis.causes[i].probability >= worth_naming)
      result.push_back(naming(EvidenceKind::other_cause, diagnosis.causes[i]));
  }
  if (first.stray) {
    result.push_back(about);
    result.back().kind = EvidenceKind::wash;
  }
  if (mark.direction_deg && std::none_of(layers.begin(), layers.end(), [](const Layer& layer) {
        return layer.direction_deg.has_value();
      }))
    result.push_back({.kind = EvidenceKind::strokes_untold,
                      .mark = mark.kind,
                      .numbers = {{"mark_deg", *mark.direction_deg}}});
  if (!mark.direction_deg && first.probability < 0.9 && mark.kind != MarkKind::swirl)
    result.push_back({.kind = EvidenceKind::ask_which_way, .mark = mark.kind});
  return result;
}

}  // namespace levigate
