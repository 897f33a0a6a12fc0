// What carries the grain: the backing's stiffness under one grain, how evenly the tips stand, and how long the sheet cuts.
#pragma once

#include <limits>
#include <string>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"

namespace levigate::inline v0 {

/// Name of a backing that is told by its numbers without a name.
inline constexpr std::string_view nameless_backing = "own backing";

/// The backing of one sheet or pad.
struct Backing {
  std::string name{nameless_backing};
  double tip_spread = 0;
  double modulus_mpa = 0;
  double life_m = 0;
  double clean_every_m = 0;
  double fade_m = 0;
  double floor = 0;

  friend bool operator==(const Backing&, const Backing&) = default;
};

template <std::same_as<Backing> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Backing", "What carries the grain of a sheet.",
    member<&Value::name>("name", "name of the profile, or the user's own").optional(),
    member<&Value::tip_spread>("tip_spread", Within{0, 1},
                               "standard deviation of the tips' heights over the grain size")
        .is(Input::believed),
    member<&Value::modulus_mpa>("modulus_mpa",
                                Within{0.01, std::numeric_limits<double>::infinity()},
                                "modulus under one grain")
        .is(Input::believed)
        .with_infinity("rigid"),
    member<&Value::life_m>("life_m", Within{0.1, 1e9}, "block travel that one piece lasts")
        .is(Input::believed),
    member<&Value::clean_every_m>("clean_every_m", Within{0, 1e9},
                                  "block travel between two cleanings")
        .is(Input::pace),
    member<&Value::fade_m>("fade_m", Within{1e-6, 1e9}, "travel over which clogging takes hold")
        .is(Input::pace),
    member<&Value::floor>("floor", Within{0, 1}, "share of the fresh rate that clogged paper keeps")
        .is(Input::pace));

/// The backing of that name in the profiles.
/// Throws: BadInput where there is none, naming the nearest.
Backing backing_named(std::string_view name);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/stack/work/backing.hpp"
#endif
