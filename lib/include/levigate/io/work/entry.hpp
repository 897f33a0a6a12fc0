// The work behind io/entry.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/io/entry.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/document.hpp"
#include "levigate/io/work/entry_parts.hpp"
#include "levigate/io/work/write_parts.hpp"
#include "levigate/io/write.hpp"
#include "levigate/journal/entry.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Entry entry_from_json(std::string_view text, std::string_view file, int line) {
  return detail::entry_in(detail::Node(detail::Document(text, file, line)));
}

LEVIGATE_WORK std::string to_json(const Entry& entry) {
  validate(entry, "the entry");
  detail::OrderedJson json{{"format", journal_format},
                           {"at", entry.at},
                           {"kind", to_string(entry.kind)},
                           {"job", entry.job}};
  if (!entry.zone.empty()) json["zone"] = entry.zone;
  if (!entry.sheet.empty()) json["sheet"] = entry.sheet;
  if (entry.minutes) json["minutes"] = *entry.minutes;
  if (entry.sheets_used) json["sheets_used"] = *entry.sheets_used;
  if (entry.removal_um) json["removal_um"] = *entry.removal_um;
  if (entry.direction_deg) json["direction_deg"] = *entry.direction_deg;
  if (!entry.readings_um.empty()) json["readings_um"] = entry.readings_um;
  if (entry.width_um) json["width_um"] = *entry.width_um;
  if (entry.ra_um) json["ra_um"] = *entry.ra_um;
  if (entry.mark) json["mark"] = detail::json_of(*entry.mark);
  if (!entry.text.empty()) json["text"] = entry.text;
  std::string line = json.dump() + "\n";
  if (line.size() > longest_entry_bytes) {
    throw BadInput("the entry takes " + std::to_string(line.size()) + " bytes, at most " +
                   std::to_string(longest_entry_bytes) + " are written");
  }
  return line;
}

}  // namespace levigate
