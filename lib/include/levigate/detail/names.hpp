// Finding the name a person probably meant.
#pragma once

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/version.hpp"

namespace levigate::inline v0::detail {

/// Whether two names are one: case does not matter, nor do spaces, hyphens, underscores, slashes and full stops.
constexpr bool same_name(std::string_view a, std::string_view b) noexcept {
  const auto skipped = [](char c) {
    return c == ' ' || c == '-' || c == '_' || c == '/' || c == '.';
  };
  const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; };
  std::size_t i = 0, j = 0;
  bool some = false;  // of nothing but these, a name is none
  while (true) {
    while (i < a.size() && skipped(a[i])) ++i;
    while (j < b.size() && skipped(b[j])) ++j;
    if (i == a.size() || j == b.size()) return i == a.size() && j == b.size() && some;
    if (lower(a[i++]) != lower(b[j++])) return false;
    some = true;
  }
}

/// Least number of single-letter insertions, deletions and replacements that turn a into b (Levenshtein).
inline std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t replaced = diagonal + (a[i] == b[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({replaced, row[j] + 1, diagonal + 1});
    }
  }
  return row.back();
}

/// The known name nearest to `given`, or an empty view where none is near (more than half of it differs).
inline std::string_view nearest_name(std::string_view given,
                                     std::span<const std::string_view> known) {
  if (given.size() > 64) return {};
  std::string_view best;
  std::size_t best_distance = given.size() / 2 + 1;
  for (const std::string_view name : known) {
    const std::size_t distance = edit_distance(given, name);
    if (distance < best_distance) {
      best = name;
      best_distance = distance;
    }
  }
  return best;
}

}  // namespace levigate::detail
