// Lines of a journal that a later line strikes: they stay, and no reader counts them.
#pragma once

#include <span>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/journal/entry.hpp"

namespace levigate::inline v0 {

/// Which entries a later one strikes. One that is struck itself strikes nothing, nor does one that cannot strike its line: that is
/// not before it, or is of another job.
///
/// @param entries  of one journal, in order from its first line on; a line is its position, from 1
/// @return         one for each entry: whether it is struck
/// Throws:    nothing
/// Source:    -
std::vector<bool> struck(std::span<const Entry> entries);

/// Which entries count: those that are not struck(), and do more than strike.
///
/// @param entries  of one journal, in order from its first line on; a line is its position, from 1
/// @return         one for each entry: whether it counts
/// Throws:    BadInput where an entry strikes a line that is not before it, or that is of another job
/// Source:    -
std::vector<bool> counted(std::span<const Entry> entries);

/// The entries with a note in place of each that is struck and each that strikes. Places stay. It changes nothing the second time.
///
/// @param entries  as counted()
/// @return         as many entries
/// Throws:    as counted()
/// Source:    -
std::vector<Entry> without_struck(std::vector<Entry> entries);

namespace detail {

/// Throws: BadInput unless an entry after these can strike its line.
void require_strikes(std::span<const Entry> before, const Entry& strikes);

}  // namespace detail

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/struck.hpp"
#endif
