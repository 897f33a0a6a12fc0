// One line of a journal as JSON, both ways. Every error names the value, its pointer and its line.
#pragma once

#include <cstddef>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "levigate/io/document.hpp"
#include "levigate/io/keys.hpp"
#include "levigate/io/read.hpp"
#include "levigate/io/write.hpp"
#include "levigate/journal/entry.hpp"

namespace levigate::inline v0 {

/// A line of a journal is a few hundred bytes; one that is longer than this is neither written nor read.
inline constexpr std::size_t longest_entry_bytes = 1 << 20;

namespace detail {

/// What a member holds is not empty: without it, the member is left out.
template <typename Filled>
void require_filled(const Node& node, const Filled& value, std::string_view key) {
  if (value.empty()) node.fail(std::string(key) + " is empty");
}

inline levigate::Mark mark_in(const Node& node) {
  node.require_keys(mark_keys);
  levigate::Mark mark;
  mark.kind = kind_in(node.at("kind"), all_mark_kinds, "kind");
  mark.zone = node.at("zone").text();
  mark.seen = kind_in(node.at("seen"), all_ways_seen, "seen");
  if (const auto width_um = node.find("width_um")) mark.width_um = width_um->number();
  if (const auto direction = node.find("direction_deg")) mark.direction_deg = direction->number();
  if (const auto count = node.find("count")) mark.count = count->whole(2, 1000, "count");
  if (const auto height_um = node.find("height_um")) mark.height_um = height_um->number();
  node.placed([&] { validate(mark, node.pointer()); });
  return mark;
}

inline Entry entry_in(const Node& root) {
  require_format(root, journal_format);
  root.require_keys(entry_keys);
  Entry entry;
  entry.at = root.at("at").text();
  entry.kind = kind_in(root.at("kind"), all_entry_kinds, "kind");
  entry.job = root.at("job").text();
  const std::pair<std::string_view, std::string*> texts[] = {
      {"zone", &entry.zone}, {"sheet", &entry.sheet}, {"text", &entry.text}};
  for (const auto& [key, member] : texts) {
    const auto value = root.find(key);
    if (!value) continue;
    *member = value->text();
    require_filled(*value, *member, key);
  }
  const std::pair<std::string_view, std::optional<double>*> numbers[] = {
      {"minutes", &entry.minutes},       {"sheets_used", &entry.sheets_used},
      {"removal_um", &entry.removal_um}, {"direction_deg", &entry.direction_deg},
      {"width_um", &entry.width_um},     {"ra_um", &entry.ra_um}};
  for (const auto& [key, member] : numbers) {
    if (const auto value = root.find(key)) *member = value->number();
  }
  if (const auto readings = root.find("readings_um")) {
    for (const Node& reading : readings->items()) entry.readings_um.push_back(reading.number());
    require_filled(*readings, entry.readings_um, "readings_um");
  }
  if (const auto mark = root.find("mark")) entry.mark = mark_in(*mark);
  root.placed([&] { validate(entry, "the entry"); });
  return entry;
}

inline OrderedJson json_of(const levigate::Mark& mark) {
  OrderedJson json{
      {"kind", to_string(mark.kind)}, {"zone", mark.zone}, {"seen", to_string(mark.seen)}};
  if (mark.width_um) json["width_um"] = *mark.width_um;
  if (mark.direction_deg) json["direction_deg"] = *mark.direction_deg;
  if (mark.count) json["count"] = *mark.count;
  if (mark.height_um) json["height_um"] = *mark.height_um;
  return json;
}

}  // namespace detail

/// An entry from the JSON text of its line, of format levigate.journal/1.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @param line  where in the file it stands, for messages
/// @return      the entry
/// Throws:    BadInput, with pointer and line, for text that is not of the format; OutOfRange for a number
///            outside its range
/// Source:    data/schema/journal.schema.json
inline Entry entry_from_json(std::string_view text, std::string_view file = "", int line = 1) {
  return detail::entry_in(detail::Node(detail::Document(text, file, line)));
}

/// An entry as one line of JSON text of format levigate.journal/1, its newline included, which entry_from_json reads back
/// equal. Only the members that are there are written.
/// Throws: what validate throws for an entry; BadInput where the line is longer than longest_entry_bytes
inline std::string to_json(const Entry& entry) {
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
