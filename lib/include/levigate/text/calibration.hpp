// What to measure before a day of work, as plain text: how to do it, what it takes, what it narrows and how to record it.
#pragma once

#include <string>

#include "levigate/risk/calibration.hpp"

namespace levigate::inline v0 {

/// A calibration as plain text, best first. Only a line with a long name in a command is wider than card_columns.
std::string calibration_card(const Calibration& calibration);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/calibration.hpp"
#endif
