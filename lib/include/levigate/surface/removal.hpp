// How fast a sheet lowers a film: the removal rate per metre of sliding, its size effect, and how clogging slows it between two cleanings.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/model_table.hpp"

namespace levigate::inline v0 {

/// Size effect of abrasive wear: fine grains remove less per load and metre than coarse ones.
///
///   eta(d) = min(1, (d / saturation)^exponent)
///
/// @param size_um        median grain size d [um], 0.01 to 10 000
/// @param exponent       of the size (dimensionless), 0 to 2
/// @param saturation_um  size from which on grain removes no faster [um], 1 to 10 000
/// @return               share of the coarse-grain rate (dimensionless), 0 to 1
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  2 ulp
/// Source:    power law and saturation near 100 um from memory (Avient 1960; Larsen-Badse 1968); exponent
///            between the 0.65 and 0.41 that follow from Sydor et al., Appl. Sci. 11(6):2860 (2021), belts of
///            P60, P120 and P180 on soft- and hardwood: data/profiles/model.json
inline double size_effect_with(double size_um, double exponent, double saturation_um) {
  if (detail::any_nan(size_um, exponent, saturation_um)) return std::nan("");
  detail::require_range(size_um, 0.01, 1e4, "size_um", "um", "size_effect");
  detail::require_range(exponent, 0.0, 2.0, "exponent", "", "size_effect");
  detail::require_range(saturation_um, 1.0, 1e4, "saturation_um", "um", "size_effect");
  return std::min(1.0, std::pow(size_um / saturation_um, exponent));
}

/// The same with the exponent of the model, 0.5, and its saturation, 100 um.
inline double size_effect(double size_um) {
  return size_effect_with(size_um, model_table[0].size_exponent.value,
                          model_table[0].saturation_um.value);
}

/// Wear coefficient of grain as cones that plough and cut. A cone under the load F presses a groove of the area
/// (2 / pi) tan(flank) F / H across, and a share of that leaves as chips; the rest is pushed aside.
///
///   K = (2 / pi) cutting_efficiency tan(flank)
///
/// So the same two numbers say how deep a scratch is, how much goes, and how many scratches that takes: see
/// grooves_per_um2().
///
/// @code
/// const double k = wear_coefficient(0.3, 11.0);
/// k;                                           // 0.0371
/// removal_rate_um_per_m(k, 25.8, 2.0, 200.0);  // 0.189
/// @endcode
///
/// @param cutting_efficiency  share of a groove that leaves as chips (dimensionless), 0.001 to 1
/// @param flank_deg           angle of a tip's flank with the surface [deg], 1 to 80
/// @return                    K (dimensionless)
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp
/// Source:    cones that cut, from memory (Rabinowicz, Friction and Wear of Materials); load and area of a
///            groove as in contact()
inline double wear_coefficient(double cutting_efficiency, double flank_deg) {
  if (detail::any_nan(cutting_efficiency, flank_deg)) return std::nan("");
  constexpr auto where = "wear_coefficient";
  detail::require_range(cutting_efficiency, 1e-3, 1.0, "cutting_efficiency", "", where);
  detail::require_range(flank_deg, 1.0, 80.0, "flank_deg", "deg", where);
  constexpr double per_degree = std::numbers::pi / 180.0;
  return 2.0 / std::numbers::pi * cutting_efficiency * std::tan(flank_deg * per_degree);
}

/// removal_rate_um_per_m() with another exponent and saturation of the size effect.
inline double removal_rate_with(double wear_coefficient, double size_um, double pressure_kpa,
                                double hardness_mpa, double size_exponent, double saturation_um) {
  if (detail::any_nan(wear_coefficient, size_um, pressure_kpa, hardness_mpa)) return std::nan("");
  constexpr auto where = "removal_rate_um_per_m";
  detail::require_range(wear_coefficient, 1e-6, 1.0, "wear_coefficient", "", where);
  detail::require_range(pressure_kpa, 0.01, 1e3, "pressure_kpa", "kPa", where);
  detail::require_range(hardness_mpa, 1.0, 1e5, "hardness_mpa", "MPa", where);
  constexpr double um_per_m = 1e6;
  constexpr double mpa_per_kpa = 1e-3;
  return wear_coefficient * size_effect_with(size_um, size_exponent, saturation_um) *
         (pressure_kpa * mpa_per_kpa / hardness_mpa) * um_per_m;
}

/// Depth of film removed per metre that the abrasive slides over a point, by fresh paper.
///
///   rho = K eta(d) P / H
///
/// @param wear_coefficient  K (dimensionless), 1e-6 to 1; two-body abrasion 5e-3 to 5e-2
/// @param size_um           median grain size d [um], 0.01 to 10 000
/// @param pressure_kpa      pressure of the block P [kPa], 0.01 to 1000
/// @param hardness_mpa      indentation hardness of the film H [MPa], 1 to 100 000
/// @return                  removal rate [um of film per m of sliding]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp as arithmetic; as a prediction uncertain by a factor of 2 to 3 until calibrated
/// Source:    Archard's and Preston's law; range of K from memory (Rabinowicz, Friction and Wear of
///            Materials)
inline double removal_rate_um_per_m(double wear_coefficient, double size_um, double pressure_kpa,
                                    double hardness_mpa) {
  return removal_rate_with(wear_coefficient, size_um, pressure_kpa, hardness_mpa,
                           model_table[0].size_exponent.value, model_table[0].saturation_um.value);
}

/// Mean share of the fresh rate over a cleaning interval, where the rate fades towards a floor as
/// f(s) = floor + (1 - floor) exp(-s / fade_m) and each cleaning restores it.
///
///   mean = floor + (1 - floor) (1 - e^(-x)) / x,   x = clean_every_m / fade_m
///
/// @param clean_every_m  travel between two cleanings [m], 0 to 1e9; 0 means always clean
/// @param fade_m         fade length of the clogging [m], 1e-6 to 1e9
/// @param floor          share of the rate that clogged paper keeps (dimensionless), 0 to 1
/// @return               mean share (dimensionless), floor to 1
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp
/// Source:    exponential decay to a floor that is not zero: Ockajova et al., BioResources
///            11(2):5242-5254 (2016), belts
inline double clogging_share(double clean_every_m, double fade_m, double floor) {
  if (detail::any_nan(clean_every_m, fade_m, floor)) return std::nan("");
  constexpr auto where = "clogging_share";
  detail::require_range(clean_every_m, 0.0, 1e9, "clean_every_m", "m", where);
  detail::require_range(fade_m, 1e-6, 1e9, "fade_m", "m", where);
  detail::require_range(floor, 0.0, 1.0, "floor", "", where);
  const double x = clean_every_m / fade_m;
  return x == 0.0 ? 1.0 : floor - (1.0 - floor) * std::expm1(-x) / x;
}

}  // namespace levigate
