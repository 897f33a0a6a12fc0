// How much to spray as JSON, both ways. Every key is always there; what does not apply is null or empty.
#pragma once

#include <string>
#include <string_view>

#include "levigate/bench/spraying.hpp"

namespace levigate::inline v0 {

/// How much to spray as JSON text of format levigate.spray/1.
std::string to_json(const Spraying& spraying);

/// How much to spray from that text, equal to the one it was written from.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      how much to spray
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number outside its range
/// Source:    data/schema/spray.schema.json
Spraying spraying_from_json(std::string_view text, std::string_view file = "");

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write_spraying.hpp"
#endif
