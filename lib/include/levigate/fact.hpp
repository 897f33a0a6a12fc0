// What findings and reasons are made of: names and numbers, of which text/sentences.hpp makes sentences.
#pragma once

#include <algorithm>
#include <concepts>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "levigate/describe.hpp"

namespace levigate::inline v0 {

/// Something that a finding names.
struct Named {
  std::string what;
  std::string name;
  std::string label{};
  double size_um = 0;

  friend bool operator==(const Named&, const Named&) = default;
};

template <std::same_as<Named> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Named", "Something that a finding names.",
    member<&Value::what>("what", "\"sheet\", \"grade\", \"block\", \"wheel\", \"surface\", ..."),
    member<&Value::name>("name", "id of a sheet, else its name").optional(),
    member<&Value::label>("label", "of a sheet's grade").optional(),
    member<&Value::size_um>("size_um", at_least(0), "median of its grain; 0 where it has none"));

/// A number of a finding.
struct Quantity {
  std::string name;
  double value = 0;

  friend bool operator==(const Quantity&, const Quantity&) = default;
};

template <std::same_as<Quantity> Value>
inline constexpr auto described<Value> =
    describe<Value>("Quantity", "A number of a finding.",
                    member<&Value::name>("name", "with its unit as suffix, as \"depth_um\""),
                    member<&Value::value>("value", "in that unit"));

/// The number of that name; none where it is not among them.
inline std::optional<double> figure(std::span<const Quantity> numbers, std::string_view name) {
  const auto at = std::find_if(numbers.begin(), numbers.end(),
                               [&](const Quantity& one) { return one.name == name; });
  if (at == numbers.end()) return std::nullopt;
  return at->value;
}

}  // namespace levigate
