// The enumerators of a type in order, said once beside it: readers, writers, schemas and Python go by them.
#pragma once

#include <array>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// Specialise as `inline constexpr auto choices<Seen> = std::to_array({Seen::loupe, ...})`. Names are those of to_string().
template <typename Enum>
inline constexpr auto choices = nullptr;

}  // namespace levigate
