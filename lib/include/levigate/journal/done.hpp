// What a journal says was done: the jobs in it, and the steps of one of them in order.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// Names of the jobs in a journal. What is struck does not count: see counted().
///
/// @param entries  of one journal, in order
/// @return         names, in the order in which they first stand there
/// Throws:    as counted()
/// Source:    -
std::vector<std::string> jobs(std::span<const Entry> entries);

/// Letters by which a name may be off and still be meant.
inline constexpr std::size_t name_slip_letters = 2;

inline constexpr Source name_slip_source{Basis::assumption,
                                         "a slip of the finger swaps or drops one letter or two"};

/// Other jobs in a journal whose name is nearly this one: at most name_slip_letters to insert, drop or replace.
///
/// @param entries  of one journal
/// @param job      its name
/// @return         names, in the order in which they first stand there
/// Throws:    as counted()
/// Source:    name_slip_source
std::vector<std::string> jobs_nearly_named(std::span<const Entry> entries, std::string_view job);

/// The steps of a job that ended, one for each such entry. Each takes its direction from the last step begun with its sheet that
/// holds all of its zones, unless that one has ended there since. If one began in only some of its zones, the direction is not
/// known. A step that began and did not end counts as nothing done.
///
/// @param entries  of one journal; their order is that in which they were written, whatever clock told `at`
/// @param job      its name
/// @return         the steps, in the order of the entries
/// Throws:    as counted()
/// Source:    -
std::vector<DoneStep> done_steps(std::span<const Entry> entries, std::string_view job);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/done.hpp"
#endif
