// How the height of orange peel was told, and by what factor it may be off.
#pragma once

#include <array>
#include <string_view>

#include "levigate/choices.hpp"
#include "levigate/detail/profile.hpp"
#include "levigate/sourced.hpp"
#include "levigate/surface/peel_height_table.hpp"
#include "levigate/surface/peel_table.hpp"

namespace levigate::inline v0 {

/// How the height of orange peel was told.
enum class PeelHow {
  by_eye,
  comparison_plate,
  profile,  ///< read from a profile of the surface
  usual,    ///< told by nobody: taken as usual
};

template <>
inline constexpr auto choices<PeelHow> = std::to_array({PeelHow::by_eye, PeelHow::comparison_plate,
                                                        PeelHow::profile, PeelHow::usual});

constexpr std::string_view to_string(PeelHow how) noexcept {
  switch (how) {
    case PeelHow::by_eye: return "by eye";
    case PeelHow::comparison_plate: return "comparison plate";
    case PeelHow::profile: return "profile";
    case PeelHow::usual: return "usual";
  }
  return "";
}

/// Height and wavelength of the peel of that look: light, medium or heavy. Throws: BadInput for another, naming the nearest
inline const PeelHeightProfile& peel_height_named(std::string_view look) {
  return detail::profile_named(peel_height_table, look, "peel");
}

/// The peel that is taken where nobody told one.
inline const PeelHeightProfile& usual_peel() noexcept { return peel_height_named("medium peel"); }

/// Factor by which a height of orange peel that was told so may be off: e to the standard deviation of its logarithm.
inline const Sourced& peel_factor(PeelHow how) {
  return detail::profile_named(peel_table, to_string(how), "peel").factor;
}

}  // namespace levigate
