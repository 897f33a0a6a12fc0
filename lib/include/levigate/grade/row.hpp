// A row of a grade table: the printed digits of one grade, with their sources.
#pragma once

#include <optional>
#include <string_view>

#include "levigate/grade/system.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// One printed row. Members mean what they mean in Grade; `label` is as printed, and a grade whose
/// size was not published has no median.
struct GradeRow {
  std::string_view label;
  std::optional<double> number;
  std::optional<double> median_um;
  std::optional<double> tolerance_um;
  std::optional<double> coarse_limit_um;
  std::optional<double> fine_limit_um;
  std::optional<double> fine_percent;
  Source median_source;
  Source tolerance_source;
  Source limits_source;
  std::string_view edition;
  std::string_view method;
  std::string_view note;

  /// The grit number in digits; the size for a micron row.
  constexpr std::string_view digits() const noexcept {
    const bool bare = label.front() >= '0' && label.front() <= '9';
    return label.substr(bare ? 0 : 1);
  }
};

}  // namespace levigate
