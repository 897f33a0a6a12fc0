// The exact search: which sheets, in which order.
// Everything here is integers, so that a tie is a tie and the answer is the same on every machine; the physics that
// makes the integers is in plan/work/ladder.hpp.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "levigate/plan/search_table.hpp"
#include "levigate/plan/sequence.hpp"

namespace levigate::inline v0 {

/// What one step adds up to, in the integers of the search.
struct StepCost {
  std::int64_t milliseconds = 0;                  ///< all zones, with the change
  std::int64_t cost = 0;                          ///< [1/100 cent]
  std::vector<std::int64_t> removal_pm;           ///< of each zone
  std::vector<std::int64_t> zone_milliseconds{};  ///< of each zone alone, with a change
  std::int64_t fragile = 0;  ///< 1 where the step breaks max_ratio at an end of the band of a size
  std::int64_t micro_sheets = 0;  ///< paper that it uses up [1/1 000 000 sheet]
};

/// A step to a finer sheet, or to the first one.
struct LadderStep {
  std::size_t to = 0;
  StepCost cost;
  double overcut = 1;  ///< removed, over the scratch depth before it
};

/// A sheet's place in a sequence: what it leaves, and where one may go from there.
struct Rung {
  std::vector<std::int64_t> scratch_pm;  ///< depth of its scratches in each zone
  std::vector<LadderStep> next;          ///< the steps allowed after it
  bool ends = false;                     ///< whether a sequence may end on it
};

/// A sheet that stands on a rung of its own where it comes first.
struct OnRung {
  std::size_t sheet = 0;
  bool first = false;
};

/// One in so many: the unit of chances in the search.
inline constexpr std::int64_t chance_unit = 10'000;

/// What the sun shows of a sequence, to the search.
struct Sunlight {
  /// Chance that a zone still shows a mark of what stood before a step (none: what the job starts with), once `since_pm` came off
  /// after that step and `last` was the last sheet [1/chance_unit]. Falls with since_pm.
  std::function<std::int64_t(std::optional<OnRung> before, const LadderStep& step, std::size_t zone,
                             std::size_t last, std::int64_t since_pm)>
      mark_chance;
  /// Depth that came off after a rung from which on no step to it leaves another chance.
  std::function<std::int64_t(OnRung rung, std::size_t zone, std::size_t last)> healed_pm;
  std::int64_t look_milliseconds = 0;  ///< to wash, dry and look once more
};

/// Everything the search knows of a job and a stack. Sheets are numbered in the order of the stack.
/// A sheet that comes first has a rung of its own, as it does not touch the zones that are not levelled.
struct Ladder {
  std::vector<std::size_t> coarse_to_fine;  ///< all sheets; every step goes forward in it
  std::vector<LadderStep> first;            ///< the steps allowed as the first one
  std::vector<Rung> as_first;               ///< of each sheet where it comes first
  std::vector<Rung> later;                  ///< of each sheet after another
  std::vector<std::optional<std::int64_t>>
      budget_pm;                      ///< depth that each zone can afford; none: no limit
  std::optional<Sunlight> sun{};      ///< none: no mark is looked for
  std::vector<std::size_t> shared{};  ///< sheets that other work wants too: each counts as a sum
};

/// Of a step and all after it in one zone: what going back to it takes, and what going back at all is expected to take.
///
/// The zone goes back to the first step that did not take out what was before it, and climbs up again as planned. So with the
/// chance p that it is this step,
///
///   climb = its minutes with a change + climb of the rest,   back = p climb + (1 - p) back of the rest.
struct GoingBack {
  std::int64_t climb_milliseconds = 0;  ///< a look at the end included
  std::int64_t back_milliseconds = 0;

  GoingBack before(std::int64_t step_milliseconds, std::int64_t chance) const {
    const std::int64_t climb = climb_milliseconds + step_milliseconds;
    const std::int64_t more = climb - back_milliseconds;
    // whole parts first: a product of both would not fit
    const std::int64_t share =
        more / chance_unit * chance + more % chance_unit * chance / chance_unit;
    return {climb, back_milliseconds + share};
  }
};

namespace detail {

/// The end of a sequence: the steps after a rung, with their sums.
struct Rest {
  std::vector<std::size_t> sheets;
  std::vector<double> overcuts;
  std::size_t last = 0;  ///< the sheet that ends it, that of the rung where there is no step
  std::vector<std::int64_t> scratch_pm;  ///< that it leaves
  std::int64_t milliseconds = 0;
  std::int64_t cost = 0;
  std::int64_t fragile = 0;
  std::vector<std::int64_t> removed_pm;
  std::vector<GoingBack> back;               ///< of each zone
  std::vector<std::int64_t> micro_sheets{};  ///< used of each shared sheet

  std::size_t steps() const noexcept { return sheets.size(); }
};

/// Whether `b` can be dropped for `a`, which follows the same rung: whatever comes before, `a` is no worse in any sum, and it
/// wins the tie. Less removal alone does not win it, as another zone may be the worst in the end; nor do fewer minutes of going
/// back, as it may not come to that. So there the number of steps and the order of the stack must speak for `a` too. Less
/// removal is no worse only where what is before the rung is healed all the same. Less of a shared sheet wins no tie either, as
/// there may be enough of it.
template <typename Healed>
bool replaces(const Rest& a, const Rest& b, const Healed& healed_pm) {
  if (a.milliseconds > b.milliseconds || a.cost > b.cost || a.steps() > b.steps() ||
      a.fragile > b.fragile || a.last != b.last) {
    return false;
  }
  for (std::size_t sheet = 0; sheet < a.micro_sheets.size(); ++sheet) {
    if (a.micro_sheets[sheet] > b.micro_sheets[sheet]) return false;
  }
  for (std::size_t zone = 0; zone < a.removed_pm.size(); ++zone) {
    if (a.removed_pm[zone] > b.removed_pm[zone] ||
        a.back[zone].climb_milliseconds > b.back[zone].climb_milliseconds ||
        a.back[zone].back_milliseconds > b.back[zone].back_milliseconds) {
      return false;
    }
  }
  for (std::size_t zone = 0; zone < a.removed_pm.size(); ++zone) {
    if (a.removed_pm[zone] != b.removed_pm[zone] && a.removed_pm[zone] < healed_pm(zone, a.last))
      return false;
  }
  return a.milliseconds < b.milliseconds || a.cost < b.cost || a.steps() < b.steps() ||
         a.fragile < b.fragile || std::tie(a.sheets, a.overcuts) < std::tie(b.sheets, b.overcuts);
}

/// Keeps what no other replaces. In this order a rest never stands behind one that it replaces, and replacing is transitive,
/// so one pass against those already kept is enough.
template <typename Healed>
std::vector<Rest> without_replaced(std::vector<Rest> rests, const Healed& healed_pm) {
  const auto key = [](const Rest& e) {
    return std::make_tuple(e.milliseconds, e.cost, e.steps(), e.fragile, std::cref(e.removed_pm),
                           std::cref(e.sheets), std::cref(e.overcuts));
  };
  std::sort(rests.begin(), rests.end(),
            [&](const Rest& a, const Rest& b) { return key(a) < key(b); });
  std::vector<Rest> kept;
  for (Rest& candidate : rests) {
    const bool needless = std::any_of(
        kept.begin(), kept.end(), [&](const Rest& k) { return replaces(k, candidate, healed_pm); });
    if (!needless) kept.push_back(std::move(candidate));
  }
  return kept;
}

/// The rest with a step before it.
inline Rest after_step(const Ladder& ladder, std::optional<OnRung> before, const LadderStep& step,
                       const Rest& rest) {
  Rest result = rest;
  result.sheets.insert(result.sheets.begin(), step.to);
  result.overcuts.insert(result.overcuts.begin(), step.overcut);
  result.milliseconds += step.cost.milliseconds;
  result.cost += step.cost.cost;
  result.fragile += step.cost.fragile;
  for (std::size_t i = 0; i < ladder.shared.size(); ++i) {
    if (ladder.shared[i] == step.to) result.micro_sheets[i] += step.cost.micro_sheets;
  }
  for (std::size_t zone = 0; zone < result.removed_pm.size(); ++zone) {
    if (ladder.sun) {
      const std::int64_t chance =
          ladder.sun->mark_chance(before, step, zone, rest.last, rest.removed_pm[zone]);
      result.back[zone] = rest.back[zone].before(step.cost.zone_milliseconds[zone], chance);
    }
    result.removed_pm[zone] += step.cost.removal_pm[zone];
  }
  return result;
}

/// Depth reached in each zone: what was removed, and the scratches of the last sheet. No place on the way is deeper, as a step takes
/// off at least the scratches before it.
inline std::vector<std::int64_t> depth_pm(const Rest& rest) {
  std::vector<std::int64_t> depth = rest.removed_pm;
  for (std::size_t zone = 0; zone < depth.size(); ++zone) depth[zone] += rest.scratch_pm[zone];
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

/// Drops every sequence that another equals or beats in expected minutes, film, cost and fragile steps, and in steps where they
/// count; of equals the one with fewer steps stays, then the one first in the order of the stack. Sorted by expected minutes.
inline std::vector<Sequence> front(std::vector<Sequence> sequences, bool count_steps) {
  const auto sums = [count_steps](const Sequence& s) {
    return std::make_tuple(s.expected_milliseconds(), s.film, s.cost, s.fragile,
                           count_steps ? s.steps() : 0);
  };
  std::sort(sequences.begin(), sequences.end(), [&](const Sequence& a, const Sequence& b) {
    return std::make_tuple(sums(a), a.steps(), std::cref(a.sheets), std::cref(a.overcuts)) <
           std::make_tuple(sums(b), b.steps(), std::cref(b.sheets), std::cref(b.overcuts));
  });
  const auto no_worse = [&](const Sequence& a, const Sequence& b) {
    const auto [minutes_a, film_a, cost_a, fragile_a, steps_a] = sums(a);
    const auto [minutes_b, film_b, cost_b, fragile_b, steps_b] = sums(b);
    return minutes_a <= minutes_b && film_a <= film_b && cost_a <= cost_b &&
           fragile_a <= fragile_b && steps_a <= steps_b;
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

/// The sequences that keep the rules of the ladder, but for those that another is no worse than in minutes, cost, steps, fragile
/// steps, going back and removal of every zone, and paper of every shared sheet, and wins the tie. In no order.
///
/// Rests go backward through the ladder, as what a step leaves hangs on what comes after it. They are kept while no other of
/// the same rung replaces them, which is exact: see detail::replaces. Complexity: steps of the ladder times the square of those
/// kept at a rung.
inline std::vector<Sequence> worth_comparing(const Ladder& ladder) {
  using detail::Rest;
  const std::size_t zones = ladder.budget_pm.size();
  const auto rests_of = [&](OnRung at, const std::vector<std::vector<Rest>>& later) {
    const Rung& rung = (at.first ? ladder.as_first : ladder.later)[at.sheet];
    std::vector<Rest> result;
    if (rung.ends) {
      const std::int64_t look = ladder.sun ? ladder.sun->look_milliseconds : 0;
      result.push_back({{},
                        {},
                        at.sheet,
                        rung.scratch_pm,
                        0,
                        0,
                        0,
                        std::vector<std::int64_t>(zones, 0),
                        std::vector<GoingBack>(zones, {look, 0}),
                        std::vector<std::int64_t>(ladder.shared.size(), 0)});
    }
    for (const LadderStep& step : rung.next) {
      for (const Rest& rest : later[step.to]) {
        result.push_back(detail::after_step(ladder, at, step, rest));
        if (!detail::within_budget(ladder, detail::depth_pm(result.back()))) result.pop_back();
      }
    }
    std::map<std::pair<std::size_t, std::size_t>, std::int64_t> healed;
    const auto healed_pm = [&](std::size_t zone, std::size_t last) {
      const auto [known, fresh] = healed.try_emplace({zone, last}, 0);
      if (fresh && ladder.sun) known->second = ladder.sun->healed_pm(at, zone, last);
      return known->second;
    };
    return detail::without_replaced(std::move(result), healed_pm);
  };
  std::vector<std::vector<Rest>> later(ladder.later.size());
  for (auto sheet = ladder.coarse_to_fine.rbegin(); sheet != ladder.coarse_to_fine.rend(); ++sheet)
    later[*sheet] = rests_of({*sheet, false}, later);
  std::vector<std::optional<std::vector<Rest>>> as_first(ladder.later.size());
  std::vector<Sequence> complete;
  for (const LadderStep& step : ladder.first) {
    if (!as_first[step.to]) as_first[step.to] = rests_of({step.to, true}, later);
    for (const Rest& rest : *as_first[step.to]) {
      const Rest whole = detail::after_step(ladder, std::nullopt, step, rest);
      const std::vector<std::int64_t> depth = detail::depth_pm(whole);
      if (!detail::within_budget(ladder, depth)) continue;
      std::int64_t back = 0;
      for (const GoingBack& zone : whole.back) back += zone.back_milliseconds;
      complete.push_back({whole.sheets, whole.milliseconds, whole.cost, depth,
                          worst_share(ladder.budget_pm, depth), whole.overcuts, back,
                          whole.fragile});
    }
  }
  return complete;
}

/// Every sequence that keeps the rules of the ladder and that no other equals or beats in expected minutes, film, cost,
/// fragile steps and steps together; of equals, the one first in the order of the stack. Sorted by expected minutes. Empty where
/// no sequence keeps the rules.
inline std::vector<Sequence> search(const Ladder& ladder) {
  return detail::front(worth_comparing(ladder), true);
}

/// The trade-off: of the sequences found, those that no other equals or beats in expected minutes, film, cost and fragile steps
/// together; of equals the one with fewer steps, then the one first in the order of the stack. Sorted by expected minutes.
inline std::vector<Sequence> tradeoff(std::vector<Sequence> found) {
  return detail::front(std::move(found), false);
}

/// Expected minutes no further apart than this share of the least count as equal: what the sun shows is not known better.
inline constexpr auto equal_minutes_percent =
    static_cast<std::int64_t>(search_table[0].equal_percent.value);

/// The best of the sequences found. In minutes, those near the least are equal: of them the one with the fewest fragile steps is
/// best, then the one that spares the film most. Equal ones are told apart by expected minutes, film and cost, then by fewer
/// fragile steps, then by fewer steps, then by the order of the stack, so that the best in minutes, film or cost always stands on the trade-off.
/// `found` must not be empty.
inline const Sequence& best(const std::vector<Sequence>& found, Objective objective) {
  std::int64_t least = found.front().expected_milliseconds();
  for (const Sequence& s : found) least = std::min(least, s.expected_milliseconds());
  const std::int64_t close_by = least + least / 100 * equal_minutes_percent;
  const auto key = [&](const Sequence& s) {
    const bool minutes = objective == Objective::minutes;
    const bool beyond = minutes && s.expected_milliseconds() > close_by;
    const std::int64_t fragile = minutes ? s.fragile : 0;
    const FilmShare film = minutes || objective == Objective::film ? s.film : FilmShare{};
    const std::int64_t cost = objective == Objective::cost ? s.cost : 0;
    const std::size_t steps = objective == Objective::steps ? s.steps() : 0;
    return std::make_tuple(beyond, fragile, film, cost, steps, s.expected_milliseconds(), s.film,
                           s.cost, s.fragile, s.steps(), std::cref(s.sheets),
                           std::cref(s.overcuts));
  };
  return *std::min_element(found.begin(), found.end(),
                           [&](const Sequence& a, const Sequence& b) { return key(a) < key(b); });
}

}  // namespace levigate
