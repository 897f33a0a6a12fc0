// What to buy before a day of work, as plain text.
#pragma once

#include <string>

#include "levigate/risk/buying.hpp"

namespace levigate::inline v0 {

/// Sheets to buy, the kind that shortens the day most, and open labels: plain text, at most card_columns wide.
std::string buying_card(const Buying& buying);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/buying.hpp"
#endif
