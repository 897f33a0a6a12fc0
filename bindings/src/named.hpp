// Values of the profiles as arguments: the name of a profile, or the value itself.
#pragma once

#include <variant>

#include "bind.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/tool.hpp"
#include "levigate/surface/coating.hpp"

namespace levigate_python {

/// A block in Python. It may stand for a wheel or a machine, whose face it then is.
struct Face {
  levigate::Block block;
  std::optional<levigate::Wheel> wheel;
  std::optional<levigate::Machine> machine;

  Face() = default;
  explicit Face(const levigate::Tool& tool) : block(levigate::face_of(tool)) {
    if (const levigate::Wheel* found = levigate::as_wheel(tool)) wheel = *found;
    if (const levigate::Machine* found = levigate::as_machine(tool)) machine = *found;
  }
};

template <typename Value>
using ValueOrName = std::variant<Value, std::string>;

/// Throws: BadInput for a name that is not among the profiles
inline levigate::Backing backing_of(const ValueOrName<levigate::Backing>& given) {
  const auto* name = std::get_if<std::string>(&given);
  return name ? levigate::backing_named(*name) : std::get<levigate::Backing>(given);
}

inline levigate::Block block_of(const ValueOrName<Face>& given) {
  const auto* name = std::get_if<std::string>(&given);
  return name ? levigate::block_named(*name) : std::get<Face>(given).block;
}

inline levigate::Coating coating_of(const ValueOrName<levigate::Coating>& given) {
  const auto* name = std::get_if<std::string>(&given);
  return name ? levigate::coating_named(*name) : std::get<levigate::Coating>(given);
}

}  // namespace levigate_python
