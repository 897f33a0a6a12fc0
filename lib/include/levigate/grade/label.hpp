// Reading a label: which grade, or which grades, the print on the back of a sheet can mean.
#pragma once

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/label_mark.hpp"

namespace levigate::inline v0 {

/// What a label can mean. `ambiguous` holds where the label does not name its system, even if only
/// one system has a grade of that number.
struct LabelReading {
  std::vector<Grade> candidates;
  bool ambiguous = false;
  std::string note;
};

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

/// The grades of a mark in one system: none where it has no such grade, two where a comma may part
/// thousands or decimals.
inline std::vector<Grade> grades_of(const Mark& mark, System system, std::string_view text) {
  if (system == System::micron) {
    std::vector<Grade> sizes{marked_size(parsed(mark.number), text)};
    const std::size_t comma = mark.number.find(',');
    if (comma != std::string::npos && mark.number.size() == comma + 4 && mark.number[0] != '0') {
      std::string joined = mark.number;
      joined.erase(comma, 1);
      if (parsed(joined) <= 2500.0) sizes.push_back(marked_size(parsed(joined), text));
    }
    return sizes;
  }
  const bool symbol = system == System::cami && !mark.old_symbol_for.empty();
  const std::string_view digits = symbol ? mark.old_symbol_for : mark.number;
  for (const GradeRow& row : grade_rows(system)) {
    if (row.digits() == digits) return {grade_from_row(system, row)};
  }
  return {};
}

/// "P600 (25.8 um) and P800 (21.8 um)": the grades next to a number that a system does not have.
inline std::string neighbours_text(System system, double number) {
  std::vector<std::string> near;
  const auto rows = grade_rows(system);
  const auto above =
      std::ranges::find_if(rows, [&](const GradeRow& row) { return *row.number > number; });
  if (above != rows.begin()) near.push_back(grade_text(grade_from_row(system, *(above - 1))));
  if (above != rows.end()) near.push_back(grade_text(grade_from_row(system, *above)));
  return list_text(near);
}

[[noreturn]] inline void refuse_number(const Mark& mark, std::span<const System> tried,
                                       std::string_view text) {
  std::vector<std::string> names;
  std::string nearest;
  for (const System system : tried) {
    names.emplace_back(to_string(system));
    nearest += (nearest.empty() ? "" : "; ") + neighbours_text(system, parsed(mark.number));
  }
  std::string message = "label " + quoted(text) + " is no grade of " + list_text(names, " or ") +
                        "; nearest: " + nearest;
  if (!mark.system) message += "; a size is written with its unit, as \"9 um\"";
  if (!mark.note.empty()) message += " (" + mark.note + ")";
  throw UnknownGrade(message);
}

inline LabelReading reading(const Mark& mark, std::string_view text) {
  const bool symbol_alone = !mark.old_symbol_for.empty() && !mark.may_be_size;
  const std::optional<System> system = symbol_alone ? std::optional(System::cami) : mark.system;
  LabelReading result{.candidates = {}, .ambiguous = !system, .note = mark.note};
  if (system) {
    result.candidates = grades_of(mark, *system, text);
    if (result.candidates.empty()) refuse_number(mark, {&*system, 1}, text);
    result.ambiguous = result.candidates.size() > 1;
    result.note =
        joined_notes(result.note, result.ambiguous ? "the comma may part thousands or decimals"
                                                   : result.candidates[0].note);
    return result;
  }
  for (const System candidate : bare_systems) {
    for (Grade& found : grades_of(mark, candidate, text)) {
      result.candidates.push_back(std::move(found));
    }
  }
  const double value = parsed(mark.number);
  if (mark.may_be_size && value > 0 && value <= 2500) {
    result.candidates.push_back(marked_size(value, text));
  }
  if (result.candidates.empty()) refuse_number(mark, bare_systems, text);
  result.note = joined_notes(result.note, "the label does not name its system");
  return result;
}

}  // namespace detail

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
inline LabelReading read_label(std::string_view text) {
  return detail::reading(detail::take_apart(text), text);
}

/// The one grade that a label means.
///
/// @param text         the label, UTF-8
/// @param bare_number  the system of labels that name none; none: ask, by an error
/// @return             the grade
/// Throws:    as read_label; AmbiguousLabel where more than one grade, or no system, is named;
///            UnknownGrade where bare_number has no such grade
/// Source:    as read_label
inline Grade grade(std::string_view text, std::optional<System> bare_number = std::nullopt) {
  const detail::Mark mark = detail::take_apart(text);
  if (!mark.system && bare_number) {
    std::vector<Grade> found = detail::grades_of(mark, *bare_number, text);
    if (found.empty()) detail::refuse_number(mark, {&*bare_number, 1}, text);
    return std::move(found[0]);
  }
  LabelReading read = detail::reading(mark, text);
  if (!read.ambiguous) return std::move(read.candidates[0]);
  std::vector<std::string> names;
  for (const Grade& candidate : read.candidates) names.push_back(detail::grade_text(candidate));
  throw AmbiguousLabel("label " + detail::quoted(text) + " can mean " +
                       detail::list_text(names, " or ") +
                       (mark.system ? "; write a decimal point, or no comma"
                                    : "; write it as one of these, or give a bare_number rule") +
                       (read.note.empty() ? "" : " (" + read.note + ")"));
}

/// Median sizes of many labels.
///
/// @param labels       labels, UTF-8
/// @param bare_number  as for grade()
/// @return             medians [um], in the order of the labels
/// Throws:    as grade()
/// NaN:       does not occur
/// Accuracy:  as printed
/// Source:    as grade()
inline std::vector<double> sizes_um(std::span<const std::string> labels,
                                    std::optional<System> bare_number = std::nullopt) {
  std::vector<double> sizes;
  sizes.reserve(labels.size());
  for (const std::string& label : labels) sizes.push_back(grade(label, bare_number).median_um);
  return sizes;
}

}  // namespace levigate
