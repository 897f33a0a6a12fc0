// Where to go back to, as a hand can keep it in mind: few legs, each with one climb and looks at even depths.
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

#include "levigate/recover/need.hpp"
#include "levigate/recover/policy.hpp"
#include "levigate/surface/inspection_table.hpp"

namespace levigate::inline v0 {

/// Minutes of a climb down to one look, by the index of the climb, and by how much was off at the mark before it and is after it
/// [um]. Before the first look nothing was. Infinite where it cannot be.
using LookMinutes = std::function<double(std::size_t climb, double from_um, double to_um)>;

/// What a hand keeps in mind. Defaults: data/profiles/inspection.json.
struct LegLimits {
  std::size_t legs = static_cast<std::size_t>(inspection_table[0].legs_most.value);
  std::size_t looks = static_cast<std::size_t>(inspection_table[0].looks_most.value);  ///< of a leg
  double worth_share = inspection_table[0].worth_look_share.value;
};

/// One climb, and how much is off at the mark after each look of it.
struct PlannedLeg {
  std::size_t climb = 0;  ///< index of the climb
  std::vector<double> off_um{};
};

/// The legs in order. After the last one, another round.
struct LegPolicy {
  std::vector<PlannedLeg> legs{};
  double expected_minutes = 0;  ///< another round, where it comes to that, included [min]
  double gone_chance = 0;       ///< that the mark is gone after one of the looks
};

/// The legs of least expected minutes.
///
/// A leg begins once the needs up to a were met in vain, takes m looks at even steps to a need b, and leaves l legs. With the chance
/// S that the mark is still there,
///
///   V(a, l) = min( stop,  min over climb, b and m of  sum over looks j of S_(j-1) c_j + S_m V(b, l - 1) )
///
/// Not a leg: one whose first look finds less than worth_share of the marks gone that are still there. With as many legs as needs,
/// no such share and looks that cost what climb_minutes() says, this is best_policy(). Legs are tries whose depths are even, and few,
/// so at the same price they never take less: what it costs that a hand can keep them in mind. How much: lib/decisions/recover.md.
///
/// @param needs         from least to most, chances adding up to 1
/// @param climbs        their above_um and reach_um count, as in best_policy(); reach_um for a leg as a whole
/// @param look_minutes  of each look
/// @param film_um       that may still come off at the mark [um], 0 to infinity
/// @param stop_minutes  of giving up: another round [min]
/// @param limits        of the legs
/// @return              the legs; none where giving up at once is best
/// Throws:    what best_policy() throws
/// NaN:       rejected
/// Accuracy:  1e-12 relative; tests/property/leg_policy_oracle_test.cpp holds it to all legs of small problems
/// Source:    that of best_policy(); limits: data/profiles/inspection.json
LegPolicy best_legs(const std::vector<Need>& needs, const std::vector<Climb>& climbs,
                    const LookMinutes& look_minutes, double film_um, double stop_minutes,
                    const LegLimits& limits = {});

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/recover/work/leg_policy.hpp"
#endif
