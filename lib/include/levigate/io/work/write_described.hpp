// Writing a value as JSON by its description.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "levigate/describe.hpp"
#include "levigate/faults.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/said.hpp"
#include "levigate/told_unit.hpp"

namespace levigate::inline v0::detail {

/// A number, or what stands for it where it is infinite.
inline OrderedJson number_json(const Member* member, double number) {
  if (std::isfinite(number) || !member || member->infinite.empty()) return number;
  return member->infinite == null_text ? OrderedJson(nullptr) : OrderedJson(member->infinite);
}

/// Whether a file says by a text of its own that there is none.
inline bool said_as_text(std::string_view none) { return !none.empty() && none != null_text; }

/// One value of a kind. `member` is the one that holds it, in a list too; null: none does.
inline OrderedJson json_of(const Kind& kind, const Member* member, const void* at,
                           const Style& style) {
  switch (kind.form) {
    case Form::number: return number_json(member, kind.number(at));
    case Form::whole:
      return kind.natural ? OrderedJson(static_cast<std::uint64_t>(kind.whole(at)))
                          : OrderedJson(kind.whole(at));
    case Form::truth: return kind.whole(at) != 0;
    case Form::text:
      if (style.full && member && member->may && kind.text(at).empty()) return nullptr;
      return kind.text(at);
    case Form::choice: return kind.choice(static_cast<std::size_t>(kind.whole(at)));
    case Form::value: return json_of(kind.described(), at, style);
    case Form::maybe:
      if (kind.size(at) > 0) return json_of(*kind.of, member, kind.item(at, 0), style);
      return member && said_as_text(member->none) ? OrderedJson(member->none)
                                                  : OrderedJson(nullptr);
    case Form::either: return json_of(*kind.held(at), member, kind.item(at, 0), style);
    case Form::list: break;
  }
  OrderedJson json = OrderedJson::array();
  for (std::size_t i = 0; i < kind.size(at); ++i)
    json.push_back(json_of(*kind.of, nullptr, kind.item(at, i), style));
  return json;
}

/// Whether a file of what one gives leaves this member out, and a result where it is rare.
inline bool left_out(const Description& description, const Member& member, const void* at) {
  if (member.kind->form == Form::maybe) return member.kind->size(at) == 0 && member.none.empty();
  return member.lean && description.made && same(*member.kind, at, member.in(description.made()));
}

/// Adds one member of a value, where a file has it.
inline void add_member(OrderedJson& json, const Description& description, const Member& member,
                       const void* value, const Style& style, const FileForm* form) {
  const void* at = member.in(value);
  if (form && form->hides && form->hides(value, member.name)) return;
  if ((!style.full || member.rare) && left_out(description, member, at)) return;
  if (member.spread) {
    const bool either = member.kind->form == Form::either;
    const Kind& kind = either ? *member.kind->held(at) : *member.kind;
    add_members(json, kind.described(), either ? member.kind->item(at, 0) : at, style);
  } else {
    const auto asks = style.forms().asks;
    const bool meant = asks && asks(description, member, at);  // the reader is not to ask
    json[meant ? name_in_full(member.name) : std::string(member.name)] =
        json_of(*member.kind, &member, at, style);
  }
}

inline void add_members(OrderedJson& json, const Description& description, const void* value,
                        const Style& style) {
  const FileForms& forms = style.forms();
  const FileForm* form = forms.of(description);
  const auto add_after = [&](std::string_view member) {
    for (const FileKeys* keys : forms.after(description, member)) {
      if (keys->write) keys->write(json, value, style);
    }
  };
  add_after("");
  for (const Member& member : description.members) {
    if (!forms.holds(description, member)) continue;
    add_member(json, description, member, value, style, form);
    add_after(member.name);
    for (const SaidKey& one : said_keys()) {
      if (one.of == &description && one.after == member.name)
        json[std::string(one.key)] = one.say(value);
    }
  }
}

/// The values of all members, in their order.
inline OrderedJson pair_json(const Description& description, const void* value,
                             const Style& style) {
  OrderedJson json = OrderedJson::array();
  for (const Member& member : description.members)
    json.push_back(json_of(*member.kind, &member, member.in(value), style));
  return json;
}

inline OrderedJson json_of(const Description& description, const void* value, const Style& style) {
  if (const FileForm* form = style.forms().of(description)) {
    if (!form->pair.empty()) return pair_json(description, value, style);
    const std::string_view name = form->name_of ? form->name_of(value) : std::string_view();
    if (!name.empty()) return name;
  }
  OrderedJson json = OrderedJson::object();
  add_members(json, description, value, style);
  return json;
}

inline std::string json_text(const OrderedJson& json) {
  return json.dump(2, ' ', false, OrderedJson::error_handler_t::replace) + "\n";
}

inline OrderedJson file_json(std::string_view format, const Description& description,
                             const void* value, const Style& style) {
  OrderedJson json{{"format", format}};
  add_members(json, description, value, style);
  return json;
}

}  // namespace levigate::inline v0::detail
