// How far a plan moves with each believed input.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <utility>
#include <vector>

#include "levigate/plan/reliance.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/knobs.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/surface/coating_table.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Keeps the minutes that a learned pace takes to remove 1 um, whatever other input was moved: the pace stands for it.
inline void keep_pace(Workings& moved, const Workings& given) {
  const auto reach = [](const Block& tool) { return tool.area_cm2 * tool.speed_m_s * tool.duty; };
  for (std::size_t i = 0; i < moved.work.size(); ++i) {
    if (!given.factors.of(i).pace) continue;
    for (std::size_t zone = 0; zone < moved.work[i].size(); ++zone) {
      SheetInZone& work = moved.work[i][zone];
      const SheetInZone& told = given.work[i][zone];
      if (machine_of(given.stack.sheets[i]) && !told.machine) continue;  // learned of the machine
      work.rate_um_per_m = told.rate_um_per_m * reach(told.tool) / reach(work.tool);
    }
  }
}

/// Whether read scratches of a backing stand for an input of it.
inline bool scratches_stand_for(const Knob& knob, const Setup& setup) {
  if (knob.quantity != "tip_spread" && knob.quantity != "modulus_mpa") return false;
  for (std::size_t i = 0; i < setup.stack.sheets.size(); ++i) {
    if (knob.subject == "backing " + setup.stack.sheets[i].backing.name)
      return setup.factors.of(i).scratches.has_value();
  }
  return false;
}

}  // namespace detail

/// What a sequence relies on, most influential first: each input is set to the ends of its band, all else and the
/// sequence as they are, and the sums worked out anew. What only touches gloss or paper has no influence and stands last.
///
/// A zone that the end of a band leaves hardly any budget counts as ten times over it. Where a pace was learned, it has the band
/// that journals leave it, and stands for all inputs that act on the rate: they move the film alone. So do read scratches for
/// the inputs of their backing.
///
/// @param workings     job and stack
/// @param sequence  of the workings
/// @return          one entry an input, by influence, then in the order coating, backings, blocks, rules, model, grades, zones
/// Throws:    nothing that working out the sequence itself would not
/// NaN:       does not occur
/// Accuracy:  that of the sums; inputs are moved one at a time
/// Source:    bands: data/profiles, the grades' tolerances and the errors of film and peel; a spread of grain sizes is taken to
///                  be known to a quarter
inline std::vector<Reliance> reliances(const Workings& workings, const Sequence& sequence) {
  const Setup setup = detail::setup_of(workings, sequence.sheets);
  std::vector<std::size_t> sheets(sequence.sheets.size());
  std::iota(sheets.begin(), sheets.end(), std::size_t{0});
  const bool coat = workings.job.coating.kind == CoatingKind::coat;
  constexpr double most_film = 10.0;  // an end of a band may leave a zone no budget at all
  Workings given = workings_without_budgets(setup);
  find_budgets(given, &workings);
  const auto sums = [&](const Setup& changed, bool paced) {
    Workings moved = workings_without_budgets(changed, &given);
    if (paced) detail::keep_pace(moved, given);
    find_budgets(moved, &given);
    const Sequence sum = summed(moved, sheets, sequence.overcuts);
    const double film =
        static_cast<double>(sum.film.depth_pm) / static_cast<double>(sum.film.budget_pm);
    return std::pair(static_cast<double>(sum.milliseconds) / detail::ms_per_minute,
                     coat ? std::min(film, most_film) : 0.0);
  };
  const auto [minutes, film] = sums(setup, false);
  std::vector<Reliance> result;
  for (const detail::Knob& knob : detail::knobs(setup)) {
    if (detail::scratches_stand_for(knob, setup)) continue;
    Reliance& one = result.emplace_back();
    one.subject = knob.subject;
    one.quantity = knob.quantity;
    one.value = knob.input.value;
    one.low = knob.input.low;
    one.high = knob.input.high;
    one.basis = knob.input.source.basis;
    one.citation = knob.input.source.citation;
    for (const bool high : {false, true}) {
      if ((high ? knob.input.high : knob.input.low) == knob.input.value) continue;
      Setup changed = setup;
      knob.set(changed, high ? knob.input.high : knob.input.low);
      const auto [new_minutes, new_film] = sums(changed, knob.quantity != "learned_pace");
      (high ? one.minutes_high : one.minutes_low) = new_minutes - minutes;
      (high ? one.film_high : one.film_low) = new_film - film;
    }
    one.influence =
        std::max({std::abs(one.minutes_low) / minutes, std::abs(one.minutes_high) / minutes,
                  std::abs(one.film_low), std::abs(one.film_high)});
  }
  std::stable_sort(result.begin(), result.end(),
                   [](const Reliance& a, const Reliance& b) { return a.influence > b.influence; });
  return result;
}

}  // namespace levigate
