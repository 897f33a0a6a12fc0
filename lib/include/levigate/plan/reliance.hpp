// What a plan relies on: every input with its band and source, and how far the plan moves over that band.
#pragma once

#include <string>

#include "levigate/describe.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// One input of a plan. Where its band is not known, low and high equal the value.
struct Reliance {
  std::string subject;
  std::string quantity;
  double value = 0;
  double low = 0;
  double high = 0;
  Basis basis = Basis::user;
  std::string citation;
  double minutes_low = 0;
  double minutes_high = 0;
  double film_low = 0;
  double film_high = 0;
  double influence = 0;

  friend bool operator==(const Reliance&, const Reliance&) = default;
};

template <std::same_as<Reliance> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Reliance", "One input, moved over its band with the sequence and all else unchanged.",
    member<&Value::subject>("subject", "whose number it is, as \"backing latex paper\""),
    member<&Value::quantity>("quantity", "its name, with the unit as suffix"),
    member<&Value::value>("value", "the value used").with_infinity("rigid"),
    member<&Value::low>("low", "low end of the band").with_infinity("rigid"),
    member<&Value::high>("high", "high end of the band").with_infinity("rigid"),
    member<&Value::basis>("basis", "what the value rests on"),
    member<&Value::citation>("citation", "where it comes from; may be empty"),
    member<&Value::minutes_low>("minutes_low", "change of the minutes at the low end")
        .in_unit("min"),
    member<&Value::minutes_high>("minutes_high", "change of the minutes at the high end")
        .in_unit("min"),
    member<&Value::film_low>("film_low", "change of the share of film used at the low end"),
    member<&Value::film_high>("film_high", "change of the share of film used at the high end"),
    member<&Value::influence>("influence", at_least(0),
                              "largest change, as a share of minutes or budget"));

}  // namespace levigate
