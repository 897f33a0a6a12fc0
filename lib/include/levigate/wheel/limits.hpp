// What a surface stands from a wheel, by its name. And whether a wheel keeps the band of rim speeds.
#pragma once

#include <string_view>

#include "levigate/error.hpp"
#include "levigate/stack/speed.hpp"
#include "levigate/surface/wheel_limits.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

/// The limits of that name in the profiles: a coating's name, "acrylic sheet edges" or "metal".
/// Throws: BadInput where there is none, naming the nearest.
WheelLimits wheel_limits_named(std::string_view name);

/// How a rim speed lies to the band.
enum class SpeedVerdict { too_slow, ok, too_fast };

constexpr std::string_view to_string(SpeedVerdict verdict) noexcept {
  switch (verdict) {
    case SpeedVerdict::too_slow: return "too_slow";
    case SpeedVerdict::ok: return "ok";
    case SpeedVerdict::too_fast: return "too_fast";
  }
  return "";
}

/// A wheel's rim speed beside the band of a surface, and what would be right.
struct SpeedFinding {
  SpeedVerdict verdict = SpeedVerdict::ok;
  double surface_speed_m_s = 0;
  double speed_low_m_s = 0;
  double speed_high_m_s = 0;
  double rpm = 0;             ///< nearest in the band with this wheel [1/min]
  double diameter_mm = 0;     ///< nearest in the band at this rpm [mm]
  bool rpm_is_rated = false;  ///< the wheel may run at that rpm
};

/// Whether a wheel runs at a speed that suits a surface.
///
///   rpm = v 60 s / (pi diameter),   diameter = v 60 s / (pi rpm),   v the nearest end of the band
///
/// @param wheel   as it runs
/// @param limits  of the surface
/// @return        verdict, speeds [m/s], the rpm [1/min] or the diameter [mm] that would be right
/// Throws:    as validate() of either
/// Source:    geometry; the bands are common practice, data/profiles/coatings and heat.json
inline SpeedFinding speed_finding(const Wheel& wheel, const WheelLimits& limits) {
  validate(wheel, "speed_finding");
  validate(limits, "speed_finding");
  const double speed = wheel.surface_speed_m_s();
  SpeedFinding result{.verdict = SpeedVerdict::ok,
                      .surface_speed_m_s = speed,
                      .speed_low_m_s = limits.speed_low_m_s,
                      .speed_high_m_s = limits.speed_high_m_s,
                      .rpm = wheel.rpm,
                      .diameter_mm = wheel.diameter_mm,
                      .rpm_is_rated = true};
  if (speed >= limits.speed_low_m_s && speed <= limits.speed_high_m_s) return result;
  const bool slow = speed < limits.speed_low_m_s;
  const double change = (slow ? limits.speed_low_m_s : limits.speed_high_m_s) / speed;
  result.verdict = slow ? SpeedVerdict::too_slow : SpeedVerdict::too_fast;
  result.rpm *= change;
  result.diameter_mm *= change;
  result.rpm_is_rated = result.rpm <= wheel.rated_rpm;
  return result;
}

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/wheel/work/limits.hpp"
#endif
