// Looking a profile up by name.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/names.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0::detail {

/// The message for a name that is not among the known ones: what, value, nearest, and all that are known.
inline std::string unknown_name_text(std::string_view what, std::string_view given,
                                     std::span<const std::string_view> known) {
  std::string text = std::string(what) + " '" + std::string(given.substr(0, 64)) + "' is not known";
  std::replace_if(
      text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; }, '?');
  if (const std::string_view near = nearest_name(given, known); !near.empty()) {
    text += "; the nearest is '" + std::string(near) + "'";
  }
  return text + "; known are " + list_text(std::vector<std::string>(known.begin(), known.end()));
}

/// Whether there is a row of that name.
template <typename Row, std::size_t count>
bool has_profile(const Row (&table)[count], std::string_view name) {
  for (const Row& row : table) {
    if (row.name == name) return true;
  }
  return false;
}

/// The row of that name. Throws: BadInput where there is none.
template <typename Row, std::size_t count>
const Row& profile_named(const Row (&table)[count], std::string_view name, std::string_view what) {
  std::vector<std::string_view> known;
  for (const Row& row : table) {
    if (row.name == name) return row;
    known.push_back(row.name);
  }
  throw BadInput(unknown_name_text(what, name, known));
}

/// The kind of that name. Throws: BadInput where there is none.
template <typename Kind, std::size_t count>
Kind kind_named(const std::array<Kind, count>& all, std::string_view name, std::string_view what) {
  std::vector<std::string_view> known;
  for (const Kind kind : all) {
    if (to_string(kind) == name) return kind;
    known.push_back(to_string(kind));
  }
  throw BadInput(unknown_name_text(what, name, known));
}

}  // namespace levigate::detail
