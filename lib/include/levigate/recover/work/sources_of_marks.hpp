// Where scratches come from: each step's own grain and stray grain under it, and how many of what depth are left of them.
#pragma once

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/work/layer.hpp"
#include "levigate/surface/inspection_table.hpp"
#include "levigate/surface/roughness.hpp"
#include "levigate/surface/work/spot.hpp"
#include "levigate/surface/work/stray.hpp"

namespace levigate::inline v0 {

/// One source of scratches in a zone.
///
/// While a step takes off film, tips cross the spot at an even rate per um taken off, each with a depth of the source's
/// distribution. What was made when x um were still to come off by that step and `since` by the later ones is now x + since
/// less deep, so the scratches left on a spot are a Poisson process over their depth y with density
///
///   per_um (T(y + since) - T(y + since + own)),   T: share deeper than, own: taken off by the step.
struct MarkSource {
  std::size_t layer = 0;
  bool stray = false;
  double per_um = 0;             ///< scratches across a spot for each um the step takes off
  std::vector<double> deeper{};  ///< T, at even depths from 0 to deepest_um
  double deepest_um = 0;
  double places_per_um = 0;  ///< of the depths in `deeper`

  /// T between the depths it is kept at. Within 1e-3 of it where it falls tenfold over 16 of them.
  double share_deeper(double depth_um) const {
    const double place = depth_um * places_per_um;
    if (place >= static_cast<double>(deeper.size() - 1)) return 0.0;
    const auto i = static_cast<std::size_t>(place);
    const double part = place - static_cast<double>(i);
    return deeper[i] + part * (deeper[i + 1] - deeper[i]);
  }

  /// Scratches on a spot per um of depth.
  double density(double depth_um, double since_um, double own_um) const {
    return per_um *
           (share_deeper(depth_um + since_um) - share_deeper(depth_um + since_um + own_um));
  }
};

/// The sources of all layers of a zone: of each its own grain, then strays.
inline std::vector<MarkSource> mark_sources(const Workings& workings,
                                            const std::vector<Layer>& layers, std::size_t zone) {
  constexpr std::size_t depths = 1024;
  constexpr double cm2_per_m2 = 1e4;
  std::vector<MarkSource> result;
  const auto add = [&](MarkSource source, auto share) {
    source.deeper.resize(depths);
    source.places_per_um = (depths - 1) / source.deepest_um;
    for (std::size_t i = 0; i < depths; ++i) {
      source.deeper[i] = share(source.deepest_um * static_cast<double>(i) / (depths - 1));
    }
    result.push_back(std::move(source));
  };
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const Layer& layer = layers[i];
    const SheetInZone& work = workings.work[layer.sheet][zone];
    const double factor = workings.factors.of(layer.sheet).scratch;
    add({.layer = i,
         .stray = false,
         .per_um = spot_um * grooves_per_um2(layer.contact, layer.rate_um_per_m),
         .deepest_um = factor * layer.contact.depth_um(1.0)},
        [&](double depth_um) { return layer.contact.exceedance(depth_um / factor); });
    const StrayInput stray{.size_um = grain_of(workings, layer.sheet).worn_um,
                           .plane_height_um = layer.contact.plane_height_um(),
                           .modulus_mpa = workings.stack.sheets[layer.sheet].backing.modulus_mpa,
                           .hardness_mpa = workings.job.coating.hardness_mpa,
                           .flank_deg = workings.model.flank_deg,
                           .force_n = work.tool.force_n};
    const double largest_um = stray.size_um * stray.size_ratio;
    add({.layer = i,
         .stray = true,
         .per_um = inspection_table[0].stray_per_m2.value / cm2_per_m2 / layer.removal_um,
         .deepest_um = std::max(largest_um - stray.size_um - stray.plane_height_um, 1e-3)},
        [&](double depth_um) { return stray_exceedance(stray, depth_um); });
  }
  return result;
}

}  // namespace levigate
