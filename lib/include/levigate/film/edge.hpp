// Edges hold less film than flats: how much, by radius, and how few strokes of a pad that affords.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/film/edge_table.hpp"
#include "levigate/film/film.hpp"

namespace levigate::inline v0 {

/// Share of the flat film that stays on an edge.
///
///   share = 1 - (1 - s0) / (1 + r / r0),   r0 such that share(2 mm) = 0.8,   s0 = 0.5
///
/// It rises with the radius and tends to 1.
///
/// @param radius_mm  of the edge r [mm], 0 (sharp) to infinity (flat)
/// @return           share (dimensionless), 0.5 to 1
/// Throws:    OutOfRange where the radius is negative
/// NaN:       NaN in, NaN out
/// Accuracy:  4 ulp; as a prediction 0.2 either way on a sharp edge, 0.1 on a 2 mm radius
/// Source:    common practice for the two points, data/profiles/edges.json; assumption between and beyond
inline double edge_share(double radius_mm) {
  if (std::isnan(radius_mm)) return std::nan("");
  detail::require_range(radius_mm, 0.0, std::numeric_limits<double>::infinity(), "radius_mm", "mm",
                        "edge_share");
  const EdgeProfile& p = edge_table[0];
  const double missing = 1.0 - p.sharp_share.value;
  const double scale_mm = p.eased_radius_mm.value / (missing / (1.0 - p.eased_share.value) - 1.0);
  return 1.0 - missing / (1.0 + radius_mm / scale_mm);
}

/// Film on an edge of a zone, from that on its flat. The mean and its uncertainty scale with the
/// share; the spread from spot to spot stays, as an edge is no more even than a flat.
///
/// @param flat       film on the flat [um]
/// @param radius_mm  of the edge [mm], 0 to infinity
/// @return           film on the edge [um]
/// Throws:    OutOfRange where the radius is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  that of edge_share()
/// Source:    that of edge_share(); the spread is an assumption
inline Film edge_film(const Film& flat, double radius_mm) {
  const double share = edge_share(radius_mm);
  Film edge = flat;
  edge.mean_um *= share;
  edge.mean_se_um *= share;
  if (edge.dry_um_per_coat) *edge.dry_um_per_coat *= share;
  return edge;
}

/// Whole strokes that a depth affords, where a pad is moved along an edge.
///
///   strokes = floor(depth / (rate min(stroke, pad)))
///
/// In one stroke no point is under more of the pad than its length, nor longer than the stroke. A pad
/// bears on an edge with less than its area: the rate is to be that of the pressure there.
///
/// @param depth_um       that may be removed [um], 0 to infinity
/// @param rate_um_per_m  removal rate on the edge [um per m], 1e-9 to 1e6
/// @param stroke_mm      travel of the pad in one direction [mm], 0.1 to 10 000
/// @param pad_mm         length of the pad along the edge [mm], 0.1 to 10 000
/// @return               strokes in one direction (dimensionless), a whole number or infinity
/// Throws:    OutOfRange where an argument is outside its range
/// NaN:       NaN in, NaN out
/// Accuracy:  exact but for a quotient within 4 ulp of a whole number; as a prediction that of the rate
/// Source:    Preston's law
inline double strokes_within(double depth_um, double rate_um_per_m, double stroke_mm,
                             double pad_mm) {
  if (detail::any_nan(depth_um, rate_um_per_m, stroke_mm, pad_mm)) return std::nan("");
  constexpr auto where = "strokes_within";
  detail::require_range(depth_um, 0.0, std::numeric_limits<double>::infinity(), "depth_um", "um",
                        where);
  detail::require_range(rate_um_per_m, 1e-9, 1e6, "rate_um_per_m", "um/m", where);
  detail::require_range(stroke_mm, 0.1, 1e4, "stroke_mm", "mm", where);
  detail::require_range(pad_mm, 0.1, 1e4, "pad_mm", "mm", where);
  return std::floor(depth_um / (1e-3 * rate_um_per_m * std::min(stroke_mm, pad_mm)));
}

}  // namespace levigate
