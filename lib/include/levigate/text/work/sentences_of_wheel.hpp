// Sentences on wheels and compounds.
#pragma once

#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/fact.hpp"
#include "levigate/text/work/facts.hpp"
#include "levigate/wheel/finding.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Whole numbers on the right side of a limit.
inline std::string at_least(double value) { return "at least " + fixed(std::ceil(value), 0); }

inline std::string at_most(double value) { return "at most " + fixed(std::floor(value), 0); }

/// What one second of standing still costs, without a full stop.
inline std::string still_text(double film_um, std::optional<double> rise_k) {
  return "One second of standing still takes " + fixed(film_um, film_um < 0.095 ? 3 : 2) +
         " um off" +
         (rise_k ? " and warms the spot by " + fixed(*rise_k, 0) + " degrees Celsius" : "");
}

/// The same as a sentence after another, where the numbers tell it.
inline std::string still_after(std::span<const Quantity> numbers) {
  const std::optional<double> film_um = figure(numbers, "still_film_um");
  return film_um ? ". " + still_text(*film_um, figure(numbers, "still_rise_k")) : "";
}

/// A machine that is faster at a point of its pad than a surface stands.
inline std::string machine_speed_text(std::span<const Named> about,
                                      std::span<const Quantity> numbers) {
  return "Machine '" + name_of(about, "machine") + "' reaches " +
         fixed(numbers, "surface_speed_m_s", 1) + " m/s at the pad. The limit of " +
         name_of(about, "surface") + " is " + fixed(numbers, "speed_high_m_s", 1) +
         " m/s. Set it to " + at_most(value_of(numbers, "rpm")) + " rpm";
}

/// A rim speed off the band of a surface.
inline std::string speed_text(std::span<const Named> about, std::span<const Quantity> numbers) {
  if (!name_of(about, "machine").empty()) return machine_speed_text(about, numbers);
  const bool slow = value_of(numbers, "surface_speed_m_s") < value_of(numbers, "speed_low_m_s");
  const auto bound = slow ? at_least : at_most;
  std::string text = "Wheel '" + name_of(about, "wheel") + "' runs at " +
                     fixed(numbers, "surface_speed_m_s", 1) + " m/s. The limits of " +
                     name_of(about, "surface") + " are " + fixed(numbers, "speed_low_m_s", 1) +
                     " to " + fixed(numbers, "speed_high_m_s", 1) + " m/s. Use ";
  if (const auto rpm = figure(numbers, "rpm")) text += bound(*rpm) + " rpm with this wheel, or ";
  return text + "a wheel of " + bound(value_of(numbers, "diameter_mm")) + " mm at this rpm";
}

/// A spot that gets too warm in one pass.
inline std::string dwell_text(std::span<const Named> about, std::span<const Quantity> numbers) {
  const std::string machine = name_of(about, "machine");
  return "A spot stays " + fixed(numbers, "dwell_s", 2) + " s under " +
         (machine.empty() ? "wheel '" + name_of(about, "wheel") : "machine '" + machine) +
         "' and warms by " + fixed(numbers, "rise_k", 1) + " K. The limit of " +
         name_of(about, "surface") + " is " + fixed(numbers, "rise_limit_k", 1) +
         " K, reached after " + fixed(numbers, "dwell_limit_s", 2) + " s. Feed " +
         at_least(1e3 * value_of(numbers, "least_feed_m_s")) + " mm/s, or press with less than " +
         fixed(numbers, "most_force_n", 1) + " N";
}

inline std::string sentence_of(const WheelFinding& finding) {
  const std::vector<Quantity>& numbers = finding.numbers;
  const std::string compound = "Compound '" + name_of(finding.about, "compound") + "'";
  switch (finding.kind) {
    case WheelFindingKind::wheel_too_slow:
    case WheelFindingKind::wheel_too_fast: return speed_text(finding.about, numbers);
    case WheelFindingKind::dwell_too_long: return dwell_text(finding.about, numbers);
    case WheelFindingKind::edge_pressure:
      return "On an edge of radius " + number_text(value_of(numbers, "radius_mm")) +
             " mm, wheel '" + name_of(finding.about, "wheel") + "' may press " +
             fixed(numbers, "factor", 1) +
             " times as hard as on the flat. It cuts faster by the same factor. Keep edges "
             "trailing and off the face";
    case WheelFindingKind::compound_too_coarse:
      return compound + " (" + size_text(named_at(finding.about, 0).size_um) +
             ") is not finer than the grain before it (" +
             size_text(value_of(numbers, "before_um")) + ")";
    case WheelFindingKind::scratch_too_deep:
      return compound + " takes out scratches of up to " + fixed(numbers, "reach_um", 2) +
             " um. The step before leaves scratches of " + fixed(numbers, "scratch_um", 2) + " um";
  }
  return "";
}

}  // namespace detail

}  // namespace levigate
