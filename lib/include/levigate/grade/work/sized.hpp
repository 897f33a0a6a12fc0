// The work behind grade/sized.hpp: defines what it declares.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "levigate/grade/sized.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/grade/work/candidates.hpp"
#include "levigate/grade/work/from_row.hpp"
#include "levigate/grade/work/label_parts.hpp"
#include "levigate/grade/work/label_text.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Grade sized_grade(std::string_view label, double size_um,
                                std::optional<System> bare_number) {
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
  detail::LabelParts parts;
  try {
    parts = detail::take_apart(label);
  } catch (const UnknownGrade&) {
    return result;
  }
  const System system = parts.system.value_or(bare_number.value_or(System::micron));
  result.note = parts.note;
  if (system == System::micron || !parts.whole()) return result;
  result.system = system;
  result.label = detail::canonical_label(system, parts.number);
  result.number = detail::parsed(parts.number);
  for (const Grade& printed : detail::grades_meant(parts, system, label)) {
    result.label = printed.label;
    result.number = printed.number;
    result.note = detail::joined_notes(result.note,
                                       std::string("the table has ") + detail::grade_text(printed));
  }
  return result;
}

}  // namespace levigate
