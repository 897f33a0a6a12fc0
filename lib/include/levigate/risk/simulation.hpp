// What a simulation tells: how minutes, sheets and film may turn out, and how often a limit is passed.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/risk/share.hpp"

namespace levigate::inline v0 {

/// How a number came out over all draws.
struct Interval {
  double p10 = 0;   ///< one draw in ten is no more than this
  double p50 = 0;   ///< one in two
  double p90 = 0;   ///< nine in ten
  double mean = 0;  ///< of all

  friend bool operator==(const Interval&, const Interval&) = default;
};

/// The interval of values.
///
///   p = least value that at least p % of the values do not exceed: number ceil(p n / 100) of them, by size
///
/// Always one of the values: nothing is interpolated.
///
/// @param values  at least one
/// @return        quantiles and mean [unit of the values]
/// Throws:    nothing
/// NaN:       does not occur
/// Accuracy:  quantiles exact; the mean that of the sum
/// Source:    inverse of the empirical distribution
Interval interval_of(std::vector<double> values);

/// One step over all draws.
struct SimulatedStep {
  std::string sheet;                 ///< id
  Interval minutes;                  ///< all zones, with the change [min]
  Interval sheets_used;              ///< all zones
  std::optional<Share> paper_short;  ///< of the draws that use more than is on hand; none: no limit

  friend bool operator==(const SimulatedStep&, const SimulatedStep&) = default;
};

/// One zone on a coat over all draws, after the last step.
struct SimulatedZone {
  std::string zone;
  Interval film_left_um;  ///< above the deepest scratch, on the mean of the zone [um]
  Interval thinnest_um;  ///< the same at the spot where least is left [um]; below 0: sanded through
  Share cut_through;     ///< of the draws in which some spot ends with less than the reserve
  Share over_budget;  ///< of the draws in which the zone goes deeper than the plan's budget for it

  friend bool operator==(const SimulatedZone&, const SimulatedZone&) = default;
};

/// A plan over all draws. Shares have their exact 90 % interval.
struct Simulation {
  std::int64_t draws = 0;  ///< that were made; fewer than asked for where they were stopped
  std::uint64_t seed = 0;
  Interval minutes;  ///< all steps, and what comes before the first [min]
  Interval sheets;   ///< all steps
  std::vector<SimulatedStep> steps;
  std::vector<SimulatedZone> zones;  ///< in the order of the job; empty on a solid

  friend bool operator==(const Simulation&, const Simulation&) = default;
};

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/risk/work/simulation.hpp"
#endif
