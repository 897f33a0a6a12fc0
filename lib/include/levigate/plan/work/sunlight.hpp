// What the sun shows, for the search and for the sums of a sequence.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/budget_of.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/sun.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/surface/inspection_table.hpp"

namespace levigate::inline v0 {

/// Chance that a spot shows a mark that a step should have taken out, or did not find: scratches of what was before it, strays of
/// the sheet before it, and, of the last step, its own strays. 0 where it finds the zone as sprayed and is not the last.
inline double mark_chance_of_spot(Sun& sun, const Workings& workings, std::optional<Before> before,
                                  std::size_t sheet, std::size_t zone, std::size_t last, bool ends,
                                  std::int64_t own_pm, std::int64_t since_pm) {
  double none = 1;
  if (const auto found = found_in(workings, before, sheet, zone)) {
    const std::optional<std::size_t> of =
        found->sheet ? std::optional(before->sheet) : std::nullopt;
    none -= sun.spot_chance(zone, of, last, static_cast<double>(own_pm) / detail::pm_per_um,
                            static_cast<double>(since_pm) / detail::pm_per_um);
    if (of) none *= 1.0 - sun.stray_chance(zone, *of, last);
  }
  if (ends && was_worked(workings, after(workings, before, sheet), zone))
    none *= 1.0 - sun.stray_chance(zone, sheet, last);
  return 1.0 - none;
}

/// Chance that at least one spot of a zone shows a mark, by that of one spot.
inline double mark_chance_of_zone(const Workings& workings, std::size_t zone, double of_spot) {
  if (!(of_spot < 1.0)) return 1.0;
  return -std::expm1(spots_in(workings.job.zones[zone]) * std::log1p(-of_spot));
}

/// What it takes to wash, dry and look once more.
inline std::int64_t look_milliseconds() {
  return std::llround(inspection_table[0].look_minutes.value * detail::ms_per_minute);
}

/// A chance in the unit of the search, rounded.
inline std::int64_t chance_in_units(double chance) {
  return std::llround(chance * static_cast<double>(chance_unit));
}

/// The sun for a ladder of these workings. `sun` and workings must outlive it.
inline Sunlight sunlight(const Workings& workings, Sun& sun, const Ladder& ladder) {
  const auto chance = [&workings, &sun](std::optional<OnRung> rung, const LadderStep& step,
                                        std::size_t zone, std::size_t last, std::int64_t since_pm) {
    const std::optional<Before> before =
        rung ? std::optional(Before{rung->sheet, rung->first}) : std::nullopt;
    return chance_in_units(mark_chance_of_zone(
        workings, zone,
        mark_chance_of_spot(sun, workings, before, step.to, zone, last, step.to == last,
                            step.cost.removal_pm[zone], since_pm)));
  };
  const auto healed_pm = [&ladder, chance](OnRung to, std::size_t zone, std::size_t last) {
    std::int64_t healed = 0;
    const auto heal = [&](std::optional<OnRung> from, const LadderStep& step) {
      if (step.to != to.sheet) return;
      constexpr std::int64_t all_pm = 1'000'000'000;
      const std::int64_t least = chance(from, step, zone, last, all_pm);
      if (chance(from, step, zone, last, healed) == least) return;
      std::int64_t low = healed, high = all_pm;
      while (high - low > 1) {
        const std::int64_t middle = low + (high - low) / 2;
        (chance(from, step, zone, last, middle) == least ? high : low) = middle;
      }
      healed = high;
    };
    if (to.first) {
      for (const LadderStep& step : ladder.first) heal(std::nullopt, step);
      return healed;
    }
    for (std::size_t from = 0; from < ladder.later.size(); ++from) {
      for (const LadderStep& step : ladder.as_first[from].next) heal(OnRung{from, true}, step);
      for (const LadderStep& step : ladder.later[from].next) heal(OnRung{from, false}, step);
    }
    return healed;
  };
  return {chance, healed_pm, look_milliseconds()};
}

/// What the sun shows of one step in one zone once a sequence is done.
struct Marked {
  double spots = 0;   ///< expected to show a mark that the step should have taken out
  double chance = 0;  ///< of any in the zone
};

/// What the sun shows of a sequence.
struct MarksOfSequence {
  std::vector<std::vector<Marked>> steps;  ///< of each step in each zone
  std::vector<GoingBack> zones;
};

/// The marks of each step of a sequence in each zone, and what going back for them takes: from the last step to the first, as in
/// search().
inline MarksOfSequence marks_of(const Workings& workings, Sun& sun, const Sequence& sequence) {
  struct Done {
    std::optional<Before> before;
    std::size_t sheet;
    StepCost cost;
  };
  std::vector<Done> done;
  for_each_step(
      workings, sequence, [&](std::optional<Before> before, std::size_t sheet, double overcut) {
        done.push_back(
            {before, sheet,
             step_cost(workings, before, sheet, efforts(workings, before, sheet, overcut))});
      });
  const std::size_t zones = workings.job.zones.size();
  MarksOfSequence result{std::vector<std::vector<Marked>>(done.size()),
                         std::vector<GoingBack>(zones, {look_milliseconds(), 0})};
  std::vector<std::int64_t> since_pm(zones, 0);
  for (std::size_t i = done.size(); i-- > 0;) {
    const Done& step = done[i];
    for (std::size_t zone = 0; zone < zones; ++zone) {
      const double of_spot =
          mark_chance_of_spot(sun, workings, step.before, step.sheet, zone, sequence.sheets.back(),
                              i + 1 == done.size(), step.cost.removal_pm[zone], since_pm[zone]);
      const double of_zone = mark_chance_of_zone(workings, zone, of_spot);
      result.steps[i].push_back({of_spot * spots_in(workings.job.zones[zone]), of_zone});
      result.zones[zone] =
          result.zones[zone].before(step.cost.zone_milliseconds[zone], chance_in_units(of_zone));
      since_pm[zone] += step.cost.removal_pm[zone];
    }
  }
  return result;
}

/// The sums of any sequence of sheets, and with what the sun shows. `overcuts`: of each step; empty: the least.
/// Throws: as summed()
inline Sequence summed_in_sun(const Workings& workings, Sun& sun,
                              const std::vector<std::size_t>& sheets,
                              std::vector<double> overcuts = {}) {
  Sequence result = summed(workings, sheets, std::move(overcuts));
  for (const GoingBack& zone : marks_of(workings, sun, result).zones)
    result.back_milliseconds += zone.back_milliseconds;
  return result;
}

/// The sequences to choose from under the rules of the job, where paper of the `shared` sheets counts as a sum: see
/// worth_comparing(). One of the levelling step alone, which leaves edges as sprayed, counts only where there is no other. None
/// where nothing is left to do.
inline std::vector<Sequence> sequences_sharing(const Workings& workings, Sun& sun,
                                               const std::vector<std::size_t>& shared) {
  if (already_done(workings)) return {};
  Limits limits = limits_of(workings.job.rules);
  limits.choice = true;
  const auto found_under = [&](bool all_zones) {
    limits.all_zones = all_zones;
    Ladder steps = ladder(workings, limits);
    steps.sun = sunlight(workings, sun, steps);
    steps.shared = shared;
    return worth_comparing(steps);
  };
  std::vector<Sequence> found = found_under(true);
  return found.empty() && passes_some_by(workings) ? found_under(false) : found;
}

/// The same where no other work wants the paper: see search().
inline std::vector<Sequence> sequences_of(const Workings& workings, Sun& sun) {
  return detail::front(sequences_sharing(workings, sun, {}), true);
}

}  // namespace levigate
