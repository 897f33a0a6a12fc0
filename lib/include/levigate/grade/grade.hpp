// A grade: what a label promises about the grains, each number with where it comes from.
#pragma once

#include <optional>
#include <string>

#include "levigate/describe.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// One grade of one system. Sizes are the median and the limits of the grain-size distribution as the
/// system's own instrument measures them, so sizes of two systems compare to within the methods'
/// difference only.
struct Grade {
  System system = System::micron;
  std::string label;
  std::optional<double> number;
  double median_um = 0;
  std::optional<double> tolerance_um;
  std::optional<double> coarse_limit_um;
  std::optional<double> fine_limit_um;
  std::optional<double> fine_percent;
  std::string edition;
  std::string method;
  Source median_source;
  Source tolerance_source;
  Source limits_source;
  std::string note;

  Basis basis() const noexcept { return median_source.basis; }

  friend bool operator==(const Grade&, const Grade&) = default;
};

template <std::same_as<Source> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Source", "Basis and citation of one number.",
    member<&Value::basis>("basis", "what the number rests on"),
    member<&Value::citation>("citation", "title, edition, table or clause; may be empty"));

template <std::same_as<Grade> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Grade", "A grade: what a label promises about the grains.",
    member<&Value::system>("system", "the numbering system"),
    member<&Value::label>("label", "canonical form, as \"P600\", \"CAMI 600\", \"9 um\""),
    member<&Value::number>("number", "the grit number of the label; none for micron labels"),
    member<&Value::median_um>("median_um", "median grain size"),
    member<&Value::tolerance_um>("tolerance_um", "of the median, plus or minus"),
    member<&Value::coarse_limit_um>("coarse_limit_um", "at most 3 % of the grain is coarser"),
    member<&Value::fine_limit_um>("fine_limit_um", "at least fine_percent of the grain is coarser"),
    member<&Value::fine_percent>("fine_percent", "95, 94 or 75, by system and row"),
    member<&Value::edition>("edition", "of the standard whose numbers these are"),
    member<&Value::method>("method", "how the size is measured, as \"sieves\""),
    member<&Value::median_source>("median_source", "of the median"),
    member<&Value::tolerance_source>("tolerance_source", "of the tolerance"),
    member<&Value::limits_source>("limits_source", "of the limits"),
    member<&Value::note>("note", "what a reader must know of this row; empty if nothing"));

}  // namespace levigate
