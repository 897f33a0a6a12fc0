// What to buy as JSON, both ways. Every key is always there; what does not apply is null or empty.
#pragma once

#include <string>
#include <string_view>

#include "levigate/risk/buying.hpp"

namespace levigate::inline v0 {

/// What to buy as JSON text of format levigate.buy/1.
std::string to_json(const Buying& buying);

/// What to buy from that text, equal to the one it was written from.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      what was written
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number outside its range
/// Source:    data/schema/buy.schema.json
Buying buying_from_json(std::string_view text, std::string_view file = "");

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write_buying.hpp"
#endif
