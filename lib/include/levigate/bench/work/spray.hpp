// The work behind bench/spray.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "levigate/bench/spray.hpp"

#include "levigate/bench/work/laid.hpp"
#include "levigate/bench/work/spray_caution.hpp"
#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/film/budget.hpp"
#include "levigate/film/edge.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/film/gun_table.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/work/film_needed.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/plan_body.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/surface/coating_table.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The options with what is usual in place of what is absent.
inline SprayOptions settled(SprayOptions options, const Coating& coating) {
  validate(options);
  const GunProfile& gun = profile_named(gun_table, options.gun, "gun");
  const auto settle = [](std::optional<double>& number, const Sourced& usual) {
    if (!number) number = usual.value;
  };
  settle(options.film_cv, gun.film_cv);
  settle(options.transfer_efficiency, gun.transfer_efficiency);
  settle(options.loss_share, gun.loss_share);
  if (options.volume_solids && options.dry_um_per_coat) return options;
  const CoatingProfile* paint = nullptr;
  for (const CoatingProfile& row : coating_table) {
    if (row.name == coating.name && row.volume_solids && row.dry_um_per_coat) paint = &row;
  }
  if (!paint) {
    throw BadInput("nobody here knows how coating '" + coating.name +
                   "' is sprayed: give volume_solids and dry_um_per_coat, in how_much_to_spray");
  }
  settle(options.volume_solids, *paint->volume_solids);
  settle(options.dry_um_per_coat, *paint->dry_um_per_coat);
  return options;
}

/// Coats tried on the flats of a job: what each zone then has, and whether a plan exists.
class SprayTrial {
 public:
  SprayTrial(const Laid& laid, const SprayOptions& how)
      : begun_(laid.begun),
        how_(how),
        ladder_(levigate::ladder(laid.begun, unlimited(laid.begun))),
        way_back_pm_(laid.begun.job.zones.size(), 0) {
    const std::vector<Zone>& zones = begun_.job.zones;
    for (std::size_t i = 0; i < zones.size(); ++i) {
      const auto flat = std::find_if(zones.begin(), zones.end(), [&](const Zone& other) {
        return zones[i].edge && other.name == zones[i].edge->of;
      });
      flat_of_.push_back(flat == zones.end() ? i : static_cast<std::size_t>(flat - zones.begin()));
    }
  }

  /// The flat that a zone is sprayed with: itself, but for edges.
  std::size_t flat_of(std::size_t zone) const { return flat_of_[zone]; }

  std::size_t zones() const { return flat_of_.size(); }

  /// Film of a zone after so many coats.
  Film film(std::size_t zone, int coats) const {
    const double per_coat_um = *how_.dry_um_per_coat;
    const Film flat =
        levigate::film_from_coats(coats, per_coat_um, *how_.film_cv * coats * per_coat_um);
    if (flat_of_[zone] == zone) return flat;
    return edge_film(flat, begun_.job.zones[zone].edge->radius_mm.value_or(0.0));
  }

  /// The zone with a film.
  Zone zone_with(std::size_t zone, const Film& film) const {
    Zone result = begun_.job.zones[zone];
    result.film = film;
    result.levelled_peel_um = 0;
    return result;
  }

  /// Budget of a zone with a film [pm].
  std::int64_t budget_pm(std::size_t zone, const Film& film) const {
    if (film.mean_um <= begun_.job.rules.reserve_um) return no_budget_pm;
    double least_um = std::numeric_limits<double>::infinity();
    for (const BudgetInput& input : budget_inputs_of(begun_, zone, zone_with(zone, film)))
      least_um = std::min(least_um, depth_budget_um(input));
    return floored_pm(least_um);
  }

  /// Whether there is a plan after so many coats on each zone's flat, and every zone may be touched.
  bool suffices(const std::vector<int>& coats) {
    for (std::size_t zone = 0; zone < zones(); ++zone) {
      const int here = coats[flat_of_[zone]];
      const auto [known, fresh] = budgets_.try_emplace({zone, here}, 0);
      if (fresh) known->second = budget_pm(zone, film(zone, here));
      const std::int64_t left = known->second - way_back_pm_[zone];
      if (left <= no_budget_pm) return false;
      ladder_.budget_pm[zone] = left;
    }
    return !search(ladder_).empty();
  }

  /// Coats beyond which none are tried.
  int most_coats() const {
    return static_cast<int>(std::clamp(most_film_um / *how_.dry_um_per_coat, 1.0, 1000.0));
  }

  /// The least coats that suffice, of every flat; none where no number does.
  std::optional<std::vector<int>> least() {
    std::vector<int> coats(zones(), 1);
    while (!suffices(coats)) {
      const int more = 2 * coats.front();
      if (more > most_coats()) return std::nullopt;
      coats.assign(zones(), more);
    }
    for (bool changed = true; changed;) {
      changed = false;
      for (std::size_t flat = 0; flat < zones(); ++flat) {
        if (flat_of_[flat] != flat) continue;
        while (coats[flat] > 1) {
          --coats[flat];
          if (!suffices(coats)) {
            ++coats[flat];
            break;
          }
          changed = true;
        }
      }
    }
    return coats;
  }

  /// The job after so many coats.
  Job job(const std::vector<int>& coats) const {
    Job result = begun_.job;
    for (std::size_t zone = 0; zone < zones(); ++zone)
      result.zones[zone] = zone_with(zone, film(zone, coats[flat_of_[zone]]));
    return result;
  }

  /// Keeps film for one more removal of all steps of a plan after the first, or at least for the scratches that it leaves.
  void keep_way_back(const Plan& plan) {
    for (std::size_t zone = 0; zone < zones(); ++zone) {
      double removed_um = 0;
      for (std::size_t step = 1; step < plan.steps.size(); ++step)
        removed_um += plan.steps[step].zones[zone].removal_um;
      const double left_um = *begun_.job.rules.overcut * plan.steps.back().zones[zone].scratch_um;
      way_back_pm_[zone] = std::llround(std::max(removed_um, left_um) * pm_per_um);
    }
  }

  double way_back_um(std::size_t zone) const {
    return static_cast<double>(way_back_pm_[zone]) / pm_per_um;
  }

  /// The least film of a zone whose budget holds a depth, told in coats as here [um].
  double wanted_um(std::size_t zone, std::int64_t depth_pm, double most_um) const {
    const Film unit = film(zone, 1);
    const auto as_thick = [&](double mean_um) {
      Film film = unit;
      const double ratio = mean_um / unit.mean_um;
      film.mean_um = mean_um;
      film.sd_um *= ratio;
      film.mean_se_um *= ratio;
      return film;
    };
    double low_um = 0, high_um = std::ceil(most_um);
    while (high_um - low_um > 1.0) {
      const double middle_um = std::floor(0.5 * (low_um + high_um));
      (budget_pm(zone, as_thick(middle_um)) >= depth_pm ? high_um : low_um) = middle_um;
    }
    return std::min(high_um, most_um);
  }

  /// Chance that a zone keeps its reserve at a depth, with the tool that may level it worst.
  double chance(std::size_t zone, const Film& film, double depth_um) const {
    double worst = 0;
    for (const BudgetInput& input : budget_inputs_of(begun_, zone, zone_with(zone, film))) {
      worst = std::max(worst, cut_through({.depth_um = depth_um,
                                           .mean_um = input.mean_um,
                                           .sd_um = input.sd_um,
                                           .removed_cv = input.removed_cv,
                                           .reserve_um = input.reserve_um,
                                           .spots = input.spots,
                                           .common = input.common}));
    }
    return 1.0 - worst;
  }

 private:
  static Limits unlimited(const Workings& workings) {
    Limits limits = limits_of(workings.job.rules);
    limits.film = false;
    return limits;
  }

  const Workings& begun_;
  const SprayOptions& how_;
  Ladder ladder_;
  std::vector<std::int64_t> way_back_pm_;
  std::vector<std::size_t> flat_of_{};
  std::map<std::pair<std::size_t, int>, std::int64_t> budgets_{};
};

}  // namespace detail

LEVIGATE_WORK Spraying how_much_to_spray(const Bench& bench, const SprayOptions& options) {
  const detail::Laid& laid = bench.laid();
  const Coating& coating = laid.job.coating;
  if (coating.kind == CoatingKind::solid)
    throw BadInput("the coating is a solid: nothing is sprayed, in how_much_to_spray");
  Spraying result{.job = laid.job.name,
                  .coating = coating.name,
                  .how = detail::settled(options, coating),
                  .zones = {},
                  .cautions = detail::spray_cautions(coating)};
  const SprayOptions& how = result.how;
  result.wet_um_per_coat = wet_film_um(*how.dry_um_per_coat, *how.volume_solids, how.thinner);
  detail::SprayTrial trial(laid, how);
  // A shop's offset is of films that a person counted before. Here the error of counting is in the film.
  Factors factors = laid.begun.factors;
  factors.film_offset_um = factors.film_se_um = 0;
  const auto plan_of = [&](const std::vector<int>& coats) {
    Workings sprayed = workings(trial.job(coats), laid.stack, factors);
    for (std::size_t zone = 0; zone < trial.zones(); ++zone)
      *sprayed.budget_um[zone] -= trial.way_back_um(zone);
    return plan(sprayed);
  };
  std::optional<std::vector<int>> coats = trial.least();
  if (coats && how.way_back) {
    trial.keep_way_back(plan_of(*coats));
    coats = trial.least();
  }
  if (!coats) {
    result.why = plan_of(std::vector<int>(trial.zones(), trial.most_coats())).why;
    return result;
  }
  const Plan planned = plan_of(*coats);
  result.chance = 1.0;
  for (std::size_t zone = 0; zone < trial.zones(); ++zone) {
    const Zone& of = laid.begun.job.zones[zone];
    const int here = (*coats)[trial.flat_of(zone)];
    const Film film = trial.film(zone, here);
    const double depth_um = static_cast<double>(planned.exact.depth_pm[zone]) / detail::pm_per_um;
    const double all_um = depth_um + trial.way_back_um(zone);
    // An edge is sprayed as thick as its flat: what runs off it is paint as well.
    const double laid_um = here * *how.dry_um_per_coat;
    SprayedZone told{
        .zone = of.name,
        .area_cm2 = of.area_cm2,
        .edge_of = of.edge ? of.edge->of : "",
        .coats = here,
        .film_um = film.mean_um,
        .wanted_um = trial.wanted_um(zone, std::llround(all_um * detail::pm_per_um), film.mean_um),
        .depth_um = depth_um,
        .way_back_um = trial.way_back_um(zone),
        .chance = trial.chance(zone, film, all_um)};
    constexpr double cm_per_um = 1e-4;
    told.mix_ml = of.area_cm2 * laid_um * cm_per_um * (1.0 + how.thinner) /
                  (*how.volume_solids * *how.transfer_efficiency * (1.0 - *how.loss_share));
    result.chance *= told.chance;
    result.mix_ml += told.mix_ml;
    result.zones.push_back(std::move(told));
  }
  return result;
}

}  // namespace levigate
