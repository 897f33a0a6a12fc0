// When something happened, as RFC 3339 writes it: whether a text is such a moment, and what is wrong with it.
#pragma once

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <string>
#include <string_view>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Whether a text has the form of another, where 'd' stands for any digit, '+' for + and -, a letter for itself,
/// large or small.
inline bool has_form(std::string_view text, std::string_view form) {
  return std::equal(text.begin(), text.end(), form.begin(), form.end(), [](char c, char wanted) {
    if (wanted == 'd') return c >= '0' && c <= '9';
    if (wanted == '+') return c == '+' || c == '-';
    return c == wanted || (wanted >= 'A' && wanted <= 'Z' && c == wanted + ('a' - 'A'));
  });
}

/// Digits as a number.
inline int digits_in(std::string_view digits) {
  int number = 0;
  for (const char c : digits) number = 10 * number + (c - '0');
  return number;
}

/// Why a text is not a date and time of RFC 3339, or nothing where it is one. The calendar is that of ISO 8601, back to
/// the year 0; a 60th second is one where a leap second may stand: at the end of a month in UTC.
inline std::string moment_fault(std::string_view text) {
  constexpr std::string_view form = "dddd-dd-ddTdd:dd:dd";
  if (!has_form(text.substr(0, form.size()), form))
    return "it does not start like " + std::string("2026-03-01T09:30:00");
  std::string_view offset = text.substr(form.size());
  if (offset.starts_with('.')) {
    const std::size_t end = std::min(offset.find_first_not_of("0123456789", 1), offset.size());
    if (end == 1) return "no digit follows the point";
    offset.remove_prefix(end);
  }
  const bool utc = has_form(offset, "Z");
  if (!utc && !has_form(offset, "+dd:dd"))
    return "it does not end with Z or an offset such as +01:00";

  using namespace std::chrono;
  const auto part = [&](std::size_t at, std::size_t count) {
    return digits_in(text.substr(at, count));
  };
  const auto two = [&](std::size_t at) { return part(at, 2); };
  const year_month_day date{year(part(0, 4)), month(static_cast<unsigned>(two(5))),
                            day(static_cast<unsigned>(two(8)))};
  if (!date.ok()) return "there is no such day";
  if (two(11) > 23 || two(14) > 59 || two(17) > 60) return "there is no such time of day";
  minutes ahead{0};
  if (!utc) {
    const int h = digits_in(offset.substr(1, 2)), min = digits_in(offset.substr(4, 2));
    if (h > 23 || min > 59) return "there is no such offset";
    ahead = (offset[0] == '-' ? -1 : 1) * (hours(h) + minutes(min));
  }
  if (two(17) == 60) {
    const auto next = sys_days(date) + hours(two(11)) + minutes(two(14) + 1) - ahead;
    const auto midnight = floor<days>(next);
    if (next != midnight || year_month_day(midnight).day() != day(1)) {
      return "a second 60 occurs only at the end of a month in UTC";
    }
  }
  return {};
}

}  // namespace detail

}  // namespace levigate
