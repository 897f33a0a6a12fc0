// The size behind a grit number beyond the finest with a printed size, and how far to trust it.
#pragma once

#include "levigate/error.hpp"
#include "levigate/grade/system.hpp"

namespace levigate::inline v0 {

/// An extrapolated median, and the interval that the printed grades leave open.
struct Extrapolation {
  double median_um;
  double low_um;
  double high_um;
};

/// Median of a grade beyond the finest one with a printed size, by a power law through the six
/// finest grades of the system, anchored at the finest:
///
///   d(N) = d_f (N / N_f)^b,   b the least-squares slope of ln d against ln N
///
/// The interval takes the steepest and the shallowest slope between neighbours among the six, and
/// the tolerance of d_f where it is known. For P4000 it gives 5.7 um, 5.0 to 6.4; the trade puts
/// P4000 near 5 um (common practice).
///
/// @param system  one with grit numbers
/// @param number  grit number N (dimensionless), from that of the finest grade with a printed size,
///                N_f, to 2 N_f
/// @return        median and interval [um]
/// Throws:    BadInput for micron, which has no numbers; OutOfRange where number is outside its
///            range
/// NaN:       rejected
/// Accuracy:  4 ulp as arithmetic; as a prediction the interval says
/// Source:    common practice: printed sizes fall along a power of the number
Extrapolation extrapolated_size(System system, double number);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/grade/work/extrapolate.hpp"
#endif
