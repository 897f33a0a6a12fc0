// What is being sanded: a coat, or a solid that has no film to run out of.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "levigate/detail/profile.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/coating_table.hpp"

namespace levigate::inline v0 {

/// Name of a coating that is told by its numbers without a name.
inline constexpr std::string_view nameless_coating = "own coating";

/// The material under the paper.
struct Coating {
  std::string name;
  CoatingKind kind = CoatingKind::coat;
  double hardness_mpa = 0;       ///< indentation hardness [MPa]
  double wear_coefficient = 0;   ///< of two-body abrasion, dimensionless
  double refractive_index = 0;   ///< of the surface, dimensionless
  std::optional<bool> two_part;  ///< cures with an isocyanate hardener; none: not said

  friend bool operator==(const Coating&, const Coating&) = default;
};

/// The coating of that name in the profiles.
/// Throws: BadInput where there is none, naming the nearest.
inline Coating coating_named(std::string_view name) {
  const CoatingProfile& p = detail::profile_named(coating_table, name, "coating");
  return {std::string(p.name),      p.kind,    p.hardness_mpa.value, p.wear_coefficient.value,
          p.refractive_index.value, p.two_part};
}

/// Throws: OutOfRange where a member is outside its range.
inline void validate(const Coating& coating, std::string_view where) {
  detail::require_range(coating.hardness_mpa, 1.0, 1e5, "hardness_mpa", "MPa", where);
  detail::require_range(coating.wear_coefficient, 1e-6, 1.0, "wear_coefficient", "", where);
  detail::require_range(coating.refractive_index, 1.01, 4.0, "refractive_index", "", where);
}

}  // namespace levigate
