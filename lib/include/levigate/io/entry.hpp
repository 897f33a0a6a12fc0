// One line of a journal as JSON, both ways. Every error names the value, its pointer and its line.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/io/write.hpp"
#include "levigate/journal/entry.hpp"

namespace levigate::inline v0 {

/// A line of a journal is a few hundred bytes; one that is longer than this is neither written nor read.
inline constexpr std::size_t longest_entry_bytes = 1 << 20;

/// An entry from the JSON text of its line, of format levigate.journal/1.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @param line  where in the file it stands, for messages
/// @return      the entry
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number
///            outside its range
/// Source:    data/schema/journal.schema.json
Entry entry_from_json(std::string_view text, std::string_view file = "", int line = 1);

/// An entry as one line of JSON text of format levigate.journal/1, its newline included, which entry_from_json reads back
/// equal. Only the members that are there are written.
/// Throws: what validate throws for an entry; BadInput where the line is longer than longest_entry_bytes
std::string to_json(const Entry& entry);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/entry.hpp"
#endif
