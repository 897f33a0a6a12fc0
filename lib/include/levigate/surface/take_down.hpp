// How a shop takes a local defect down, how long that takes, and what sanding it out flat would cost.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <string_view>

#include "levigate/detail/strict_math.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/rule_table.hpp"
#include "levigate/surface/defect.hpp"
#include "levigate/surface/defect_table.hpp"

namespace levigate::inline v0 {

/// A block with a sheet on it.
struct LocalBlock {
  Block block;
  double rate_um_per_m = 0;  ///< removal rate under it, see removal_rate_um_per_m() [um per m]
};

/// What a shop has at hand for a defect. Defaults: data/profiles/defects.json, rules.json.
struct LocalTools {
  LocalBlock small_block;  ///< small and hard, worked along the defect with its middle over it
  LocalBlock zone_block;   ///< that of the zone's levelling step
  double residual_um = rule_table[0].residual_peel_um.value;     ///< height that may stay [um]
  double shave_above_um = defect_table[0].shave_above_um.value;  ///< taller ones are shaved [um]
  double tape_um = defect_table[0].tape_um.value;                ///< thickness of the mask [um]
  double shave_minutes = defect_table[0].shave_minutes.value;    ///< for one defect [min]
  double mask_minutes = defect_table[0].mask_minutes.value;      ///< for one defect [min]
  double stroke_mm = defect_table[0].stroke_mm.value;  ///< of the zone's block, end to end [mm]
};

/// Throws: OutOfRange where a member is outside its range.
inline void validate(const LocalTools& tools, std::string_view where) {
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

/// One way to get rid of defects.
struct LocalCost {
  double minutes = 0;  ///< for all of them [min]
  double film_um = 0;  ///< lost beside one, where most is lost [um]
};

namespace detail {

/// Minutes of sanding that remove a volume, the block's whole force on it.
inline double minutes_for_mm3(const LocalBlock& tool, double volume_mm3) {
  constexpr double mm3_per_um_cm2 = 0.1;
  const double travel_m = volume_mm3 / (mm3_per_um_cm2 * tool.rate_um_per_m * tool.block.area_cm2);
  return travel_m / tool.block.speed_m_s / tool.block.duty / 60.0;
}

}  // namespace detail

/// Sanding a defect out flat with the zone's block and nothing masked.
///
/// A rigid block (square face, side L) tips over a defect under it and rests on its own far end: with
/// the defect u L/2 off the middle, moments give the far end u/(1 + u) of the force. Over even
/// strokes S = q L the defect carries in the mean phi = ln(1 + min(q, 1)) / q of it. Of the rest, the
/// place under the far end gets most: g = 1/(L + S) a mm for q <= 1, else min(1/(2 L), 3/(2 S)).
///
/// A face of modulus E swallows the defect below h_c = F' / (2 a E), with F' the mean load while the
/// block rides and pi a^2 the footprint under it: from there on the load on it falls as h/h_c, and it
/// takes as long as V* = V(h_c) + integral of A(h) h_c/h from residual to h_c. That part of the load
/// lies at most 1/max(L, S) a mm. With b = max(length, L), the band that is swept:
///
///   film = (V g + (V* - V) / max(L, S)) / (phi b)
///
/// for V = V(residual); an upper bound, as the two maxima lie in different places. It is not flat until
/// the whole patch b (L + S) is down in that hollow, but for residual_um. By Archard's law volumes
/// count, not areas, so the time is that of max(V*/phi, V + (film - residual) b (L + S)) mm3.
///
/// @param defect  see Defect for units and ranges
/// @param tools   blocks, stroke and residual; see LocalTools for units and ranges
/// @return        time for all [min], film beside one [um]
/// Throws:    OutOfRange, BadInput where an argument is not valid or the block does not bridge the
///            width
/// NaN:       rejected as OutOfRange
/// Accuracy:  1e-12 relative from a height of 1.1 residual_um on; as a prediction a factor of 2 to 3,
///            that of the rate, in time. Film: a hand that tilts the block or lingers costs more
/// Source:    moments on a rigid block; flat round punch, from memory (Johnson, Contact Mechanics,
///            1985), softer than an elliptic one by 12 % at 4:1 and 34 % at 10:1, to the safe side;
///            even strokes, a square face: assumptions
inline LocalCost sanded_flat(const Defect& defect, const LocalTools& tools) {
  constexpr auto where = "sanded_flat";
  validate(defect, where);
  validate(tools, where);
  const Block& block = tools.zone_block.block;
  const double face = 10.0 * std::sqrt(block.area_cm2);
  if (defect.width_mm >= face) {
    throw BadInput("width_mm = " + detail::number_text(defect.width_mm) +
                   " mm is not bridged by a block of " + detail::number_text(face) + " mm, in " +
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

/// How a defect is taken down locally, and what sanding it out flat would cost instead.
struct LocalWork {
  bool shaved = false;         ///< shaved or scraped to the thickness of the tape first
  bool masked = false;         ///< its surroundings masked
  double shaved_mm3 = 0;       ///< of one [mm3]
  double blocked_mm3 = 0;      ///< of one, with the small block [mm3]
  double block_minutes = 0;    ///< share of local.minutes that is blocking [min]
  LocalCost local;             ///< this way
  LocalCost flat;              ///< the other: sanded_flat()
  bool flat_is_worse = false;  ///< slower, and it leaves or levels a hollow above residual_um
  std::string verdict;         ///< both, in a sentence
};

/// The way a shop takes a defect down: a tall one is shaved to the thickness of the tape beside it,
/// what stands above the tape is masked, and the rest is blocked flush with a small hard block. The
/// zone's levelling step then blends it.
///
///   minutes = count (shave + mask + V / (rate area) / speed / duty)
///
/// with V the volume from the tape's height, or the top, down to residual_um. The block's middle stays
/// over the defect, so that it does not tip and all of its force is on the defect: no film is lost
/// beside it. The mask is for slips.
///
/// @param defect  see Defect for units and ranges
/// @param tools   see LocalTools for units and ranges
/// @return        volumes [mm3], minutes [min], film [um] and the verdict
/// Throws:    OutOfRange, BadInput as sanded_flat() does
/// NaN:       rejected as OutOfRange
/// Accuracy:  that of sanded_flat()
/// Source:    common practice; Archard's law on the volume
inline LocalWork take_down(const Defect& defect, const LocalTools& tools) {
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
  const bool slower = work.flat.minutes > work.local.minutes;
  const bool shows = work.flat.film_um > tools.residual_um;
  work.flat_is_worse = slower && shows;

  const auto minutes = [](double value) { return detail::fixed(value, 1) + " min"; };
  work.verdict = (work.shaved ? "mask it, shave it to the tape (" +
                                    detail::fixed(tools.tape_um, 0) + " um) and block it flush: "
                  : work.masked ? "mask it and block it flush: "
                                : "block it flush: ") +
                 minutes(work.local.minutes) + ", no film beside it; sanded out flat it takes " +
                 minutes(work.flat.minutes) + " and up to " + detail::fixed(work.flat.film_um, 1) +
                 " um of film beside it: " +
                 (work.flat_is_worse ? "worse in time and film"
                  : shows            ? "quicker, but paid in film"
                  : slower           ? "slower"
                                     : "quicker, and no hollow that shows");
  return work;
}

}  // namespace levigate
