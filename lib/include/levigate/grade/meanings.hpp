// All that a label may mean, each meaning beside the nearest grades of other systems.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/system.hpp"

namespace levigate::inline v0 {

/// One grade that a label may mean.
struct LabelMeaning {
  Grade grade;
  std::vector<Equivalent> nearest;  ///< of each system that was asked for
};

/// All that a label may mean.
struct LabelMeanings {
  std::string label;                  ///< as given
  bool ambiguous = false;             ///< its system is not named, or its comma is not clear
  std::string note;                   ///< how it is read; may be empty
  std::optional<System> bare_number;  ///< settled a label that names no system; none: not needed
  std::vector<LabelMeaning> meanings;
};

/// The grades that a label may mean, as read_label() has them, and what stands nearest to each in other systems. A label that is
/// ambiguous is not refused here: nothing is worked with the answer but the reader's next look at the sheet.
///
/// @param label        the label, UTF-8
/// @param bare_number  the system of labels that name none; none: each that they may be of
/// @param systems      in which to look for the nearest grade; its own has itself, or what is nearest to a size that is not sold
/// @return             its meanings, at least one
/// Throws:    as read_label(); UnknownGrade where bare_number has no such grade
/// Source:    as read_label() and convert()
LabelMeanings meanings(std::string_view label, std::optional<System> bare_number = std::nullopt,
                       std::span<const System> systems = coated_systems);

/// Whether a system ends before the given size: were its last step repeated, the next grade would be nearer than the nearest there is.
///
/// @param found  what convert() found
/// @return       whether it has no grade so coarse, or so fine
/// Throws:    nothing
/// Source:    grades of a system go on by like steps: common practice
bool beyond_system(const Equivalent& found) noexcept;

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/grade/work/meanings.hpp"
#endif
