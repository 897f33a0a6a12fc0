// The work behind journal/entry.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/journal/entry.hpp"

#include "levigate/detail/moment.hpp"
#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/work/label_text.hpp"
#include "levigate/journal/work/entry_shape.hpp"
#include "levigate/recover/mark.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK EntryKind entry_kind_named(std::string_view name) {
  return detail::kind_named(all_entry_kinds, name, "kind");
}

namespace detail {

inline bool is_utf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t bytes = first_code_point(text).bytes;
    if (bytes == 0) return false;
    text.remove_prefix(bytes);
  }
  return true;
}

/// Throws BadInput unless a patch tells in one way what came off: by a gauge at the same spots, by weight, or by a zone whose shiny
/// spots were gone.
inline void require_one_way(const Entry& entry, std::string_view where) {
  const std::string in = ", in " + std::string(where);
  if (entry.before_um.size() != entry.after_um.size()) {
    throw BadInput::of("after_um",
                       "after_um has " + std::to_string(entry.after_um.size()) +
                           " readings, before_um has " + std::to_string(entry.before_um.size()) +
                           ": both are of the same spots" + in,
                       {"before_um"});
  }
  if (entry.before_g.has_value() != entry.after_g.has_value()) {
    throw BadInput("before_g and after_g go together" + in);
  }
  const int ways = !entry.before_um.empty() + entry.before_g.has_value() + !entry.zone.empty();
  if (ways != 1) {
    throw BadInput(
        "one of these is needed with kind 'patch worked': before_um and after_um, before_g and "
        "after_g, or zone" +
        in);
  }
}

/// Throws BadInput where a member is missing that the kind needs, or there that it does not have.
inline void require_shape(const Entry& entry, std::string_view where) {
  const struct {
    std::string_view name;
    bool given;
  } members[] = {
      {"zone", !entry.zone.empty()},
      {"sheet", !entry.sheet.empty()},
      {"minutes", entry.minutes.has_value()},
      {"sheets_used", entry.sheets_used.has_value()},
      {"removal_um", entry.removal_um.has_value()},
      {"overcut", entry.overcut.has_value()},
      {"direction_deg", entry.direction_deg.has_value()},
      {"readings_um", !entry.readings_um.empty()},
      {"width_um", entry.width_um.has_value()},
      {"ra_um", entry.ra_um.has_value()},
      {"mark", entry.mark.has_value()},
      {"tool", !entry.tool.empty()},
      {"area_cm2", entry.area_cm2.has_value()},
      {"before_um", !entry.before_um.empty()},
      {"after_um", !entry.after_um.empty()},
      {"before_g", entry.before_g.has_value()},
      {"after_g", entry.after_g.has_value()},
      {"text", !entry.text.empty()},
      {"line", entry.line.has_value()},
  };
  const EntryShape shape = shape_of(entry.kind);
  const std::string kind = "kind '" + std::string(to_string(entry.kind)) + "'";
  const auto among = [](std::span<const std::string_view> names, std::string_view name) {
    return std::find(names.begin(), names.end(), name) != names.end();
  };
  for (const auto& [name, given] : members) {
    const bool needed = among(shape.needs, name);
    const bool may = needed || among(shape.may, name) || name == "text";
    if (given ? may : !needed) continue;
    throw BadInput::of(name, std::string(name) +
                                 (given ? " does not go with " : " is missing with ") + kind +
                                 ", in " + std::string(where));
  }
  if (entry.kind == EntryKind::patch_worked) require_one_way(entry, where);
  if (entry.kind == EntryKind::scratch_read &&
      entry.width_um.has_value() == entry.ra_um.has_value()) {
    throw BadInput("either width_um or ra_um is needed with " + kind + ", in " +
                   std::string(where));
  }
  if (entry.removal_um && entry.overcut) {
    throw BadInput::of(
        "overcut", "give either removal_um or overcut with " + kind + ", in " + std::string(where),
        {"removal_um"});
  }
}

}  // namespace detail

LEVIGATE_WORK void detail::of_one_kind(const Entry& entry, std::string_view where) {
  const std::string in = ", in " + std::string(where);
  const std::pair<std::string_view, std::string_view> texts[] = {
      {"job", entry.job},     {"zone", entry.zone},
      {"sheet", entry.sheet}, {"tool", entry.tool},
      {"text", entry.text},   {"mark: zone", entry.mark ? std::string_view(entry.mark->zone) : ""}};
  for (const auto& [name, text] : texts) {
    if (!is_utf8(text)) throw BadInput::of(name, std::string(name) + " is not UTF-8" + in);
  }
  if (const std::string fault = moment_fault(entry.at); !fault.empty()) {
    throw BadInput::of("at", "at is " + detail::quoted(entry.at) +
                                 ", expected a date and time of RFC 3339: " + fault + in);
  }
  require_shape(entry, where);
}

}  // namespace levigate
