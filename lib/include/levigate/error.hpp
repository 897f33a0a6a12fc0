// Errors: one hierarchy with stable codes.
// A message names the quantity, its value and unit, the allowed range and the place, and each of these is a member too.
#pragma once

#include <charconv>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/version.hpp"

#if !defined(__cpp_exceptions) && !defined(_CPPUNWIND)
#error "levigate throws its errors: build with exceptions, without -fno-exceptions"
#endif

namespace levigate::inline v0 {

/// Stable numbers: they do not change between versions, so that callers may branch on them.
enum class ErrorCode {
  unknown_grade = 101,
  ambiguous_label = 102,
  out_of_range = 201,
  bad_input = 301,
  no_plan = 401,
};

/// What one error says. What does not apply is empty.
struct Fault {
  ErrorCode code = ErrorCode::bad_input;
  std::string message;   ///< all of it in words
  std::string quantity;  ///< what is wrong, by its name, as "area_cm2"
  std::optional<double> value;
  std::string unit;                        ///< of value, low and high
  std::optional<double> low, high;         ///< allowed range
  std::string pointer;                     ///< JSON pointer of the value in its file
  int line = 0;                            ///< of the value in its file, from 1; 0: not from a file
  std::vector<std::string> contradicts{};  ///< what it does not go with, by name, as "max_ratio"
  std::string example{};  ///< of what a file may hold there, as "\"area_cm2\": 540"

  friend bool operator==(const Fault&, const Fault&) = default;
};

/// Root of everything that the library throws. It is a std::invalid_argument (ValueError in
/// Python): an error always means that an argument or a file cannot be used as it stands.
class Error : public std::invalid_argument {
 public:
  explicit Error(Fault fault)
      : std::invalid_argument(fault.message), code_(fault.code), faults_(1, std::move(fault)) {}

  ErrorCode code() const noexcept { return code_; }
  const std::string& quantity() const noexcept { return fault().quantity; }
  std::optional<double> value() const noexcept { return fault().value; }
  const std::string& unit() const noexcept { return fault().unit; }
  std::optional<double> low() const noexcept { return fault().low; }
  std::optional<double> high() const noexcept { return fault().high; }
  const std::string& pointer() const noexcept { return fault().pointer; }
  int line() const noexcept { return fault().line; }

  /// The first of all faults, which the functions above speak of.
  const Fault& fault() const noexcept { return faults_.front(); }
  /// All of them: a file is read to its end, and each of its faults stands here.
  const std::vector<Fault>& faults() const noexcept { return faults_; }

 protected:
  /// Of several faults; `whole` is the message of all.
  Error(ErrorCode code, const std::string& whole, std::vector<Fault>&& faults)
      : std::invalid_argument(whole), code_(code), faults_(std::move(faults)) {}

 private:
  ErrorCode code_;
  std::vector<Fault> faults_;
};

namespace detail {

inline Fault coded(ErrorCode code, Fault fault) {
  fault.code = code;
  return fault;
}

inline Fault told(std::string message) {
  Fault fault;
  fault.message = std::move(message);
  return fault;
}

}  // namespace detail

/// A label that no system held here has a grade for.
class UnknownGrade : public Error {
 public:
  explicit UnknownGrade(Fault fault)
      : Error(detail::coded(ErrorCode::unknown_grade, std::move(fault))) {}
  explicit UnknownGrade(std::string message) : UnknownGrade(detail::told(std::move(message))) {}
};

/// A label that more than one system has a grade for, where one answer was asked.
class AmbiguousLabel : public Error {
 public:
  explicit AmbiguousLabel(Fault fault)
      : Error(detail::coded(ErrorCode::ambiguous_label, std::move(fault))) {}
  explicit AmbiguousLabel(std::string message) : AmbiguousLabel(detail::told(std::move(message))) {}
};

/// A number outside the domain of a formula.
class OutOfRange : public Error {
 public:
  explicit OutOfRange(Fault fault)
      : Error(detail::coded(ErrorCode::out_of_range, std::move(fault))) {}
  explicit OutOfRange(std::string message) : OutOfRange(detail::told(std::move(message))) {}
};

/// Input that does not have the shape or the sense that was asked for. Where a file has several
/// faults, of whatever kind, it is this, and faults() holds them all.
class BadInput : public Error {
 public:
  explicit BadInput(Fault fault) : Error(detail::coded(ErrorCode::bad_input, std::move(fault))) {}
  explicit BadInput(std::string message, std::string pointer = {}, int line = 0)
      : BadInput(placed_at(detail::told(std::move(message)), std::move(pointer), line)) {}
  /// Of a quantity by its name, and those that it contradicts.
  static BadInput of(std::string_view quantity, std::string message,
                     std::vector<std::string> contradicts = {}) {
    Fault fault = detail::told(std::move(message));
    fault.quantity = quantity;
    fault.contradicts = std::move(contradicts);
    return BadInput(std::move(fault));
  }
  /// Of at least two faults.
  explicit BadInput(std::vector<Fault> faults)
      : Error(ErrorCode::bad_input, message_of(faults), std::move(faults)) {}

 private:
  static Fault placed_at(Fault fault, std::string pointer, int line) {
    fault.pointer = std::move(pointer);
    fault.line = line;
    return fault;
  }
  static std::string message_of(const std::vector<Fault>& faults) {
    std::string whole;
    for (const Fault& fault : faults) whole += (whole.empty() ? "" : "\n") + fault.message;
    return whole;
  }
};

/// Only where the caller asked for a plan that must exist; a search that finds nothing returns its
/// reason.
class NoPlan : public Error {
 public:
  explicit NoPlan(std::string message)
      : Error(detail::coded(ErrorCode::no_plan, detail::told(std::move(message)))) {}
};

namespace detail {

/// Shortest decimal text that reads back as the same double; with an exponent only where a person would lose count of the digits.
inline std::string number_text(double value) {
  char buffer[48];
  const double size = std::abs(value);
  const bool plain = size >= 1e-6 && size < 1e9;
  const auto end =
      plain ? std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed).ptr
            : std::to_chars(buffer, buffer + sizeof buffer, value).ptr;
  return std::string(buffer, end);
}

inline std::string unit_text(std::string_view unit) {
  return unit.empty() ? std::string() : " " + std::string(unit);
}

/// Throws OutOfRange unless low <= value <= high. NaN is outside every range.
inline void require_range(double value, double low, double high, std::string_view quantity,
                          std::string_view unit, std::string_view where) {
  if (value >= low && value <= high) return;
  Fault fault = told(std::string(quantity) + " = " + number_text(value) + unit_text(unit) +
                     " is outside " + number_text(low) + " to " + number_text(high) +
                     unit_text(unit) + ", in " + std::string(where));
  fault.quantity = quantity.substr(0, quantity.find(' '));  // "rpm (up to ...)" is rpm
  fault.value = value;
  fault.unit = unit;
  fault.low = low;
  fault.high = high;
  throw OutOfRange(std::move(fault));
}

template <typename... Doubles>
bool any_nan(Doubles... values) {
  return (std::isnan(values) || ...);
}

}  // namespace detail

}  // namespace levigate
