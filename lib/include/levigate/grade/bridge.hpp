// Closing a gap: the fewest grades of a system that lead from one size down to another.
#pragma once

#include <optional>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/system.hpp"

namespace levigate::inline v0 {

/// The fewest grades between two sizes such that every step d_i / d_(i+1) of the whole way, the
/// first and the last included, lies in min_ratio to max_ratio. Among the fewest, the most even:
/// its largest ratio is the smallest; among those still equal, the coarser grades. Grades whose size is extrapolated are left out: nobody
/// should buy one for its size.
///
/// @param coarse_um  where the way starts [um], 0.01 to 10 000
/// @param fine_um    where it ends [um], 0.01 to below coarse_um
/// @param system     whose grades
/// @param min_ratio  smallest ratio of a step (dimensionless), 1 to below max_ratio
/// @param max_ratio  largest ratio of a step (dimensionless), up to 1000
/// @return           the grades, coarse to fine: empty where one step will do, none where no
///                   grades will
/// Throws:    OutOfRange where an argument is outside its range; BadInput where fine_um is not
///            below coarse_um or min_ratio not below max_ratio
/// NaN:       rejected
/// Accuracy:  decisions as those of ratio_within()
/// Source:    exact shortest path from the fine end; checked against enumeration
std::optional<std::vector<Grade>> bridge(double coarse_um, double fine_um, System system,
                                         double min_ratio, double max_ratio);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/grade/work/bridge.hpp"
#endif
