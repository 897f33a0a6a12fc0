// Where the numbers of wheels, compounds and of surfaces that are no coating come from, by name.
#pragma once

#include <vector>

#include "levigate/named_number.hpp"

namespace levigate::inline v0 {

/// The numbers of all wheels and compounds, and the limits of surfaces that are no coating.
std::vector<NamedNumber> wheel_numbers();

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/wheel/work/sources.hpp"
#endif
