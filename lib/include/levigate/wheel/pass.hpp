// One pass of the work under a wheel: how long a spot stays, how warm it gets, how much film goes.
#pragma once

#include <cmath>

#include "levigate/error.hpp"
#include "levigate/wheel/heat.hpp"
#include "levigate/wheel/limits.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

inline constexpr double mm_per_m = 1e3;

}  // namespace detail

/// Time that a spot is under the face in one pass [s].
inline double dwell_s(const Wheel& wheel) noexcept {
  return wheel.contact_mm / detail::mm_per_m / wheel.feed_m_s;
}

/// Film that one pass removes at a rate per metre of rim travel [um].
inline double film_per_pass_um(const Wheel& wheel, double rate_um_per_m) {
  return rate_um_per_m * wheel.surface_speed_m_s() * dwell_s(wheel);
}

/// Time that one pass over an area takes [s].
inline double zone_pass_s(const Wheel& wheel, double area_cm2) noexcept {
  constexpr double cm2_per_mm_m = 10.0;
  return area_cm2 / (cm2_per_mm_m * wheel.width_mm * wheel.feed_m_s);
}

/// One pass, and how many a removal takes.
struct WheelPass {
  double surface_speed_m_s = 0;
  double dwell_s = 0;           ///< time that a spot is under the face
  double dwell_limit_s = 0;     ///< after which it would be too warm
  double rise_k = 0;            ///< temperature rise of a spot as it leaves the face
  double least_feed_m_s = 0;    ///< slowest feed that keeps the limit
  double turns = 0;             ///< of the wheel while a spot is under it: strokes per pass
  double film_per_pass_um = 0;  ///< film that one pass removes
  double passes = 0;            ///< whole passes for the removal

  bool too_long() const noexcept { return dwell_s > dwell_limit_s; }
};

/// A wheel on a surface as the heat formulas take it.
inline WheelHeatInput heat_of(const Wheel& wheel, const WheelLimits& limits) {
  return {.effusivity = limits.effusivity,
          .friction = wheel.friction,
          .pressure_kpa = wheel.pressure_kpa(),
          .speed_m_s = wheel.surface_speed_m_s(),
          .share = wheel.heat_share};
}

/// What one pass does, the work starting at room temperature.
///
///   dwell = contact / feed,   film per pass = rate speed dwell,   passes = ceil(removal / film per pass)
///
/// The travel over a spot is that of the rim; the feed adds or takes little (a part in seventy in the profiles) and is
/// left out. Passes that follow each other at once add up their heat: let the work cool between them.
///
/// @param wheel          with the feed at which the work passes
/// @param limits         of the surface
/// @param rate_um_per_m  film removed per metre of rim travel [um/m], above 0 to 1e6
/// @param removal_um     film to remove [um], 0 to 10 000
/// @return               dwell [s], temperature [K], film [um], number of passes
/// Throws:    as validate() of wheel and limits; OutOfRange where a number is outside its range
/// NaN:       rejected
/// Source:    geometry; temperature_rise_k() and dwell_limit_s() for the heat
inline WheelPass wheel_pass(const Wheel& wheel, const WheelLimits& limits, double rate_um_per_m,
                            double removal_um) {
  constexpr auto where = "wheel_pass";
  validate(wheel, where);
  validate(limits, where);
  detail::require_range(rate_um_per_m, 1e-12, 1e6, "rate_um_per_m", "um/m", where);
  detail::require_range(removal_um, 0.0, 1e4, "removal_um", "um", where);
  const WheelHeatInput heat = heat_of(wheel, limits);
  const double spot_s = dwell_s(wheel);
  const double most_s = dwell_limit_s(heat, limits.rise_k);
  const double film_um = film_per_pass_um(wheel, rate_um_per_m);
  return {.surface_speed_m_s = heat.speed_m_s,
          .dwell_s = spot_s,
          .dwell_limit_s = most_s,
          .rise_k = temperature_rise_k(heat, spot_s),
          .least_feed_m_s = wheel.contact_mm / detail::mm_per_m / most_s,
          .turns = wheel.rpm / 60.0 * spot_s,
          .film_per_pass_um = film_um,
          .passes = std::ceil(removal_um / film_um)};
}

}  // namespace levigate
