// What cleaning the sheet is worth: minutes, the share of the work done with a clogged sheet, and when to take a new piece.
// How much the rate fades is clogging_share() in surface/removal.hpp.
#pragma once

#include <cmath>
#include <numbers>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/source.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/removal.hpp"

namespace levigate::inline v0 {

/// Why a clogged sheet is to be cleaned though it still cuts. No measurement of how much deeper it scratches
/// is at hand, so no depth is derived from it; Cleaning::clogged_share says how much work is at risk.
inline constexpr std::string_view clogged_sheet_text =
    "A clogged sheet scratches deeper than its grade. Swarf rolls up into grains that stand out. "
    "Clean the sheet before it drags. Change it when cleaning no longer brings the cut back.";
inline constexpr Source clogged_sheet_source{
    Basis::common_practice, "trade pages on fine paper used dry; no measurement at hand"};

/// A cleaning interval and what follows from it.
struct Cleaning {
  double rate_share = 1;       ///< mean rate over that of a clean sheet
  double minutes_factor = 1;   ///< time for a removal over that with a sheet that is always clean
  double clogged_share = 0;    ///< of the travel that is made clogged: half of what fades has faded
  double clogged_after_m = 0;  ///< travel after which the sheet is clogged in that sense [m]
};

/// What an interval between two cleanings means for a backing.
///
///   rate share = clogging_share(),   minutes factor = 1 / (rate share),
///   clogged after s = fade ln 2,     clogged share = max(0, 1 - s / interval)
///
/// @param backing        with fade length and floor
/// @param clean_every_m  travel between two cleanings [m], 0 to 1e9; 0 means always clean
/// @return               shares (dimensionless) and travel [m]
/// Throws:    as validate(); OutOfRange where clean_every_m is outside its range
/// NaN:       rejected
/// Source:    decay to a floor: clogging_share(); half as the mark of a clogged sheet: assumption
inline Cleaning cleaning(const Backing& backing, double clean_every_m) {
  validate(backing, "cleaning");
  detail::require_range(clean_every_m, 0.0, 1e9, "clean_every_m", "m", "cleaning");
  const double share = clogging_share(clean_every_m, backing.fade_m, backing.floor);
  const double after_m = backing.fade_m * std::numbers::ln2;
  return {.rate_share = share,
          .minutes_factor = 1.0 / share,
          .clogged_share = clean_every_m > after_m ? 1.0 - after_m / clean_every_m : 0.0,
          .clogged_after_m = after_m};
}

/// Pieces of abrasive that a travel takes, and how long one lasts.
struct Pieces {
  double needed = 0;        ///< whole pieces
  double minutes_each = 0;  ///< of work, cleaning included, after which to change [min]
};

/// When to change the piece.
///
///   needed = ceil(travel / life),   minutes each = life / speed / duty / 60
///
/// @param backing   with its life
/// @param block     with speed and duty
/// @param travel_m  of the block [m], 0 to 1e12
/// @return          pieces and minutes [min]
/// Throws:    as validate(); OutOfRange where travel_m is outside its range
/// NaN:       rejected
/// Source:    arithmetic; the life is common practice, data/profiles/backings.json
inline Pieces pieces(const Backing& backing, const Block& block, double travel_m) {
  validate(backing, "pieces");
  validate(block, "pieces");
  detail::require_range(travel_m, 0.0, 1e12, "travel_m", "m", "pieces");
  return {.needed = std::ceil(travel_m / backing.life_m),
          .minutes_each = backing.life_m / block.speed_m_s / block.duty / 60.0};
}

}  // namespace levigate
