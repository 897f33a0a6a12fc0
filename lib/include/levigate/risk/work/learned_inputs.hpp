// The inputs of a draw where a shop is known: its pace in place of the bands that the pace stands for.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/work/shop_belief.hpp"
#include "levigate/plan/factors.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/knobs.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/philox.hpp"
#include "levigate/risk/work/draw.hpp"
#include "levigate/risk/work/pace.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The minutes of a step as a pace has them, for what the draw has to remove.
struct PacedMinutes {
  std::vector<std::vector<double>> per_um;  ///< of each step in each zone [min/um]

  double operator()(std::size_t step, const std::vector<Effort>& zones, const Rules& rules) const {
    double sanding = 0;
    for (std::size_t i = 0; i < zones.size(); ++i) sanding += zones[i].removal_um * per_um[step][i];
    return with_change(sanding, rules);
  }
};

/// Numbers that scratches hang on: of a backing, and of all of them.
inline constexpr std::string_view scratch_quantities_of_backing[] = {"tip_spread", "modulus_mpa"};
inline constexpr std::string_view scratch_quantities_of_all[] = {"hardness_mpa", "flank_deg",
                                                                 "packing"};

/// Draws the scratch factors of sheets that were learned of.
class ScratchDraws {
 public:
  ScratchDraws(const Shop& shop, const Setup& setup) : draws_(scratch_belief(shop)) {
    for (const Sheet& sheet : setup.stack.sheets) {
      const LearnedPair* row =
          find_pair(shop.scratches, setup.job.coating.name, learned_name(sheet));
      const bool learned = row && row->learned.observations > 0;
      rows_.push_back(learned ? std::optional(static_cast<std::size_t>(row - shop.scratches.data()))
                              : std::nullopt);
      if (learned) backings_.insert("backing " + sheet.backing.name);
    }
  }

  /// Whether what was learned stands for an input: of a backing, where its scratches were; of all backings, where all were.
  bool stands_for(const Knob& knob) const {
    const auto among = [&](const auto& names) {
      return std::find(std::begin(names), std::end(names), knob.quantity) != std::end(names);
    };
    if (backings_.contains(knob.subject)) return among(scratch_quantities_of_backing);
    const bool all =
        std::all_of(rows_.begin(), rows_.end(), [](const auto& row) { return row.has_value(); });
    return all && (knob.subject == "model" || knob.subject.starts_with("coating ")) &&
           among(scratch_quantities_of_all);
  }

  void operator()(Factors& factors, std::uint64_t seed, std::uint32_t draw) const {
    Stream stream(seed, stream_named("scratches"), draw);
    const DrawnBelief drawn = draws_(stream);
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      if (rows_[i]) factors.sheets[i].scratch = std::exp(drawn.values[*rows_[i]]);
    }
  }

 private:
  BeliefDraws draws_;
  std::vector<std::optional<std::size_t>> rows_;  // of each sheet
  std::set<std::string> backings_;
};

/// Whether a shop tells anything of the pace; else the bands of the profiles do.
inline bool tells_pace(const Shop& shop) {
  const Shop untaught;
  return !shop.rates.empty() || shop.person != untaught.person ||
         shop.minutes_noise != untaught.minutes_noise;
}

/// Draws learned scratches from a shop that tells nothing of the pace, and all else over its bands.
class ScratchedInputs {
 public:
  ScratchedInputs(const Setup& setup, const Shop& shop, bool bands)
      : scratches_(shop, setup),
        others_(setup, [&](const Knob& knob) { return bands && !scratches_.stands_for(knob); }) {}

  WorkedMinutes operator()(Setup& setup, std::uint64_t seed, std::uint32_t draw) const {
    setup.factors.sheets.resize(setup.stack.sheets.size());
    scratches_(setup.factors, seed, draw);
    return others_(setup, seed, draw);
  }

 private:
  ScratchDraws scratches_;
  DrawnInputs others_;
};

/// Draws the pace and learned scratches from a shop, and what they do not stand for over its bands.
class LearnedInputs {
 public:
  /// Without bands, inputs that these do not stand for are as they are given.
  LearnedInputs(const Setup& setup, const Shop& shop, PaceDraws pace, bool bands)
      : scratches_(shop, setup),
        others_(setup,
                [&](const Knob& knob) {
                  return bands && knob.kind != Input::pace && !scratches_.stands_for(knob);
                }),
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
      setup.factors.sheets[i].hand_rate = held(pace.hand_rate_factor[i]);
    }
    scratches_(setup.factors, seed, draw);
    return {std::move(pace.minutes_per_um)};
  }

 private:
  ScratchDraws scratches_;
  DrawnInputs others_;
  PaceDraws pace_;
};

}  // namespace detail

}  // namespace levigate
