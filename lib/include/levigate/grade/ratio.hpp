// The size ratio of a step, and whether it lies within bounds.
#pragma once

#include "levigate/detail/strict_math.hpp"

namespace levigate::inline v0 {

/// Whether coarse_um / fine_um lies in min_ratio to max_ratio. Printed sizes and bounds are decimals, so a step that is
/// exactly at a bound on paper (18.3 to 12.2 um is 1.5) must not fall to binary rounding: bounds carry a margin of 1e-12.
///
/// @param coarse_um  size stepped from [um], above 0
/// @param fine_um    size stepped to [um], above 0
/// @param min_ratio  smallest ratio (dimensionless)
/// @param max_ratio  largest ratio (dimensionless), may be infinite
/// @return           whether the step is within the bounds, both included
/// Throws:    nothing
/// NaN:       false
/// Accuracy:  exact on decimals of up to twelve digits
/// Source:    the step-up rule, common practice
constexpr bool ratio_within(double coarse_um, double fine_um, double min_ratio, double max_ratio) {
  constexpr double margin = 1e-12;
  const double ratio = coarse_um / fine_um;
  return ratio >= min_ratio * (1.0 - margin) && ratio <= max_ratio * (1.0 + margin);
}

}  // namespace levigate
