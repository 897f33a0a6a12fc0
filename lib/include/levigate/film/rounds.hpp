// Coats and the rounds they fuse into: what the last round holds, and what a depth leaves of it.
#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "levigate/detail/strict_math.hpp"
#include "levigate/error.hpp"
#include "levigate/film/film.hpp"

namespace levigate::inline v0 {

/// One coat, by its wet film or by its dry film.
struct Coat {
  double wet_um = 0;
  double volume_solids = 0;
  double thinner = 0;
  std::optional<double> dry_um{};
  double shrink = 0;
  double applied_h = 0;
};

template <std::same_as<Coat> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Coat", "One coat, by its wet film or by its dry film.",
    member<&Value::wet_um>("wet_um", Within{0, 2e4}, "as applied").such_as("120"),
    member<&Value::volume_solids>("volume_solids", Within{0, 1},
                                  "share of the paint's volume that stays")
        .such_as("0.4"),
    member<&Value::thinner>("thinner", Within{0, 10}, "volume for one of paint").optional(),
    member<&Value::dry_um>("dry_um", Within{0, 2e4}, "in place of the three above").such_as("28"),
    member<&Value::shrink>("shrink", Within{0, 0.9}, "share of the dry film lost on full cure")
        .optional(),
    member<&Value::applied_h>("applied_h", Within{0, 1e6}, "since the first coat").optional());

/// Coats that fused into one film.
struct Round {
  int coats = 0;
  double dry_um = 0;   ///< fully cured [um]
  double first_h = 0;  ///< when its first coat was applied [h]
  double last_h = 0;   ///< when its last was [h]

  friend bool operator==(const Round&, const Round&) = default;
};

/// Groups coats into rounds: a coat laid within the recoat window of the coat before fuses with it.
///
///   dry = (dry_um, or wet volume_solids / (1 + thinner)) (1 - shrink), summed over the round
///
/// @param coats            by rising applied_h, at least one; see Coat for units and ranges
/// @param recoat_window_h  longest wait that still fuses [h], 0 to 1e6
/// @return                 rounds, the lowest first
/// Throws:    BadInput without coats, out of their order, or with wet and dry film both; OutOfRange where
///            a number is outside its range
/// NaN:       rejected as OutOfRange
/// Accuracy:  4 ulp a coat
/// Source:    common practice; conservation of volume
inline std::vector<Round> rounds(std::span<const Coat> coats, double recoat_window_h) {
  constexpr auto where = "rounds";
  detail::require_range(recoat_window_h, 0.0, 1e6, "recoat_window_h", "h", where);
  if (coats.empty()) throw BadInput::of("coats", std::string("coats is empty, in ") + where);
  std::vector<Round> found;
  for (std::size_t i = 0; i < coats.size(); ++i) {
    const Coat& coat = coats[i];
    const std::string name = "coats[" + std::to_string(i) + "]";
    detail::require_range(coat.shrink, 0.0, 0.9, name + " shrink", "", where);
    detail::require_range(coat.applied_h, 0.0, 1e6, name + " applied_h", "h", where);
    if (coat.dry_um) {
      detail::require_range(*coat.dry_um, 0.0, 2e4, name + " dry_um", "um", where);
      if (coat.wet_um != 0.0) {
        throw BadInput::of("coats", name + " has wet_um and dry_um, in " + where);
      }
    } else {
      detail::require_range(coat.wet_um, 0.0, 2e4, name + " wet_um", "um", where);
      detail::require_range(coat.volume_solids, 0.0, 1.0, name + " volume_solids", "", where);
      detail::require_range(coat.thinner, 0.0, 10.0, name + " thinner", "", where);
    }
    if (!found.empty() && coat.applied_h < found.back().last_h) {
      throw BadInput::of("coats", name + " was applied at " + detail::number_text(coat.applied_h) +
                                      " h, before the one above it in the list, in " + where);
    }
    if (found.empty() || coat.applied_h - found.back().last_h > recoat_window_h) {
      found.push_back({.first_h = coat.applied_h});
    }
    Round& round = found.back();
    const double dry =
        coat.dry_um ? *coat.dry_um : dry_film_um(coat.wet_um, coat.volume_solids, coat.thinner);
    round.dry_um += dry * (1.0 - coat.shrink);
    round.last_h = coat.applied_h;
    ++round.coats;
  }
  return found;
}

/// Film that may be sanded: the last round. Below it a witness line shows. Its dry film per coat is the mean of the round.
///
/// @param all         rounds, the lowest first, at least one
/// @param sd_um       standard deviation of the film from spot to spot [um], 0 to 20 000
/// @param mean_se_um  standard uncertainty of its mean [um], 0 to 20 000; see uncertainty_um()
/// @return            the film [um]
/// Throws:    BadInput without rounds; OutOfRange where a number is outside its range
/// NaN:       rejected as OutOfRange
/// Accuracy:  exact
/// Source:    common practice
inline Film film_of_last_round(std::span<const Round> all, double sd_um, double mean_se_um = 0) {
  constexpr auto where = "film_of_last_round";
  if (all.empty()) throw BadInput(std::string("rounds is empty, in ") + where);
  detail::require_range(sd_um, 0.0, 2e4, "sd_um", "um", where);
  detail::require_range(mean_se_um, 0.0, 2e4, "mean_se_um", "um", where);
  Film film{.mean_um = all.back().dry_um, .sd_um = sd_um, .mean_se_um = mean_se_um};
  if (all.back().coats > 0) film.dry_um_per_coat = film.mean_um / all.back().coats;
  return film;
}

/// What a depth leaves of the last round.
struct RoundLeft {
  double left_um = 0;         ///< of the last round; 0 where it is sanded through [um]
  double left_share = 0;      ///< the same over the round (dimensionless), 0 to 1
  bool enters_below = false;  ///< deeper than the last round: a witness line, or bare work
  std::size_t in_round = 0;   ///< where the depth ends, 0 the lowest; all of them: number of rounds
};

/// What sanding to a depth leaves of the last round, and in which round it ends. A plan's film left is film_left_um of
/// plan/work/plan_of_sequence.hpp.
///
/// @param all       rounds, the lowest first, at least one
/// @param depth_um  below the surface as cured [um], 0 to infinity
/// @return          what is left [um]
/// Throws:    BadInput without rounds; OutOfRange where the depth is negative
/// NaN:       rejected as OutOfRange
/// Accuracy:  1 ulp a round; a depth equal to the round does not enter the one below
/// Source:    arithmetic
inline RoundLeft witness_depth(std::span<const Round> all, double depth_um) {
  constexpr auto where = "witness_depth";
  if (all.empty()) throw BadInput(std::string("rounds is empty, in ") + where);
  detail::require_range(depth_um, 0.0, std::numeric_limits<double>::infinity(), "depth_um", "um",
                        where);
  RoundLeft result;
  const double last_um = all.back().dry_um;
  result.enters_below = depth_um > last_um;
  result.left_um = result.enters_below ? 0.0 : last_um - depth_um;
  result.left_share = last_um > 0.0 ? result.left_um / last_um : 0.0;
  double floor_um = 0;
  for (std::size_t i = all.size(); i-- > 0;) {
    floor_um += all[i].dry_um;
    result.in_round = i;
    if (depth_um <= floor_um) return result;
  }
  result.in_round = all.size();
  return result;
}

}  // namespace levigate
