// How deep a single grain scratches that is larger than those of the sheet it came under.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/inspection_table.hpp"

namespace levigate::inline v0 {

/// A sheet on a film, and the strays under it.
struct StrayInput {
  double size_um;          ///< median grain of the sheet d [um], 0.01 to 10 000
  double plane_height_um;  ///< of the backing above the mean tip: Contact::plane_height_um [um]
  double modulus_mpa;      ///< of the backing [MPa], 0.01 to infinity
  double hardness_mpa;     ///< of the film [MPa], 1 to 100 000
  double flank_deg;        ///< of a tip with the surface [deg], 1 to 80
  double force_n;          ///< that presses the tool [N], above 0
  double size_ratio =
      inspection_table[0].stray_size_ratio.value;  ///< of the largest stray, 1.01 to 1000
};

/// Share of stray grains that scratch deeper than a depth.
///
/// A grain of r d lies on the bed of the sheet's own, so its tip stands (r - 1) d above the mean tip and z less above the
/// plane of the backing, which the others hold at z. It sinks in by delta, where (contact())
///
///   (r - 1) d - z = delta + A delta^2 / (r d E),   A = pi H / (2 tan^2 flank),
///
/// which is a quadratic in r at a given depth. Sizes are even in logarithm, so the share is 1 - ln r / ln size_ratio. No
/// grain bears more than the whole force on the tool.
///
/// @param input     see StrayInput for units and ranges
/// @param depth_um  depth [um], any
/// @return          share (dimensionless), 0 to 1
/// Throws:    OutOfRange where a member is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-12 absolute
/// Source:    that of contact(); sizes even in logarithm: assumption
inline double stray_exceedance(const StrayInput& input, double depth_um) {
  if (detail::any_nan(input.size_um, input.plane_height_um, input.modulus_mpa, input.hardness_mpa,
                      input.flank_deg, input.force_n, input.size_ratio, depth_um)) {
    return std::nan("");
  }
  constexpr double infinity = std::numeric_limits<double>::infinity();
  constexpr auto where = "stray_exceedance";
  detail::require_range(input.size_um, 0.01, 1e4, "size_um", "um", where);
  detail::require_range(input.modulus_mpa, 0.01, infinity, "modulus_mpa", "MPa", where);
  detail::require_range(input.hardness_mpa, 1.0, 1e5, "hardness_mpa", "MPa", where);
  detail::require_range(input.flank_deg, 1.0, 80.0, "flank_deg", "deg", where);
  detail::require_range(input.force_n, 1e-6, 1e5, "force_n", "N", where);
  detail::require_range(input.size_ratio, 1.01, 1e3, "size_ratio", "", where);
  constexpr double um_per_mm = 1e3;
  const double tangent = std::tan(input.flank_deg * (std::numbers::pi / 180.0));
  const double cone_mpa = std::numbers::pi * input.hardness_mpa / (2.0 * tangent * tangent);
  const double depth = std::max(depth_um, 0.0);
  if (depth > um_per_mm * std::sqrt(input.force_n / cone_mpa)) return 0.0;
  const double d = input.size_um;
  const double rigid = d + input.plane_height_um + depth;  // r d where the backing does not give
  const double give = cone_mpa * depth * depth / input.modulus_mpa;
  const double r = (rigid + std::sqrt(rigid * rigid + 4.0 * give)) / (2.0 * d);
  if (r <= 1.0) return 1.0;
  return std::max(0.0, 1.0 - std::log(r) / std::log(input.size_ratio));
}

}  // namespace levigate
