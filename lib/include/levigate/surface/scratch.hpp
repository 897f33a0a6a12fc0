// What a sheet leaves behind: roughness of the sanded surface and depth of its scratches.
#pragma once

#include "levigate/source.hpp"
#include "levigate/surface/contact.hpp"

namespace levigate::inline v0 {

/// Roughness of a surface that scratches have covered many times, over the mean depth of the active
/// tips: its profile is what V grooves of random depth below the running mean, at random places,
/// leave once it is steady. A simulation, with the depths of P1000 latex paper on a coat, gives
/// 0.63 and 0.795 for an endless profile, 0.57 and 0.70 within stretches of 20 half-widths of a
/// mean groove (about 20 um); endless profiles of other papers and pressures 0.57 to 0.65 and 0.72
/// to 0.82, a rigid backing 0.97 and 1.26. The constants stand at the low end of that.
inline constexpr double ra_per_mean_depth = 0.55;
inline constexpr double rq_per_mean_depth = 0.70;
inline constexpr Source roughness_source{
    Basis::assumption, "random V grooves, simulated in tests/property/contact_roughness_test.cpp"};

/// Arithmetic mean roughness Ra of the surface that the sheet leaves once its scratches cover it.
///
///   Ra = 0.55 mean depth
///
/// @param contact  of the sheet on the film
/// @return         Ra [um]
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  see roughness_source
/// Source:    roughness_source
inline double ra_um(const Contact& contact) { return ra_per_mean_depth * contact.mean_depth_um(); }

/// Root mean square roughness Rq of the surface that the sheet leaves.
///
///   Rq = 0.70 mean depth
///
/// @param contact  of the sheet on the film
/// @return         Rq [um]
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  see roughness_source
/// Source:    roughness_source
inline double rq_um(const Contact& contact) { return rq_per_mean_depth * contact.mean_depth_um(); }

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
