// Numbers and lists in messages, without a formatting library.
#pragma once

#include <charconv>
#include <cmath>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>

#include "levigate/version.hpp"

namespace levigate::inline v0::detail {

/// Fixed-point text with the given number of decimals, as "25.80".
inline std::string fixed(double value, int decimals) {
  if (!std::isfinite(value))
    return std::isnan(value) ? "nan" : value > 0 ? "infinite" : "-infinite";
  char buffer[352];
  const auto end =
      std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, decimals).ptr;
  return std::string(buffer, end);
}

/// A grain size as a person reads it: one decimal from 1 um on, two below.
inline std::string size_text(double size_um) { return fixed(size_um, size_um < 1 ? 2 : 1) + " um"; }

/// "a", "a and b", "a, b and c".
inline std::string list_text(std::span<const std::string> items, std::string_view last = " and ") {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? last : std::string_view(", ");
    text += items[i];
  }
  return text;
}

}  // namespace levigate::detail
