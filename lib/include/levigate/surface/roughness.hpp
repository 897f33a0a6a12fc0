// How rough a sheet leaves a film, and how many grooves that took.
#pragma once

#include "levigate/source.hpp"
#include "levigate/surface/contact.hpp"

namespace levigate::inline v0 {

/// Roughness over Contact::groove_depth_um of a surface that grooves have covered many times. Its profile across the lay is
/// the lower envelope of V grooves of random depth delta at random places. Each is as deep below a plane that sinks with the
/// surface as contact() has it below a flat film, and takes off what it would of one, delta^2 / tan(flank) on the mean. In the
/// steady state the height y over that plane has the exceedance
///
///   P(Y > y) = exp(-E[max(0, y + delta)^2] / E[delta^2])
///
/// whatever the flank angle. So roughness, removal and the marks that are found count the same grooves: grooves_per_um2().
/// Ra and Rq follow by quadrature.
inline constexpr double ra_per_groove_depth = 0.366;
inline constexpr double rq_per_groove_depth = 0.468;
inline constexpr Source roughness_source{
    Basis::computed, "simulation, tests/property/roughness_simulation_test.cpp"};

/// Arithmetic mean roughness Ra of the surface that the sheet leaves once its scratches cover it.
///
///   Ra = 0.366 Contact::groove_depth_um
///
/// @param contact  of the sheet on the film
/// @return         Ra [um]
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  as a law of random V grooves, 0.6 % for the profiles' backings, rigid ones included,
///            2 % for any contact
/// Source:    roughness_source
inline double ra_um(const Contact& contact) {
  return ra_per_groove_depth * contact.groove_depth_um();
}

/// Root mean square roughness Rq of the surface that the sheet leaves.
///
///   Rq = 0.468 Contact::groove_depth_um
///
/// @param contact  of the sheet on the film
/// @return         Rq [um]
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  as a law of random V grooves, 1.9 % for the profiles' backings, rigid ones included,
///            3 % for any contact
/// Source:    roughness_source
inline double rq_um(const Contact& contact) {
  return rq_per_groove_depth * contact.groove_depth_um();
}

/// Grooves that cross a line across the lay while the film goes down, each of a tip that slides by.
///
///   N = tips per area x sliding per depth = active_per_mm2 / rate
///
/// With rate = K P / H and K = wear_coefficient(f, flank) this is tan(flank) / (f E[delta^2]): what a groove takes off is the
/// share f of its area.
///
/// @param contact        of the sheet on the film
/// @param rate_um_per_m  film it takes off per metre of sliding [um/m], above 0
/// @return               grooves per um of the line and um of film [1/um2]
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  that of contact()
/// Source:    geometry
inline double grooves_per_um2(const Contact& contact, double rate_um_per_m) {
  constexpr double mm2_per_um2 = 1e-6, um_per_m = 1e6;
  return contact.active_per_mm2() * mm2_per_um2 * um_per_m / rate_um_per_m;
}

}  // namespace levigate
