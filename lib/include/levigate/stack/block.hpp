// What presses and drives the abrasive: a block, a pad or a tool, with the hand that moves it.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "levigate/units.hpp"

namespace levigate::inline v0 {

/// What makes a tool a buffing wheel; the rest of it is its block. See wheel/wheel.hpp.
struct WheelFace {
  double diameter_mm = 0;
  double rpm = 0;
  double rated_rpm = 0;
  double width_mm = 0;
  double contact_mm = 0;
  double feed_m_s = 0;
  double friction = 0;
  double heat_share = 0;

  friend bool operator==(const WheelFace&, const WheelFace&) = default;
};

/// A block, or a pad or wheel that is its own tool.
struct Block {
  std::string name;
  double modulus_mpa =
      0;  ///< modulus of the face that lies on the work [MPa], 0.001 to infinity (rigid)
  double area_cm2 = 0;   ///< area in contact [cm2]
  double force_n = 0;    ///< pressing force [N]
  double speed_m_s = 0;  ///< mean sliding speed while sanding [m/s]
  double duty = 0;       ///< share of the time that is spent sanding, above 0 to 1
  double wrap = 0;       ///< area of abrasive that one piece takes, as a multiple of area_cm2

  std::optional<WheelFace> wheel{};  ///< where it is a buffing wheel

  double pressure_kpa() const noexcept { return kpa_from_n_per_cm2(force_n, area_cm2); }

  friend bool operator==(const Block&, const Block&) = default;
};

/// The block of that name in the profiles.
/// Throws: BadInput where there is none, naming the nearest.
Block block_named(std::string_view name);

/// Throws: OutOfRange where a member or the pressure is outside its range.
void validate(const Block& block, std::string_view where);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/stack/work/block.hpp"
#endif
