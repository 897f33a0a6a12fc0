// The work behind grade/meanings.hpp: defines what it declares.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/grade/meanings.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/label_reading.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/grade/work/label_parts.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK LabelMeanings meanings(std::string_view label, std::optional<System> bare_number,
                                     std::span<const System> systems) {
  const detail::LabelParts parts = detail::take_apart(label);
  LabelMeanings result{std::string(label), false, parts.note, std::nullopt, {}};
  std::vector<Grade> grades;
  if (bare_number && !parts.system) {
    result.bare_number = bare_number;
    grades.push_back(grade(label, bare_number));
  } else {
    LabelReading read = read_label(label);
    result.ambiguous = read.ambiguous;
    grades = std::move(read.candidates);
  }
  for (Grade& one : grades) {
    LabelMeaning& meaning = result.meanings.emplace_back();
    meaning.grade = std::move(one);
    for (const System system : systems) meaning.nearest.push_back(convert(meaning.grade, system));
  }
  return result;
}

LEVIGATE_WORK bool beyond_system(const Equivalent& found) noexcept {
  const double end_um = found.grade.median_um;
  const auto beyond = [&](const std::optional<Grade>& inner, double ratio) {
    if (!inner || !(ratio > 1.0)) return false;
    const double step = inner->median_um / end_um;
    return ratio * ratio > (step > 1.0 ? step : 1.0 / step);
  };
  if (!found.finer) return beyond(found.coarser, found.size_ratio);
  if (!found.coarser) return beyond(found.finer, 1.0 / found.size_ratio);
  return false;
}

}  // namespace levigate
