// Reading a label: which grade, or which grades, the print on the back of a sheet can mean.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label_reading.hpp"
#include "levigate/grade/system.hpp"

namespace levigate::inline v0 {

/// All that a label can mean. Spacing, case and character width are free. Forms: P800, FEPA P 800,
/// ISO P800; F800; CAMI 800, ANSI 800; #800, JIS 800, J800, 800 with the Japanese counter; a bare
/// number, K120, A 240, C 240 and "240 grit", which name no system; a letter for the weight of
/// paper or cloth after the number; 2/0, 0, 1/2, old US symbols, and 1 to 4, which may be these or
/// sizes; 9 um with any usual
/// spelling of the unit, decimal point or comma; and the labels that this library writes.
///
/// @param text  the label, UTF-8
/// @return      its candidates, of which a label that names its system has one
/// Throws:    UnknownGrade where no system held has such a grade; OutOfRange for a size outside
///            0.05 to 2500 um; BadInput for text that is empty, not UTF-8 or holds control
///            characters
/// Source:    notations: general references and standards, in data/standards and this header's
///            tables
LabelReading read_label(std::string_view text);

/// The one grade that a label means.
///
/// @code
/// grade("P600").median_um;              // 25.8
/// grade("CAMI 600").median_um;          // 16.0
/// grade("600", System::jis).median_um;  // 20.0
/// @endcode
///
/// @param text         the label, UTF-8
/// @param bare_number  the system of labels that name none; none: ask, by an error
/// @return             the grade
/// Throws:    as read_label; AmbiguousLabel where more than one grade, or no system, is named;
///            UnknownGrade where bare_number has no such grade
/// Source:    as read_label
Grade grade(std::string_view text, std::optional<System> bare_number = std::nullopt);

/// Median sizes of many labels.
///
/// @param labels       labels, UTF-8
/// @param bare_number  as for grade()
/// @return             medians [um], in the order of the labels
/// Throws:    as grade()
/// NaN:       does not occur
/// Accuracy:  as printed
/// Source:    as grade()
std::vector<double> sizes_um(std::span<const std::string> labels,
                             std::optional<System> bare_number = std::nullopt);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/grade/work/label.hpp"
#endif
