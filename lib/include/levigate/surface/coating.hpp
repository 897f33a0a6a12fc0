// What is being sanded: a coat, or a solid that has no film to run out of.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "levigate/faults.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/shrink_back.hpp"
#include "levigate/surface/wheel_limits.hpp"

namespace levigate::inline v0 {

/// Name of a coating that is told by its numbers without a name.
inline constexpr std::string_view nameless_coating = "own coating";

/// Cutting efficiency where nothing is known of a coating: that of every coating of the profiles.
inline constexpr double usual_cutting_efficiency = coating_table[0].cutting_efficiency.value;

/// The material under the paper.
struct Coating {
  std::string name{nameless_coating};
  CoatingKind kind = CoatingKind::coat;
  double hardness_mpa = 0;
  double cutting_efficiency = usual_cutting_efficiency;
  std::optional<double> wear_coefficient{};
  double refractive_index = 0;
  std::optional<bool> two_part{};
  std::optional<bool> redissolves{};
  std::optional<Cure> cure{};
  std::optional<ShrinkBack> shrink_back{};
  std::optional<WheelLimits> limits{};

  friend bool operator==(const Coating&, const Coating&) = default;
};

template <std::same_as<Coating> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Coating",
    "What is being sanded: a coat, or a solid without a film. What is not known is absent.",
    member<&Value::name>("name", "name of the profile, or the user's own").optional(),
    member<&Value::kind>("kind", "a coat has a film to run out of, a solid has none"),
    member<&Value::hardness_mpa>("hardness_mpa", Within{1, 1e5}, "indentation hardness")
        .is(Input::believed),
    member<&Value::cutting_efficiency>("cutting_efficiency", Within{1e-3, 1},
                                       "share of a groove that leaves as chips")
        .is(Input::pace)
        .optional(),
    member<&Value::wear_coefficient>(
        "wear_coefficient", Within{1e-6, 1},
        "of two-body abrasion, as measured; else it follows from cutting_efficiency and flank"),
    member<&Value::refractive_index>("refractive_index", Within{1.01, 4}, "of the surface")
        .is(Input::believed),
    member<&Value::two_part>("two_part", "whether it cures with an isocyanate hardener"),
    member<&Value::redissolves>("redissolves", "whether a fresh coat melts the one below")
        .with_none("null"),
    member<&Value::cure>("cure", "how it cures").with_none("null"),
    member<&Value::shrink_back>("shrink_back", "what comes back of a levelled peel")
        .with_none("null"),
    member<&Value::limits>("limits", "speed and heat that it stands from a wheel")
        .with_none("null"));

/// The coating of that name in the profiles.
/// Throws: BadInput where there is none, naming the nearest.
Coating coating_named(std::string_view name);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/surface/work/coating.hpp"
#endif
