// Plain text of a fixed width: paragraphs and tables for a screen or a sheet of paper at the bench.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/grade/work/label_text.hpp"
#include "levigate/text/columns.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Text of the user's as it may stand on a card: one line, without control characters.
inline std::string clean(std::string_view text) {
  std::string result;
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint point = first_code_point(text.substr(at));
    const bool printable =
        point.bytes > 0 && point.code >= 0x20 && (point.code < 0x7F || point.code > 0x9F);
    result += printable ? text.substr(at, point.bytes) : std::string_view("?");
    at += std::max<std::size_t>(1, point.bytes);
  }
  return result;
}

/// Columns of clean text, one for each character.
inline std::size_t columns(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  }));
}

/// The first characters of clean text.
inline std::string_view first_columns(std::string_view text, std::size_t count) {
  std::size_t at = 0;
  for (; at < text.size() && count > 0; --count) at += first_code_point(text.substr(at)).bytes;
  return text.substr(0, at);
}

/// Clean text in at most `count` columns, its end replaced by ".." where it is longer.
inline std::string shortened(std::string_view text, std::size_t count) {
  const std::string whole = clean(text);
  return columns(whole) <= count ? whole : std::string(first_columns(whole, count - 2)) + "..";
}

/// Where the first word of a text ends. A number, or a blank to fill in, keeps its unit: "3 h 21 min", "86 %", "______ min".
inline std::size_t word_end(std::string_view text) {
  constexpr std::array<std::string_view, 11> units{"h",   "min", "s",  "um", "mil", "%",
                                                   "cm2", "in2", "mm", "GU", "rpm"};
  std::size_t end = std::min(text.size(), text.find(' '));
  while (end > 0 && end < text.size()) {
    const char last = text[end - 1];
    if ((last < '0' || last > '9') && last != '_') break;
    const std::string_view next = text.substr(end + 1, text.find(' ', end + 1) - end - 1);
    const std::string_view unit = next.substr(0, next.find_last_not_of(".,;:)") + 1);
    if (std::find(units.begin(), units.end(), unit) == units.end()) break;
    end += 1 + next.size();
    const bool minutes_follow =
        next == "h" && end + 1 < text.size() && text[end + 1] >= '0' && text[end + 1] <= '9';
    if (minutes_follow) end = std::min(text.size(), text.find(' ', end + 1));
  }
  return end;
}

/// Text broken into lines of at most `width` columns, between words where it can be.
inline std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
  std::vector<std::string> lines(1);
  const std::string whole = clean(text);
  for (std::string_view rest = whole; !rest.empty();) {
    std::string_view word = rest.substr(0, word_end(rest));
    rest.remove_prefix(std::min(rest.size(), word.size() + 1));
    while (!word.empty()) {
      const std::size_t used = columns(lines.back());
      if (used > 0 && used + 1 + columns(word) > width) {
        lines.emplace_back();
      } else {
        const std::string_view part = first_columns(word, width);
        if (used > 0) lines.back() += ' ';
        lines.back() += part;
        word.remove_prefix(part.size());
      }
    }
  }
  return lines;
}

inline std::string blanks(std::size_t count) { return std::string(count, ' '); }

/// Minutes as spoken: "2 h 40 min".
inline std::string duration_text(double minutes) {
  const long long whole = std::llround(minutes);
  if (whole == 0) return minutes > 0 ? "under 1 min" : "0 min";
  if (whole < 60) return fmt::format("{} min", whole);
  return fmt::format("{} h {:02} min", whole / 60, whole % 60);
}

/// A small chance as spoken.
inline std::string chance_text(double chance) {
  return chance < 1e-4 ? "below 0.01 %" : fmt::format("{:.2f} %", 100.0 * chance);
}

/// A page that grows from top to bottom.
class Page {
 public:
  struct Column {
    std::string_view title;
    bool right = false;  ///< numbers stand to the right
  };

  void blank() { text_ += '\n'; }
  void rule(char mark) {
    text_.append(card_columns, mark);
    text_ += '\n';
  }

  /// A paragraph. Its first line starts with `lead`, the others are indented as deep.
  void say(std::string_view lead, std::string_view text) {
    std::string start(lead);
    const std::size_t room = card_columns - std::min(card_columns - 1, columns(lead));
    for (const std::string& line : wrapped(text, room)) {
      text_ += start + line + '\n';
      start = blanks(columns(lead));
    }
  }

  /// Lines as they are, such as those of a command.
  void lines(std::string_view lead, const std::vector<std::string>& given) {
    for (const std::string& line : given) text_ += std::string(lead) + line + '\n';
  }

  void title(std::string_view text) {
    blank();
    say("", text);
  }

  /// A table. The last column takes what is left of the width, and wraps.
  void table(const std::vector<Column>& titles, const std::vector<std::vector<std::string>>& rows) {
    std::vector<std::string> header;
    std::vector<std::size_t> widths;
    for (std::size_t i = 0; i < titles.size(); ++i) {
      header.emplace_back(titles[i].title);
      widths.push_back(columns(header[i]));
      for (const auto& row : rows) widths[i] = std::max(widths[i], columns(row[i]));
    }
    table_row(titles, widths, header);
    for (const auto& row : rows) table_row(titles, widths, row);
  }

  std::string text() && { return std::move(text_); }

 private:
  void table_row(const std::vector<Column>& titles, const std::vector<std::size_t>& widths,
                 const std::vector<std::string>& cells) {
    std::string lead = "  ";
    for (std::size_t i = 0; i + 1 < cells.size(); ++i) {
      const std::string gap = blanks(widths[i] - columns(cells[i]));
      lead += (titles[i].right ? gap + cells[i] : cells[i] + gap) + "  ";
    }
    const std::size_t spare = widths.back() - std::min(widths.back(), columns(cells.back()));
    const std::size_t used = columns(lead) + columns(cells.back());
    const std::size_t room = card_columns - std::min<std::size_t>(card_columns, used);
    if (titles.back().right) lead += blanks(std::min(spare, room));
    say(lead, cells.back());
  }

  std::string text_;
};

}  // namespace detail

}  // namespace levigate
