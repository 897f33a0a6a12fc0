// Text as it may stand in HTML and SVG.
#pragma once

#include <string>
#include <string_view>

#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Clean text with what markup would take for its own spelled out. It may stand between tags and in quoted attributes.
inline std::string escaped(std::string_view text) {
  std::string result;
  for (const char c : clean(text)) {
    switch (c) {
      case '&': result += "&amp;"; break;
      case '<': result += "&lt;"; break;
      case '>': result += "&gt;"; break;
      case '"': result += "&quot;"; break;
      case '\'': result += "&#39;"; break;
      default: result += c;
    }
  }
  return result;
}

}  // namespace detail

}  // namespace levigate
