// How the inputs of a plan are drawn: each over its band, and the film of a zone over what its readings leave open.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/detail/chi_square.hpp"
#include "levigate/film/common_errors.hpp"
#include "levigate/film/film.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/knobs.hpp"
#include "levigate/plan/work/levelling_of.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/philox.hpp"
#include "levigate/sourced.hpp"
#include "levigate/surface/peel.hpp"

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

/// Numbers of a block that are of the hand which holds it.
inline constexpr std::string_view hand_quantities[] = {"force_n", "speed_m_s", "duty"};

/// The name of the stream that an input is drawn from: its own. One person holds all blocks, so that what is of the hand has one
/// stream for all of them.
inline std::string stream_name(const Knob& knob) {
  const bool of_hand = knob.subject.starts_with("block ") &&
                       std::find(std::begin(hand_quantities), std::end(hand_quantities),
                                 knob.quantity) != std::end(hand_quantities);
  return (of_hand ? "hand" : knob.subject) + ", " + knob.quantity;
}

/// Draws the inputs of a setup over their bands, each from its stream.
class DrawnInputs {
 public:
  /// Inputs for which `drawn` does not hold stay as they are.
  template <typename Drawn>
  DrawnInputs(const Setup& setup, Drawn drawn) : compounds_(buffed(setup)) {
    for (Knob& knob : knobs(setup)) {
      if (knob.kind == Input::chosen || knob.kind == Input::typed) continue;
      if (knob.input.low == knob.input.high || !drawn(knob)) continue;
      const std::uint64_t stream = stream_named(stream_name(knob));
      inputs_.emplace_back(std::move(knob), stream);
    }
  }

  explicit DrawnInputs(const Setup& setup) : DrawnInputs(setup, [](const Knob&) { return true; }) {}

  /// Sets every input to its value in a draw. Returns how minutes come of it.
  WorkedMinutes operator()(Setup& setup, std::uint64_t seed, std::uint32_t draw) const {
    for (const auto& [knob, stream] : inputs_) {
      knob.set(setup, drawn(knob.input, Stream(seed, stream, draw).uniform()));
    }
    settle(setup, compounds_);  // by the size effect of this draw
    return {};
  }

 private:
  std::vector<std::pair<Knob, std::uint64_t>> inputs_;
  std::vector<std::size_t> compounds_;
};

/// Leaves the inputs as they are.
struct GivenInputs {
  WorkedMinutes operator()(Setup&, std::uint64_t, std::uint32_t) const { return {}; }
};

}  // namespace detail

/// The film of a zone as it may really be. Its spread is sigma and its mean is mean' of CommonErrors.
///
/// @param film    as estimated [um]
/// @param stream  two numbers are taken from it: of the mean's error, and the share of chi-square numbers below that of sigma
/// @return        the film [um], its mean and spread known
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  that of the quantiles, 1e-10 relative
/// Source:    normal sampling theory, as film_from_readings()
inline Film drawn_film(const Film& film, Stream stream) {
  const detail::FilmSampling law = detail::film_sampling(film.sd_um, film.mean_se_um, film.sd_se_um,
                                                         static_cast<double>(film.readings));
  const double normal = stream.normal();
  double sigma_um = film.sd_um;
  if (std::isfinite(law.df)) {
    sigma_um =
        law.scale_um * std::sqrt(law.df / detail::chi_square_quantile(stream.uniform(), law.df));
  }
  return {film.mean_um + law.mean_error_um(sigma_um) * normal, sigma_um};
}

/// The orange peel of a zone as it may really be, where the first step levels it.
///
///   peel peel_factor^N(0, 1)
///
/// @param zone     as told
/// @param peel_um  height that was told [um], 0 to 10 000
/// @param stream   one number is taken from it
/// @return        height, peak to valley [um], at most 10 000
/// Throws:    nothing
/// NaN:       NaN in, NaN out
/// Accuracy:  that of the normal quantile
/// Source:    that of peel_factor(); a log-normal law: assumption
inline double drawn_peel_um(const Zone& zone, double peel_um, Stream stream) {
  constexpr double most_um = 1e4;
  const double factor = peel_factor(zone.peel_how).value;
  return std::min(most_um, peel_um * std::pow(factor, stream.normal()));
}

namespace detail {

/// Draws the orange peel of every zone that the first step levels. Of a zone that was levelled since its film was read, the film that
/// is left is moved by what a drawn peel would have taken more or less.
inline void draw_peels(Job& job, std::uint64_t seed, std::uint32_t draw) {
  for (Zone& zone : job.zones) {
    const Stream stream(seed, stream_named("peel of " + zone.name), draw);
    if (has_peel_to_level(job, zone)) {
      zone.peel_um = drawn_peel_um(zone, zone.peel_um, stream);
    } else if (zone.levelled_peel_um > 0 && zone.film) {
      const double drawn_um = drawn_peel_um(zone, zone.levelled_peel_um, stream);
      set_levelled_peel(job, zone, drawn_um);
    }
  }
}

}  // namespace detail

}  // namespace levigate
