// A grade from its printed row, and its label as the systems write it.
#pragma once

#include <string>
#include <string_view>

#include "levigate/detail/text.hpp"
#include "levigate/grade/extrapolate.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/row.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The label of a grade as this library writes it; the label reader reads it back as that grade.
inline std::string canonical_label(System system, std::string_view digits) {
  const std::string number(digits);
  switch (system) {
    case System::fepa_p: return "P" + number;
    case System::cami: return "CAMI " + number;
    case System::jis: return "JIS #" + number;
    case System::fepa_f: return "F" + number;
    case System::micron: return number + " um";
    case System::jis_sedimentation: return "JIS #" + number + " sedimentation";
    case System::fepa_f_tube: return "F" + number + " tube";
  }
  return number;
}

inline std::string joined_notes(std::string first, std::string_view second) {
  if (!first.empty() && !second.empty()) first += "; ";
  return first.append(second);
}

/// The grade of a printed row. A row without a printed size gets an extrapolated median, and no
/// limits.
inline Grade grade_from_row(System system, const GradeRow& row) {
  Grade grade{
      .system = system,
      .label = canonical_label(system, row.digits()),
      .number = row.number,
      .median_um = row.median_um.value_or(0.0),
      .tolerance_um = row.tolerance_um,
      .coarse_limit_um = row.coarse_limit_um,
      .fine_limit_um = row.fine_limit_um,
      .fine_percent = row.fine_percent,
      .edition = std::string(row.edition),
      .method = std::string(row.method),
      .median_source = row.median_source,
      .tolerance_source = row.tolerance_source,
      .limits_source = row.limits_source,
      .note = std::string(row.note),
  };
  if (!row.median_um) {
    const Extrapolation size = extrapolated_size(system, *row.number);
    grade.median_um = size.median_um;
    grade.median_source = {Basis::extrapolated, "power law through the six finest printed grades"};
    grade.note = joined_notes("size extrapolated, the printed grades leave " +
                                  fixed(size.low_um, 1) + " to " + fixed(size.high_um, 1) + " um",
                              grade.note);
  }
  return grade;
}

}  // namespace detail

}  // namespace levigate
