// A zone spot by spot: where the least film is left.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>

#include "levigate/detail/normal.hpp"
#include "levigate/film/film.hpp"
#include "levigate/risk/philox.hpp"

namespace levigate::inline v0 {

/// Bounds of a normal number by the first bits of the uniform that it is made from. Most spots are far from the thinnest and need
/// no more than these.
class NormalBounds {
 public:
  NormalBounds() {
    for (std::size_t i = 0; i <= cells; ++i)
      edge_[i] = -detail::normal_quantile(static_cast<double>(i) / cells);
  }

  double least(double uniform) const noexcept { return edge_[cell(uniform)]; }
  double most(double uniform) const noexcept { return edge_[cell(uniform) + 1]; }

 private:
  static constexpr std::size_t cells = 1024;
  static std::size_t cell(double uniform) noexcept {
    return static_cast<std::size_t>(uniform * cells);
  }
  std::array<double, cells + 1> edge_{};
};

/// Least film left at any spot of a zone. Each spot has its own film and its own depth:
///
///   left = N(mean, sd) - depth (1 + removed_cv N(0, 1))
///
/// @param film        of the zone, its mean and spread taken as known [um]
/// @param depth_um    to be reached, scratches included [um]
/// @param removed_cv  spread of the depth, over the depth (dimensionless)
/// @param spots       number of spots, at least 1
/// @param stream      one pair of numbers a spot
/// @param bounds      made once and used again
/// @return            film left at the thinnest spot [um]; negative where the depth exceeds the film
/// Throws:    nothing
/// NaN:       does not occur
/// Accuracy:  that of the normal quantile; no spot is left out
/// Source:    the assumptions of cut_through()
inline double thinnest_um(const Film& film, double depth_um, double removed_cv, std::uint32_t spots,
                          const Stream& stream, const NormalBounds& bounds) {
  const auto left_um = [&](double film_z, double hand_z) {
    return film.mean_um + film.sd_um * film_z - depth_um * (1.0 + removed_cv * hand_z);
  };
  double thinnest = std::numeric_limits<double>::infinity();
  for (std::uint32_t spot = 0; spot < spots; ++spot) {
    const auto [film_u, hand_u] = stream.pair(spot);
    // In the outermost cells a bound is infinite; times a spread of zero it is no number, and the spot is worked out.
    if (left_um(bounds.least(film_u), bounds.most(hand_u)) >= thinnest) continue;
    thinnest = std::min(
        thinnest, left_um(-detail::normal_quantile(film_u), -detail::normal_quantile(hand_u)));
  }
  return thinnest;
}

}  // namespace levigate
