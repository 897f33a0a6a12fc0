// What comes back of a peel that is levelled, as solvent leaves the film below: film to take off once more, after a rest.
#pragma once

#include <optional>

#include "levigate/describe.hpp"

namespace levigate::inline v0 {

/// How a coat shrinks back after it is levelled.
struct ShrinkBack {
  double comes_back = 0;
  double rest_h = 0;

  friend bool operator==(const ShrinkBack&, const ShrinkBack&) = default;
};

template <std::same_as<ShrinkBack> Value>
inline constexpr auto described<Value> = describe<Value>(
    "ShrinkBack", "How a coat shrinks back after it is levelled.",
    member<&Value::comes_back>("comes_back", Within{0, 1}, "share of the levelled depth"),
    member<&Value::rest_h>("rest_h", Within{0, 1e5}, "to wait until it has come back"));

/// What levelling takes with what comes back of it, over what it takes at once: 1 + comes_back. What comes back is levelled once
/// more. What comes back of that is left out: a share of a share.
inline double with_shrink_back(const std::optional<ShrinkBack>& shrink_back) noexcept {
  return 1.0 + (shrink_back ? shrink_back->comes_back : 0.0);
}

}  // namespace levigate
