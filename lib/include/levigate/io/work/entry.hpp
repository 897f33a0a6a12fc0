// The work behind io/entry.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/io/entry.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/io/work/write_described.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Entry entry_from_json(std::string_view text, std::string_view file, int line) {
  return detail::value_of_file<Entry>(text, file, journal_format, detail::Style::sparse, line);
}

LEVIGATE_WORK std::string to_json(const Entry& entry) {
  validate(entry, "the entry");
  const std::string line =
      detail::file_json(journal_format, description_of<Entry>(), &entry, detail::Style::sparse)
          .dump() +
      "\n";
  if (line.size() > longest_entry_bytes) {
    throw BadInput("the entry takes " + std::to_string(line.size()) + " bytes, at most " +
                   std::to_string(longest_entry_bytes) + " are written");
  }
  return line;
}

}  // namespace levigate
