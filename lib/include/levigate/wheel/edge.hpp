// What a wheel does to an edge: the face bears on a line instead of a flat, the pressure rises, and the film is gone in a moment.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>

#include "levigate/error.hpp"
#include "levigate/source.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

/// Pressure on an edge over that on the flat, from which a card should warn.
inline constexpr double edge_caution_factor = 2.0;
inline constexpr Source edge_caution_source{Basis::assumption,
                                            "an edge holds about half the film of the flat: at "
                                            "twice the pressure it lasts a quarter as long"};

/// A wheel on an edge.
struct EdgeLoad {
  double pressure_kpa = 0;  ///< mean pressure on the edge
  double factor = 0;        ///< over the pressure on the flat, 1 or more; film per pass grows by it
  bool caution = false;     ///< factor at or above edge_caution_factor
};

/// Pressure where the whole face load rests on one edge that runs along the travel. The least of what a
/// rounded edge (a cylinder on a soft flat, Hertz) and a square corner (a wedge of 45 degrees) carry:
///
///   p = min( sqrt(pi F E / (16 radius contact)),  E / 2 ),  at least the pressure on the flat
///
/// So a soft loose wheel yields around an edge and a hard one cuts through it. A bound for the worst
/// hold: work that stays on the flat while its edge passes loads the edge less.
///
/// @param wheel      with face load F, modulus E and length of contact
/// @param radius_mm  of the edge [mm], 0 (sharp) to 1000
/// @return           pressure on the edge [kPa], factor over the flat, whether to warn
/// Throws:    as validate(); OutOfRange where radius_mm is outside its range
/// NaN:       rejected
/// Source:    line and wedge contact from memory (Johnson, Contact Mechanics, 1985), used beyond their
///            small slopes: assumption
inline EdgeLoad edge_load(const Wheel& wheel, double radius_mm) {
  validate(wheel, "edge_load");
  detail::require_range(radius_mm, 0.0, 1000.0, "radius_mm", "mm", "edge_load");
  constexpr double kpa_per_mpa = 1e3;
  const double wedge_mpa = 0.5 * wheel.modulus_mpa;
  const double round_mpa =
      std::sqrt(std::numbers::pi * wheel.force_n * wheel.modulus_mpa /
                (16.0 * radius_mm * wheel.contact_mm));  // infinite where sharp
  const double flat_kpa = wheel.pressure_kpa();
  const double edge_kpa = std::max(flat_kpa, kpa_per_mpa * std::min(round_mpa, wedge_mpa));
  const double factor = edge_kpa / flat_kpa;
  return {.pressure_kpa = edge_kpa, .factor = factor, .caution = factor >= edge_caution_factor};
}

}  // namespace levigate
