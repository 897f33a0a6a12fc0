// The constants of the model that a plan rests on, gathered so that their influence can be worked out.
#pragma once

#include "levigate/describe.hpp"
#include "levigate/surface/model_table.hpp"

namespace levigate::inline v0 {

/// Constants of contact() and size_effect(). Values, bands and sources: data/profiles/model.json.
struct Model {
  double flank_deg = model_table[0].flank_deg.value;
  double packing = model_table[0].packing.value;
  double size_exponent = model_table[0].size_exponent.value;
  double saturation_um = model_table[0].saturation_um.value;

  friend bool operator==(const Model&, const Model&) = default;
};

template <std::same_as<Model> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Model", "Constants of the model.",
    member<&Value::flank_deg>("flank_deg", "of a grain tip with the surface").is(Input::believed),
    member<&Value::packing>("packing", "tips on an area of the size squared").is(Input::believed),
    member<&Value::size_exponent>("size_exponent", "of the removal rate over the grain size")
        .is(Input::pace),
    member<&Value::saturation_um>("saturation_um",
                                  "grain size from which on the rate grows no more")
        .is(Input::pace));

}  // namespace levigate
