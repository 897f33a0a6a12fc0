// Two sequences on one bench, worked out with the same draws.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/plan/change.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/simulate_options.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/risk/work/crew.hpp"
#include "levigate/risk/work/draw.hpp"
#include "levigate/risk/work/drawn_bench.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A sequence of a bench, with its minutes and those of going back over them.
struct PairedSequence {
  Sequence sequence;
  double with_back = 1;  ///< minutes with going back over those as planned, at usual numbers
};

inline double with_back(double minutes, double back_minutes) {
  return minutes > 0.0 ? 1.0 + back_minutes / minutes : 1.0;
}

inline PairedSequence paired_sequence(const Workings& workings, const Plan& plan) {
  return {{.sheets = sheets_of(workings.stack, plan), .overcuts = overcuts_of(workings, plan)},
          with_back(plan.total.minutes, plan.total.back_minutes)};
}

/// The sequence that a plan's change was from; none where there is none, or it breaks a rule.
inline std::optional<PairedSequence> before_learning(const Workings& workings, const Plan& plan) {
  if (!plan.change || plan.change->before.empty() || !plan.change->findings.empty())
    return std::nullopt;
  PairedSequence result{{}, with_back(plan.change->minutes, plan.change->back_minutes)};
  for (const ChosenStep& step : plan.change->before) {
    result.sequence.sheets.push_back(sheet_index(workings.stack, step.sheet));
    result.sequence.overcuts.push_back(step.longer * *workings.job.rules.overcut);
  }
  return result;
}

/// Minutes of a sequence as the numbers of a draw have them.
template <typename MinutesOf>
double drawn_minutes(const Workings& workings, const Sequence& sequence,
                     const MinutesOf& minutes_of) {
  double minutes = workings.local_minutes[sequence.sheets.front()];
  for_each_step(
      workings, sequence, [&](std::optional<Before> before, std::size_t sheet, double overcut) {
        minutes += minutes_of(sheet, efforts(workings, before, sheet, overcut), workings.job.rules);
      });
  return minutes;
}

/// The minutes of two sequences. Each draw is made once, of the sheets of both, and both are worked out with it. A sheet that both take
/// has the same scatter in both. Going back takes its share of the minutes of a draw. `draws`: set to those done.
inline PairedMinutes paired_minutes(const Bench& bench, PairedSequence first, PairedSequence second,
                                    const SimulateOptions& options, std::int64_t& draws) {
  std::vector<std::size_t> sheets;
  for (Sequence* sequence : {&first.sequence, &second.sequence}) {
    for (std::size_t& sheet : sequence->sheets) {
      const auto known = std::find(sheets.begin(), sheets.end(), sheet);
      const auto at = static_cast<std::size_t>(known - sheets.begin());
      if (known == sheets.end()) sheets.push_back(sheet);
      sheet = at;
    }
  }
  const auto size = static_cast<std::size_t>(options.draws);
  std::vector<double> of_first(size), of_second(size), more(size);
  const auto run = [&](const Setup& setup, const auto& inputs) {
    const auto work = [&](std::int64_t draw) {
      const auto number = static_cast<std::uint32_t>(draw);
      const auto at = static_cast<std::size_t>(draw);
      Setup drawn = setup;
      const auto minutes_of = inputs(drawn, options.seed, number);
      draw_peels(drawn.job, options.seed, number);
      const Workings workings = workings_without_budgets(std::move(drawn));
      of_first[at] = drawn_minutes(workings, first.sequence, minutes_of) * first.with_back;
      of_second[at] = drawn_minutes(workings, second.sequence, minutes_of) * second.with_back;
      more[at] = of_first[at] - of_second[at];
    };
    return for_each_draw(options.draws, options.threads, options.progress, work);
  };
  draws = with_inputs(bench, sheets, options.bands, run);
  const auto done = static_cast<std::size_t>(draws);
  for (std::vector<double>* column : {&of_first, &of_second, &more}) column->resize(done);
  return {interval_of(of_first), interval_of(of_second), interval_of(more),
          share_of(more, [](double minutes) { return minutes > 0.0; })};
}

}  // namespace detail

}  // namespace levigate
