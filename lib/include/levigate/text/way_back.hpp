// A mark after the last step, as plain text: which step made it, where to go back to, and what if it is seen again.
#pragma once

#include <string>

#include "levigate/recover/way_back.hpp"

namespace levigate::inline v0 {

/// A way back as plain text, at most card_columns wide.
std::string way_back_card(const WayBack& way);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/way_back.hpp"
#endif
