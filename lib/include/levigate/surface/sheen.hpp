// How a film of known refractive index and roughness shines: Fresnel reflectance and gloss units.
#pragma once

#include <cmath>
#include <numbers>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// Share of unpolarised light that a smooth surface of refractive index n reflects.
///
///   R = (r_s^2 + r_p^2) / 2
///   r_s = (cos i - w) / (cos i + w),  r_p = (n^2 cos i - w) / (n^2 cos i + w),
///   w = sqrt(n^2 - sin^2 i)
///
/// @param refractive_index  of the film n (dimensionless), 1 to 4
/// @param angle_deg         angle of incidence i from the normal [deg], 0 to 89.999
/// @return                  reflectance (dimensionless), 0 to 1
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-14 absolute
/// Source:    Fresnel's equations
inline double fresnel_reflectance(double refractive_index, double angle_deg) {
  if (detail::any_nan(refractive_index, angle_deg)) return std::nan("");
  constexpr auto where = "fresnel_reflectance";
  detail::require_range(refractive_index, 1.0, 4.0, "refractive_index", "", where);
  detail::require_range(angle_deg, 0.0, 89.999, "angle_deg", "deg", where);
  const double incidence = angle_deg * (std::numbers::pi / 180.0);
  const double cosine = std::cos(incidence);
  const double sine = std::sin(incidence);
  const double n2 = refractive_index * refractive_index;
  const double w = std::sqrt(n2 - sine * sine);
  const double r_s = (cosine - w) / (cosine + w);
  const double r_p = (n2 * cosine - w) / (n2 * cosine + w);
  return 0.5 * (r_s * r_s + r_p * r_p);
}

/// Phase by which roughness spreads the light in the mirror image: 4 pi Rq cos i / lambda.
///
/// @param angle_deg  of incidence i [deg]
/// @param rq_um      root mean square roughness Rq [um]
/// @return           phase [rad]
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp, and what an error of 1 ulp in i does to cos i
/// Source:    optics; lambda = 0.55 um, where the eye sees best
inline double specular_phase(double angle_deg, double rq_um) {
  constexpr double wavelength_um = 0.55;
  return 4.0 * std::numbers::pi * rq_um * std::cos(angle_deg * (std::numbers::pi / 180.0)) /
         wavelength_um;
}

/// Gloss of a film, relative to polished glass of n = 1.567, which has 100 gloss units (GU) at
/// every angle by definition. It is a lower bound of what a glossmeter reads: the meter's receptor
/// takes in a cone of a few degrees, so waves longer than some tens of um cost less than this.
///
///   gloss = 100 R(n, i) / R(1.567, i) exp(-(4 pi Rq cos i / lambda)^2),   lambda = 0.55 um
///
/// @param refractive_index  of the film n (dimensionless), 1 to 4
/// @param angle_deg         of incidence i [deg], 0 to 89.999; meters have 20, 60 and 85
/// @param rq_um             root mean square roughness Rq [um], 0 to 1000
/// @return                  gloss [GU]
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  2e-11 relative (the most within 0.1 degrees of grazing) where the gloss exceeds 1e-3 GU; as a prediction a law for Gaussian
///            roughness of small slope, not for sparse deep scratches
/// Source:    reference glass: ISO 2813:1997; roughness, from memory: Bennett & Porteus, J. Opt.
///            Soc. Am. 51:123 (1961)
inline double gloss_gu(double refractive_index, double angle_deg, double rq_um) {
  if (detail::any_nan(refractive_index, angle_deg, rq_um)) return std::nan("");
  detail::require_range(rq_um, 0.0, 1e3, "rq_um", "um", "gloss_gu");
  constexpr double reference_index = 1.567;
  const double phase = specular_phase(angle_deg, rq_um);
  return 100.0 * fresnel_reflectance(refractive_index, angle_deg) /
         fresnel_reflectance(reference_index, angle_deg) * std::exp(-phase * phase);
}

}  // namespace levigate
