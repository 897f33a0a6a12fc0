// Sentences of one paragraph, some of which may be empty.
#pragma once

#include <string>
#include <vector>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

namespace detail {

/// One space between them.
inline std::string flowed(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) {
    if (!line.empty()) text += (text.empty() ? "" : " ") + line;
  }
  return text;
}

}  // namespace detail

}  // namespace levigate
