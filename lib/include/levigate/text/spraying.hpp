// How much to spray, as plain text.
#pragma once

#include <string>

#include "levigate/bench/spraying.hpp"

namespace levigate::inline v0 {

/// What to spray on each zone as plain text, in um and ml with mil and fl oz beside them.
std::string spray_card(const Spraying& spraying);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/spraying.hpp"
#endif
