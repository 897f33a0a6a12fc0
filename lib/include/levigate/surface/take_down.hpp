// How a shop takes a local defect down, how long that takes, and what sanding it out flat would cost.
#pragma once

#include <concepts>
#include <string>
#include <string_view>

#include "levigate/describe.hpp"
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
void validate(const LocalTools& tools, std::string_view where);

/// One way to get rid of defects.
struct LocalCost {
  double minutes = 0;
  double film_um = 0;

  friend bool operator==(const LocalCost&, const LocalCost&) = default;
};

template <std::same_as<LocalCost> Value>
inline constexpr auto described<Value> = describe<Value>(
    "LocalCost", "What one way to get rid of the defects takes.",
    member<&Value::minutes>("minutes", at_least(0), "for all of them"),
    member<&Value::film_um>("film_um", at_least(0), "lost beside one, where most is lost"));

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
LocalCost sanded_flat(const Defect& defect, const LocalTools& tools);

/// How a defect is taken down locally, and what sanding it out flat would cost instead.
struct LocalWork {
  bool shaved = false;
  bool masked = false;
  double shaved_mm3 = 0;
  double blocked_mm3 = 0;
  double block_minutes = 0;
  LocalCost local;
  LocalCost flat;
  bool flat_is_worse = false;
  double tape_um = 0;
  double residual_um = 0;

  friend bool operator==(const LocalWork&, const LocalWork&) = default;
};

template <std::same_as<LocalWork> Value>
inline constexpr auto described<Value> = describe<Value>(
    "LocalWork", "How a defect is taken down: see take_down().",
    member<&Value::shaved>("shaved", "shaved or scraped to the thickness of the tape first"),
    member<&Value::masked>("masked", "its surroundings masked"),
    member<&Value::local>("local", "what this way takes"),
    member<&Value::flat>("flat", "what sanding it out with the zone's block would take"),
    member<&Value::shaved_mm3>("shaved_mm3", at_least(0), "shaved off one").optional(),
    member<&Value::blocked_mm3>("blocked_mm3", at_least(0), "blocked off one with the small block")
        .optional(),
    member<&Value::block_minutes>("block_minutes", at_least(0),
                                  "share of local minutes that is blocking")
        .optional(),
    member<&Value::flat_is_worse>("flat_is_worse",
                                  "flat is slower, and leaves or levels a hollow above residual_um")
        .optional(),
    member<&Value::tape_um>("tape_um", at_least(0), "thickness of the mask").optional(),
    member<&Value::residual_um>("residual_um", at_least(0), "of a hollow that may stay")
        .optional());

/// The way a shop takes a defect down. It masks beside a defect taller than the tape. It shaves a tall one
/// down to the thickness of the tape. It blocks the rest flush with a small hard block. The zone's
/// levelling step then blends it.
///
///   minutes = count (shave + mask + V / (rate area) / speed / duty)
///
/// with V the volume from the tape's height, or the top, down to residual_um. The block's middle stays
/// over the defect, so that it does not tip and all of its force is on the defect: no film is lost
/// beside it. The mask is for slips.
///
/// @param defect  see Defect for units and ranges
/// @param tools   see LocalTools for units and ranges
/// @return        volumes [mm3], minutes [min] and film [um]
/// Throws:    OutOfRange, BadInput as sanded_flat() does
/// NaN:       rejected as OutOfRange
/// Accuracy:  that of sanded_flat()
/// Source:    common practice; Archard's law on the volume
LocalWork take_down(const Defect& defect, const LocalTools& tools);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/surface/work/take_down.hpp"
#endif
