// The constants of the model that a plan rests on, gathered so that their influence can be worked out.
#pragma once

#include "levigate/surface/model_table.hpp"

namespace levigate::inline v0 {

/// Constants of contact() and size_effect(). Values, bands and sources: data/profiles/model.json.
struct Model {
  double flank_deg = model_table[0].flank_deg.value;  ///< of a grain tip with the surface [deg]
  double packing = model_table[0].packing.value;      ///< tips on an area of the size squared
  double size_exponent = model_table[0].size_exponent.value;  ///< of the removal rate
};

}  // namespace levigate
