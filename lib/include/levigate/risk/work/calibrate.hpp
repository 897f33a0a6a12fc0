// The work behind risk/calibrate.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/risk/calibrate.hpp"

#include "levigate/bench/work/laid.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/learn_pace.hpp"
#include "levigate/journal/work/patch.hpp"
#include "levigate/journal/work/rows.hpp"
#include "levigate/journal/work/shop_belief.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/sheet.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A belief after an observation that says what was expected, as surprising as its noise lets expect.
inline Belief narrowed(const Belief& belief, const std::vector<double>& weights) {
  const std::vector<double> pull = spread_times(belief, weights);
  const double usual = belief.noise * std::sqrt(dot(weights, pull) + 1.0);
  Belief after = updated(belief, {weights, dot(weights, belief.mean) + usual});
  after.mean = belief.mean;
  return after;
}

/// The shop after minutes with a backing, where what came off is known so well. Those of a machine tell nothing of the person.
inline Shop after_minutes(const Shop& shop, const std::string& coating, const std::string& backing,
                          double log_sd, bool machine = false) {
  Shop known = with_rates(shop, {{coating, backing}});
  std::vector<double> weights(known.rates.size() + 1, 0.0);
  const std::size_t row = row_at(known.rates, coating, backing);
  weights[row + 1] = -1.0 / noise_share(log_sd);
  if (!machine) {
    weights[0] = weights[row + 1];
    ++known.person.observations;
  }
  ++known.rates[row].learned.observations;
  ++known.rates[row_at(known.rates, coating, "")].learned.observations;
  const Belief belief = narrowed(pace_belief(known), weights);
  return with_pace(std::move(known), belief);
}

/// The shop after a scratch of a backing was read.
inline Shop after_scratch(const Shop& shop, const std::string& coating,
                          const std::string& backing) {
  Shop known = with_scratch_rows(shop, {{coating, backing}});
  std::vector<double> weights(known.scratches.size(), 0.0);
  const std::size_t row = row_at(known.scratches, coating, backing);
  weights[row] = 1;
  ++known.scratches[row].learned.observations;
  const Belief belief = narrowed(scratch_belief(known), weights);
  return with_scratches(std::move(known), belief);
}

/// Ranks the measurements for a plan.
class Calibrator {
 public:
  Calibrator(const Bench& bench, const Plan& plan, const SimulateOptions& options)
      : bench_(bench),
        plan_(plan),
        options_(options),
        workings_(workings_now(bench.laid())),
        shop_(bench.shop().value_or(Shop{})) {}

  Calibration ranked() {
    Calibration result{plan_.job, simulate(bench_, plan_, options_).minutes, {}, plan_.cautions};
    minutes_ = result.minutes;
    std::set<std::string> seen;
    for (std::size_t i = 0; i < plan_.steps.size(); ++i) {
      const std::size_t sheet = sheet_index(workings_.stack, plan_.steps[i].sheet);
      if (!teaches(sheet)) continue;
      if (!seen.insert(backing(sheet)).second) continue;
      patches(sheet, i);
      if (i + 1 < plan_.steps.size()) scratch(sheet);
    }
    first_step();
    std::stable_sort(found_.begin(), found_.end(), [](const Measurement& a, const Measurement& b) {
      return a.gain_per_hour > b.gain_per_hour;
    });
    std::set<MeasurementKind> kinds;
    for (Measurement& one : found_) {
      if (kinds.insert(one.kind).second) result.measurements.push_back(std::move(one));
    }
    return result;
  }

 private:
  static double fold(const Interval& minutes) {
    return minutes.p10 > 0.0 ? std::max(1.0, minutes.p90 / minutes.p10) : 1.0;
  }

  /// The name under which the work of a sheet is learned: of its machine where that works any zone.
  std::string backing(std::size_t sheet) const {
    return learned_name(workings_.stack.sheets[sheet], machine_zones(workings_.work[sheet]) == 0);
  }
  const std::string& coating() const { return workings_.job.coating.name; }

  /// Whether the journal of this sheet teaches anything: no polish, and its names are its own.
  bool teaches(std::size_t sheet) const {
    const auto named = [](const std::string& name, std::string_view shared) {
      return !name.empty() && name != shared;
    };
    return !polish_of(workings_.stack.sheets[sheet]) && named(coating(), nameless_coating) &&
           named(workings_.stack.sheets[sheet].backing.name, nameless_backing);
  }

  Interval minutes_with(const Shop& shop) const {
    const Bench known(bench_.job(), bench_.stack(), shop, bench_.journal());
    return simulate(known, plan_, options_).minutes;
  }

  void add(Measurement one, const Interval& before, const Interval& after) {
    one.minutes_before = before;
    one.minutes_after = after;
    one.fold_before = fold(before);
    one.fold_after = fold(after);
    one.gain_per_hour = std::log(one.fold_before / one.fold_after) / (one.minutes / 60.0);
    found_.push_back(std::move(one));
  }

  /// Patches with a sheet of a step, on the largest zone that its tool works. A machine's pad covers a whole patch: none for it.
  void patches(std::size_t sheet, std::size_t step) {
    const std::vector<Zone>& zones = workings_.job.zones;
    std::size_t at = 0;
    for (std::size_t i = 1; i < zones.size(); ++i) {
      if (zones[i].area_cm2 > zones[at].area_cm2) at = i;
    }
    const SheetInZone& work = workings_.work[sheet][at];
    if (work.tool.name.empty() || work.machine) return;
    Zone patch;
    patch.area_cm2 = patch_area_cm2;
    const double minutes_per_um =
        effort(1.0, work, patch, workings_.stack.sheets[sheet], workings_.factors.duty).minutes;
    const double off_um = patch_minutes / minutes_per_um;
    Measurement one{.sheet = workings_.stack.sheets[sheet].id, .tool = work.tool.name, .zone = {}};
    one.area_cm2 = patch_area_cm2;
    one.sanding_minutes = patch_minutes;
    one.removal_um = off_um;
    const auto tell = [&](MeasurementKind kind, double beside, double log_sd) {
      if (log_sd > most_patch_log_sd) return;
      one.kind = kind;
      one.log_sd = log_sd;
      one.minutes = one.sanding_minutes + beside;
      add(one, minutes_, minutes_with(after_minutes(shop_, coating(), backing(sheet), log_sd)));
    };
    if (zones[at].film) {
      const std::vector<double> before(patch_spots, off_um), after(patch_spots, 0.0);
      tell(MeasurementKind::patch_gauged, gauging_minutes,
           gauged_removal(before, after, workings_.job.rules.removed_cv).log_sd);
    }
    const double off_g = coat_density_g_cm3 * patch_area_cm2 * off_um / 1e4;
    tell(MeasurementKind::patch_weighed, weighing_minutes,
         weighed_removal(off_g, 0.0, patch_area_cm2).log_sd);
    if (step != 0 || !has_peel_to_level(workings_.job, zones[at])) return;
    const PatchRemoval levelled =
        levelled_removal(zones[at], work.tool, workings_.job.rules.residual_peel_um);
    one.zone = zones[at].name;
    one.removal_um = levelled.removal_um;
    one.sanding_minutes = levelled.removal_um * minutes_per_um;
    if (one.sanding_minutes > 0.0)
      tell(MeasurementKind::patch_levelled, noting_minutes, levelled.log_sd);
  }

  void scratch(std::size_t sheet) {
    Measurement one{.kind = MeasurementKind::scratch_read,
                    .sheet = workings_.stack.sheets[sheet].id,
                    .tool = {},
                    .zone = {}};
    one.minutes = loupe_minutes;
    one.log_sd = shop_.scratch_noise.log_sd;
    add(one, minutes_, minutes_with(after_scratch(shop_, coating(), backing(sheet))));
  }

  /// The first step, whose minutes are part of the day: what it leaves open is the rest.
  void first_step() {
    if (plan_.steps.size() < 2) return;
    const Step& step = plan_.steps.front();
    const std::size_t sheet = sheet_index(workings_.stack, step.sheet);
    if (!teaches(sheet)) return;
    const std::size_t by_machine = machine_zones(workings_.work[sheet]);
    if (by_machine > 0 && by_machine < workings_.job.zones.size()) return;  // teaches neither
    std::vector<Entry> journal = bench_.journal();
    Entry ended;
    ended.kind = EntryKind::step_ended;
    ended.at = "1970-01-01T00:00:00Z";
    ended.job = bench_.job().name;
    ended.sheet = step.sheet;
    ended.minutes = step.minutes;
    if (step.overcut && *step.overcut > plan_.overcut * (1.0 + 1e-9)) ended.overcut = step.overcut;
    journal.push_back(ended);
    std::vector<std::string> rest;
    for (std::size_t i = 1; i < plan_.steps.size(); ++i) rest.push_back(plan_.steps[i].sheet);
    const auto minutes_of_rest = [&](const std::optional<Shop>& shop) {
      const Bench left(bench_.job(), bench_.stack(), shop, journal);
      return simulate(left, evaluate(left, rest), options_).minutes;
    };
    Measurement one{
        .kind = MeasurementKind::first_step, .sheet = step.sheet, .tool = {}, .zone = {}};
    one.minutes = noting_minutes;
    one.overcut = ended.overcut;
    add(one, minutes_of_rest(bench_.shop()),
        minutes_of_rest(after_minutes(shop_, coating(), backing(sheet), 0.0, by_machine > 0)));
  }

  const Bench& bench_;
  const Plan& plan_;
  SimulateOptions options_;
  const Workings& workings_;
  Shop shop_;
  Interval minutes_;
  std::vector<Measurement> found_;
};

}  // namespace detail

LEVIGATE_WORK Calibration calibrate(const Bench& bench, const Plan& plan,
                                    const SimulateOptions& options) {
  return detail::Calibrator(bench, plan, options).ranked();
}

}  // namespace levigate
