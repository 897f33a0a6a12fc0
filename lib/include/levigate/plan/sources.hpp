// Where any number comes from, by name: a formula by its function, a profile's number by profile and quantity.
#pragma once

#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/formulas.hpp"
#include "levigate/named_number.hpp"
#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

/// The numbers of all profiles, but those of wheels, compounds and surfaces that are no coating: see wheel/sources.hpp.
std::vector<NamedNumber> named_numbers();

/// The formula of a function.
/// Throws: BadInput where none is held for it, naming the nearest.
Formula source(std::string_view function);

/// The value, band and source of a number: of a coating, backing, block or gauge by the name of the
/// profile; of a "rule", "model", "edge" or "defect".
/// Throws: BadInput where there is no such profile or it has no such quantity, naming the nearest.
Sourced source(std::string_view name, std::string_view quantity);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/plan/work/sources.hpp"
#endif
