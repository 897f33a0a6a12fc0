// What is left of a job as JSON, both ways. Every key is always there; what does not apply is null or empty.
#pragma once

#include <string>
#include <string_view>

#include "levigate/risk/when_done.hpp"

namespace levigate::inline v0 {

/// What is left of a job as JSON text of format levigate.when_done/1.
std::string to_json(const WhenDone& when);

/// The value of that text, equal to the one it was written from.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      the value
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number outside its range
/// Source:    data/schema/when_done.schema.json
WhenDone when_done_from_json(std::string_view text, std::string_view file = "");

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write_when_done.hpp"
#endif
