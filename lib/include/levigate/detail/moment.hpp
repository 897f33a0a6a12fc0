// A moment as RFC 3339 writes it: what is wrong with a text that should be one, the moment some hours later, and how a person says it.
#pragma once

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
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

/// Minutes that the clock of an offset such as +01:00 is ahead of UTC; 0 of Z.
inline std::chrono::minutes ahead_of_utc(std::string_view offset) {
  using namespace std::chrono;
  if (!has_form(offset, "+dd:dd")) return minutes(0);
  const minutes ahead =
      hours(digits_in(offset.substr(1, 2))) + minutes(digits_in(offset.substr(4, 2)));
  return offset[0] == '-' ? -ahead : ahead;
}

/// The offset of a moment as it is written.
inline std::string_view offset_in(std::string_view moment) {
  return moment.substr(std::min(moment.find_first_of("Zz+-", 19), moment.size()));
}

/// The day of a moment by its own clock.
inline std::chrono::sys_days day_in(std::string_view moment) {
  using namespace std::chrono;
  return year(digits_in(moment.substr(0, 4))) /
         month(static_cast<unsigned>(digits_in(moment.substr(5, 2)))) /
         day(static_cast<unsigned>(digits_in(moment.substr(8, 2))));
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
    ahead = ahead_of_utc(offset);
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

/// A number with at least so many digits, zeros before it.
inline std::string digits_of(int number, std::size_t least) {
  const std::string digits = std::to_string(number);
  return std::string(least - std::min(least, digits.size()), '0') + digits;
}

/// The moment some hours after another, at the same offset. Seconds count up to the next minute: it never comes early.
inline std::string moment_after(std::string_view moment, double hours_later) {
  using namespace std::chrono;
  const auto part = [&](std::size_t at, std::size_t count) {
    return digits_in(moment.substr(at, count));
  };
  constexpr double seconds_per_hour = 3600, seconds_per_minute = 60;
  const double fraction = moment.size() > 19 && moment[19] == '.' ? 1 : 0;
  const double later_s = part(17, 2) + fraction + seconds_per_hour * hours_later;
  const auto then = day_in(moment) + hours(part(11, 2)) + minutes(part(14, 2)) +
                    minutes(static_cast<long long>(std::ceil(later_s / seconds_per_minute)));
  const auto day_then = floor<days>(then);
  const year_month_day on(day_then);
  const hh_mm_ss clock(then - day_then);
  const auto two = [](auto number) { return digits_of(static_cast<int>(number), 2); };
  return digits_of(static_cast<int>(on.year()), 4) + "-" + two(static_cast<unsigned>(on.month())) +
         "-" + two(static_cast<unsigned>(on.day())) + "T" + two(clock.hours().count()) + ":" +
         two(clock.minutes().count()) + ":00" + std::string(offset_in(moment));
}

/// Seconds from one moment to another, whatever their offsets; parts of a second and leap seconds are left out.
inline double seconds_between(std::string_view from, std::string_view to) {
  using namespace std::chrono;
  const auto utc = [](std::string_view moment) {
    const auto part = [&](std::size_t at, std::size_t count) {
      return digits_in(moment.substr(at, count));
    };
    return day_in(moment) + hours(part(11, 2)) + minutes(part(14, 2)) + seconds(part(17, 2)) -
           ahead_of_utc(offset_in(moment));
  };
  return duration<double>(utc(to) - utc(from)).count();
}

/// "Thursday 26 November 2026, 14:00": a moment by its own clock.
inline std::string spoken_moment(std::string_view moment) {
  using namespace std::chrono;
  constexpr std::array<std::string_view, 7> day_names{"Sunday",   "Monday", "Tuesday", "Wednesday",
                                                      "Thursday", "Friday", "Saturday"};
  constexpr std::array<std::string_view, 12> month_names{
      "January", "February", "March",     "April",   "May",      "June",
      "July",    "August",   "September", "October", "November", "December"};
  const auto part = [&](std::size_t at, std::size_t count) {
    return digits_in(moment.substr(at, count));
  };
  const auto month_number = static_cast<unsigned>(part(5, 2));
  const weekday falls_on(day_in(moment));
  return std::string(day_names[falls_on.c_encoding()]) + " " + std::to_string(part(8, 2)) + " " +
         std::string(month_names[month_number - 1]) + " " + std::string(moment.substr(0, 4)) +
         ", " + std::string(moment.substr(11, 5));
}

}  // namespace detail

}  // namespace levigate
