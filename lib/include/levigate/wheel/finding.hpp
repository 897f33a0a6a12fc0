// What there is to say against a wheel on a surface, and against a compound after a sheet: findings with numbers.
#pragma once

#include <array>
#include <string_view>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/error.hpp"
#include "levigate/fact.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/limits.hpp"
#include "levigate/wheel/wheel.hpp"

namespace levigate::inline v0 {

/// What a finding is about.
enum class WheelFindingKind {
  wheel_too_slow,       ///< rim speed below the band of the surface
  wheel_too_fast,       ///< rim speed above it
  dwell_too_long,       ///< a spot gets warmer in one pass than the surface stands
  edge_pressure,        ///< an edge that takes much more than the flat
  compound_too_coarse,  ///< grain no finer than that of the step before
  scratch_too_deep,     ///< the step before leaves scratches beyond the reach of the compound
};

constexpr std::string_view to_string(WheelFindingKind kind) noexcept {
  switch (kind) {
    case WheelFindingKind::wheel_too_slow: return "wheel_too_slow";
    case WheelFindingKind::wheel_too_fast: return "wheel_too_fast";
    case WheelFindingKind::dwell_too_long: return "dwell_too_long";
    case WheelFindingKind::edge_pressure: return "edge_pressure";
    case WheelFindingKind::compound_too_coarse: return "compound_too_coarse";
    case WheelFindingKind::scratch_too_deep: return "scratch_too_deep";
  }
  return "";
}

template <>
inline constexpr auto choices<WheelFindingKind> =
    std::to_array({WheelFindingKind::wheel_too_slow, WheelFindingKind::wheel_too_fast,
                   WheelFindingKind::dwell_too_long, WheelFindingKind::edge_pressure,
                   WheelFindingKind::compound_too_coarse, WheelFindingKind::scratch_too_deep});

/// One finding, as facts: sentence() of text/sentences.hpp says it. An error is work that must not be done so.
struct WheelFinding {
  WheelFindingKind kind = WheelFindingKind::wheel_too_slow;
  Severity severity = Severity::note;
  std::vector<Named> about{};       ///< the wheel and the surface, or the compound
  std::vector<Quantity> numbers{};  ///< as they are, and what would be right

  friend bool operator==(const WheelFinding&, const WheelFinding&) = default;
};

/// What there is to say against a wheel on a surface, by its name, most serious first; empty where nothing is.
/// Throws: as validate() of either.
std::vector<WheelFinding> wheel_findings(const Wheel& wheel, const WheelLimits& limits,
                                         std::string_view surface);

/// The finding on an edge of a radius, if the wheel asks for one: see edge_load().
/// Throws: as edge_load().
std::vector<WheelFinding> edge_findings(const Wheel& wheel, double radius_mm);

/// What there is to say against a compound after grain of a size that leaves scratches of a depth.
/// Throws: as validate(); OutOfRange where a number is outside its range.
std::vector<WheelFinding> compound_findings(const Compound& compound, double before_um,
                                            double scratch_um);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/wheel/work/finding.hpp"
#endif
