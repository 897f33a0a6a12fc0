// Reading the parts of a label: its grades in each system, or why there is none.
#pragma once

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label_reading.hpp"
#include "levigate/grade/row.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/grade/work/from_row.hpp"
#include "levigate/grade/work/label_parts.hpp"
#include "levigate/grade/work/label_text.hpp"
#include "levigate/grade/work/tables.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Systems that a bare number on a sheet can belong to; F is for bonded and loose grain.
inline constexpr System bare_systems[] = {System::fepa_p, System::cami, System::jis};

inline double parsed(std::string number) {
  std::ranges::replace(number, ',', '.');
  double value = 0;
  const auto result = std::from_chars(number.data(), number.data() + number.size(), value);
  return result.ec == std::errc() ? value : HUGE_VAL;
}

inline std::string grade_text(const Grade& grade) {
  if (grade.system == System::micron) return grade.label;
  return grade.label + " (" + size_text(grade.median_um) + ")";
}

/// The micron grade of a size printed on a sheet, catalogued or not.
inline Grade marked_size(double size_um, std::string_view text) {
  require_range(size_um, 0.05, 2500.0, "size", "um", "label " + quoted(text));
  for (const GradeRow& row : grade_rows(System::micron)) {
    if (row.median_um == size_um) return grade_from_row(System::micron, row);
  }
  return {.system = System::micron,
          .label = canonical_label(System::micron, number_text(size_um)),
          .number = {},
          .median_um = size_um,
          .tolerance_um = {},
          .coarse_limit_um = {},
          .fine_limit_um = {},
          .fine_percent = {},
          .edition = "none: nominal size",
          .method = "not stated",
          .median_source = {Basis::user, "the size marked on the sheet"},
          .tolerance_source = {},
          .limits_source = {},
          .note = "not one of the sizes usually sold"};
}

/// The grades that the parts of a label mean in one system: none where it has no such grade, two where a comma may part
/// thousands or decimals.
inline std::vector<Grade> grades_meant(const LabelParts& parts, System system,
                                       std::string_view text) {
  if (system == System::micron) {
    std::vector<Grade> sizes{marked_size(parsed(parts.number), text)};
    const std::size_t comma = parts.number.find(',');
    if (comma != std::string::npos && parts.number.size() == comma + 4 && parts.number[0] != '0') {
      std::string joined = parts.number;
      joined.erase(comma, 1);
      if (parsed(joined) <= 2500.0) sizes.push_back(marked_size(parsed(joined), text));
    }
    return sizes;
  }
  const bool symbol = system == System::cami && !parts.old_symbol_for.empty();
  const std::string_view digits = symbol ? parts.old_symbol_for : parts.number;
  for (const GradeRow& row : grade_rows(system)) {
    if (row.digits() == digits) return {grade_from_row(system, row)};
  }
  return {};
}

/// "P600 (25.8 um) and P800 (21.8 um)": the grades next to a number that a system does not have.
inline std::string neighbours_text(System system, double number) {
  std::vector<std::string> close_by;
  const auto rows = grade_rows(system);
  const auto above =
      std::ranges::find_if(rows, [&](const GradeRow& row) { return *row.number > number; });
  if (above != rows.begin()) close_by.push_back(grade_text(grade_from_row(system, *(above - 1))));
  if (above != rows.end()) close_by.push_back(grade_text(grade_from_row(system, *above)));
  return list_text(close_by);
}

[[noreturn]] inline void refuse_number(const LabelParts& parts, std::span<const System> tried,
                                       std::string_view text) {
  std::vector<std::string> names;
  std::string nearest;
  for (const System system : tried) {
    names.emplace_back(to_string(system));
    nearest += (nearest.empty() ? "" : "; ") + neighbours_text(system, parsed(parts.number));
  }
  std::string message = "label " + quoted(text) + " is no grade of " + list_text(names, " or ") +
                        "; nearest: " + nearest;
  if (!parts.system) message += "; a size is written with its unit, as \"9 um\"";
  if (!parts.note.empty()) message += " (" + parts.note + ")";
  throw UnknownGrade(message);
}

inline LabelReading reading(const LabelParts& parts, std::string_view text) {
  const bool symbol_alone = !parts.old_symbol_for.empty() && !parts.may_be_size;
  const std::optional<System> system = symbol_alone ? std::optional(System::cami) : parts.system;
  LabelReading result{.candidates = {}, .ambiguous = !system, .note = parts.note};
  if (system) {
    result.candidates = grades_meant(parts, *system, text);
    if (result.candidates.empty()) refuse_number(parts, {&*system, 1}, text);
    result.ambiguous = result.candidates.size() > 1;
    result.note =
        joined_notes(result.note, result.ambiguous ? "the comma may part thousands or decimals"
                                                   : result.candidates[0].note);
    return result;
  }
  for (const System candidate : bare_systems) {
    for (Grade& found : grades_meant(parts, candidate, text)) {
      result.candidates.push_back(std::move(found));
    }
  }
  const double value = parsed(parts.number);
  if (parts.may_be_size && value > 0 && value <= 2500) {
    result.candidates.push_back(marked_size(value, text));
  }
  if (result.candidates.empty()) refuse_number(parts, bare_systems, text);
  result.note = joined_notes(result.note, "the label does not name its system");
  return result;
}

}  // namespace detail

}  // namespace levigate
