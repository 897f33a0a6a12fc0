// What drives the abrasive: a block or pad in the hand, a buffing wheel, or a hand-held machine.
#pragma once

#include <variant>

#include "levigate/stack/block.hpp"
#include "levigate/stack/machine.hpp"
#include "levigate/stack/wheel.hpp"

namespace levigate::inline v0 {

/// What drives the abrasive.
using Tool = std::variant<Block, Wheel, Machine>;

/// The wheel, where the tool is one; else null.
inline const Wheel* as_wheel(const Tool& tool) noexcept { return std::get_if<Wheel>(&tool); }

/// The machine, where the tool is one; else null.
inline const Machine* as_machine(const Tool& tool) noexcept { return std::get_if<Machine>(&tool); }

/// The block or pad in the hand, where the tool is one; else null.
inline const Block* as_block(const Tool& tool) noexcept { return std::get_if<Block>(&tool); }

/// Face, force and mean speed of a machine as those of a block. A sheet covers its pad and no more.
inline Block face_of(const Machine& machine) {
  return {.name = machine.name,
          .modulus_mpa = machine.modulus_mpa,
          .area_cm2 = machine.area_cm2(),
          .force_n = machine.force_n,
          .speed_m_s = machine.speed_m_s(),
          .duty = machine.duty,
          .wrap = 1.0};
}

/// Face, force and speed of a tool as those of a block. The abrasive of a wheel is the compound on its face, so it takes no paper.
inline Block face_of(const Tool& tool) {
  if (const Block* block = as_block(tool)) return *block;
  if (const Machine* machine = as_machine(tool)) return face_of(*machine);
  const Wheel* wheel = as_wheel(tool);
  return {.name = wheel->name,
          .modulus_mpa = wheel->modulus_mpa,
          .area_cm2 = wheel->area_cm2(),
          .force_n = wheel->force_n,
          .speed_m_s = wheel->surface_speed_m_s(),
          .duty = wheel->duty,
          .wrap = 0.0};
}

}  // namespace levigate
