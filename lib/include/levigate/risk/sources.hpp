// Where the numbers come from that are believed before any journal, and those of a patch, by name.
#pragma once

#include <vector>

#include "levigate/named_number.hpp"

namespace levigate::inline v0 {

/// The numbers of the tables "prior" and "patch".
std::vector<NamedNumber> learning_numbers();

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/risk/work/sources.hpp"
#endif
