// Diagnosing a mark in workings that are laid out.
#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

#include "levigate/detail/normal.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/cause.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/work/depth_tally.hpp"
#include "levigate/recover/work/evidence.hpp"
#include "levigate/recover/work/layer.hpp"
#include "levigate/recover/work/visible.hpp"
#include "levigate/recover/work/weighing.hpp"
#include "levigate/recover/work/worked.hpp"
#include "levigate/surface/levelling.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Peel that the levelling step left: of the height that was measured, else of any from what may stay to what was sprayed,
/// even in logarithm.
inline Diagnosis diagnose_wave(const Workings& workings, const std::vector<Layer>& layers,
                               std::size_t zone_index, const levigate::Mark& mark) {
  const Zone& zone = workings.job.zones[zone_index];
  const double stays_um = workings.job.rules.residual_peel_um;
  Diagnosis result{.mark = mark, .causes = {}, .needs = {}};
  if (workings.starts[zone_index] || passed_by(workings, zone_index) || zone.peel_um <= stays_um)
    return result;
  DepthTally tally;
  constexpr int heights = 64;
  for (int i = 0; i < heights; ++i) {
    const double share = (i + 0.5) / heights;
    const double height_um =
        mark.height_um
            ? *mark.height_um * std::exp(width_log_sd(mark.seen) * -normal_quantile(share))
            : stays_um * std::pow(zone.peel_um / stays_um, share);
    const double need_um = levelling_removal_um({.peel_um = height_um,
                                                 .wavelength_mm = zone.peel_wavelength_mm,
                                                 .modulus_mpa = zone.block.modulus_mpa,
                                                 .pressure_kpa = zone.block.pressure_kpa(),
                                                 .residual_um = stays_um});
    if (need_um > 0) tally.add(std::log(need_um), 1.0 / heights);
  }
  result.needs = tally.needs();
  if (result.needs.empty()) return result;
  const Layer& first = layers.front();
  result.causes.push_back({.step = first.step,
                           .sheet = workings.stack.sheets[first.sheet].id,
                           .stray = false,
                           .probability = 1,
                           .expected = 1,
                           .missed = {}});
  return result;
}

}  // namespace detail

/// Which step made a mark, by Bayes' rule.
///
/// Each step leaves scratches of its own grain and, now and then, of a stray grain; what later steps took off since decides
/// how many of which depth are left (MarkSource). At the spot of the mark as much may have come off as elsewhere, or more or
/// less of it by removed_cv, or one step may have missed it (spot_nodes). The chance of a cause is the share it has in all
/// marks of this kind, width and way:
///
///   scratch           density at its depth, and nothing else that shows on the spot
///   cluster, swirl    at least so many of one source, the deepest at its depth; a swirl runs in an arc
///   haze              share of the surface under scratches too fine to be told apart
///   wave              the levelling step, where there was peel
///   witness line      no step: the round is sanded through
///
/// The depth that has to come off counts what comes off unevenly: a spot that got less gets less again.
///
/// @param workings  job and stack; see workings()
/// @param done   the steps, in order
/// @param mark   what an inspection showed
/// @return       causes and needs; no causes where no step that was done explains the mark, with the reason in evidence
/// Throws:    BadInput for a sheet or zone that is not there, for a mark that contradicts itself, where nothing was done in
///            the zone; OutOfRange for a member outside its range
/// NaN:       rejected
/// Accuracy:  chances to 0.01 as a result of the model; as a statement on the world no better than the assumptions of
///            data/profiles/inspection.json, all of them named there
/// Source:    model: contact(), removal; a Poisson process thinned by wear: computed
inline Diagnosis diagnose(const Workings& workings, const std::vector<DoneStep>& done,
                          const Mark& mark) {
  validate(mark, "mark");
  const std::size_t zone = zone_index(workings.job, mark.zone);
  const std::vector<Layer> here = layers(workings, done, zone);
  if (here.empty()) throw BadInput("no step was done in zone '" + mark.zone + "', in diagnose");
  Diagnosis result{.mark = mark, .causes = {}, .needs = {}};
  if (mark.kind == MarkKind::wave) {
    result = detail::diagnose_wave(workings, here, zone, mark);
  } else if (mark.kind != MarkKind::witness_line) {
    result = detail::Weighing(workings, here, zone, mark).diagnosis();
  }
  for (Cause& cause : result.causes) cause.missed.resize(done.size(), 0.0);
  result.signs = evidence(workings, here, result);
  return result;
}

}  // namespace levigate
