// How fast abrasive wears a coating: as someone measured it, else by the model.
#pragma once

#include "levigate/surface/coating.hpp"
#include "levigate/surface/model.hpp"
#include "levigate/surface/removal.hpp"

namespace levigate::inline v0 {

/// Wear coefficient of the abrasive on a coating: as measured, else wear_coefficient().
inline double wear_of(const Coating& coating, const Model& model) {
  return coating.wear_coefficient.value_or(
      wear_coefficient(coating.cutting_efficiency, model.flank_deg));
}

}  // namespace levigate
