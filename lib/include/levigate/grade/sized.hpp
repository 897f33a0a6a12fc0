// A grade whose size the user gives: for labels without a published size, and for measured sheets.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/grade/label.hpp"

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
inline Grade sized_grade(std::string_view label, double size_um,
                         std::optional<System> bare_number = std::nullopt) {
  detail::require_range(size_um, 0.01, 1e4, "size_um", "um", "label " + detail::quoted(label));
  constexpr std::string_view ends = " \t\r\n";
  detail::folded_label(label);  // refuses what is no text at all
  label.remove_prefix(label.find_first_not_of(ends));
  label.remove_suffix(label.size() - 1 - label.find_last_not_of(ends));
  Grade result{.system = System::micron,
               .label = std::string(label),
               .number = {},
               .median_um = size_um,
               .tolerance_um = {},
               .coarse_limit_um = {},
               .fine_limit_um = {},
               .fine_percent = {},
               .edition = "none: size given by the user",
               .method = "given by the user",
               .median_source = {Basis::user, "size given by the user"},
               .tolerance_source = {},
               .limits_source = {},
               .note = {}};
  detail::Mark mark;
  try {
    mark = detail::take_apart(label);
  } catch (const UnknownGrade&) {
    return result;
  }
  const System system = mark.system.value_or(bare_number.value_or(System::micron));
  result.note = mark.note;
  if (system == System::micron || !mark.whole()) return result;
  result.system = system;
  result.label = detail::canonical_label(system, mark.number);
  result.number = detail::parsed(mark.number);
  for (const Grade& printed : detail::grades_of(mark, system, label)) {
    result.label = printed.label;
    result.number = printed.number;
    result.note = detail::joined_notes(result.note,
                                       std::string("the table has ") + detail::grade_text(printed));
  }
  return result;
}

}  // namespace levigate
