// Conversions between the units that labels, gauges and machines use and the units of this library (um, cm2, m/s, kPa, min).
// Every factor is exact by definition of the inch and the pound-force.
#pragma once

namespace levigate::inline v0 {

/// Micrometres from mils (thousandths of an inch): 1 mil = 25.4 um, exact.
constexpr double um_from_mil(double mil) noexcept { return mil * 25.4; }

/// Mils from micrometres: 1 mil = 25.4 um, exact.
constexpr double mil_from_um(double um) noexcept { return um / 25.4; }

/// Micrometres from inches: 1 in = 25 400 um, exact.
constexpr double um_from_inch(double inch) noexcept { return inch * 25400.0; }

/// Millilitres from US fluid ounces: 1 fl oz = 231/128 in3 = 29.5735295625 ml, exact.
constexpr double ml_from_fl_oz(double fl_oz) noexcept { return fl_oz * 29.5735295625; }

/// Millimetres from inches: 1 in = 25.4 mm, exact.
constexpr double mm_from_inch(double inch) noexcept { return inch * 25.4; }

/// Inches from millimetres: 1 in = 25.4 mm, exact.
constexpr double inch_from_mm(double mm) noexcept { return mm / 25.4; }

/// Square inches from square centimetres: 1 in2 = 2.54^2 cm2 = 6.4516 cm2, exact.
constexpr double in2_from_cm2(double cm2) noexcept { return cm2 / 6.4516; }

/// Metres per second from feet per minute: 1 ft/min = 0.3048/60 m/s = 0.00508 m/s, exact.
constexpr double m_s_from_ft_min(double ft_min) noexcept { return ft_min * 0.00508; }

/// Feet per minute from metres per second: 1 ft/min = 0.00508 m/s, exact.
constexpr double ft_min_from_m_s(double m_s) noexcept { return m_s / 0.00508; }

/// Metres per minute from metres per second, exact.
constexpr double m_min_from_m_s(double m_s) noexcept { return m_s * 60.0; }

/// A rise in degrees Fahrenheit from one in kelvin: 1 K is 1.8 degrees, exact by definition of the scale.
constexpr double fahrenheit_rise_from_k(double rise_k) noexcept { return rise_k * 1.8; }

/// Mean pressure [kPa] of a force [N] on an area [cm2]: 1 N/cm2 = 10 kPa, exact.
constexpr double kpa_from_n_per_cm2(double force_n, double area_cm2) noexcept {
  return force_n / area_cm2 * 10.0;
}

}  // namespace levigate
