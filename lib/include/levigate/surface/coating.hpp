// What is being sanded: a coat, or a solid that has no film to run out of.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/wheel_limits.hpp"

namespace levigate::inline v0 {

/// Name of a coating that is told by its numbers without a name.
inline constexpr std::string_view nameless_coating = "own coating";

/// The material under the paper: all that is known of it. What is not known is absent.
struct Coating {
  std::string name;
  CoatingKind kind = CoatingKind::coat;
  double hardness_mpa = 0;              ///< indentation hardness [MPa]
  double wear_coefficient = 0;          ///< of two-body abrasion, dimensionless
  double refractive_index = 0;          ///< of the surface, dimensionless
  std::optional<bool> two_part;         ///< cures with an isocyanate hardener; none: not said
  std::optional<bool> redissolves{};    ///< a fresh coat melts the one below; none: not known
  std::optional<Cure> cure{};           ///< how it cures; none: not known
  std::optional<WheelLimits> limits{};  ///< what it stands from a wheel; none: not known

  friend bool operator==(const Coating&, const Coating&) = default;
};

/// The coating of that name in the profiles.
/// Throws: BadInput where there is none, naming the nearest.
Coating coating_named(std::string_view name);

/// Throws: OutOfRange where a member is outside its range.
void validate(const Coating& coating, std::string_view where);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/surface/work/coating.hpp"
#endif
