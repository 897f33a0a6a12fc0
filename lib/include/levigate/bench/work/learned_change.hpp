// How a plan differs from the one without what was learned, and why.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/bench/work/laid.hpp"
#include "levigate/fact.hpp"
#include "levigate/plan/change.hpp"
#include "levigate/plan/factors.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/findings.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/sun.hpp"
#include "levigate/plan/work/sunlight.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The sequence that a plan takes; none where there is no plan, or nobody knows how the job stands.
inline std::optional<Sequence> chosen(const Laid& laid) {
  if (laid.no_present) return std::nullopt;
  const Workings& workings = workings_now(laid);
  Sun sun(workings);
  const std::vector<Sequence> found = sequences_of(workings, sun);
  if (found.empty()) return std::nullopt;
  return best(found, workings.job.prefer);
}

inline bool same_step(const Sequence& a, const Sequence& b, std::size_t at) {
  return a.sheets[at] == b.sheets[at] && a.overcuts[at] == b.overcuts[at];
}

/// The first step that differs: the number of steps of the shorter one where it is the beginning of the other; none where they are
/// the same.
inline std::optional<std::size_t> first_difference(const Sequence& a, const Sequence& b) {
  const std::size_t shorter = std::min(a.steps(), b.steps());
  for (std::size_t at = 0; at < shorter; ++at) {
    if (!same_step(a, b, at)) return at;
  }
  return a.steps() == b.steps() ? std::nullopt : std::optional(shorter);
}

/// Why one sequence that keeps the rules is preferred to another: what best() compares them by, in its order.
inline ChangeReason reason_against(const Sequence& old, const Sequence& now, Objective objective) {
  const auto close_by = [&] {
    const std::int64_t least = now.expected_milliseconds();
    return least + least / 100 * equal_minutes_percent;
  };
  if (objective == Objective::minutes) {
    if (old.expected_milliseconds() > close_by()) return ChangeReason::minutes;
    if (old.fragile > now.fragile) return ChangeReason::fragile;
  }
  const bool film_first = objective == Objective::minutes || objective == Objective::film;
  if (film_first && old.film > now.film) return ChangeReason::film;
  if (objective == Objective::cost && old.cost > now.cost) return ChangeReason::cost;
  if (objective == Objective::steps && old.steps() > now.steps()) return ChangeReason::steps;
  if (old.expected_milliseconds() > now.expected_milliseconds()) return ChangeReason::minutes;
  if (old.film > now.film) return ChangeReason::film;
  if (old.cost > now.cost) return ChangeReason::cost;
  if (old.fragile > now.fragile) return ChangeReason::fragile;
  if (old.steps() > now.steps()) return ChangeReason::steps;
  return ChangeReason::tie;
}

/// A learned number with what planning takes where it is the only one.
struct LoneFactor {
  LearnedCause cause;
  Factors factors;
};

/// What was learned of a job and a stack, number by number. One that says what is computed is none.
inline std::vector<LoneFactor> lone_factors(const Factors& all, const Stack& stack) {
  std::vector<LoneFactor> result;
  if (all.duty != 1.0) {
    result.push_back({{LearnedKind::hand, "", all.duty, {}, false}, {.duty = all.duty}});
  }
  const auto of_sheets = [&](LearnedKind kind, double SheetFactors::*factor) {
    for (std::size_t i = 0; i < all.sheets.size(); ++i) {
      const std::string backing = learned_name(stack.sheets[i]);
      const auto known = std::find_if(result.begin(), result.end(), [&](const LoneFactor& one) {
        return one.cause.kind == kind && one.cause.backing == backing;
      });
      if (all.sheets[i].*factor == 1.0) continue;
      LoneFactor& one = known != result.end()
                            ? *known
                            : result.emplace_back(LoneFactor{
                                  {kind, backing, all.sheets[i].*factor, {}, false},
                                  {.sheets = std::vector<SheetFactors>(all.sheets.size())}});
      one.factors.sheets[i].*factor = all.sheets[i].*factor;
    }
  };
  of_sheets(LearnedKind::rate, &SheetFactors::rate);
  of_sheets(LearnedKind::scratch, &SheetFactors::scratch);
  if (all.film_offset_um != 0.0 || all.film_se_um != 0.0) {
    result.push_back({{LearnedKind::film, "", 1.0, all.film_offset_um, false},
                      {.film_offset_um = all.film_offset_um, .film_se_um = all.film_se_um}});
  }
  return result;
}

/// Compares plans of one bench with and without what its shop knows.
class LearnedChanges {
 public:
  LearnedChanges(const Laid& laid, const Plan& plan)
      : laid_(laid), plan_(plan), workings_(workings_now(laid)) {}

  /// None where nothing was learned of this work, or it changes nothing.
  std::optional<LearnedChange> told() const {
    if (!laid_.shop) return std::nullopt;
    const Factors all = factors_of(*laid_.shop, laid_.job, laid_.stack);
    std::vector<LoneFactor> numbers = lone_factors(all, laid_.stack);
    if (numbers.empty()) return std::nullopt;
    const std::optional<Sequence> before = with({});
    if (!before && !plan_.found) return std::nullopt;
    std::optional<std::size_t> at = 0;
    if (before && plan_.found) at = first_difference(*before, plan_.exact);
    if (!at) return std::nullopt;
    LearnedChange change;
    change.step = *at + 1;
    if (plan_.found && *at < plan_.exact.steps()) change.now = step_of(plan_.exact, *at);
    if (before) {
      for (std::size_t i = 0; i < before->steps(); ++i)
        change.before.push_back(step_of(*before, i));
      if (*at < before->steps()) change.was = change.before[*at];
      judge(*before, change);
    } else {
      change.reason = ChangeReason::no_plan_before;
    }
    for (LoneFactor& one : numbers) {
      const std::optional<Sequence> alone = with(one.factors);
      one.cause.alone = changes_alike(alone, *at);
      change.learned.push_back(std::move(one.cause));
    }
    return change;
  }

 private:
  std::optional<Sequence> with(const Factors& factors) const {
    return chosen(
        laid_with(laid_.job, laid_.stack, std::nullopt, laid_.journal, laid_.lines, {}, factors));
  }

  ChosenStep step_of(const Sequence& sequence, std::size_t at) const {
    const std::size_t sheet = sequence.sheets[at];
    return {laid_.stack.sheets[sheet].id, workings_.grades[sheet].label,
            sequence.overcuts[at] / *workings_.job.rules.overcut};
  }

  /// What the sequence without what was learned is worth now.
  void judge(const Sequence& before, LearnedChange& change) const {
    Sun sun(workings_);
    const Sequence old = summed_in_sun(workings_, sun, before.sheets, before.overcuts);
    change.minutes = static_cast<double>(old.milliseconds) / ms_per_minute;
    change.back_minutes = static_cast<double>(old.back_milliseconds) / ms_per_minute;
    for (Finding& finding : sequence_findings(workings_, old)) {
      if (finding.severity == Severity::error) change.findings.push_back(std::move(finding));
    }
    if (plan_.found) {
      change.more_minutes =
          change.minutes + change.back_minutes - plan_.total.minutes - plan_.total.back_minutes;
    }
    change.reason = !change.findings.empty() || !plan_.found
                        ? ChangeReason::blocked
                        : reason_against(old, plan_.exact, workings_.job.prefer);
    if (plan_.found) more_sheets(change);
  }

  /// One more of each sheet that runs out; and as many as the sequence lacks, where that is more.
  void more_sheets(LearnedChange& change) const {
    for (const Finding& finding : change.findings) {
      if (finding.kind != FindingKind::paper_short) continue;
      const double lacking = std::ceil(figure(finding.numbers, "sheets_needed").value_or(0.0) -
                                       figure(finding.numbers, "on_hand").value_or(0.0));
      const std::size_t sheet = sheet_index(laid_.stack, finding.sheets.front());
      more_sheets(change, sheet, 1.0);
      if (lacking > 1.0) more_sheets(change, sheet, lacking);
    }
  }

  void more_sheets(LearnedChange& change, std::size_t sheet, double more) const {
    Stack stack = laid_.stack;
    *stack.sheets[sheet].on_hand += more;
    const std::optional<Sequence> better =
        chosen(laid_out(laid_.job, stack, laid_.shop, laid_.journal, laid_.lines));
    const std::int64_t less =
        better ? plan_.exact.expected_milliseconds() - better->expected_milliseconds() : 0;
    change.more_sheets.push_back(
        {stack.sheets[sheet].id, workings_.grades[sheet].label, more,
         static_cast<double>(std::max<std::int64_t>(0, less)) / ms_per_minute});
  }

  /// Whether a sequence begins as the plan does, up to the first step that was changed.
  bool changes_alike(const std::optional<Sequence>& alone, std::size_t at) const {
    if (!alone || !plan_.found) return alone.has_value() == plan_.found;
    const std::optional<std::size_t> differs = first_difference(*alone, plan_.exact);
    return !differs || *differs > at;
  }

  const Laid& laid_;
  const Plan& plan_;
  const Workings& workings_;
};

}  // namespace detail

}  // namespace levigate
