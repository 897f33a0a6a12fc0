// A calibration as JSON, both ways. Every key is always there; what does not apply is null or empty.
#pragma once

#include <string>
#include <string_view>

#include "levigate/risk/calibration.hpp"

namespace levigate::inline v0 {

/// A calibration as JSON text of format levigate.calibration/1.
std::string to_json(const Calibration& calibration);

/// A calibration from that text, equal to the one it was written from.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      the calibration
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number outside its range
/// Source:    data/schema/calibration.schema.json
Calibration calibration_from_json(std::string_view text, std::string_view file = "");

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write_calibration.hpp"
#endif
