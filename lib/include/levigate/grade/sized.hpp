// A grade whose size the user gives: for labels without a published size, and for measured sheets.
#pragma once

#include <optional>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/system.hpp"

namespace levigate::inline v0 {

/// A grade with the user's own size. It keeps system and number where the label names them, printed
/// or not ("P7000" is FEPA P); any other text is a name for a sheet of the micron system. It
/// carries no tolerance and no limits.
///
/// @param label        the label, UTF-8, not empty
/// @param size_um      median grain size [um], 0.01 to 10 000
/// @param bare_number  the system of labels that name none; none: micron
/// @return             a grade of basis user
/// Throws:    OutOfRange where size_um is outside its range; BadInput for a label that is empty,
///            not UTF-8 or holds control characters
/// NaN:       rejected
/// Accuracy:  exact
/// Source:    the user
Grade sized_grade(std::string_view label, double size_um,
                  std::optional<System> bare_number = std::nullopt);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/grade/work/sized.hpp"
#endif
