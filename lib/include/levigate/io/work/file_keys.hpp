// Keys of a file that are no members: described by a small type of their own, which a function takes into the value.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/node.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/io/work/write_described.hpp"

namespace levigate::inline v0::detail {

/// The line of a member that holds what a member of another type holds: its range, unit and meaning.
template <auto pointer, Described Other>
constexpr Member member_as(std::string_view name) {
  Member said = member<pointer>(name, "");
  for (const Member& other : described<Other>.members) {
    if (other.name != name) continue;
    said.about = other.about;
    said.low = other.low;
    said.high = other.high;
    said.unit = other.unit;
    said.example = other.example;
  }
  return said;
}

template <typename Owner, typename Keys, void (*from)(const Node&, const Keys&, Owner&)>
void take_keys(DescribedReader& reader, const Node& node, void* value, const std::string& named) {
  Keys keys;
  if (reader.beside(description_of<Keys>(), node, &keys, named)) {
    from(node, keys, as<Owner>(value));
  } else {
    reader.unmade();
  }
}

template <typename Owner, typename Keys, Keys (*to)(const Owner&)>
void put_keys(OrderedJson& json, const void* value, const Style& style) {
  const Keys keys = to(as<Owner>(value));
  add_members(json, description_of<Keys>(), &keys, style);
}

/// Keys that follow a member of Owner, and stand for others: `from` takes them into a value, whose object is its node, and `to`
/// makes them of it.
template <typename Owner, typename Keys, void (*from)(const Node&, const Keys&, Owner&),
          Keys (*to)(const Owner&)>
FileKeys file_keys(std::string_view after, std::vector<std::string_view> instead = {}) {
  return {&description_of<Owner>(), &description_of<Keys>(),      after,
          std::move(instead),       take_keys<Owner, Keys, from>, put_keys<Owner, Keys, to>};
}

/// Keys that are read only.
template <typename Owner, typename Keys, void (*from)(const Node&, const Keys&, Owner&)>
FileKeys file_keys(std::string_view after) {
  return {&description_of<Owner>(),
          &description_of<Keys>(),
          after,
          {},
          take_keys<Owner, Keys, from>,
          nullptr};
}

}  // namespace levigate::inline v0::detail
