// Numbers of profiles by name: how the tables of an area become one list, and how a number is found in it.
#pragma once

#include <algorithm>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/profile.hpp"
#include "levigate/error.hpp"
#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

/// One number of a profile and what it is called.
struct NamedNumber {
  std::string_view name;      ///< of the profile, as "latex paper"; of a table of one, as "rule"
  std::string_view quantity;  ///< with the unit as suffix, as "modulus_mpa"
  Sourced number;
};

namespace detail {

/// Adds the numbers of a table. A table of one profile, "default", goes by `kind`.
template <typename Profile, std::size_t profiles, std::size_t count>
void add_numbers(std::vector<NamedNumber>& all, std::string_view kind,
                 const Profile (&table)[profiles], const TableField<Profile> (&columns)[count]) {
  for (const Profile& profile : table) {
    for (const TableField<Profile>& column : columns) {
      const Sourced* number = column.number(profile);
      if (!number) continue;
      all.push_back({profile.name == "default" ? kind : profile.name, column.quantity, *number});
    }
  }
}

}  // namespace detail

/// The number of that name and quantity.
/// Throws: BadInput where there is no such name or it has no such quantity, naming the nearest.
inline Sourced number_named(std::span<const NamedNumber> all, std::string_view name,
                            std::string_view quantity) {
  std::vector<std::string_view> names, quantities;
  for (const NamedNumber& one : all) {
    if (std::find(names.begin(), names.end(), one.name) == names.end()) names.push_back(one.name);
    if (one.name != name) continue;
    if (one.quantity == quantity) return one.number;
    quantities.push_back(one.quantity);
  }
  if (quantities.empty()) throw BadInput(detail::unknown_name_text("profile", name, names));
  throw BadInput(
      detail::unknown_name_text("quantity of " + std::string(name), quantity, quantities));
}

}  // namespace levigate
