// Units that a file may tell a number in, by the end of its name: one table of quantities, units and factors.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/source.hpp"
#include "levigate/unit_of.hpp"
#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// What is measured. A number is told in any unit of its quantity.
enum class Dimension {
  length,
  length_per_coat,
  area,
  volume,
  mass,
  force,
  pressure,
  speed,
  time,
  temperature,
  temperature_change,
};

/// A unit as the end of a name: `base = (number - zero) * over / under`, in the unit of its quantity that has 1 and 1.
struct ToldUnit {
  std::string_view ending;  ///< of a name, as "in2" of "area_in2"
  std::string_view unit;    ///< in messages
  Dimension of = Dimension::length;
  double over = 1, under = 1;
  double zero = 0;  ///< what it reads where the base unit reads 0

  friend bool operator==(const ToldUnit&, const ToldUnit&) = default;
};

/// Of units that several quantities have, the first is what a name of ours ends with: "c" is a temperature, "k" a change of it. Those
/// written out in full, as "microns", are the same unit as the short one: who writes them means it.
inline constexpr ToldUnit told_units[] = {
    {"um", "um", Dimension::length},
    {"microns", "um", Dimension::length},
    {"mil", "mil", Dimension::length, 25.4},
    {"mm", "mm", Dimension::length, 1e3},
    {"millimetres", "mm", Dimension::length, 1e3},
    {"cm", "cm", Dimension::length, 1e4},
    {"m", "m", Dimension::length, 1e6},
    {"in", "in", Dimension::length, 25400},
    {"ft", "ft", Dimension::length, 304800},
    {"um_per_coat", "um", Dimension::length_per_coat},
    {"microns_per_coat", "um", Dimension::length_per_coat},
    {"mil_per_coat", "mil", Dimension::length_per_coat, 25.4},
    {"mm_per_coat", "mm", Dimension::length_per_coat, 1e3},
    {"mm2", "mm2", Dimension::area},
    {"cm2", "cm2", Dimension::area, 100},
    {"square_centimetres", "cm2", Dimension::area, 100},
    {"m2", "m2", Dimension::area, 1e6},
    {"in2", "in2", Dimension::area, 645.16},
    {"ft2", "ft2", Dimension::area, 92903.04},
    {"mm3", "mm3", Dimension::volume},
    {"ml", "ml", Dimension::volume, 1e3},
    {"l", "l", Dimension::volume, 1e6},
    {"fl_oz", "fl oz", Dimension::volume, 29573.5295625},
    {"g", "g", Dimension::mass},
    {"kg", "kg", Dimension::mass, 1e3},
    {"oz", "oz", Dimension::mass, 28.349523125},
    {"lb", "lb", Dimension::mass, 453.59237},
    {"n", "N", Dimension::force},
    {"kgf", "kgf", Dimension::force, 9.80665},
    {"lbf", "lbf", Dimension::force, 4.4482216152605},
    {"kpa", "kPa", Dimension::pressure},
    {"mpa", "MPa", Dimension::pressure, 1e3},
    {"gpa", "GPa", Dimension::pressure, 1e6},
    {"bar", "bar", Dimension::pressure, 100},
    {"psi", "psi", Dimension::pressure, 4448.2216152605, 645.16},
    {"m_s", "m/s", Dimension::speed},
    {"m_min", "m/min", Dimension::speed, 1, 60},
    {"ft_s", "ft/s", Dimension::speed, 0.3048},
    {"ft_min", "ft/min", Dimension::speed, 0.3048, 60},
    {"s", "s", Dimension::time},
    {"min", "min", Dimension::time, 60},
    {"minutes", "min", Dimension::time, 60},
    {"h", "h", Dimension::time, 3600},
    {"hours", "h", Dimension::time, 3600},
    {"days", "days", Dimension::time, 86400},
    {"weeks", "weeks", Dimension::time, 604800},
    {"c", "degC", Dimension::temperature},
    {"f", "degF", Dimension::temperature, 5, 9, 32},
    {"k", "K", Dimension::temperature_change},
    {"c", "degC", Dimension::temperature_change},
    {"f", "degF", Dimension::temperature_change, 5, 9},
};

inline constexpr Source told_units_source{
    Basis::computed,
    "exact by definition: the inch is 25.4 mm, the pound 0.45359237 kg, standard gravity 9.80665 "
    "m/s2, the US fluid ounce 231/128 cubic inches, and a "
    "degree Fahrenheit 5/9 of a kelvin, with 32 at 0 degrees Celsius"};

/// The same amount in another unit of its quantity.
///
///   ((number - zero_from) * over_from / under_from) * under_to / over_to + zero_to
///
/// @param number  in unit `from`, any
/// @param from    its unit
/// @param to      wanted, of the same quantity
/// @return        in unit `to`
/// Throws:    nothing
/// NaN:       gives NaN
/// Accuracy:  1e-15 relative, but for temperatures near their zero
/// Source:    told_units_source
constexpr double in_unit(double number, const ToldUnit& from, const ToldUnit& to) noexcept {
  return (number - from.zero) * (from.over * to.under) / (from.under * to.over) + to.zero;
}

/// A name taken apart: "area" and "cm2" of "area_cm2".
struct NameParts {
  std::string_view stem;     ///< empty where the name is a unit, as "minutes"
  const ToldUnit* unit = 0;  ///< of its end; null where told_units has none
};

constexpr NameParts name_parts(std::string_view name) noexcept {
  const std::string_view ending = unit_ending(name);
  for (const ToldUnit& one : told_units) {
    if (ending.empty() || one.ending != ending) continue;
    const std::string_view stem = name.substr(0, name.size() - ending.size());
    return {stem.empty() ? stem : stem.substr(0, stem.size() - 1), &one};
  }
  return {name, nullptr};
}

/// The name with the end of another unit: "area_in2".
inline std::string name_in(const NameParts& parts, const ToldUnit& unit) {
  return (parts.stem.empty() ? "" : std::string(parts.stem) + "_") + std::string(unit.ending);
}

/// Whether two units are of one quantity and not the same end of a name.
constexpr bool stands_for(const ToldUnit& one, const ToldUnit& other) noexcept {
  return one.of == other.of && one.ending != other.ending;
}

/// The name with its own unit in full, by which a file says that the number is meant so.
inline std::string name_in_full(std::string_view name) {
  const NameParts parts = name_parts(name);
  if (!parts.unit) return std::string(name);
  for (const ToldUnit& other : told_units) {
    if (stands_for(other, *parts.unit) && other.unit == parts.unit->unit)
      return name_in(parts, other);
  }
  return std::string(name);
}

/// The unit in which `given` tells the number of `name`: that of inches for "width_in" of "width_mm". Null where it does not.
constexpr const ToldUnit* unit_told_for(std::string_view given, std::string_view name) noexcept {
  const NameParts parts = name_parts(name);
  if (!parts.unit || !given.starts_with(parts.stem)) return nullptr;
  std::string_view ending = given.substr(parts.stem.size());
  if (!parts.stem.empty()) {
    if (!ending.starts_with('_')) return nullptr;
    ending.remove_prefix(1);
  }
  for (const ToldUnit& one : told_units) {
    if (one.ending == ending && stands_for(one, *parts.unit)) return &one;
  }
  return nullptr;
}

/// The ends with which a file may tell the number of a name beside its own, in the order of the table; none for a name without unit.
inline std::vector<std::string_view> other_endings(std::string_view name) {
  std::vector<std::string_view> endings;
  const ToldUnit* own = name_parts(name).unit;
  for (const ToldUnit& one : told_units) {
    if (own && stands_for(one, *own)) endings.push_back(one.ending);
  }
  return endings;
}

}  // namespace levigate
