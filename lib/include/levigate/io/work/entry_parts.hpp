// The members of a journal line as JSON, both ways.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "levigate/io/formats.hpp"
#include "levigate/io/work/document.hpp"
#include "levigate/io/work/keys.hpp"
#include "levigate/io/work/read_job.hpp"
#include "levigate/io/work/write_parts.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/recover/mark.hpp"

namespace levigate::inline v0 {

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

}  // namespace levigate
