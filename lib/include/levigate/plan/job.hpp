// The work: its coating, its zones, where it starts and where it must end.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/sequence.hpp"
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
  std::optional<Cure> cure;     ///< by this coat's data sheet; none: the coating's own
  Rules rules;
  Objective prefer = Objective::minutes;
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
void validate(const Zone& zone, const Coating& coating, const Rules& rules, bool sprayed,
              std::string_view where);

/// Throws: BadInput for no target or two.
void validate(const Target& target, std::string_view where);

/// Throws: BadInput, OutOfRange where the job cannot be planned, naming the place.
void validate(const Job& job);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/plan/work/job.hpp"
#endif
