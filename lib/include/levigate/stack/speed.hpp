// How fast a turning wheel and a pad on a hand-held machine slide over the work.
#pragma once

#include <cmath>
#include <numbers>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Speed of a point that goes round a circle [m/s].
inline double round_speed_m_s(double diameter_mm, double rpm) {
  return std::numbers::pi * diameter_mm * rpm / 60e3;
}

}  // namespace detail

/// Speed of the rim of a wheel.
///
///   v = pi diameter rpm / 60 s
///
/// @param diameter_mm  of the wheel [mm], 1 to 10 000
/// @param rpm          turns per minute [1/min], 0 to 1 000 000
/// @return             surface speed [m/s]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp
/// Source:    geometry
inline double surface_speed_m_s(double diameter_mm, double rpm) {
  if (detail::any_nan(diameter_mm, rpm)) return std::nan("");
  constexpr auto where = "surface_speed_m_s";
  detail::require_range(diameter_mm, 1.0, 1e4, "diameter_mm", "mm", where);
  detail::require_range(rpm, 0.0, 1e6, "rpm", "1/min", where);
  return detail::round_speed_m_s(diameter_mm, rpm);
}

namespace detail {

/// Sum over k of the squares of binomial(1/2, k), each times part(k), times x^k; x 0 to 1.
template <typename Part>
double half_series(double x, Part part) {
  constexpr int most = 20000;  // at x = 1 the terms fall as k^-4
  double sum = 0, binomial = 1, power = 1;
  for (int k = 0; k < most; ++k) {
    const double term = binomial * binomial * power * part(k);
    sum += term;
    if (k > 2 && std::abs(term) < 1e-17 * sum) break;
    binomial *= (0.5 - k) / (k + 1.0);
    power *= x;
  }
  return sum;
}

}  // namespace detail

/// Mean speed of a round pad on the work: its centre goes round a small circle, and the pad turns about its centre.
///
///   a = pi orbit rpm / 60 s,   b = pi pad pad_rpm / 60 s
///   v = a F(-1/2, -1/2; 2; (b/a)^2) where b <= a,   v = 2/3 b F(-1/2, -3/2; 1; (a/b)^2) where b > a
///
/// with F the hypergeometric function: the mean of |a + b r/R e^(i phi)| over the disc and over all phi, as a point meets all of
/// them in turn. Without a turn v = a, at each point. Without an orbit v = 2/3 b.
///
/// @param pad_mm    diameter of the pad [mm], 1 to 10 000
/// @param pad_rpm   turns of the pad about its centre [1/min], 0 to 1 000 000
/// @param orbit_mm  diameter of the circle of its centre [mm], 0 to 1000
/// @param rpm       rounds of that circle [1/min], 0 to 1 000 000
/// @return          mean speed [m/s]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-11 relative
/// Source:    geometry; Gauss's series for the mean over phi, integrated over the disc term by term
inline double pad_speed_m_s(double pad_mm, double pad_rpm, double orbit_mm, double rpm) {
  if (detail::any_nan(pad_mm, pad_rpm, orbit_mm, rpm)) return std::nan("");
  constexpr auto where = "pad_speed_m_s";
  detail::require_range(pad_mm, 1.0, 1e4, "pad_mm", "mm", where);
  detail::require_range(pad_rpm, 0.0, 1e6, "pad_rpm", "1/min", where);
  detail::require_range(orbit_mm, 0.0, 1e3, "orbit_mm", "mm", where);
  detail::require_range(rpm, 0.0, 1e6, "rpm", "1/min", where);
  const double orbit_m_s = detail::round_speed_m_s(orbit_mm, rpm);
  const double rim_m_s = detail::round_speed_m_s(pad_mm, pad_rpm);
  if (rim_m_s <= orbit_m_s) {
    const double part = orbit_m_s > 0.0 ? rim_m_s / orbit_m_s : 0.0;
    return orbit_m_s * detail::half_series(part * part, [](int k) { return 1.0 / (k + 1.0); });
  }
  const double part = orbit_m_s / rim_m_s;
  return 2.0 * rim_m_s *
         detail::half_series(part * part, [](int k) { return 1.0 / (3.0 - 2.0 * k); });
}

}  // namespace levigate
