// A factor that journals taught, with its band.
#pragma once

#include <cstddef>
#include <string_view>

#include "levigate/describe.hpp"

namespace levigate::inline v0 {

/// A factor on what is computed. It is as likely below its median as above, and nine times in ten between low and high.
struct LearnedFactor {
  double factor = 1;
  double low = 1;
  double high = 1;
  std::size_t observations = 0;

  friend bool operator==(const LearnedFactor&, const LearnedFactor&) = default;
};

namespace detail {

/// Throws: BadInput where the factor, by its name in the file, is not between low and high.
void factor_between(const LearnedFactor& learned, std::string_view where);
void pace_between(const LearnedFactor& learned, std::string_view where);

}  // namespace detail

template <std::same_as<LearnedFactor> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "LearnedFactor", "A learned factor on what is computed.",
        member<&Value::factor>("factor", Within{0.01, 100},
                               "over what is computed, median; between low and high"),
        member<&Value::low>("low", Within{1e-9, 1e9}, "5 % are below it"),
        member<&Value::high>("high", Within{1e-9, 1e9}, "5 % are above it"),
        member<&Value::observations>("observations", Within{0, 1e9}, "behind it").optional())
        .rule(rule_by<&detail::factor_between>);

/// The same of a person, as a shop's file names it.
template <std::same_as<LearnedFactor> Value>
inline constexpr auto described_pace =
    describe<Value>(
        "Person", "The person's pace.",
        member<&Value::factor>(
            "duty_factor", Within{0.01, 100},
            "work in a minute over what is computed, median; between low and high"),
        member<&Value::low>("low", Within{1e-9, 1e9}, "5 % are below it"),
        member<&Value::high>("high", Within{1e-9, 1e9}, "5 % are above it"),
        member<&Value::observations>("observations", Within{0, 1e9}, "steps behind it").optional())
        .rule(rule_by<&detail::pace_between>);

}  // namespace levigate
