// How widely the grains of a grade scatter about their median: log spread and coarse tail.
#pragma once

#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// Standard deviation of ln(size), and what it rests on.
struct Spread {
  double log_spread;
  Source source;
};

/// Log spread of a grade: from its limits, or an assumption where it has none.
///
///   s = 1/2 [ ln(ds3 / ds50) / 1.880794 + ln(ds50 / dsF) / z ]
///   z = 1.644854, 1.554774, 0.674490 for a fine limit at 95, 94, 75 %
///
/// A grade with one limit takes that side alone. A grade with none takes the spread of the finest
/// grade of its system that has limits and is no finer by number; where there is none: 0.15 up to
/// number 220 (graded by sieves in every system), 0.30 beyond, 0.20 for micron.
///
/// @param grade  a grade with a median and, where known, limits [um]
/// @return       log spread (dimensionless) and its source
/// Throws:    OutOfRange where a limit stands on the wrong side of the median or a size is outside
///            0.01 to 10 000 um; BadInput for a fine limit at a percentage other than 95, 94, 75
/// NaN:       rejected
/// Accuracy:  4 ulp as arithmetic; the limits are bounds, so the true spread is at most about this
/// Source:    log-normal distribution through the limits; the values without limits are assumptions
Spread spread(const Grade& grade);

/// The number alone: see spread().
double log_spread(const Grade& grade);

/// Size that at most 3 % of the grain exceeds: the grade's limit, or what its spread implies.
///
///   ds3 = ds50 exp(1.880794 s)
///
/// @param grade  as for spread()
/// @return       coarse tail [um]
/// Throws:    as spread()
/// NaN:       rejected
/// Accuracy:  4 ulp as arithmetic
/// Source:    as spread()
double coarse_tail_um(const Grade& grade);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/grade/work/spread.hpp"
#endif
