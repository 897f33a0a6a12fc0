// What a simulation tells: how minutes, sheets and film may turn out, and how often a limit is passed.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/risk/share.hpp"

namespace levigate::inline v0 {

/// How a number came out over all draws.
struct Interval {
  double p10 = 0;
  double p50 = 0;
  double p90 = 0;
  double mean = 0;

  friend bool operator==(const Interval&, const Interval&) = default;
};

template <std::same_as<Interval> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Interval", "How a number came out over all draws; each quantile is the number of one of them.",
    member<&Value::p10>("p10", "least that one draw in ten does not exceed"),
    member<&Value::p50>("p50", "the same for one in two"),
    member<&Value::p90>("p90", "the same for nine in ten"), member<&Value::mean>("mean", "of all"));

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

/// Minutes of two sequences over the same draws, with going back for marks.
struct PairedMinutes {
  Interval first;
  Interval second;
  Interval more;
  Share slower;

  friend bool operator==(const PairedMinutes&, const PairedMinutes&) = default;
};

template <std::same_as<PairedMinutes> Value>
inline constexpr auto described<Value> = describe<Value>(
    "PairedMinutes", "Minutes of two sequences over the same draws, with going back for marks.",
    member<&Value::first>("first", "of the first"),
    member<&Value::second>("second", "of the other"),
    member<&Value::more>("more", "that the first takes over the other, draw by draw"),
    member<&Value::slower>("slower", "of the draws in which the first takes longer"));

/// What a glossmeter reads in one zone after one step, over all draws.
struct SimulatedReading {
  std::string zone;
  Interval reading_20_gu;
  Interval reading_60_gu;
  Interval reading_85_gu;

  friend bool operator==(const SimulatedReading&, const SimulatedReading&) = default;
};

template <std::same_as<SimulatedReading> Value>
inline constexpr auto described<Value> =
    describe<Value>("SimulatedReading",
                    "What a glossmeter reads in one zone after one step, over all draws. It lies "
                    "across the grooves in half of them, along in the others.",
                    member<&Value::zone>("zone", "its name"),
                    member<&Value::reading_20_gu>("reading_20_gu", "at 20 degrees"),
                    member<&Value::reading_60_gu>("reading_60_gu", "at 60 degrees"),
                    member<&Value::reading_85_gu>("reading_85_gu", "at 85 degrees"));

/// One step over all draws.
struct SimulatedStep {
  std::string sheet;
  Interval minutes;
  Interval sheets_used;
  std::optional<Share> paper_short;
  std::vector<SimulatedReading> zones;

  friend bool operator==(const SimulatedStep&, const SimulatedStep&) = default;
};

template <std::same_as<SimulatedStep> Value>
inline constexpr auto described<Value> = describe<Value>(
    "SimulatedStep", "One step over all draws.", member<&Value::sheet>("sheet", "its id"),
    member<&Value::minutes>("minutes", "all zones, with the change"),
    member<&Value::sheets_used>("sheets_used", "sheets used up in all zones"),
    member<&Value::paper_short>("paper_short",
                                "of the draws that use more than is on hand; none without a limit"),
    member<&Value::zones>("zones", "what a glossmeter reads in each, in the order of the job"));

/// One zone on a coat over all draws, after the last step.
struct SimulatedZone {
  std::string zone;
  Interval film_left_um;
  Interval thinnest_um;
  Share cut_through;
  Share over_budget;

  friend bool operator==(const SimulatedZone&, const SimulatedZone&) = default;
};

template <std::same_as<SimulatedZone> Value>
inline constexpr auto described<Value> = describe<Value>(
    "SimulatedZone", "One zone on a coat over all draws, after the last step.",
    member<&Value::zone>("zone", "its name"),
    member<&Value::film_left_um>("film_left_um",
                                 "above the deepest scratch, on the mean of the zone"),
    member<&Value::thinnest_um>(
        "thinnest_um", "the same at the spot where least is left; below 0 it is sanded through"),
    member<&Value::cut_through>("cut_through",
                                "of the draws in which some spot ends with less than the reserve"),
    member<&Value::over_budget>(
        "over_budget", "of the draws in which it goes deeper than the plan's budget for it"));

/// A plan over all draws. Shares have their exact 90 % interval.
struct Simulation {
  std::int64_t draws = 0;
  std::uint64_t seed = 0;
  Interval minutes;
  Interval sheets;
  std::vector<SimulatedStep> steps;
  std::vector<SimulatedZone> zones;
  std::optional<PairedMinutes> before_learning{};

  friend bool operator==(const Simulation&, const Simulation&) = default;
};

template <std::same_as<Simulation> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Simulation", "A plan worked out many times over, with every uncertain number drawn anew.",
    member<&Value::draws>("draws", at_least(1),
                          "that count; fewer than asked for where they were stopped, or left out"),
    member<&Value::seed>("seed", "of the random numbers; the same seed gives the same figures"),
    member<&Value::minutes>("minutes", "all steps, and what comes before the first"),
    member<&Value::sheets>("sheets", "all steps"), member<&Value::steps>("steps", "in order"),
    member<&Value::zones>("zones", "in the order of the job; empty on a solid"),
    member<&Value::before_learning>(
        "before_learning",
        "the sequence of the plan's change against the plan; none where it breaks a rule")
        .optional());

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/risk/work/simulation.hpp"
#endif
