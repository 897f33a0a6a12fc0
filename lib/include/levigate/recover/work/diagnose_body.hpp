// Diagnosing a mark in workings that are laid out.
#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

#include "levigate/detail/normal.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/levelling_of.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/work/depth_tally.hpp"
#include "levigate/recover/work/evidence.hpp"
#include "levigate/recover/work/layer.hpp"
#include "levigate/recover/work/visible.hpp"
#include "levigate/recover/work/weighing.hpp"
#include "levigate/recover/work/zone_done.hpp"
#include "levigate/surface/shrink_back.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Peel that the levelling step left: of the height that was measured, else of any from what may stay to what was sprayed,
/// even in logarithm. What comes back of it is levelled too, as in a plan.
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
    const double need_um = levelling_of(zone, zone.block, height_um, stays_um) *
                           with_shrink_back(workings.job.coating.shrink_back);
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

/// diagnose() of a job and a stack that are read. See recover/diagnose.hpp.
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
