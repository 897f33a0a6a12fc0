// How the inputs of a plan are drawn: each over its band, and the film of a zone over what its readings leave open.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/detail/normal.hpp"
#include "levigate/film/film.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/knobs.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/philox.hpp"
#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

/// An input drawn over its band. Its value is the median: half of the draws lie between low and value, evenly in the logarithm,
/// half between value and high. Where low is not above zero they lie evenly in the number itself; an end that is not finite is
/// not gone towards.
///
/// @param input    value and band, low <= value <= high
/// @param uniform  above 0 and below 1 (dimensionless)
/// @return         the input [unit of the input], growing with `uniform`
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  1e-14 relative on a band of up to a factor of 1000
/// Source:    that a band is a whole range with the value as its median: assumption
inline double drawn(const Sourced& input, double uniform) {
  const bool above = uniform > 0.5;
  const double end = above ? input.high : input.low;
  if (end == input.value || !std::isfinite(end) || !std::isfinite(input.value)) {
    return std::isnan(uniform) ? uniform : input.value;
  }
  const double part = std::abs(2.0 * uniform - 1.0);  // of the way from the value to the end
  if (input.low <= 0.0) return std::lerp(input.value, end, part);
  return input.value * std::pow(end / input.value, part);
}

namespace detail {

/// The minutes of a step as they are worked out.
struct WorkedMinutes {
  double operator()(std::size_t, const std::vector<Effort>& step, const Rules& rules) const {
    return step_minutes(step, rules);
  }
};

/// Draws the inputs of a setup over their bands, each from a stream of its own name.
class DrawnInputs {
 public:
  /// Inputs for which `drawn` does not hold stay as they are.
  template <typename Drawn>
  DrawnInputs(const Setup& setup, Drawn drawn) {
    for (Knob& knob : knobs(setup)) {
      if (knob.kind == Input::chosen || knob.input.low == knob.input.high || !drawn(knob)) continue;
      const std::uint64_t stream = stream_named(knob.subject + ", " + knob.quantity);
      inputs_.emplace_back(std::move(knob), stream);
    }
  }

  explicit DrawnInputs(const Setup& setup) : DrawnInputs(setup, [](const Knob&) { return true; }) {}

  /// Sets every input to its value in a draw. Returns how minutes come of it.
  WorkedMinutes operator()(Setup& setup, std::uint64_t seed, std::uint32_t draw) const {
    for (const auto& [knob, stream] : inputs_) {
      knob.set(setup, drawn(knob.input, Stream(seed, stream, draw).uniform()));
    }
    return {};
  }

 private:
  std::vector<std::pair<Knob, std::uint64_t>> inputs_;
};

/// Leaves the inputs as they are.
struct GivenInputs {
  WorkedMinutes operator()(Setup&, std::uint64_t, std::uint32_t) const { return {}; }
};

}  // namespace detail

/// The film of a zone as it may really be: its mean from N(mean, mean_se), its spread from N(sd, sd_se) cut off at zero.
///
/// @param film    as estimated [um]
/// @param stream  two numbers are taken from it
/// @return        the film [um], its mean and spread known
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  that of the normal quantile
/// Source:    normal sampling theory, as film_from_readings()
inline Film drawn_film(const Film& film, Stream stream) {
  const double mean_um = film.mean_um + film.mean_se_um * stream.normal();
  const double uniform = stream.uniform();
  double sd_um = film.sd_um;
  if (film.sd_se_um > 0.0) {
    const double kept = detail::normal_tail(-film.sd_um / film.sd_se_um);
    sd_um = std::max(0.0, sd_um + film.sd_se_um * detail::normal_quantile(kept * (1.0 - uniform)));
  }
  return {mean_um, sd_um};
}

}  // namespace levigate
