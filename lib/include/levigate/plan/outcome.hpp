// The values of a plan: its steps zone by zone, and what they add up to.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "levigate/plan/caution.hpp"
#include "levigate/plan/local.hpp"
#include "levigate/plan/reliance.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/stack/finding.hpp"

namespace levigate::inline v0 {

/// What a step does in one zone.
struct ZoneStep {
  std::string zone;
  bool worked = true;     ///< false: this step passes it by, and it stands as before
  double removal_um = 0;  ///< lowered by this step [um]
  double scratch_um = 0;  ///< depth of the scratches it leaves [um]
  double depth_um = 0;    ///< all removal so far and these scratches [um]
  double minutes = 0;     ///< sanding, without the change
  double travel_m = 0;    ///< of the block
  double sheets_used = 0;
  double gloss_gu = 0;     ///< at 60 degrees, a lower bound of a glossmeter's reading [GU]
  double gloss_20_gu = 0;  ///< the same at 20 degrees [GU]
  double gloss_85_gu = 0;  ///< the same at 85 degrees [GU]
  std::optional<double> film_left_um;  ///< above the deepest scratch, on the mean; none on a solid
  std::optional<double>
      cut_through;  ///< chance of cutting through somewhere in the zone; none on a solid
  /// Strokes of the pad along the edge that the film still affords after this step; only where a zone on a coat is not
  /// levelled.
  std::optional<double> strokes_left{};
};

/// One step of a plan.
struct Step {
  std::string sheet;  ///< id
  std::string label;  ///< of the grade, as read
  double size_um = 0;
  std::optional<double>
      size_ratio;      ///< to the coarsest grain whose scratches it finds; none where it finds none
  double minutes = 0;  ///< all zones, with the change
  double sheets_used = 0;
  double cost = 0;
  double gloss_gu = 0;  ///< of the zone with least
  std::vector<ZoneStep> zones;
  std::vector<Caution> cautions{};  ///< that this step needs beside those of the plan
};

/// What a plan adds up to.
struct Totals {
  double minutes = 0;
  std::optional<double>
      film;  ///< share of its budget that the worst zone has used; none on a solid
  std::size_t steps = 0;
  double cost = 0;
  double depth_um = 0;  ///< of the deepest zone
};

/// A plan, or the reason why there is none.
struct Plan {
  bool found = false;
  std::vector<LocalStep> before;  ///< work on defects, before the first step
  std::vector<Step> steps;
  Totals total;
  Sequence exact;  ///< the integers that the search decided by
  std::vector<Plan>
      tradeoff;  ///< one per point of the trade-off, by minutes; empty in those plans themselves
  std::vector<Finding> findings;
  std::vector<Caution> cautions;
  std::vector<Reliance> relies_on;  ///< most influential first; empty in the plans of a trade-off
  std::optional<Why> why;           ///< only where none was found
};

}  // namespace levigate
