// The work behind surface/take_down.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string_view>

#include "levigate/surface/take_down.hpp"

#include "levigate/detail/strict_math.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/defect.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK void validate(const LocalTools& tools, std::string_view where) {
  for (const LocalBlock* tool : {&tools.small_block, &tools.zone_block}) {
    validate(tool->block, where);
    detail::require_range(tool->rate_um_per_m, 1e-9, 1e6, "rate_um_per_m", "um/m", where);
  }
  detail::require_range(tools.residual_um, 0.001, 1e4, "residual_um", "um", where);
  detail::require_range(tools.shave_above_um, 0.0, 1e4, "shave_above_um", "um", where);
  detail::require_range(tools.tape_um, 1.0, 1e4, "tape_um", "um", where);
  detail::require_range(tools.shave_minutes, 0.0, 1e4, "shave_minutes", "min", where);
  detail::require_range(tools.mask_minutes, 0.0, 1e4, "mask_minutes", "min", where);
  detail::require_range(tools.stroke_mm, 1.0, 1e4, "stroke_mm", "mm", where);
}

namespace detail {

/// Minutes of sanding that remove a volume, the block's whole force on it.
inline double minutes_for_mm3(const LocalBlock& tool, double volume_mm3) {
  constexpr double mm3_per_um_cm2 = 0.1;
  const double travel_m = volume_mm3 / (mm3_per_um_cm2 * tool.rate_um_per_m * tool.block.area_cm2);
  return travel_m / tool.block.speed_m_s / tool.block.duty / 60.0;
}

}  // namespace detail

LEVIGATE_WORK LocalCost sanded_flat(const Defect& defect, const LocalTools& tools) {
  constexpr auto where = "sanded_flat";
  validate(defect, where);
  validate(tools, where);
  const Block& block = tools.zone_block.block;
  const double face = 10.0 * std::sqrt(block.area_cm2);
  if (defect.width_mm >= face) {
    throw BadInput("width_mm = " + detail::number_text(defect.width_mm) +
                   " mm is too wide for a block of " + detail::number_text(face) + " mm, in " +
                   where);
  }
  const double volume = volume_above_mm3(defect, tools.residual_um);
  if (volume == 0.0) return {};
  const double strokes = tools.stroke_mm / face;  // q
  const double overhang = std::min(strokes, 1.0);
  const double riding_share = std::log1p(overhang) / overhang;
  const double share = std::log1p(overhang) / strokes;  // phi
  const double peak =
      strokes <= 1.0 ? 1.0 / (face + tools.stroke_mm) : std::min(0.5 / face, 1.5 / tools.stroke_mm);

  const bool cap = detail::is_round(defect.kind);
  const double footprint =
      (cap ? 0.25 * std::numbers::pi : 1.0) * defect.width_mm * std::min(defect.length_mm, face);
  const double radius = std::sqrt(footprint / std::numbers::pi);
  const double swallowed_um =
      1e3 * riding_share * block.force_n / (2.0 * radius * block.modulus_mpa);
  double effective = volume;  // V*
  if (const double from_um = std::min(swallowed_um, defect.height_um);
      from_um > tools.residual_um) {
    // A(h) = (n V / h0) (1 - x)^(n - 1), x = h / h0; the integral of A / h is elementary.
    const auto integral = [&](double height_um) {
      const double x = height_um / defect.height_um;
      const double root = std::sqrt(1.0 - x);
      return cap ? 2.0 * (std::log(x) - x) : 1.5 * (2.0 * (root - std::log1p(root)) + std::log(x));
    };
    effective = volume_above_mm3(defect, from_um) +
                volume_above_mm3(defect, 0.0) * swallowed_um / defect.height_um *
                    (integral(from_um) - integral(tools.residual_um));
  }

  const double band = std::max(defect.length_mm, face);
  const double film_mm =
      (volume * peak + (effective - volume) / std::max(face, tools.stroke_mm)) / (share * band);
  const double hollow_mm3 = (film_mm - 1e-3 * tools.residual_um) * band * (face + tools.stroke_mm);
  const double removed = std::max(effective / share, volume + hollow_mm3);
  return {defect.count * detail::minutes_for_mm3(tools.zone_block, removed), 1e3 * film_mm};
}

LEVIGATE_WORK LocalWork take_down(const Defect& defect, const LocalTools& tools) {
  LocalWork work;
  work.flat = sanded_flat(defect, tools);
  work.masked = defect.height_um > tools.tape_um;
  work.shaved = work.masked && defect.height_um > tools.shave_above_um;
  work.shaved_mm3 = work.shaved ? volume_above_mm3(defect, tools.tape_um) : 0.0;
  work.blocked_mm3 = std::max(0.0, volume_above_mm3(defect, tools.residual_um) - work.shaved_mm3);
  work.block_minutes = defect.count * detail::minutes_for_mm3(tools.small_block, work.blocked_mm3);
  work.local.minutes =
      work.block_minutes + defect.count * ((work.shaved ? tools.shave_minutes : 0.0) +
                                           (work.masked ? tools.mask_minutes : 0.0));
  work.tape_um = tools.tape_um;
  work.residual_um = tools.residual_um;
  work.flat_is_worse =
      work.flat.minutes > work.local.minutes && work.flat.film_um > work.residual_um;
  return work;
}

}  // namespace levigate
