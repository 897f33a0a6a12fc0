// Pieces planned together as JSON, both ways. Every key is always there; what does not apply is null or empty.
#pragma once

#include <string>
#include <string_view>

#include "levigate/risk/together.hpp"

namespace levigate::inline v0 {

/// Pieces planned together as JSON text of format levigate.together/1.
std::string to_json(const Together& together);

/// Pieces planned together from that text, equal to what it was written from.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      the pieces
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number outside its range
/// Source:    data/schema/together.schema.json
Together together_from_json(std::string_view text, std::string_view file = "");

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write_together.hpp"
#endif
