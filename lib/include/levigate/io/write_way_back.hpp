// A way back as JSON, both ways. Every key is always there; what does not apply is null or empty.
#pragma once

#include <string>
#include <string_view>

#include "levigate/recover/way_back.hpp"

namespace levigate::inline v0 {

/// A way back as JSON text of format levigate.way_back/1.
std::string to_json(const WayBack& way);

/// A way back from that text, equal to the one it was written from.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      the way back
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number outside its range
/// Source:    data/schema/way_back.schema.json
WayBack way_back_from_json(std::string_view text, std::string_view file = "");

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write_way_back.hpp"
#endif
