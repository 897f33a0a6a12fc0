// A sequence of sheets with its sums, and what a plan can be best in.
#pragma once

#include <array>
#include <compare>
#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"

namespace levigate::inline v0 {

/// What a plan can be best in.
enum class Objective {
  minutes,  ///< all zones, with the changes and with what going back for marks is expected to take
  film,     ///< share of its budget that the worst zone has used
  steps,    ///< number of sheets
  cost,     ///< price of the sheets used up
};

constexpr std::string_view to_string(Objective objective) noexcept {
  switch (objective) {
    case Objective::minutes: return "minutes";
    case Objective::film: return "film";
    case Objective::steps: return "steps";
    case Objective::cost: return "cost";
  }
  return "";
}

template <>
inline constexpr auto choices<Objective> = std::to_array({Objective::minutes, Objective::film,
                                                          Objective::steps, Objective::cost});

/// Depth over budget of one zone, as an exact fraction. Both are positive or zero, the budget above zero.
struct FilmShare {
  std::int64_t depth_pm = 0;
  std::int64_t budget_pm = 1;

  /// Exact for all values: whole parts first, then the remainders' reciprocals the other way round (Euclid).
  friend constexpr std::strong_ordering operator<=>(FilmShare a, FilmShare b) noexcept {
    while (true) {
      const auto by_whole = a.depth_pm / a.budget_pm <=> b.depth_pm / b.budget_pm;
      if (by_whole != 0) return by_whole;
      const std::int64_t rest_a = a.depth_pm % a.budget_pm;
      const std::int64_t rest_b = b.depth_pm % b.budget_pm;
      if (rest_a == 0 || rest_b == 0) return rest_a <=> rest_b;
      const FilmShare reciprocal_a{a.budget_pm, rest_a};
      a = {b.budget_pm, rest_b};
      b = reciprocal_a;
    }
  }
  friend constexpr bool operator==(FilmShare a, FilmShare b) noexcept { return (a <=> b) == 0; }
};

template <std::same_as<FilmShare> Value>
inline constexpr auto described<Value> =
    describe<Value>("FilmShare", "Depth over budget of one zone, as an exact fraction.",
                    member<&Value::depth_pm>("depth_pm", at_least(0), "depth"),
                    member<&Value::budget_pm>("budget_pm", at_least(1), "its budget"));

/// A complete sequence with its sums.
struct Sequence {
  std::vector<std::size_t> sheets{};
  std::int64_t milliseconds = 0;
  std::int64_t cost = 0;
  std::vector<std::int64_t> depth_pm{};
  FilmShare film{};
  std::vector<double> overcuts{};
  std::int64_t back_milliseconds = 0;
  std::int64_t fragile = 0;

  std::size_t steps() const noexcept { return sheets.size(); }
  std::int64_t expected_milliseconds() const noexcept { return milliseconds + back_milliseconds; }

  friend bool operator==(const Sequence&, const Sequence&) = default;
};

template <std::same_as<Sequence> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Sequence", "The whole numbers that the search decides by.",
    member<&Value::sheets>("sheets", "their places in the stack, from 0, in the order of the work"),
    member<&Value::milliseconds>("milliseconds", at_least(0), "all of it as planned").in_unit("ms"),
    member<&Value::cost>("cost", at_least(0), "in hundredths of a cent"),
    member<&Value::depth_pm>("depth_pm", at_least(0),
                             "of each zone: all removal and the last scratch"),
    member<&Value::film>("film", "of the worst zone; without a budget, of 1 mm"),
    member<&Value::overcuts>("overcuts", at_least(1),
                             "of each step: removed over the scratch depth before it"),
    member<&Value::back_milliseconds>("back_milliseconds", at_least(0),
                                      "that going back for marks is expected to take"),
    member<&Value::fragile>("fragile", at_least(0),
                            "steps that break max_ratio at an end of the band of a size"));

}  // namespace levigate
