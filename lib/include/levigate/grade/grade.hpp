// A grade: what a label promises about the grains, each number with where it comes from.
#pragma once

#include <optional>
#include <string>

#include "levigate/grade/system.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// One grade of one system. Sizes are the median and the limits of the grain-size distribution as the
/// system's own instrument measures them, so sizes of two systems compare to within the methods'
/// difference only.
struct Grade {
  System system = System::micron;
  std::string label;  ///< canonical form, as "P600", "CAMI 600", "JIS #800", "F400", "9 um"
  std::optional<double> number;           ///< the grit number of the label; none for micron labels
  double median_um = 0;                   ///< ds50 [um]
  std::optional<double> tolerance_um;     ///< of the median, plus or minus [um]
  std::optional<double> coarse_limit_um;  ///< ds3: at most 3 % of the grain is coarser [um]
  std::optional<double> fine_limit_um;    ///< at least fine_percent of the grain is coarser [um]
  std::optional<double> fine_percent;     ///< 95, 94 or 75, by system and row [%]
  std::string edition;                    ///< of the standard whose numbers these are
  std::string method;                     ///< how the size is measured, as "sieves"
  Source median_source;
  Source tolerance_source;
  Source limits_source;
  std::string note;  ///< what a reader must know of this row; empty if nothing

  Basis basis() const noexcept { return median_source.basis; }

  friend bool operator==(const Grade&, const Grade&) = default;
};

}  // namespace levigate
