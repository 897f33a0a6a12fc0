// The inputs of a draw where a shop is known: its pace in place of the bands that the pace stands for.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/knobs.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/work/draw.hpp"
#include "levigate/risk/work/pace.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The minutes of a step as a pace has them.
struct PacedMinutes {
  std::vector<double> sanding;  ///< of each step [min]

  double operator()(std::size_t step, const std::vector<Effort>&, const Rules& rules) const {
    return with_change(sanding[step], rules);
  }
};

/// Draws the pace from a shop, and what it does not stand for over its bands.
class LearnedInputs {
 public:
  /// Without bands, inputs that the pace does not stand for are as they are given.
  LearnedInputs(const Setup& setup, PaceDraws pace, bool bands)
      : others_(setup, [&](const Knob& knob) { return bands && knob.kind != Input::pace; }),
        pace_(std::move(pace)) {}

  /// Sets inputs, duty_factor and rate_factor to their values in a draw. Returns how minutes come of it.
  PacedMinutes operator()(Setup& setup, std::uint64_t seed, std::uint32_t draw) const {
    others_(setup, seed, draw);
    DrawnPace pace = pace_(seed, draw);
    // What is left of the pace's use in a setup: paper, and work on defects. Validity ends at factors of 100.
    const auto held = [](double factor) { return std::clamp(factor, 0.01, 100.0); };
    setup.factors.duty = held(pace.duty_factor);
    setup.factors.sheets.resize(setup.stack.sheets.size());
    for (std::size_t i = 0; i < setup.stack.sheets.size(); ++i) {
      setup.factors.sheets[i].rate = held(pace.rate_factor[i]);
    }
    return {std::move(pace.minutes)};
  }

 private:
  DrawnInputs others_;
  PaceDraws pace_;
};

}  // namespace detail

}  // namespace levigate
