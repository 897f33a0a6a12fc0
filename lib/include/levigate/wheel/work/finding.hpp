// The work behind wheel/finding.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "levigate/wheel/finding.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/fact.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/edge.hpp"
#include "levigate/wheel/limits.hpp"
#include "levigate/wheel/pass.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What a wheel and a surface are called.
inline std::vector<Named> named(const Wheel& wheel, std::string_view surface) {
  return {{"wheel", wheel.name}, {"surface", std::string(surface)}};
}

/// The speed and what would be right; an rpm only where the wheel may run at it.
inline std::vector<Quantity> figures_of(const SpeedFinding& speed) {
  std::vector<Quantity> result{{"surface_speed_m_s", speed.surface_speed_m_s},
                               {"speed_low_m_s", speed.speed_low_m_s},
                               {"speed_high_m_s", speed.speed_high_m_s}};
  if (speed.rpm_is_rated) result.push_back({"rpm", speed.rpm});
  result.push_back({"diameter_mm", speed.diameter_mm});
  return result;
}

inline std::vector<Quantity> figures_of(const WheelPass& pass, const Wheel& wheel,
                                        const WheelLimits& limits) {
  return {{"dwell_s", pass.dwell_s},
          {"rise_k", pass.rise_k},
          {"rise_limit_k", limits.rise_k},
          {"dwell_limit_s", pass.dwell_limit_s},
          {"least_feed_m_s", pass.least_feed_m_s},
          {"most_force_n", wheel.force_n * limits.rise_k / pass.rise_k}};
}

}  // namespace detail

LEVIGATE_WORK std::vector<WheelFinding> wheel_findings(const Wheel& wheel,
                                                       const WheelLimits& limits,
                                                       std::string_view surface) {
  std::vector<WheelFinding> result;
  const SpeedFinding speed = speed_finding(wheel, limits);
  const WheelPass pass = wheel_pass(wheel, limits, 1.0, 0.0);
  if (speed.verdict == SpeedVerdict::too_fast) {
    result.push_back({WheelFindingKind::wheel_too_fast, Severity::error,
                      detail::named(wheel, surface), detail::figures_of(speed)});
  }
  if (pass.too_long()) {
    result.push_back({WheelFindingKind::dwell_too_long, Severity::error,
                      detail::named(wheel, surface), detail::figures_of(pass, wheel, limits)});
  }
  if (speed.verdict == SpeedVerdict::too_slow) {
    result.push_back({WheelFindingKind::wheel_too_slow, Severity::note,
                      detail::named(wheel, surface), detail::figures_of(speed)});
  }
  return result;
}

LEVIGATE_WORK std::vector<WheelFinding> edge_findings(const Wheel& wheel, double radius_mm) {
  const EdgeLoad edge = edge_load(wheel, radius_mm);
  if (!edge.caution) return {};
  return {{WheelFindingKind::edge_pressure,
           Severity::warning,
           {{"wheel", wheel.name}},
           {{"factor", edge.factor}, {"radius_mm", radius_mm}}}};
}

LEVIGATE_WORK std::vector<WheelFinding> compound_findings(const Compound& compound,
                                                          double before_um, double scratch_um) {
  const std::string where = "compound '" + compound.name + "'";
  validate(compound, where);
  detail::require_range(before_um, 0.01, 1e4, "before_um", "um", where);
  detail::require_range(scratch_um, 0.0, 1e4, "scratch_um", "um", where);
  const std::vector<Named> named{{"compound", compound.name, "", compound.size_um}};
  std::vector<WheelFinding> result;
  if (compound.size_um >= before_um) {
    result.push_back({WheelFindingKind::compound_too_coarse,
                      Severity::error,
                      named,
                      {{"before_um", before_um}}});
  }
  if (scratch_um > compound.coarsest_scratch_um) {
    result.push_back({WheelFindingKind::scratch_too_deep,
                      Severity::error,
                      named,
                      {{"reach_um", compound.coarsest_scratch_um}, {"scratch_um", scratch_um}}});
  }
  return result;
}

}  // namespace levigate
