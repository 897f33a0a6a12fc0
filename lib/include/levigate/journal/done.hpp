// What a journal says was done: the jobs in it, and the steps of one of them in order.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/recover/done.hpp"

namespace levigate::inline v0 {

/// Names of the jobs in a journal.
///
/// @param entries  of one journal, in order
/// @return         names, in the order in which they first stand there
/// Throws:    nothing
/// Source:    -
std::vector<std::string> jobs(std::span<const Entry> entries);

/// The steps of a job that ended, one for each such entry. Each takes its direction from the last step begun with its sheet that
/// holds all of its zones, unless that one has ended there since. If one began in only some of its zones, the direction is not
/// known. A step that began and did not end counts as nothing done.
///
/// @param entries  of one journal; their order is that in which they were written, whatever clock told `at`
/// @param job      its name
/// @return         the steps, in the order of the entries
/// Throws:    nothing
/// Source:    -
std::vector<DoneStep> done_steps(std::span<const Entry> entries, std::string_view job);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/done.hpp"
#endif
