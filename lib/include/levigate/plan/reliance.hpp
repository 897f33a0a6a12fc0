// What a plan relies on: every input with its band and source, and how far the plan moves over that band.
#pragma once

#include <string>

#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

/// One input of a plan. Where its band is not known, low and high equal the value.
struct Reliance {
  std::string subject;   ///< whose number it is, as "backing latex paper"
  std::string quantity;  ///< its name, with the unit as suffix, as "modulus_mpa"
  Sourced input;
  double minutes_low = 0;   ///< change of the plan's minutes with the input at its low end [min]
  double minutes_high = 0;  ///< the same at its high end [min]
  double film_low = 0;      ///< change of the share of film used by the worst zone at the low end
  double film_high = 0;     ///< the same at its high end

  /// Largest change, as a share of the plan's minutes or of the film budget, whichever is more.
  double influence = 0;
};

}  // namespace levigate
