// What the sun shows of a sequence: at how many spots of a zone scratches are left that a later step should have taken out.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "levigate/grade/spread.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/surface/contact.hpp"
#include "levigate/surface/inspection_table.hpp"
#include "levigate/surface/roughness.hpp"
#include "levigate/surface/scratch_width.hpp"
#include "levigate/surface/work/spot.hpp"
#include "levigate/surface/work/stray.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A falling function of a depth, kept at even depths from 0 to its end, and its integral up to a depth.
class DepthTable {
 public:
  static constexpr std::size_t places = 512;

  template <typename Function>
  DepthTable(double end_um, Function function) : step_um_(end_um / places), values_(places + 1) {
    for (std::size_t i = 0; i <= places; ++i)
      values_[i] = function(static_cast<double>(i) * step_um_);
    integral_.push_back(0);
    for (std::size_t i = 0; i < places; ++i)
      integral_.push_back(integral_[i] + 0.5 * step_um_ * (values_[i] + values_[i + 1]));
  }

  /// Between two places along a line; 0 beyond the end.
  double at(double depth_um) const {
    const double place = std::max(depth_um, 0.0) / step_um_;
    if (!(place < places)) return 0.0;
    const auto i = static_cast<std::size_t>(place);
    return values_[i] + (place - static_cast<double>(i)) * (values_[i + 1] - values_[i]);
  }

  /// Integral from 0.
  double up_to(double depth_um) const {
    const double place = std::max(depth_um, 0.0) / step_um_;
    if (!(place < places)) return integral_.back();
    const auto i = static_cast<std::size_t>(place);
    const double part = place - static_cast<double>(i);
    return integral_[i] +
           step_um_ * part * (values_[i] + 0.5 * part * (values_[i + 1] - values_[i]));
  }

  double end_um() const { return step_um_ * places; }

 private:
  double step_um_;
  std::vector<double> values_;
  std::vector<double> integral_{};
};

}  // namespace detail

/// The marks that a sequence leaves, by the same scratches, spots and misses as go_back() weighs.
///
/// A spot loses the share u of what a step takes off on the mean: normal, with removed_cv, the same in all steps. The step that
/// should take scratches out misses the spot with chance missed_share, and then does an even share w of its work. With `own_um` of
/// that step and `since_um` of the later ones, the number on the spot that stands out from the finish is Poisson with mean
///
///   per_um G(shows + u (w own + since)),   G(y) = integral over t from y of the share of tips deeper than t
///
/// per_um: tips that cross the spot for each um that their step takes off, spot_um grooves_per_um2(). A mark stands out where it
/// is wider than sunlight_um and deeper than what the last sheet leaves on all but finish_per_spot of the spots. A stray shows
/// where it is that deep; what comes off after its step is not counted. Nor is that two steps may miss the same spot.
///
/// Source: that of go_back(); data/profiles/inspection.json
class Sun {
 public:
  explicit Sun(const Workings& workings)
      : workings_(workings), evenness_(detail::evenness_nodes(workings.job.rules.removed_cv)) {}

  /// Chance that a spot shows scratches of a sheet, or of what the zone carries (none), after a step that took off own_um, and
  /// since_um by those after it.
  double spot_chance(std::size_t zone, std::optional<std::size_t> of, std::size_t last,
                     double own_um, double since_um) {
    const detail::DepthTable& shown = shown_of(zone, of, last);
    const double missed_share = inspection_table[0].missed_share.value;
    const double even = shown.at(own_um + since_um);
    if (!(own_um > 0)) return even;
    const double missed = (shown.up_to(own_um + since_um) - shown.up_to(since_um)) / own_um;
    return (1.0 - missed_share) * even + missed_share * missed;
  }

  /// Chance that a spot shows a stray scratch of a step with this sheet.
  double stray_chance(std::size_t zone, std::size_t sheet, std::size_t last) {
    constexpr double cm2_per_m2 = 1e4;
    const auto [at, fresh] =
        strays_.try_emplace({sheet, alike(zone, sheet), last, alike(zone, last)});
    if (fresh) {
      const StrayInput stray{.size_um = grain_of(workings_, sheet).worn_um,
                             .plane_height_um = tips_of(zone, sheet).plane_height_um,
                             .modulus_mpa = workings_.stack.sheets[sheet].backing.modulus_mpa,
                             .hardness_mpa = workings_.job.coating.hardness_mpa,
                             .flank_deg = workings_.model.flank_deg,
                             .force_n = workings_.work[sheet][zone].tool.force_n};
      at->second = -std::expm1(-inspection_table[0].stray_per_m2.value / cm2_per_m2 *
                               stray_exceedance(stray, shows_um(zone, last)));
    }
    return at->second;
  }

 private:
  /// Tips that scratch a zone.
  struct Tips {
    double per_um;            ///< that cross a spot, for each um that comes off
    double plane_height_um;   ///< Contact::plane_height_um
    detail::DepthTable deep;  ///< share of them that scratch deeper
    double beyond_um(double depth_um) const {
      return deep.up_to(deep.end_um()) - deep.up_to(depth_um);
    }
  };

  static constexpr std::size_t carried = static_cast<std::size_t>(-1);

  /// The first zone where a sheet has the same tool: what it leaves there is the same.
  std::size_t alike(std::size_t zone, std::size_t sheet) const {
    const std::vector<SheetInZone>& work = workings_.work[sheet];
    std::size_t first = 0;
    while (!(work[first].tool == work[zone].tool)) ++first;
    return first;
  }

  const Tips& tips_of(std::size_t zone, std::optional<std::size_t> of) {
    const std::pair key(of.value_or(carried), of ? alike(zone, *of) : zone);
    const auto known = tips_.find(key);
    if (known != tips_.end()) return known->second;
    const Job& job = workings_.job;
    const auto tips = [&](const Contact& touch, double rate_um_per_m, double factor) {
      const double scale = factor > 0 ? factor : 1.0;
      return Tips{spot_um * grooves_per_um2(touch, rate_um_per_m), touch.plane_height_um(),
                  detail::DepthTable(scale * touch.depth_um(1.0), [&](double depth_um) {
                    return touch.exceedance(depth_um / scale);
                  })};
    };
    if (of) {
      const SheetInZone& work = workings_.work[*of][zone];
      const Contact touch = contact_of(job, workings_.model, grain_of(workings_, *of),
                                       workings_.stack.sheets[*of].backing, work.tool);
      return tips_.emplace(key, tips(touch, work.rate_um_per_m, workings_.factors.of(*of).scratch))
          .first->second;
    }
    const Carried grade = *carried_in(job, job.zones[zone]);
    const Grain grain{grade.grade.median_um, grain_um(grade), log_spread(grade.grade)};
    const Backing paper = backing_named("latex paper");
    const SheetInZone work =
        sheet_in_zone(job, workings_.model, grain, paper, job.zones[zone].block);
    return tips_
        .emplace(key,
                 tips(contact_of(job, workings_.model, grain, paper, work.tool), work.rate_um_per_m,
                      workings_.starts[zone]->scratch_um / work.scratch_um))
        .first->second;
  }

  /// Depth from which a mark stands out from what the last sheet leaves [um].
  double shows_um(std::size_t zone, std::size_t last) {
    const auto [at, fresh] = shows_.try_emplace({last, alike(zone, last)});
    if (!fresh) return at->second;
    const Tips& own = tips_of(zone, last);
    double low = 0, high = own.deep.end_um();
    constexpr int halvings = 40;
    for (int i = 0; i < halvings; ++i) {
      const double middle = 0.5 * (low + high);
      const bool more =
          own.per_um * own.beyond_um(middle) > inspection_table[0].finish_per_spot.value;
      (more ? low : high) = middle;
    }
    at->second = std::max(
        high, depth_of_width_um(inspection_table[0].sunlight_um.value, workings_.model.flank_deg));
    return at->second;
  }

  /// Chance that a spot shows scratches, by what came off on the mean since they were made.
  const detail::DepthTable& shown_of(std::size_t zone, std::optional<std::size_t> of,
                                     std::size_t last) {
    const std::tuple key(of.value_or(carried), of ? alike(zone, *of) : zone, last,
                         alike(zone, last));
    const auto known = shown_.find(key);
    if (known != shown_.end()) return known->second;
    const Tips& tips = tips_of(zone, of);
    const double shows = shows_um(zone, last);
    const double least = evenness_.front().first;
    const double end_um = std::max((tips.deep.end_um() - shows) / least, 1e-6);
    return shown_
        .emplace(key, detail::DepthTable(end_um,
                                         [&](double off_um) {
                                           double chance = 0;
                                           for (const auto& [u, weight] : evenness_) {
                                             const double beyond =
                                                 tips.beyond_um(shows + u * off_um);
                                             chance -= weight * std::expm1(-tips.per_um * beyond);
                                           }
                                           return chance;
                                         }))
        .first->second;
  }

  const Workings& workings_;
  std::vector<std::pair<double, double>> evenness_;
  std::map<std::pair<std::size_t, std::size_t>, Tips> tips_{};
  std::map<std::pair<std::size_t, std::size_t>, double> shows_{};
  std::map<std::tuple<std::size_t, std::size_t, std::size_t, std::size_t>, detail::DepthTable>
      shown_{};
  std::map<std::tuple<std::size_t, std::size_t, std::size_t, std::size_t>, double> strays_{};
};

}  // namespace levigate
