// A stack in a file: its rule for bare numbers, one for all sheets or one for each maker.
#pragma once

#include <algorithm>
#include <cstddef>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/detail/names.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/node.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Key of a stack.
struct BareNumber {
  std::optional<System> bare_number;
};

}  // namespace detail

template <std::same_as<detail::BareNumber> Value>
inline constexpr auto described<Value> = describe<Value>(
    "BareNumber", "Key of a stack.",
    member<&Value::bare_number>("bare_number",
                                "the system of labels that are a bare number, or an object with "
                                "one for each maker; none: ask")
        .with_none("ask"));

namespace detail {

inline constexpr std::string_view ask_text = "ask";

inline System system_of(const Node& node, std::string_view what) {
  std::vector<std::string_view> names;
  for (const System system : all_systems) names.push_back(to_string(system));
  return all_systems[node.one_of(names, what)];
}

inline void read_bare_number(DescribedReader& reader, const Node& node, void* value,
                             const std::string&) {
  const auto rule = node.find("bare_number");
  if (!rule) return;
  Stack& stack = as<Stack>(value);
  if (rule->is_object()) {
    for (const std::string& maker : rule->unknown_keys({})) {
      reader.attempt([&] {
        const Node of_maker = rule->at(maker);
        if (maker.find_first_not_of(" \t") == std::string::npos)
          of_maker.fail("bare_number has a rule for a maker without a name");
        stack.bare_number_by_maker.push_back({maker, system_of(of_maker, "system")});
      });
    }
  } else {
    rule->require_text("text, or an object as {\"Maker B\": \"CAMI\"}");
    std::vector<std::string_view> names{ask_text};
    for (const System system : all_systems) names.push_back(to_string(system));
    const std::size_t at = rule->one_of(names, "bare_number");
    if (at > 0) stack.bare_number = all_systems[at - 1];
  }
}

inline void write_bare_number(OrderedJson& json, const void* value, const Style&) {
  const Stack& stack = as<Stack>(value);
  OrderedJson& rule = json["bare_number"];
  if (stack.bare_number_by_maker.empty()) {
    rule = stack.bare_number ? to_string(*stack.bare_number) : ask_text;
    return;
  }
  if (stack.bare_number)
    throw BadInput("a file holds one bare_number, or one for each maker, and not both",
                   "/bare_number");
  rule = OrderedJson::object();
  for (const MakerSystem& one : stack.bare_number_by_maker) rule[one.maker] = to_string(one.system);
}

inline FileKeys bare_number_keys() {
  return {&description_of<Stack>(),
          &description_of<BareNumber>(),
          "",
          {"bare_number", "bare_number_by_maker"},
          read_bare_number,
          write_bare_number};
}

/// A rule for a maker of whom there is no sheet is most likely a name that is misspelt.
inline void settle_makers(DescribedReader& reader, const Node& node, void* value) {
  const Stack& stack = as<Stack>(value);
  std::vector<std::string_view> makers;
  for (const Sheet& sheet : stack.sheets) {
    if (std::find(makers.begin(), makers.end(), sheet.maker) == makers.end() &&
        !sheet.maker.empty())
      makers.push_back(sheet.maker);
  }
  for (const MakerSystem& rule : stack.bare_number_by_maker) {
    if (std::any_of(makers.begin(), makers.end(),
                    [&](std::string_view maker) { return same_name(maker, rule.maker); }))
      continue;
    const std::string_view close_by = nearest_name(rule.maker, makers);
    reader.attempt([&] {
      node.at("bare_number")
          .fail_at(
              rule.maker,
              "bare_number has a rule for '" + shown(rule.maker) + "', and no sheet is of it" +
                  (close_by.empty() ? ""
                                    : "; the nearest is '" + shown(std::string(close_by)) + "'"));
    });
  }
}

inline FileForm stack_form() { return {.of = &description_of<Stack>(), .settle = settle_makers}; }

}  // namespace detail

}  // namespace levigate
