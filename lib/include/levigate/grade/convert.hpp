// From one system to another: the nearest grade, how near it is, and a continuous number.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/system.hpp"

namespace levigate::inline v0 {

/// Share of grain that two log-normal size distributions have in common: the area under the lower
/// of the two densities of ln(size).
///
/// With sizes in units of the narrower spread, distance D of the medians and r the ratio of the
/// spreads, the densities cross where (r^2 - 1) t^2 + 2 D t - D^2 - 2 r^2 ln r = 0; for equal
/// spreads the area is 2 Phi(-D / 2).
///
/// @param median_1_um   median of the one distribution [um], 1e-3 to 1e6
/// @param log_spread_1  its log spread (dimensionless), 1e-6 to 10
/// @param median_2_um   median of the other [um], 1e-3 to 1e6
/// @param log_spread_2  its log spread (dimensionless), 1e-6 to 10
/// @return              overlap coefficient (dimensionless), 0 to 1
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-14 absolute
/// Source:    Inman & Bradley, Commun. Stat. Theory Methods 18 (1989) 3851, from memory; checked
///            against numerical integration
double size_overlap(double median_1_um, double log_spread_1, double median_2_um,
                    double log_spread_2);

/// The grade of another system that stands for a given one.
struct Equivalent {
  Grade grade;                           ///< the nearest by log size; of two as near, the coarser
  double size_ratio = 1;                 ///< its median over the given median
  std::optional<bool> within_tolerance;  ///< medians no farther apart than the tolerances that
                                         ///< are known add up to; none where neither is known
  double overlap = 1;                    ///< share of grain in common, as size_overlap
  std::optional<double> number;          ///< continuous grit number of the given median; none
                                         ///< outside the system's range, and for micron
  std::optional<Grade> coarser;          ///< neighbours of `grade` in its system
  std::optional<Grade> finer;
  Grade given;  ///< what it stands for
};

/// The nearest grade of a system, and how far it may stand for the given one. Sizes of two systems
/// come from two measuring methods, which part by 5 % for coarse and up to 45 % for fine micro
/// grits, so a nearest grade is a neighbour, not an equal.
///
/// @code
/// const Equivalent nearest = convert(grade("CAMI 400"), System::fepa_p);
/// nearest.grade.label;  // "P800"
/// nearest.size_ratio;   // 0.924
/// @endcode
///
/// @param given   a grade, its median 0.01 to 10 000 um
/// @param system  to which to convert
/// @return        the nearest grade with ratio, overlap [0 to 1] and neighbours
/// Throws:    OutOfRange where the median is outside its range; otherwise as spread()
/// Source:    medians as in data/standards; nearness by log size: common practice
Equivalent convert(const Grade& given, System system);

/// The nearest grades of many sizes.
///
/// @param sizes_um  median sizes [um], 0.01 to 10 000
/// @param system    whose grades
/// @return          indices into grades(system), in the order of the sizes; ties to the coarser
/// Throws:    OutOfRange where a size is outside its range, naming its index
/// NaN:       rejected, naming its index
/// Accuracy:  decisions on products rounded once
/// Source:    as convert
std::vector<std::size_t> nearest(std::span<const double> sizes_um, System system);

/// The same into memory of the caller, of as many indices as there are sizes.
///
/// @param sizes_um  median sizes [um], 0.01 to 10 000
/// @param system    whose grades
/// @param indices   takes indices into grades(system)
/// Throws:    as above; BadInput where there are not as many indices as sizes
/// NaN:       rejected, naming its index
/// Accuracy:  decisions on products rounded once
/// Source:    as convert
void nearest_into(std::span<const double> sizes_um, System system, std::span<std::size_t> indices);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/grade/work/convert.hpp"
#endif
