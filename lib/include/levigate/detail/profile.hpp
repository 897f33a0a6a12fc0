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
                                     std::span<const std::string_view> known,
                                     std::string_view close_by) {
  std::string text = std::string(what) + " '" + std::string(given.substr(0, 64)) + "' is not known";
  std::replace_if(
      text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; }, '?');
  if (!close_by.empty()) text += "; the nearest is '" + std::string(close_by) + "'";
  return text + "; known are " + list_text(std::vector<std::string>(known.begin(), known.end()));
}

/// The same, with the nearest of the known names.
inline std::string unknown_name_text(std::string_view what, std::string_view given,
                                     std::span<const std::string_view> known) {
  return unknown_name_text(what, given, known, nearest_name(given, known));
}

/// Whether a row bears that name, or people call it so. Case and spaces do not matter: see same_name().
template <typename Row>
bool is_called(const Row& row, std::string_view name) {
  if (same_name(row.name, name)) return true;
  if constexpr (requires { row.also; }) {
    for (const std::string_view other : row.also) {
      if (same_name(other, name)) return true;
    }
  }
  return false;
}

/// Whether there is a row of just that name.
template <typename Row, std::size_t count>
bool has_profile(const Row (&table)[count], std::string_view name) {
  for (const Row& row : table) {
    if (row.name == name) return true;
  }
  return false;
}

/// The row of that name, or of another name that people call it by. Throws: BadInput where there is none.
template <typename Rows>
const auto& profile_named(const Rows& table, std::string_view name, std::string_view what) {
  for (const auto& row : table) {
    if (is_called(row, name)) return row;
  }
  std::vector<std::string_view> known, all;
  for (const auto& row : table) {
    known.push_back(row.name);
    all.push_back(row.name);
    if constexpr (requires { row.also; }) all.insert(all.end(), row.also.begin(), row.also.end());
  }
  std::string_view close_by = nearest_name(name, all);
  for (const auto& row : table) {
    if (is_called(row, close_by)) close_by = row.name;
  }
  throw BadInput(unknown_name_text(what, name, known, close_by));
}

/// The kind of that name. Throws: BadInput where there is none.
template <typename Kind, std::size_t count>
Kind kind_named(const std::array<Kind, count>& all, std::string_view name, std::string_view what) {
  std::vector<std::string_view> known;
  for (const Kind kind : all) {
    if (same_name(to_string(kind), name)) return kind;
    known.push_back(to_string(kind));
  }
  throw BadInput(unknown_name_text(what, name, known));
}

}  // namespace levigate::detail
