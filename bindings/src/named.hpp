// Values of the profiles as arguments: the name of a profile, or the value itself.
#pragma once

#include <variant>

#include "bind.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/coating.hpp"

namespace levigate_python {

template <typename Value>
using ValueOrName = std::variant<Value, std::string>;

/// Throws: BadInput for a name that is not among the profiles
inline levigate::Backing backing_of(const ValueOrName<levigate::Backing>& given) {
  const auto* name = std::get_if<std::string>(&given);
  return name ? levigate::backing_named(*name) : std::get<levigate::Backing>(given);
}

inline levigate::Block block_of(const ValueOrName<levigate::Block>& given) {
  const auto* name = std::get_if<std::string>(&given);
  return name ? levigate::block_named(*name) : std::get<levigate::Block>(given);
}

inline levigate::Coating coating_of(const ValueOrName<levigate::Coating>& given) {
  const auto* name = std::get_if<std::string>(&given);
  return name ? levigate::coating_named(*name) : std::get<levigate::Coating>(given);
}

}  // namespace levigate_python
