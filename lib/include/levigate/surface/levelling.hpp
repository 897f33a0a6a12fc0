// What it costs to level orange peel: a hard block cuts the crests, a soft pad follows them down.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// Waves of a surface, the pad on them, and how far to go.
struct LevellingInput {
  double peel_um;        ///< height of the waves, peak to valley [um], 0 to 10 000
  double wavelength_mm;  ///< from crest to crest [mm], 0.01 to 1000
  double modulus_mpa;    ///< Young's modulus of the pad or block [MPa], 0.001 to infinity (rigid)
  double pressure_kpa;   ///< mean pressure [kPa], 0.01 to 1000
  double residual_um;  ///< height of the waves that may stay, peak to valley [um], 0.001 to 10 000
};

/// Largest amplitude (half of peak to valley) that a pad still touches all over: above it only
/// crests are cut, below it the valleys wear as well.
///
///   a_c = wavelength P / (pi E)
///
/// @param wavelength_mm  from crest to crest [mm], 0.01 to 1000
/// @param modulus_mpa    Young's modulus of the pad E [MPa], 0.001 to infinity (rigid)
/// @param pressure_kpa   mean pressure P [kPa], 0.01 to 1000
/// @return               amplitude of full contact [um], 0 for a rigid block
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp; as a model, a half-space without friction on a sinusoid of small slope
/// Source:    Westergaard's sinusoidal contact, from memory (Johnson, Contact Mechanics, 1985)
inline double critical_amplitude_um(double wavelength_mm, double modulus_mpa, double pressure_kpa) {
  if (detail::any_nan(wavelength_mm, modulus_mpa, pressure_kpa)) return std::nan("");
  constexpr auto where = "critical_amplitude_um";
  constexpr double infinity = std::numeric_limits<double>::infinity();
  detail::require_range(wavelength_mm, 0.01, 1e3, "wavelength_mm", "mm", where);
  detail::require_range(modulus_mpa, 1e-3, infinity, "modulus_mpa", "MPa", where);
  detail::require_range(pressure_kpa, 0.01, 1e3, "pressure_kpa", "kPa", where);
  return wavelength_mm * pressure_kpa / (std::numbers::pi * modulus_mpa);  // mm kPa = um MPa
}

namespace detail {

/// Film removed until waves of amplitude `start` are down to `end`, all in um: see levelling_removal_um().
inline double levelled_um(double start, double critical, double end) {
  if (start <= end) return 0.0;
  const double crests = std::max(0.0, start - std::max(critical, end));
  if (critical <= end) return crests;
  // log1p, as waves may exceed what may stay by very little.
  return crests + critical * std::log1p((std::min(start, critical) - end) / end);
}

/// The amplitude that so much removed takes down to `end`: the inverse of levelled_um(), for what is removed from 0 on.
inline double amplitude_levelled_um(double removed, double critical, double end) {
  if (critical <= end) return removed + end;
  const double contact = critical * std::log(critical / end);
  return removed > contact ? critical + (removed - contact) : end * std::exp(removed / critical);
}

}  // namespace detail

/// Mean depth of film removed until waves of height `peel_um` are down to `residual_um`.
///
///   R = max(0, a0 - c) + a_c ln(min(a0, a_c) / min(a_c, a_f)),   c = max(a_c, a_f)
///
/// with a0 and a_f half of peel_um and residual_um. While the amplitude exceeds a_c only crests are
/// cut; in full contact the wear law makes it decay as da/dR = -a / a_c.
///
/// Exact for a0 <= a_c. Above it errs on the safe side: measured against an elastic contact stepped
/// in film removed, for a0 / a_c from 1.2 to 1000, it asks for 0 to 12 % too much film where a_f is
/// a tenth of a0 or less, for up to 29 % too much at three tenths, 57 % at half, 108 % at seven
/// tenths. What a rigid block removes is the least there is: a0 (sin t - t cos t) / pi with
/// cos t = 2 a_f / a0 - 1, all that lies above the valleys by more than residual_um.
///
/// @param input  waves, pad and aim; see LevellingInput for units and ranges
/// @return       mean depth of film removed [um]; 0 where the waves are small enough already
/// Throws:    OutOfRange where a member is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-14 relative; as a model see above, tests/property/levelling_simulation_test.cpp
/// Source:    crests: geometry; full contact: Archard's law with Westergaard's pressure, from
///            memory (Johnson, Contact Mechanics, 1985)
inline double levelling_removal_um(const LevellingInput& input) {
  if (detail::any_nan(input.peel_um, input.wavelength_mm, input.modulus_mpa, input.pressure_kpa,
                      input.residual_um)) {
    return std::nan("");
  }
  constexpr auto where = "levelling_removal_um";
  detail::require_range(input.peel_um, 0.0, 1e4, "peel_um", "um", where);
  detail::require_range(input.residual_um, 1e-3, 1e4, "residual_um", "um", where);
  const double critical =
      critical_amplitude_um(input.wavelength_mm, input.modulus_mpa, input.pressure_kpa);
  return detail::levelled_um(0.5 * input.peel_um, critical, 0.5 * input.residual_um);
}

}  // namespace levigate
