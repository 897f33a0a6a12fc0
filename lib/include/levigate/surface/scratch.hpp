// How deep the scratches of a sheet are, as the next sheet counts them.
#pragma once

#include "levigate/surface/contact.hpp"

namespace levigate::inline v0 {

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
