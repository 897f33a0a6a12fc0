// The unit that a name tells by its end: members, JSON, Python and messages go by it.
#pragma once

#include <stdexcept>
#include <string_view>
#include <utility>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// What a name may end with, and the unit that it stands for.
inline constexpr std::pair<std::string_view, std::string_view> unit_table[] = {
    {"um", "um"},
    {"mm", "mm"},
    {"m", "m"},
    {"pm", "pm"},
    {"cm2", "cm2"},
    {"mm3", "mm3"},
    {"ml", "ml"},
    {"kg", "kg"},
    {"kpa", "kPa"},
    {"mpa", "MPa"},
    {"n", "N"},
    {"g", "g"},
    {"g_cm3", "g/cm3"},
    {"s", "s"},
    {"h", "h"},
    {"hours", "h"},
    {"min", "min"},
    {"minutes", "min"},
    {"rpm", "1/min"},
    {"c", "degC"},
    {"k", "K"},
    {"deg", "deg"},
    {"gu", "GU"},
    {"percent", "%"},
    {"m_s", "m/s"},
    {"per_um", "1/um"},
    {"per_hour", "1/h"},
    {"per_mm2", "1/mm2"},
    {"um_per_m", "um/m"},
    {"minutes_per_um", "min/um"},
    {"um_per_coat", "um/coat"},
};

namespace detail {

/// The unit of an ending; null where it is not in the table.
constexpr const std::string_view* unit_told(std::string_view ending) {
  for (const auto& [known, unit] : unit_table) {
    if (known == ending) return &unit;
  }
  return nullptr;
}

}  // namespace detail

/// The last words of a name as far as they are units or "per"; what is last after "per" may be any word. "um" of "mean_um"; empty where
/// it has none.
constexpr std::string_view unit_ending(std::string_view name) noexcept {
  std::string_view left = name;  // of the end
  while (!left.empty()) {
    const std::string_view word = left.substr(left.rfind('_') + 1);  // all, where there is no _
    std::string_view before = left.substr(0, left.size() - word.size());
    if (before.ends_with('_')) before.remove_suffix(1);
    const bool divisor = word.end() == name.end() && (before == "per" || before.ends_with("_per"));
    if (word != "per" && !divisor && !detail::unit_told(word)) break;
    left = before;
  }
  return left.size() == name.size() ? std::string_view()
                                    : name.substr(left.empty() ? 0 : left.size() + 1);
}

/// The unit that the end of a name stands for: "um" of "mean_um"; empty where it has none. Throws, and so does not compile in a
/// description, where unit_table has a part of the end only.
constexpr std::string_view unit_of(std::string_view name) {
  const std::string_view ending = unit_ending(name);
  if (ending.empty()) return {};
  const std::string_view* unit = detail::unit_told(ending);
  if (!unit) throw std::logic_error("unit_table wants the whole end of a name");
  return *unit;
}

}  // namespace levigate
