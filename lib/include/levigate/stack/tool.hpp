// What drives the abrasive: a block or pad in the hand, or a buffing wheel.
#pragma once

#include <variant>

#include "levigate/stack/block.hpp"
#include "levigate/stack/wheel.hpp"

namespace levigate::inline v0 {

using Tool = std::variant<Block, Wheel>;

/// The wheel, where the tool is one; else null.
inline const Wheel* as_wheel(const Tool& tool) noexcept { return std::get_if<Wheel>(&tool); }

/// Face, force and speed of a tool as those of a block. The abrasive of a wheel is the compound on its face, so it takes no paper.
inline Block face_of(const Tool& tool) {
  const Wheel* wheel = as_wheel(tool);
  if (!wheel) return std::get<Block>(tool);
  return {.name = wheel->name,
          .modulus_mpa = wheel->modulus_mpa,
          .area_cm2 = wheel->area_cm2(),
          .force_n = wheel->force_n,
          .speed_m_s = wheel->surface_speed_m_s(),
          .duty = wheel->duty,
          .wrap = 0.0};
}

}  // namespace levigate
