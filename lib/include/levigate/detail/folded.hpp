// Names compared without case, spaces, hyphens and underscores: "fepa p" is "FEPA P".
#pragma once

#include <cstddef>
#include <string_view>

#include "levigate/version.hpp"

namespace levigate::inline v0::detail {

/// The first character from `at` on that counts, in small letters; -1 at the end. `at` moves behind it.
constexpr int next_that_counts(std::string_view name, std::size_t& at) noexcept {
  while (at < name.size()) {
    const char c = name[at++];
    if (c == ' ' || c == '-' || c == '_' || c == '\t') continue;
    return c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c;
  }
  return -1;
}

/// Whether two names are the same but for case, spaces, hyphens and underscores.
constexpr bool same_but_for_case(std::string_view a, std::string_view b) noexcept {
  std::size_t i = 0, j = 0;
  while (true) {
    const int one = next_that_counts(a, i), other = next_that_counts(b, j);
    if (one != other) return false;
    if (one < 0) return true;
  }
}

}  // namespace levigate::inline v0::detail
