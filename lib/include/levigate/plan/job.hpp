// The work: its coating, its zones, where it starts and where it must end.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/film/film.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/search.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/defect.hpp"

namespace levigate::inline v0 {

/// A part of the surface that is sanded with one block and has one film.
struct Zone {
  std::string name;
  double area_cm2 = 0;
  Block block;
  std::optional<Film> film;       ///< of the last round; required on a coat, absent on a solid
  double peel_um = 0;             ///< orange peel as sprayed, peak to valley [um]
  double peel_wavelength_mm = 3;  ///< its wavelength [mm]
  bool levelled = true;  ///< false: the levelling step passes it by, as it does edges and corners
  double below_um = 0;   ///< film of the rounds below the last one [um]
  std::vector<Defect> defects{};     ///< runs, sags, nibs, ridges: taken down before levelling
  std::optional<Carried> carries{};  ///< where it does not stand as the job starts
};

/// What ends the sequence: the first sheet that meets it. One of the two is set.
struct Target {
  std::optional<double> size_um;  ///< met by a sheet of at most this size [um]
  std::optional<double>
      gloss_gu;       ///< met where every zone has at least this gloss at 60 degrees [GU]
  std::string label;  ///< of the grade or the sheen, where the target was given as one
  std::optional<double> gloss_high_gu{};  ///< of a band of sheen: its upper end at 60 degrees [GU]
};

/// One job.
struct Job {
  std::string name;
  Coating coating;
  std::vector<Zone> zones;
  std::optional<Grade>
      scratched_by;  ///< the grade whose scratches the work carries; none: as sprayed
  Target target;
  std::optional<double> age_h;  ///< of the last coat [h]; none: fully cured
  std::optional<Cure> cure;     ///< of this coat; none: that of the coating's name
  Rules rules;
  Objective prefer = Objective::minutes;
  /// The person's pace, as a journal taught it: how much more work a minute holds than is computed, 0.01 to 100.
  double duty_factor = 1;
};

/// What a zone carries: its own state, else what the job starts with; none: as sprayed.
inline std::optional<Carried> carried_in(const Job& job, const Zone& zone) {
  if (zone.carries || !job.scratched_by) return zone.carries;
  return Carried{*job.scratched_by};
}

/// Whether the first step levels orange peel: where a zone as sprayed is to be levelled, or no zone carries a grade.
inline bool starts_by_levelling(const Job& job) {
  bool carried = false;
  for (const Zone& zone : job.zones) {
    if (carried_in(job, zone)) {
      carried = true;
    } else if (zone.levelled) {
      return true;
    }
  }
  return !carried;
}

/// Throws: BadInput, OutOfRange where the zone cannot be worked; `sprayed` says whether its peel counts.
inline void validate(const Zone& zone, const Coating& coating, const Rules& rules, bool sprayed,
                     std::string_view where) {
  if (zone.name.empty()) throw BadInput("name is empty, in " + std::string(where));
  const std::string place = std::string(where) + " ('" + zone.name + "')";
  detail::require_range(zone.area_cm2, 0.1, 1e6, "area_cm2", "cm2", place);
  validate(zone.block, place + ", block");
  if (zone.carries) validate(*zone.carries, place + ", carries");
  if (sprayed) {
    detail::require_range(zone.peel_um, 0.0, 1e4, "peel_um", "um", place);
    detail::require_range(zone.peel_wavelength_mm, 1e-3, 1e3, "peel_wavelength_mm", "mm", place);
  }
  for (std::size_t i = 0; i < zone.defects.size(); ++i) {
    validate(zone.defects[i], place + ", defects[" + std::to_string(i) + "]");
  }
  detail::require_range(zone.below_um, 0.0, 2e4, "below_um", "um", place);
  if (coating.kind == CoatingKind::solid) {
    if (zone.film) throw BadInput("film is given, but the coating is a solid, in " + place);
    return;
  }
  if (!zone.film) throw BadInput("film is missing: a coat needs it, in " + place);
  detail::require_range(zone.film->mean_um, 0.0, 2e4, "film mean_um", "um", place);
  detail::require_range(zone.film->sd_um, 0.0, 2e4, "film sd_um", "um", place);
  if (zone.film->mean_um <= rules.reserve_um) {
    throw BadInput("film mean_um = " + detail::number_text(zone.film->mean_um) +
                   " um is not above reserve_um = " + detail::number_text(rules.reserve_um) +
                   " um: nothing may be removed, in " + place);
  }
}

/// Throws: BadInput for no target or two.
inline void validate(const Target& target, std::string_view where) {
  if (target.size_um.has_value() == target.gloss_gu.has_value()) {
    throw BadInput("target needs one of size_um and gloss_gu, in " + std::string(where));
  }
  if (target.size_um) detail::require_range(*target.size_um, 0.01, 1e4, "size_um", "um", where);
  if (target.gloss_high_gu && !(target.gloss_gu && *target.gloss_high_gu >= *target.gloss_gu)) {
    throw BadInput("gloss_high_gu needs a gloss_gu that is no higher, in " + std::string(where));
  }
  if (target.gloss_gu) detail::require_range(*target.gloss_gu, 0.0, 200.0, "gloss_gu", "GU", where);
}

/// Throws: BadInput, OutOfRange where the job cannot be planned, naming the place.
inline void validate(const Job& job) {
  validate(job.coating, "/coating");
  validate(job.rules, "/rules");
  validate(job.target, "/target");
  if (job.age_h) detail::require_range(*job.age_h, 0.01, 1e6, "age_h", "h", "/age_h");
  if (job.cure) validate(*job.cure, "/cure");
  detail::require_range(job.duty_factor, 0.01, 100.0, "duty_factor", "", "/duty_factor");
  if (job.zones.empty())
    throw BadInput("zones is empty: a job needs at least one, in /zones", "/zones");
  std::set<std::string_view> names;
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    const std::string place = "/zones/" + std::to_string(i);
    validate(job.zones[i], job.coating, job.rules, !carried_in(job, job.zones[i]), place);
    if (!names.insert(job.zones[i].name).second) {
      throw BadInput("zone '" + job.zones[i].name + "' stands twice, in " + place, place + "/name");
    }
  }
}

}  // namespace levigate
