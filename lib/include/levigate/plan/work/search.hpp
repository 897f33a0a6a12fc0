// The exact search: which sheets, in which order. Everything here is integers, so that a tie is a tie and
// the answer is the same on every machine; the physics that makes the integers is in plan/work/ladder.hpp.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "levigate/plan/sequence.hpp"

namespace levigate::inline v0 {

/// What one step adds up to, in the integers of the search.
struct StepCost {
  std::int64_t milliseconds = 0;         ///< all zones, with the change
  std::int64_t cost = 0;                 ///< [1/100 cent]
  std::vector<std::int64_t> removal_pm;  ///< of each zone
};

/// A step to a finer sheet.
struct LadderStep {
  std::size_t to = 0;
  StepCost cost;
};

/// A sheet's place in a sequence: what it leaves, and where one may go from there.
struct Rung {
  std::vector<std::int64_t> scratch_pm;  ///< depth of its scratches in each zone
  std::vector<LadderStep> next;          ///< the steps allowed after it
};

/// Everything the search knows of a job and a stack. Sheets are numbered in the order of the stack.
/// A sheet that comes first has a rung of its own, as it does not touch the zones that are not levelled.
struct Ladder {
  std::vector<std::size_t> coarse_to_fine;  ///< all sheets; every step goes forward in it
  std::vector<bool> meets_target;           ///< of each sheet; the first such sheet ends a sequence
  std::vector<std::optional<StepCost>>
      first;                   ///< of each sheet as the first step; none: not allowed
  std::vector<Rung> as_first;  ///< of each sheet where it comes first
  std::vector<Rung> later;     ///< of each sheet after another
  std::vector<std::optional<std::int64_t>>
      budget_pm;  ///< depth that each zone can afford; none: no limit
};

namespace detail {

/// A sequence on its way: the sums so far, without the scratches of its last sheet.
struct PartialSequence {
  std::vector<std::size_t> sheets;
  std::int64_t milliseconds = 0;
  std::int64_t cost = 0;
  std::vector<std::int64_t> removed_pm;

  std::size_t steps() const noexcept { return sheets.size(); }
};

/// Whether `b` can be dropped for `a`, which ends on the same sheet: whatever follows, `a` is no worse in any sum,
/// and it wins the tie. Less removal alone does not win it, as another zone may be the worst in the end; so
/// there the number of steps and the order of the stack must speak for `a` too.
inline bool replaces(const PartialSequence& a, const PartialSequence& b) {
  if (a.milliseconds > b.milliseconds || a.cost > b.cost || a.steps() > b.steps()) {
    return false;
  }
  for (std::size_t zone = 0; zone < a.removed_pm.size(); ++zone) {
    if (a.removed_pm[zone] > b.removed_pm[zone]) return false;
  }
  return a.milliseconds < b.milliseconds || a.cost < b.cost || a.steps() < b.steps() ||
         a.sheets < b.sheets;
}

/// Keeps what no other replaces. In this order a sequence never stands behind one that it replaces, and
/// replacing is transitive, so one pass against those already kept is enough.
inline std::vector<PartialSequence> without_replaced(std::vector<PartialSequence> partials) {
  std::sort(partials.begin(), partials.end(),
            [](const PartialSequence& a, const PartialSequence& b) {
              return std::make_tuple(a.milliseconds, a.cost, a.steps(), std::cref(a.removed_pm),
                                     std::cref(a.sheets)) <
                     std::make_tuple(b.milliseconds, b.cost, b.steps(), std::cref(b.removed_pm),
                                     std::cref(b.sheets));
            });
  std::vector<PartialSequence> kept;
  for (PartialSequence& candidate : partials) {
    const bool needless = std::any_of(
        kept.begin(), kept.end(), [&](const PartialSequence& k) { return replaces(k, candidate); });
    if (!needless) kept.push_back(std::move(candidate));
  }
  return kept;
}

inline PartialSequence continued(const PartialSequence& partial, std::size_t sheet,
                                 const StepCost& step) {
  PartialSequence result = partial;
  result.sheets.push_back(sheet);
  result.milliseconds += step.milliseconds;
  result.cost += step.cost;
  for (std::size_t zone = 0; zone < step.removal_pm.size(); ++zone) {
    result.removed_pm[zone] += step.removal_pm[zone];
  }
  return result;
}

/// Depth reached in each zone: what was removed, and the scratches of the last sheet.
inline std::vector<std::int64_t> depth_pm(const Rung& rung, const PartialSequence& partial) {
  std::vector<std::int64_t> depth = partial.removed_pm;
  for (std::size_t zone = 0; zone < depth.size(); ++zone) depth[zone] += rung.scratch_pm[zone];
  return depth;
}

inline bool within_budget(const Ladder& ladder, const std::vector<std::int64_t>& depth) {
  for (std::size_t zone = 0; zone < depth.size(); ++zone) {
    if (ladder.budget_pm[zone] && depth[zone] > *ladder.budget_pm[zone]) return false;
  }
  return true;
}

}  // namespace detail

/// The film share of the zone that has used most of its budget, at these depths.
inline FilmShare worst_share(const std::vector<std::optional<std::int64_t>>& budget_pm,
                             const std::vector<std::int64_t>& depth_pm) {
  constexpr std::int64_t millimetre_pm = 1'000'000'000;
  FilmShare worst;
  for (std::size_t zone = 0; zone < depth_pm.size(); ++zone) {
    worst = std::max(worst, FilmShare{depth_pm[zone], budget_pm[zone].value_or(millimetre_pm)});
  }
  return worst;
}

namespace detail {

/// Drops every sequence that another equals or beats in minutes, film and cost, and in steps where they count; of equals
/// the one with fewer steps stays, then the one first in the order of the stack. Sorted by minutes.
inline std::vector<Sequence> front(std::vector<Sequence> sequences, bool count_steps) {
  const auto sums = [count_steps](const Sequence& s) {
    return std::make_tuple(s.milliseconds, s.film, s.cost, count_steps ? s.steps() : 0);
  };
  std::sort(sequences.begin(), sequences.end(), [&](const Sequence& a, const Sequence& b) {
    return std::make_tuple(sums(a), a.steps(), std::cref(a.sheets)) <
           std::make_tuple(sums(b), b.steps(), std::cref(b.sheets));
  });
  const auto no_worse = [&](const Sequence& a, const Sequence& b) {
    const auto [minutes_a, film_a, cost_a, steps_a] = sums(a);
    const auto [minutes_b, film_b, cost_b, steps_b] = sums(b);
    return minutes_a <= minutes_b && film_a <= film_b && cost_a <= cost_b && steps_a <= steps_b;
  };
  std::vector<Sequence> kept;
  for (Sequence& candidate : sequences) {
    const bool beaten = std::any_of(kept.begin(), kept.end(),
                                    [&](const Sequence& k) { return no_worse(k, candidate); });
    if (!beaten) kept.push_back(std::move(candidate));
  }
  return kept;
}

}  // namespace detail

/// Every sequence that keeps the rules of the ladder and that no other equals or beats in minutes, film, cost
/// and steps together; of equals, the one first in the order of the stack. Sorted by minutes. Empty where
/// no sequence keeps the rules.
///
/// Partial sequences go forward through the ladder and are kept while no other of the same rung replaces them, which
/// is exact: see detail::replaces. Complexity: steps of the ladder times the square of those kept at a rung.
inline std::vector<Sequence> search(const Ladder& ladder) {
  using detail::PartialSequence;
  std::vector<std::vector<PartialSequence>> arrived(ladder.first.size());
  std::vector<Sequence> complete;
  const auto go_on = [&](std::size_t sheet, const Rung& rung,
                         std::vector<PartialSequence> partials) {
    std::erase_if(partials, [&](const PartialSequence& partial) {
      return !detail::within_budget(ladder, detail::depth_pm(rung, partial));
    });
    for (PartialSequence& partial : detail::without_replaced(std::move(partials))) {
      if (ladder.meets_target[sheet]) {
        std::vector<std::int64_t> depth = detail::depth_pm(rung, partial);
        const FilmShare film = worst_share(ladder.budget_pm, depth);
        complete.push_back({std::move(partial.sheets), partial.milliseconds, partial.cost,
                            std::move(depth), film});
        continue;
      }
      for (const LadderStep& step : rung.next) {
        arrived[step.to].push_back(detail::continued(partial, step.to, step.cost));
      }
    }
  };
  const PartialSequence nothing{{}, 0, 0, std::vector<std::int64_t>(ladder.budget_pm.size(), 0)};
  for (const std::size_t sheet : ladder.coarse_to_fine) {
    if (ladder.first[sheet]) {
      go_on(sheet, ladder.as_first[sheet],
            {detail::continued(nothing, sheet, *ladder.first[sheet])});
    }
    go_on(sheet, ladder.later[sheet], std::move(arrived[sheet]));
  }
  return detail::front(std::move(complete), true);
}

/// The trade-off: of the sequences found, those that no other equals or beats in minutes, film and cost together;
/// of equals the one with fewer steps, then the one first in the order of the stack. Sorted by minutes.
inline std::vector<Sequence> tradeoff(std::vector<Sequence> found) {
  return detail::front(std::move(found), false);
}

/// The best of the sequences found. Equal ones are told apart by minutes, film and cost, then by fewer steps, then by
/// the order of the stack, so that the best in minutes, film or cost always stands on the trade-off.
/// `found` must not be empty.
inline const Sequence& best(const std::vector<Sequence>& found, Objective objective) {
  const auto key = [objective](const Sequence& s) {
    const FilmShare film = objective == Objective::film ? s.film : FilmShare{};
    const std::int64_t cost = objective == Objective::cost ? s.cost : 0;
    const std::size_t steps = objective == Objective::steps ? s.steps() : 0;
    return std::make_tuple(film, cost, steps, s.milliseconds, s.film, s.cost, s.steps(),
                           std::cref(s.sheets));
  };
  return *std::min_element(found.begin(), found.end(),
                           [&](const Sequence& a, const Sequence& b) { return key(a) < key(b); });
}

}  // namespace levigate
