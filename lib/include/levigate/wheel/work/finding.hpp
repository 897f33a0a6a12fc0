// The work behind wheel/finding.hpp: defines what it declares.
#pragma once

#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/wheel/finding.hpp"

#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/edge.hpp"
#include "levigate/wheel/limits.hpp"
#include "levigate/wheel/pass.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Whole numbers on the right side of a limit.
inline std::string at_least(double value) { return "at least " + fixed(std::ceil(value), 0); }

inline std::string at_most(double value) { return "at most " + fixed(std::floor(value), 0); }

inline std::string speed_message(const SpeedFinding& speed, const Wheel& wheel,
                                 std::string_view surface) {
  const auto bound = speed.verdict == SpeedVerdict::too_slow ? at_least : at_most;
  std::string text = "wheel '" + wheel.name + "' runs at " + fixed(speed.surface_speed_m_s, 1) +
                     " m/s; " + std::string(surface) + " asks for " +
                     fixed(speed.speed_low_m_s, 1) + " to " + fixed(speed.speed_high_m_s, 1) +
                     " m/s: ";
  if (speed.rpm_is_rated) text += bound(speed.rpm) + " rpm with this wheel, or ";
  return text + bound(speed.diameter_mm) + " mm at this rpm";
}

inline std::string dwell_message(const WheelPass& pass, const Wheel& wheel,
                                 const WheelLimits& limits, std::string_view surface) {
  const double least_mm_s = 1e3 * pass.least_feed_m_s;
  const double most_n = wheel.force_n * limits.rise_k / pass.rise_k;
  return "a spot stays " + fixed(pass.dwell_s, 2) + " s under wheel '" + wheel.name +
         "' and warms by " + fixed(pass.rise_k, 1) + " K; " + std::string(surface) + " stands " +
         fixed(limits.rise_k, 1) + " K, reached after " + fixed(pass.dwell_limit_s, 2) +
         " s: feed " + at_least(least_mm_s) + " mm/s, or press with less than " + fixed(most_n, 1) +
         " N";
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
                      detail::speed_message(speed, wheel, surface)});
  }
  if (pass.too_long()) {
    result.push_back({WheelFindingKind::dwell_too_long, Severity::error,
                      detail::dwell_message(pass, wheel, limits, surface)});
  }
  if (speed.verdict == SpeedVerdict::too_slow) {
    result.push_back({WheelFindingKind::wheel_too_slow, Severity::note,
                      detail::speed_message(speed, wheel, surface)});
  }
  return result;
}

LEVIGATE_WORK std::vector<WheelFinding> edge_findings(const Wheel& wheel, double radius_mm) {
  const EdgeLoad edge = edge_load(wheel, radius_mm);
  if (!edge.caution) return {};
  return {{WheelFindingKind::edge_pressure, Severity::warning,
           "wheel '" + wheel.name + "' may press " + detail::fixed(edge.factor, 1) +
               " times as hard on an edge of radius " + detail::number_text(radius_mm) +
               " mm as on the flat, and cut as much faster: keep edges trailing and off the face"}};
}

LEVIGATE_WORK std::vector<WheelFinding> compound_findings(const Compound& compound,
                                                          double before_um, double scratch_um) {
  const std::string where = "compound '" + compound.name + "'";
  validate(compound, where);
  detail::require_range(before_um, 0.01, 1e4, "before_um", "um", where);
  detail::require_range(scratch_um, 0.0, 1e4, "scratch_um", "um", where);
  std::vector<WheelFinding> result;
  if (compound.size_um >= before_um) {
    result.push_back({WheelFindingKind::compound_too_coarse, Severity::error,
                      where + " of " + detail::size_text(compound.size_um) +
                          " is no finer than the grain before it, " +
                          detail::size_text(before_um)});
  }
  if (scratch_um > compound.coarsest_scratch_um) {
    result.push_back({WheelFindingKind::scratch_too_deep, Severity::error,
                      where + " takes out scratches to " +
                          detail::fixed(compound.coarsest_scratch_um, 2) +
                          " um; the step before leaves " + detail::fixed(scratch_um, 2) + " um"});
  }
  return result;
}

}  // namespace levigate
