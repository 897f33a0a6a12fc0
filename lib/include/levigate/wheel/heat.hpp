// How fast a wheel that stays on one spot heats a film, and how long it may stay.
#pragma once

#include <cmath>
#include <numbers>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// A wheel on a spot of the work.
struct WheelHeatInput {
  double effusivity;    ///< thermal effusivity of the work [J/(m2 K s^0.5)], 1 to 100 000
  double friction;      ///< coefficient of friction (dimensionless), 0.001 to 10
  double pressure_kpa;  ///< of the wheel on the work [kPa], 0.01 to 1000
  double speed_m_s;     ///< surface speed of the wheel [m/s], 0.001 to 1000
  double share;         ///< of the heat that enters the work (dimensionless), 0.001 to 1
};

namespace detail {

/// Heat that enters the work [W/m2].
inline double wheel_flux_w_m2(const WheelHeatInput& input, const char* where) {
  require_range(input.effusivity, 1.0, 1e5, "effusivity", "J/(m2 K s^0.5)", where);
  require_range(input.friction, 1e-3, 10.0, "friction", "", where);
  require_range(input.pressure_kpa, 0.01, 1e3, "pressure_kpa", "kPa", where);
  require_range(input.speed_m_s, 1e-3, 1e3, "speed_m_s", "m/s", where);
  require_range(input.share, 1e-3, 1.0, "share", "", where);
  return input.share * input.friction * 1e3 * input.pressure_kpa * input.speed_m_s;
}

inline bool any_nan(const WheelHeatInput& input) {
  return any_nan(input.effusivity, input.friction, input.pressure_kpa, input.speed_m_s,
                 input.share);
}

}  // namespace detail

/// Rise of the surface temperature of a spot that stays under the wheel.
///
///   dT = 2 q sqrt(t / pi) / e,   q = share friction pressure speed
///
/// @param input    wheel and work; see WheelHeatInput for units and ranges
/// @param dwell_s  time under the wheel [s], 0 to 1e6
/// @return         temperature rise [K]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp; as a model a semi-infinite body under a constant flux over a wide spot
/// Source:    from memory: Carslaw & Jaeger, Conduction of Heat in Solids, 1959
inline double temperature_rise_k(const WheelHeatInput& input, double dwell_s) {
  if (std::isnan(dwell_s) || detail::any_nan(input)) return std::nan("");
  constexpr auto where = "temperature_rise_k";
  detail::require_range(dwell_s, 0.0, 1e6, "dwell_s", "s", where);
  return 2.0 * detail::wheel_flux_w_m2(input, where) * std::sqrt(dwell_s / std::numbers::pi) /
         input.effusivity;
}

/// Time until a spot that stays under the wheel has warmed by temperature_rise_k: the inverse of
/// temperature_rise_k().
///
///   t = pi (e dT / (2 q))^2,   q = share friction pressure speed
///
/// @param input               wheel and work; see WheelHeatInput for units and ranges
/// @param temperature_rise_k  that the film stands [K], 0 to 10 000
/// @return                    dwell limit [s]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  8 ulp; as a model that of temperature_rise_k()
/// Source:    from memory: Carslaw & Jaeger, Conduction of Heat in Solids, 1959
inline double dwell_limit_s(const WheelHeatInput& input, double temperature_rise_k) {
  if (std::isnan(temperature_rise_k) || detail::any_nan(input)) return std::nan("");
  constexpr auto where = "dwell_limit_s";
  detail::require_range(temperature_rise_k, 0.0, 1e4, "temperature_rise_k", "K", where);
  const double ratio =
      input.effusivity * temperature_rise_k / (2.0 * detail::wheel_flux_w_m2(input, where));
  return std::numbers::pi * ratio * ratio;
}

}  // namespace levigate
