// What a sheet leaves behind: roughness of the sanded surface and depth of its scratches.
#pragma once

#include "levigate/source.hpp"
#include "levigate/surface/contact.hpp"

namespace levigate::inline v0 {

/// Roughness of a surface that scratches have covered many times, over the mean depth of the active
/// tips: its profile is what V grooves of random depth below the running mean, at random places,
/// leave once it is steady. A simulation gives 0.631 +- 0.006 and 0.795 +- 0.008 (95 %) for P1000
/// latex paper on a coat, 0.56 and 0.70 for the same on a very soft backing (0.5 MPa), 0.93 and
/// 1.20 on a rigid one. The constants are the low end of that, for common sheets up to a fifth too
/// low.
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
