// What a sheet leaves behind: roughness of the sanded surface and depth of its scratches.
#pragma once

#include "levigate/source.hpp"
#include "levigate/surface/contact.hpp"

namespace levigate::inline v0 {

/// Roughness over Contact::groove_depth_um of a surface that scratches have covered many times. Its
/// profile across the lay is the lower envelope of V grooves of random depth below the running mean,
/// at random places, and in the steady state its height y about the mean has the exceedance
///
///   P(Y > y) = exp(-c E[max(0, y + delta)^2]),   c such that E[Y] = 0,
///
/// whatever the flank angle and the number of grooves. Ra and Rq follow by quadrature, and no single
/// multiple of the mean depth fits: Ra is 0.55 to 0.98 of it, from soft to rigid backings. Over the
/// groove depth, Ra is 0.4255 to 0.4270 and Rq 0.534 to 0.555 for every backing, rigid ones
/// included, on every coating and under every block of the profiles; for any contact at all 0.420 to
/// 0.428 and 0.522 to 0.558.
inline constexpr double ra_per_groove_depth = 0.426;
inline constexpr double rq_per_groove_depth = 0.544;
inline constexpr Source roughness_source{
    Basis::computed, "simulation, tests/property/roughness_simulation_test.cpp"};

/// Arithmetic mean roughness Ra of the surface that the sheet leaves once its scratches cover it.
///
///   Ra = 0.426 sqrt(E[delta^3] / E[delta])
///
/// @param contact  of the sheet on the film
/// @return         Ra [um]
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  as a law of random V grooves, 0.5 % for the profiles' backings, rigid ones included,
///            1.5 % for any contact
/// Source:    roughness_source
inline double ra_um(const Contact& contact) {
  return ra_per_groove_depth * contact.groove_depth_um();
}

/// Root mean square roughness Rq of the surface that the sheet leaves.
///
///   Rq = 0.544 sqrt(E[delta^3] / E[delta])
///
/// @param contact  of the sheet on the film
/// @return         Rq [um]
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  as a law of random V grooves, 2.5 % for the profiles' backings, rigid ones included,
///            4.5 % for any contact
/// Source:    roughness_source
inline double rq_um(const Contact& contact) {
  return rq_per_groove_depth * contact.groove_depth_um();
}

/// Depth that the next sheet must remove: a high quantile of the depth of the active tips.
///
/// @param contact   of the sheet on the film
/// @param quantile  share of the active tips that are no deeper (dimensionless), 0 to 1
/// @return          depth [um]
/// Throws:    OutOfRange where quantile is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  that of Contact::depth_um
/// Source:    the quantile is a rule, common practice: no grade's last scratch is waited for
inline double scratch_depth_um(const Contact& contact, double quantile) {
  return contact.depth_um(quantile);
}

}  // namespace levigate
