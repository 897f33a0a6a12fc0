// How wide a card may be.
#pragma once

#include <cstddef>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// No line of a card is wider than this.
inline constexpr std::size_t card_columns = 88;

}  // namespace levigate
