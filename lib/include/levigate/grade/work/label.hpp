// The work behind grade/label.hpp: defines what it declares.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/grade/label.hpp"

#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label_reading.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/grade/work/candidates.hpp"
#include "levigate/grade/work/label_parts.hpp"
#include "levigate/grade/work/label_text.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK LabelReading read_label(std::string_view text) {
  return detail::reading(detail::take_apart(text), text);
}

LEVIGATE_WORK Grade grade(std::string_view text, std::optional<System> bare_number) {
  const detail::LabelParts parts = detail::take_apart(text);
  if (!parts.system && bare_number) {
    std::vector<Grade> found = detail::grades_meant(parts, *bare_number, text);
    if (found.empty()) detail::refuse_number(parts, {&*bare_number, 1}, text);
    return std::move(found[0]);
  }
  LabelReading read = detail::reading(parts, text);
  if (!read.ambiguous) return std::move(read.candidates[0]);
  std::vector<std::string> names;
  for (const Grade& candidate : read.candidates) names.push_back(detail::grade_text(candidate));
  throw AmbiguousLabel("label " + detail::quoted(text) + " can mean " +
                       detail::list_text(names, " or ") +
                       (parts.system ? "; write a decimal point, or no comma"
                                     : "; write it as one of these, or give a bare_number rule") +
                       (read.note.empty() ? "" : " (" + read.note + ")"));
}

LEVIGATE_WORK std::vector<double> sizes_um(std::span<const std::string> labels,
                                           std::optional<System> bare_number) {
  std::vector<double> sizes;
  sizes.reserve(labels.size());
  for (const std::string& label : labels) sizes.push_back(grade(label, bare_number).median_um);
  return sizes;
}

}  // namespace levigate
