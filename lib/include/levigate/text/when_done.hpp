// When a job is done, as plain text: pace, the step under way, what is left of the day and of the paper.
#pragma once

#include <string>

#include "levigate/risk/when_done.hpp"

namespace levigate::inline v0 {

/// What is left of a job, as plain text.
std::string when_done_card(const WhenDone& when);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/when_done.hpp"
#endif
