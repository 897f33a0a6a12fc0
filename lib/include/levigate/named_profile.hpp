// Profiles by name: what there is of a kind, and which one a person means.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

#include "levigate/detail/profile.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

/// A profile by its name, without its numbers.
struct NamedProfile {
  std::string_view name;               ///< its own, which is stored and printed
  std::string_view note;               ///< what it is of; may be empty
  std::vector<std::string_view> also;  ///< other names that people call it by
};

/// The profiles of a table, in its order.
template <typename Row, std::size_t count>
std::vector<NamedProfile> named_profiles(const Row (&table)[count]) {
  std::vector<NamedProfile> all;
  for (const Row& row : table)
    all.push_back({row.name, row.note, {row.also.begin(), row.also.end()}});
  return all;
}

}  // namespace levigate
