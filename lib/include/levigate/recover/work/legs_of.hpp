// The legs of a way back, on a patch or on the whole zone, whichever is expected to take less.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/recover/way_back.hpp"

#include "levigate/plan/job.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/hollow.hpp"
#include "levigate/recover/leg.hpp"
#include "levigate/recover/leg_policy.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/need.hpp"
#include "levigate/recover/policy.hpp"
#include "levigate/surface/inspection_table.hpp"

namespace levigate::inline v0::detail {

/// Sanding minutes of a sheet in a zone.
inline double sanding_minutes(const Workings& workings, std::size_t sheet, std::size_t zone,
                              double removal_um) {
  return effort(removal_um, workings.work[sheet][zone], workings.job.zones[zone],
                workings.stack.sheets[sheet], workings.factors.duty)
      .minutes;
}

/// Where film comes off for a mark: all over its zone, or on a patch round it.
struct Ground {
  double area_cm2 = 0;            ///< of the zone
  std::optional<double> face_mm;  ///< side of the largest tool; none: all over the zone

  double patch_mm(double depth_um) const {
    return patch_width_mm(depth_um, inspection_table[0].hollow_slope_um_per_mm.value, *face_mm);
  }

  /// Depth over the whole zone of as much volume as a depth at the mark takes [um]; infinite where a patch does not fit.
  double spread_um(double depth_um) const {
    if (!face_mm) return depth_um;
    const double width_mm = patch_mm(depth_um);
    constexpr double mm2_per_cm2 = 100.0;
    if (width_mm * width_mm > mm2_per_cm2 * area_cm2)
      return std::numeric_limits<double>::infinity();
    return depth_um * hollow_area_cm2(width_mm) / area_cm2;
  }
};

/// A patch round a mark, if the mark is a spot of a flat zone.
inline std::optional<Ground> patch_ground(const Workings& workings,
                                          const std::vector<std::size_t>& sheets, std::size_t zone,
                                          MarkKind kind) {
  const Zone& where = workings.job.zones[zone];
  if (!is_levelled(where) || (kind != MarkKind::scratch && kind != MarkKind::cluster)) return {};
  double face_cm2 = 0;
  for (const std::size_t sheet : sheets)
    face_cm2 = std::max(face_cm2, workings.work[sheet][zone].tool.area_cm2);
  constexpr double mm_per_cm = 10.0;
  const Ground patch{where.area_cm2, mm_per_cm * std::sqrt(face_cm2)};
  if (!std::isfinite(patch.spread_um(0.0))) return {};
  return patch;
}

/// Prices looks, and writes legs out.
class LegPricing {
 public:
  LegPricing(const Workings& workings, const std::vector<std::size_t>& sheets, std::size_t zone,
             const std::vector<Reentry>& ways, const Ground& ground)
      : workings_(workings), sheets_(sheets), zone_(zone), ways_(ways), ground_(ground) {}

  /// Minutes to a look. Each one is taken after the last sheet, so that to go on with that needs no change.
  double look_minutes(std::size_t climb, double from_um, double to_um) const {
    const bool goes_on = from_um > 0.0 && climb + 1 == ways_.size();
    double minutes = inspection_table[0].look_minutes.value;
    double before_um = from_um;
    for (std::size_t i = climb; i < ways_.size(); ++i) {
      const double after_um = off_after(climb, i, to_um);
      const double sanded = sanding(i, before_um, after_um);
      minutes += goes_on ? sanded : with_change(sanded, workings_.job.rules);
      before_um = after_um;
    }
    return minutes;
  }

  LegPolicy best(const std::vector<Need>& needs, double film_um, double stop_minutes) const {
    std::vector<Climb> climbs;
    for (const Reentry& way : ways_) climbs.push_back(way.climb);
    return best_legs(
        needs, climbs,
        [this](std::size_t climb, double from_um, double to_um) {
          return look_minutes(climb, from_um, to_um);
        },
        film_um, stop_minutes);
  }

  std::vector<Leg> written(const LegPolicy& policy, const std::vector<Need>& needs) const {
    std::vector<Leg> result;
    double from_um = 0;
    for (const PlannedLeg& planned : policy.legs) {
      Leg& leg = result.emplace_back();
      leg.sheet = ways_[planned.climb].sheet;
      for (std::size_t i = planned.climb + 1; i < ways_.size(); ++i)
        leg.then.push_back(ways_[i].sheet);
      Look look;
      for (const double off_um : planned.off_um) {
        look.sanded_minutes +=
            sanding(planned.climb, from_um, off_after(planned.climb, planned.climb, off_um));
        look.minutes += look_minutes(planned.climb, from_um, off_um);
        look.removal_um = from_um = off_um;
        look.gone_chance = 0;
        for (const Need& need : needs)
          look.gone_chance += need.need_um <= off_um ? need.probability : 0.0;
        if (ground_.face_mm) look.patch_mm = ground_.patch_mm(off_um);
        leg.looks.push_back(look);
      }
      leg.every_minutes = look.sanded_minutes / static_cast<double>(leg.looks.size());
    }
    return result;
  }

 private:
  /// Depth at the mark once sheet i of a climb is done, which ends at to_um: what the later ones take is still to come.
  double off_after(std::size_t climb, std::size_t i, double to_um) const {
    if (i + 1 == ways_.size()) return to_um;
    return i == climb ? to_um - ways_[i].climb.above_um
                      : off_after(climb, i - 1, to_um) + ways_[i].removal_um;
  }

  /// Minutes of sanding with a sheet.
  double sanding(std::size_t i, double from_um, double to_um) const {
    const double spread_um =
        ground_.spread_um(std::max(from_um, to_um)) - ground_.spread_um(from_um);
    if (!std::isfinite(spread_um)) return std::numeric_limits<double>::infinity();
    return sanding_minutes(workings_, sheets_[i], zone_, spread_um);
  }

  const Workings& workings_;
  const std::vector<std::size_t>& sheets_;
  std::size_t zone_;
  const std::vector<Reentry>& ways_;
  Ground ground_;
};

/// Sets the legs of a way back whose reentries are known, and what they take on a patch and on the whole zone.
inline void set_legs(const Workings& workings, const std::vector<std::size_t>& sheets,
                     std::size_t zone, double film_um, WayBack& way) {
  const std::vector<Need>& needs = way.diagnosis.needs;
  const auto worked = [&](const Ground& ground) {
    const LegPricing pricing(workings, sheets, zone, way.reentries, ground);
    const LegPolicy policy = pricing.best(needs, film_um, way.round_minutes);
    return std::pair(policy.expected_minutes, pricing.written(policy, needs));
  };
  auto [zone_minutes, legs] = worked({workings.job.zones[zone].area_cm2, {}});
  way.zone_minutes = zone_minutes;
  way.legs = std::move(legs);
  if (const auto patch = patch_ground(workings, sheets, zone, way.diagnosis.mark.kind)) {
    auto [patch_minutes, patch_legs] = worked(*patch);
    way.patch_minutes = patch_minutes;
    if (patch_minutes < zone_minutes) way.legs = std::move(patch_legs);
  }
}

}  // namespace levigate::inline v0::detail
