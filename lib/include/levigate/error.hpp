// Errors: one hierarchy with stable codes. A message names the quantity, its value and unit, the
// allowed range and the place.
#pragma once

#include <charconv>
#include <cmath>
#include <stdexcept>
#include <string>
#include <string_view>

namespace levigate::inline v0 {

/// Stable numbers: they do not change between versions, so that callers may branch on them.
enum class ErrorCode {
  unknown_grade = 101,
  ambiguous_label = 102,
  out_of_range = 201,
  bad_input = 301,
  no_plan = 401,
};

/// Root of everything that the library throws. It is a std::invalid_argument (ValueError in
/// Python): an error always means that an argument or a file cannot be used as it stands.
class Error : public std::invalid_argument {
 public:
  Error(ErrorCode code, const std::string& message) : std::invalid_argument(message), code_(code) {}

  ErrorCode code() const noexcept { return code_; }

 private:
  ErrorCode code_;
};

/// A label that no system held here has a grade for.
class UnknownGrade : public Error {
 public:
  explicit UnknownGrade(const std::string& message) : Error(ErrorCode::unknown_grade, message) {}
};

/// A label that more than one system has a grade for, where one answer was asked.
class AmbiguousLabel : public Error {
 public:
  explicit AmbiguousLabel(const std::string& message)
      : Error(ErrorCode::ambiguous_label, message) {}
};

/// A number outside the domain of a formula.
class OutOfRange : public Error {
 public:
  explicit OutOfRange(const std::string& message) : Error(ErrorCode::out_of_range, message) {}
};

/// Input that does not have the shape or the sense that was asked for. From a file, `pointer` is
/// the JSON pointer of the offending value and `line` its line, counted from 1 (0: not from a
/// file).
class BadInput : public Error {
 public:
  explicit BadInput(const std::string& message, std::string pointer = {}, int line = 0)
      : Error(ErrorCode::bad_input, message), pointer_(std::move(pointer)), line_(line) {}

  const std::string& pointer() const noexcept { return pointer_; }
  int line() const noexcept { return line_; }

 private:
  std::string pointer_;
  int line_;
};

/// Only where the caller asked for a plan that must exist; a search that finds nothing returns its
/// reason.
class NoPlan : public Error {
 public:
  explicit NoPlan(const std::string& message) : Error(ErrorCode::no_plan, message) {}
};

namespace detail {

/// Shortest decimal text that reads back as the same double.
inline std::string number_text(double value) {
  char buffer[32];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value).ptr;
  return std::string(buffer, end);
}

inline std::string unit_text(std::string_view unit) {
  return unit.empty() ? std::string() : " " + std::string(unit);
}

/// Throws OutOfRange unless low <= value <= high. NaN is outside every range.
inline void require_range(double value, double low, double high, std::string_view quantity,
                          std::string_view unit, std::string_view where) {
  if (value >= low && value <= high) return;
  throw OutOfRange(std::string(quantity) + " = " + number_text(value) + unit_text(unit) +
                   " is outside " + number_text(low) + " to " + number_text(high) +
                   unit_text(unit) + ", in " + std::string(where));
}

template <typename... Doubles>
bool any_nan(Doubles... values) {
  return (std::isnan(values) || ...);
}

}  // namespace detail

}  // namespace levigate
