// The values of a way back as a hand works it: sheet after sheet, with looks in between, on a patch or on the whole zone.
#pragma once

#include <concepts>
#include <optional>
#include <string>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/recover/need.hpp"

namespace levigate::inline v0 {

/// One look of a leg.
struct Look {
  double sanded_minutes = 0;
  double minutes = 0;
  double removal_um = 0;
  double gone_chance = 0;
  std::optional<double> patch_mm;

  friend bool operator==(const Look&, const Look&) = default;
};

template <std::same_as<Look> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Look", "One look of a leg.",
    member<&Value::sanded_minutes>("sanded_minutes", at_least(0),
                                   "with the sheet of the leg by then"),
    member<&Value::minutes>("minutes", at_least(0),
                            "of the leg by then, with changing, washing and looking"),
    member<&Value::removal_um>("removal_um", at_least(1e-9),
                               "that came off at the mark by then, by all legs"),
    member<&Value::gone_chance>("gone_chance", chance_range,
                                "of all such marks, the share gone by then"),
    member<&Value::patch_mm>("patch_mm", at_least(0),
                             "width of the patch by then, rim to rim; none on the whole zone"));

/// One sheet worked with looks at even depths in between. Where the mark is gone, the work is done. After the last look the next
/// leg follows.
struct Leg {
  std::string sheet;
  std::vector<std::string> then;
  double every_minutes = 0;
  std::vector<Look> looks;

  friend bool operator==(const Leg&, const Leg&) = default;
};

template <std::same_as<Leg> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Leg", "One sheet worked with looks in between.", member<&Value::sheet>("sheet", "its id"),
    member<&Value::then>("then", "sheets that follow before each look, as in the plan"),
    member<&Value::every_minutes>("every_minutes", at_least(0),
                                  "of sanding with the sheet between looks, on the mean"),
    member<&Value::looks>("looks", "in order; where the last finds the mark, the next leg follows")
        .not_empty());

}  // namespace levigate
