// Whether the readings of a film gauge agree with the coats.
#pragma once

#include "levigate/film/film.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// Standard uncertainties beyond which two films contradict each other.
inline constexpr double contradiction_sigmas = 3.0;

inline constexpr Source contradiction_source{Basis::assumption,
                                             "three standard uncertainties, the usual line"};

/// How two estimates of one film compare.
struct Agreement {
  double coats_um = 0;        ///< mean that the coats make [um]
  double readings_um = 0;     ///< mean that the gauge reads [um]
  double difference_um = 0;   ///< readings less coats [um]
  double uncertainty_um = 0;  ///< standard uncertainty of the difference [um]
  double sigmas = 0;          ///< |difference| over it (dimensionless)
  bool contradicts = false;   ///< sigmas beyond contradiction_sigmas
};

/// Whether readings agree with the film that the coats should have left.
///
///   sigmas = |readings.mean - coats.mean| / hypot(readings.mean_se, coats.mean_se)
///
/// @param coats     film worked out from the coats [um]
/// @param readings  film from a gauge [um]; of the same coats: a gauge sees every round
/// @return          the comparison [um]
/// Throws:    OutOfRange where a mean is outside 0 to 20 000 um or an uncertainty is negative
/// NaN:       rejected as OutOfRange
/// Accuracy:  2 ulp
/// Source:    propagation of uncertainty; contradiction_source
Agreement agrees(const Film& coats, const Film& readings);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/film/work/agreement.hpp"
#endif
