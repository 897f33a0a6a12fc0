// The grades of a system, coarse to fine, in one form for all systems.
#pragma once

#include <vector>

#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/system.hpp"

namespace levigate::inline v0 {

/// All grades of a system, coarse to fine, each with its numbers and their sources. A grade that
/// has a name but no printed size carries an extrapolated median (basis() says so) and no limits.
///
/// @param system  any
/// @return        strictly falling medians [um]
/// Throws:    nothing of its own
/// Source:    data/standards, each number with its own
std::vector<Grade> grades(System system);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/grade/work/grades.hpp"
#endif
