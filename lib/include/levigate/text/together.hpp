// Pieces planned together, as plain text: the sheets of each, who would starve, and what to buy.
#pragma once

#include <string>

#include "levigate/risk/together.hpp"

namespace levigate::inline v0 {

/// Pieces planned together, as plain text, at most card_columns wide. Each plan has a card of its own beside it.
std::string together_card(const Together& together);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/together.hpp"
#endif
