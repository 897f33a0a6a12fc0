// A sequence worked out draw by draw, and what the draws come to.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/bench/work/laid.hpp"
#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/budget_of.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/knobs.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/philox.hpp"
#include "levigate/risk/share.hpp"
#include "levigate/risk/simulate_options.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/risk/work/crew.hpp"
#include "levigate/risk/work/draw.hpp"
#include "levigate/risk/work/drawn_bench.hpp"
#include "levigate/risk/work/spots.hpp"
#include "levigate/sourced.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/meter.hpp"
#include "levigate/surface/model_table.hpp"

namespace levigate::inline v0 {

namespace detail {

inline constexpr double most_spot_draws = 1e11;

/// Spots of a zone, whole ones.
inline std::uint32_t spots_of(const Zone& zone) {
  return static_cast<std::uint32_t>(std::llround(spots_in(zone)));
}

/// Figures of all draws: each has a column, each draw a place in it.
struct Figures {
  struct OfStep {
    std::vector<double> minutes, sheets_used;
    std::vector<std::array<std::vector<double>, 3>> reading_gu{};  ///< of each zone, at each angle
  };
  struct OfZone {
    std::vector<double> film_left_um, thinnest_um;
    std::vector<char> over_budget;
  };
  std::vector<double> minutes, sheets, before, first_change;
  std::vector<OfStep> steps;
  std::vector<OfZone> zones;

  /// `zone_count`: zones with a reading; `film_count`: zones with a film
  Figures(std::size_t draws, std::size_t step_count, std::size_t zone_count, std::size_t film_count)
      : minutes(draws), sheets(draws), before(draws), first_change(draws) {
    const std::vector<double> column(draws);
    steps.assign(step_count, {column, column, {zone_count, {column, column, column}}});
    zones.assign(film_count, {column, column, std::vector<char>(draws)});
  }
};

/// Works a sequence out once more, as the numbers of a draw have it.
template <typename Inputs>
class SequenceDraw {
 public:
  /// `setup` holds the sheets of the sequence in its order.
  /// `zone_seed`: of what is of each zone alone: film, peel and spots.
  SequenceDraw(Setup setup, std::vector<double> overcuts, Inputs inputs,
               std::vector<std::optional<double>> budget_um, std::uint64_t seed,
               std::uint64_t zone_seed, Sourced flank)
      : setup_(std::move(setup)),
        sequence_{.overcuts = std::move(overcuts)},
        inputs_(std::move(inputs)),
        budget_um_(std::move(budget_um)),
        seed_(seed),
        zone_seed_(zone_seed),
        flank_(std::move(flank)) {
    for (std::size_t i = 0; i < setup_.stack.sheets.size(); ++i) sequence_.sheets.push_back(i);
  }

  void operator()(std::int64_t draw, Figures& figures) const {
    const auto at = static_cast<std::size_t>(draw);
    Setup setup = setup_;
    const auto minutes_of = inputs_(setup, seed_, static_cast<std::uint32_t>(draw));
    draw_peels(setup.job, zone_seed_, static_cast<std::uint32_t>(draw));
    const Workings workings = workings_without_budgets(std::move(setup));
    const std::size_t zones = workings.job.zones.size();
    std::vector<double> depth_um(zones, 0.0);
    const double flank_deg = drawn(
        flank_, Stream(seed_, stream_named("model, flank_deg"), static_cast<std::uint32_t>(draw))
                    .uniform());
    double minutes = figures.before[at] = workings.local_minutes.front(), sheets = 0;
    figures.first_change[at] = workings.job.rules.change_minutes;
    std::optional<Before> last;
    const auto work = [&](std::optional<Before> before, std::size_t sheet, double overcut) {
      const std::vector<Effort> step = efforts(workings, before, sheet, overcut);
      minutes += figures.steps[sheet].minutes[at] = minutes_of(sheet, step, workings.job.rules);
      sheets += figures.steps[sheet].sheets_used[at] = levigate::sheets_used(step);
      for (std::size_t i = 0; i < zones; ++i) depth_um[i] += step[i].removal_um;
      last = after(workings, before, sheet);
      for (std::size_t i = 0; i < figures.steps[sheet].reading_gu.size(); ++i)
        read(workings, *last, i, flank_deg, draw, figures.steps[sheet].reading_gu[i]);
    };
    for_each_step(workings, sequence_, work);
    figures.minutes[at] = minutes;
    figures.sheets[at] = sheets;
    for (std::size_t i = 0; i < figures.zones.size(); ++i) {
      film_of(workings, i, depth_um[i] + scratch_left_um(workings, *last, i), draw,
              figures.zones[i]);
    }
  }

 private:
  /// What a glossmeter reads in a zone after a sheet. It lies across the grooves of a zone or along, one as often as the other.
  void read(const Workings& workings, const Before& sheet, std::size_t zone, double flank_deg,
            std::int64_t draw, std::array<std::vector<double>, 3>& reading_gu) const {
    const double standing_um = workings.starts[zone] ? workings.starts[zone]->rq_um : 0.0;
    const bool worked = was_worked(workings, sheet, zone);
    const double rq_um = worked ? workings.work[sheet.sheet][zone].rq_um : standing_um;
    const std::string stream = "lay of " + workings.job.zones[zone].name;
    const double place =
        Stream(zone_seed_, stream_named(stream), static_cast<std::uint32_t>(draw)).uniform();
    for (std::size_t i = 0; i < reading_gu.size(); ++i) {
      reading_gu[i][static_cast<std::size_t>(draw)] =
          meter_reading_gu({workings.job.coating.refractive_index, receptors[i].angle_deg, rq_um,
                            flank_deg, place < 0.5 ? Lay::across : Lay::along});
    }
  }

  void film_of(const Workings& workings, std::size_t i, double depth_um, std::int64_t draw,
               Figures::OfZone& figures) const {
    const Zone& zone = workings.job.zones[i];
    const auto at = static_cast<std::size_t>(draw);
    const auto stream = [&](const std::string& of) {
      return Stream(zone_seed_, stream_named(of + zone.name), static_cast<std::uint32_t>(draw));
    };
    const Film film = drawn_film(*zone.film, stream("film of "));
    figures.film_left_um[at] = film.mean_um - depth_um;
    figures.thinnest_um[at] = thinnest_um(film, depth_um, workings.job.rules.removed_cv,
                                          spots_of(zone), stream("spots of "), bounds_);
    figures.over_budget[at] = depth_um > *budget_um_[i];
  }

  Setup setup_;
  Sequence sequence_;
  Inputs inputs_;
  std::vector<std::optional<double>> budget_um_;
  std::uint64_t seed_;
  std::uint64_t zone_seed_;
  Sourced flank_;  ///< drawn for the meter even where learned scratches stand for it in the contact
  NormalBounds bounds_;
};

/// Keeps the draws in which the first step takes longer than was spent on it, and what they take yet.
/// Returns: how many there are. Throws: BadInput where they are fewer than 10
inline std::int64_t keep_longer(Figures& figures, std::int64_t draws, double spent_minutes) {
  std::vector<std::size_t> kept;
  std::vector<double>& first = figures.steps.front().minutes;
  for (std::size_t i = 0; i < static_cast<std::size_t>(draws); ++i) {
    if (first[i] - figures.first_change[i] <= spent_minutes) continue;
    first[i] -= spent_minutes;
    figures.minutes[i] -= spent_minutes + figures.before[i];
    kept.push_back(i);
  }
  constexpr std::size_t least = 10;
  if (kept.size() < least) {
    throw BadInput::of("spent_minutes",
                       "spent_minutes = " + number_text(spent_minutes) + " min: in " +
                           std::to_string(draws - static_cast<std::int64_t>(kept.size())) + " of " +
                           std::to_string(draws) +
                           " draws the step is done by then, at least 10 are to take longer, in "
                           "simulate");
  }
  const auto keep = [&](auto& column) {
    for (std::size_t i = 0; i < kept.size(); ++i) column[i] = column[kept[i]];
  };
  keep(figures.minutes);
  keep(figures.sheets);
  for (Figures::OfStep& step : figures.steps) {
    keep(step.minutes);
    keep(step.sheets_used);
    for (auto& of_zone : step.reading_gu) {
      for (auto& at_angle : of_zone) keep(at_angle);
    }
  }
  for (Figures::OfZone& zone : figures.zones) {
    keep(zone.film_left_um);
    keep(zone.thinnest_um);
    keep(zone.over_budget);
  }
  return static_cast<std::int64_t>(kept.size());
}

/// The draws of a sequence and what they come to.
template <typename Inputs>
Simulation simulated(const SequenceDraw<Inputs>& work, const Setup& setup,
                     const SimulateOptions& options) {
  const bool coat = setup.job.coating.kind == CoatingKind::coat;
  const auto size = static_cast<std::size_t>(options.draws);
  Figures figures(size, setup.stack.sheets.size(), setup.job.zones.size(),
                  coat ? setup.job.zones.size() : 0);
  Simulation result;
  result.seed = options.seed;
  result.draws = for_each_draw(options.draws, options.threads, options.progress,
                               [&](std::int64_t draw) { work(draw, figures); });
  if (options.spent_minutes)
    result.draws = keep_longer(figures, result.draws, *options.spent_minutes);
  const auto done = [&](auto& column) -> const auto& {
    column.resize(static_cast<std::size_t>(result.draws));
    return column;
  };
  result.minutes = interval_of(done(figures.minutes));
  result.sheets = interval_of(done(figures.sheets));
  for (std::size_t i = 0; i < figures.steps.size(); ++i) {
    const Sheet& sheet = setup.stack.sheets[i];
    SimulatedStep& step = result.steps.emplace_back();
    step.sheet = sheet.id;
    step.minutes = interval_of(done(figures.steps[i].minutes));
    step.sheets_used = interval_of(done(figures.steps[i].sheets_used));
    if (sheet.on_hand) {
      step.paper_short = share_of(figures.steps[i].sheets_used,
                                  [&](double used) { return used > *sheet.on_hand; });
    }
    for (std::size_t zone = 0; zone < setup.job.zones.size(); ++zone) {
      auto& [at_20, at_60, at_85] = figures.steps[i].reading_gu[zone];
      step.zones.push_back({setup.job.zones[zone].name, interval_of(done(at_20)),
                            interval_of(done(at_60)), interval_of(done(at_85))});
    }
  }
  const double reserve_um = setup.job.rules.reserve_um;
  for (std::size_t i = 0; i < figures.zones.size(); ++i) {
    SimulatedZone& zone = result.zones.emplace_back();
    zone.zone = setup.job.zones[i].name;
    zone.film_left_um = interval_of(done(figures.zones[i].film_left_um));
    zone.thinnest_um = interval_of(done(figures.zones[i].thinnest_um));
    zone.cut_through =
        share_of(figures.zones[i].thinnest_um, [&](double left) { return left < reserve_um; });
    zone.over_budget =
        share_of(done(figures.zones[i].over_budget), [](char over) { return over != 0; });
  }
  return result;
}

/// Calls run(SequenceDraw, Setup) for the sheets of a sequence on a bench, with inputs drawn as options and shop say.
template <typename Run>
auto with_draws(const Bench& bench, const std::vector<std::size_t>& sheets,
                const std::vector<double>& overcuts, const SimulateOptions& options,
                std::uint64_t zone_seed, const Run& run) {
  const auto with = [&](const Setup& setup, auto inputs) {
    const Workings& workings = workings_now(bench.laid());
    return run(SequenceDraw(
                   setup, overcuts, std::move(inputs), workings.budget_um, options.seed, zone_seed,
                   options.bands ? model_table[0].flank_deg : given(setup.model.flank_deg)),
               setup);
  };
  return with_inputs(bench, sheets, options.bands, with);
}

/// Sheets that each step of a sequence uses in each draw: [step][draw]. The draws are those of simulate().
inline std::vector<std::vector<double>> drawn_sheets(const Bench& bench,
                                                     const std::vector<std::size_t>& sheets,
                                                     const std::vector<double>& overcuts,
                                                     const SimulateOptions& options,
                                                     std::uint64_t zone_seed) {
  Figures figures(static_cast<std::size_t>(options.draws), sheets.size(), 0, 0);
  const std::int64_t done =
      with_draws(bench, sheets, overcuts, options, zone_seed, [&](const auto& work, const Setup&) {
        return for_each_draw(options.draws, options.threads, options.progress,
                             [&](std::int64_t draw) { work(draw, figures); });
      });
  std::vector<std::vector<double>> used;
  for (Figures::OfStep& step : figures.steps) {
    step.sheets_used.resize(static_cast<std::size_t>(done));
    used.push_back(std::move(step.sheets_used));
  }
  return used;
}

}  // namespace detail

}  // namespace levigate
