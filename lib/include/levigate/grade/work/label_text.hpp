// The characters of a label: one plain spelling for reading it, and a safe one for messages.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "levigate/error.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A character of UTF-8 text and how many bytes it takes; no bytes where the text is not UTF-8.
struct CodePoint {
  char32_t code;
  std::size_t bytes;
};

inline CodePoint first_code_point(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned lead = byte(0);
  if (lead < 0x80) return {lead, 1};
  const std::size_t bytes = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < bytes) return {0, 0};
  char32_t code = lead & (0x7Fu >> bytes);
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(i) & 0xC0u) != 0x80u) return {0, 0};
    code = (code << 6) | (byte(i) & 0x3Fu);
  }
  const bool overlong = (bytes == 3 && code < 0x800) || (bytes == 4 && code < 0x10000);
  const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
  if (overlong || surrogate || code > 0x10FFFF) return {0, 0};
  return {code, bytes};
}

/// The text in double quotes for a message: shortened to about 40 bytes, with bytes that are not
/// printable UTF-8 written as \xNN.
inline std::string quoted(std::string_view text) {
  constexpr std::size_t longest = 40;
  constexpr std::string_view hex = "0123456789abcdef";
  std::string result = "\"";
  std::size_t at = 0;
  while (at < text.size() && at < longest) {
    const CodePoint point = first_code_point(text.substr(at));
    if (point.bytes > 0 && point.code >= 0x20 && (point.code < 0x7F || point.code > 0x9F)) {
      result += text.substr(at, point.bytes);
      at += point.bytes;
    } else {
      const auto byte = static_cast<unsigned char>(text[at++]);
      result += "\\x";
      result += hex[byte >> 4];
      result += hex[byte & 15];
    }
  }
  if (at < text.size()) result += "... (" + std::to_string(text.size()) + " bytes)";
  return result + '"';
}

/// Stand for characters outside ASCII in a folded label.
inline constexpr char folded_ban = '\x01';    // the Japanese counter for grits, U+756A
inline constexpr char folded_other = '\x02';  // anything that no label form uses

/// What a character of a label counts as: lower case, half width, one kind of space.
/// Empty for a control character.
inline std::string folded(char32_t code) {
  if (code >= 0xFF01 && code <= 0xFF5E) code -= 0xFEE0;  // full-width forms of ASCII
  if (code >= 'A' && code <= 'Z') code += 'a' - 'A';
  if (code == '\t' || code == '\n' || code == '\r') return " ";
  if (code < 0x20 || (code >= 0x7F && code < 0xA0)) return "";
  if (code < 0x7F) return std::string(1, static_cast<char>(code));
  switch (code) {
    case 0x00A0:  // no-break space
    case 0x202F:  // narrow no-break space
    case 0x3000:  // full-width space
    case 0xFEFF:  // byte-order mark
      return " ";
    case 0x00B5:  // micro sign
    case 0x03BC:  // Greek small mu
      return "u";
    case 0x339B: return "um";   // square form of the unit
    case 0x00BD: return "1/2";  // one half
    case 0x756A: return std::string(1, folded_ban);
    default: break;
  }
  const bool typographic_space = code >= 0x2000 && code <= 0x200B;
  return std::string(1, typographic_space ? ' ' : folded_other);
}

/// A label in one plain spelling. Throws BadInput where the text is empty, not UTF-8, or holds a
/// control character.
inline std::string folded_label(std::string_view text) {
  std::string result;
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint point = first_code_point(text.substr(at));
    const std::string plain = point.bytes > 0 ? folded(point.code) : "";
    if (plain.empty()) {
      throw BadInput("label " + quoted(text) + " holds " +
                     (point.bytes > 0 ? "a control character" : "a byte that is not UTF-8") +
                     " at byte " + std::to_string(at));
    }
    result += plain;
    at += point.bytes;
  }
  if (result.find_first_not_of(' ') == std::string::npos) throw BadInput("label is empty");
  return result;
}

}  // namespace detail

}  // namespace levigate
