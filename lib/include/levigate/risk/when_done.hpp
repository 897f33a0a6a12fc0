// When a job is done, from its journal: the pace so far, the step under way, and what is left of the day and of the paper.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/describe.hpp"
#include "levigate/error.hpp"
#include "levigate/journal/report.hpp"
#include "levigate/plan/cure_wait.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/risk/simulate.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/stack/finding.hpp"

namespace levigate::inline v0 {

/// The step that the journal began and did not end.
struct StepUnderWay {
  std::string sheet;
  double spent_minutes = 0;
  Interval minutes;

  friend bool operator==(const StepUnderWay&, const StepUnderWay&) = default;
};

template <std::same_as<StepUnderWay> Value>
inline constexpr auto described<Value> = describe<Value>(
    "StepUnderWay", "The step that the journal began and did not end.",
    member<&Value::sheet>("sheet", "its id"),
    member<&Value::spent_minutes>("spent_minutes", at_least(0),
                                  "worked so far, as the journal says"),
    member<&Value::minutes>("minutes", "that it takes yet, all zones, with the change"));

/// What is left of one sheet.
struct PaperLeft {
  std::string sheet;
  double used = 0;
  std::optional<double> on_hand{};
  double needed = 0;

  friend bool operator==(const PaperLeft&, const PaperLeft&) = default;
};

template <std::same_as<PaperLeft> Value>
inline constexpr auto described<Value> = describe<Value>(
    "PaperLeft", "What is left of one sheet, and what the rest of the job uses of it.",
    member<&Value::sheet>("sheet", "its id"),
    member<&Value::used>("used", at_least(0), "sheets so far, by the steps that ended"),
    member<&Value::on_hand>("on_hand", at_least(0), "sheets left; none: no limit"),
    member<&Value::needed>("needed", at_least(0), "sheets that the rest uses, median"));

/// What one asks in the middle of a day.
struct WhenDone {
  std::string job;
  bool done = false;
  std::vector<LearnedLine> pace;
  std::optional<StepUnderWay> step;
  std::vector<std::string> sheets;
  std::optional<Interval> minutes;
  std::optional<CureWait> wait{};
  std::optional<double> rest_h{};
  std::vector<PaperLeft> paper;
  std::optional<Why> why;
  std::vector<Finding> findings;
  std::int64_t draws = 0;
  std::uint64_t seed = 0;

  friend bool operator==(const WhenDone&, const WhenDone&) = default;
};

template <std::same_as<WhenDone> Value>
inline constexpr auto described<Value> = describe<Value>(
    "WhenDone", "What is left of a job: minutes, steps and paper, at the pace of its journal.",
    member<&Value::job>("job", "its name"),
    member<&Value::done>("done", "whether every zone meets the target and no mark is open"),
    member<&Value::pace>("pace", "what the steps so far show of the minutes; empty: nothing yet"),
    member<&Value::step>("step", "under way; none where no step is begun"),
    member<&Value::sheets>("sheets", "ids of the steps left, that under way first"),
    member<&Value::minutes>("minutes", "all that is left; none where there is no plan"),
    member<&Value::wait>("wait", "how long the coat must stand before; none where it is cured"),
    member<&Value::rest_h>("rest_h", at_least(0),
                           "to wait beside the minutes after levelling; none where nothing comes "
                           "back, or the step after the rest was begun"),
    member<&Value::paper>("paper", "of the sheets that were used or come yet"),
    member<&Value::why>("why", "why there is no plan of the rest, where there is none"),
    member<&Value::findings>("findings", "what to know of the journal"),
    member<&Value::draws>("draws", at_least(0), "that the minutes come from"),
    member<&Value::seed>("seed", "of the random numbers"));

/// When a job is done: plan() of what is left, simulate()d at the pace that learn() takes from its journal.
///
/// A step that was begun and not ended is under way. Its minutes so far are those that its last 'step begun' tells, else 0. Draws in
/// which it was done by then are left out: the longer it takes, the slower the rest. Where it is not the first of the plan, the plan
/// of what follows it comes after it.
///
/// @param bench    job, stack, shop and journal
/// @param options  of the simulation; its spent_minutes are those of the journal
/// @return         pace, step, minutes with P10 to P90, paper
/// Throws:    as learn(), plan(), simulate(); BadInput where fewer than 10 draws take as long as the step under way does already
/// NaN:       does not occur
/// Accuracy:  that of quantiles of so many draws
/// Source:    learn(), plan(), simulate()
WhenDone when_done(const Bench& bench, const SimulateOptions& options = {});

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/risk/work/when_done.hpp"
#endif
