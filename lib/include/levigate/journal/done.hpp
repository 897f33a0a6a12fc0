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

/// The steps of a job that were ended, one for each such entry. The way a step ran is that of the last one begun with its sheet
/// that holds all of its zones, unless it was ended there since; where one was begun in some of its zones only, it is not known.
/// Of a step that is begun and not ended, nothing is known to be done.
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
