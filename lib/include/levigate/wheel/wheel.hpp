// Buffing wheels of the profiles, and the same wheel with another diameter.
#pragma once

#include <cmath>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/stack/wheel.hpp"

namespace levigate::inline v0 {

/// The wheel of that name in the profiles. Its rated_rpm is no rating of a real wheel: whoever runs one
/// faster than the profile must state what is printed on it.
/// Throws: BadInput where there is none, naming the nearest.
Wheel wheel_named(std::string_view name);

/// The same wheel with another diameter at the same rpm and face load. A cylinder pressed to a flat
/// touches along an arc that grows as the root of its diameter (Hertz). Then rim speed grows as the
/// diameter, the rise of temperature in one pass as its power 3/4, the film one pass takes as the
/// diameter.
///
///   contact' = contact sqrt(diameter' / diameter)
///
/// @param wheel        to start from
/// @param diameter_mm  of the other wheel [mm], 10 to 2000
/// @return             the other wheel
/// Throws:    as validate(), for either wheel
/// NaN:       rejected
/// Source:    from memory: Hertz's line contact; that a buff obeys it is an assumption
inline Wheel with_diameter(Wheel wheel, double diameter_mm) {
  validate(wheel, "with_diameter");
  detail::require_range(diameter_mm, 10.0, 2000.0, "diameter_mm", "mm", "with_diameter");
  wheel.contact_mm *= std::sqrt(diameter_mm / wheel.diameter_mm);
  wheel.diameter_mm = diameter_mm;
  validate(wheel, "with_diameter");
  return wheel;
}

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/wheel/work/wheel.hpp"
#endif
