// What one sheet does in one zone, and what it takes to lower the zone: travel, minutes, paper.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <vector>

#include "levigate/plan/factors.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/contact.hpp"
#include "levigate/surface/meter.hpp"
#include "levigate/surface/model.hpp"
#include "levigate/surface/removal.hpp"
#include "levigate/surface/roughness.hpp"
#include "levigate/surface/scratch.hpp"
#include "levigate/surface/work/wear.hpp"

namespace levigate::inline v0 {

/// The part of a sheet's work in a zone that does not depend on what was done before.
struct SheetInZone {
  Block tool;                ///< the sheet's own block, else the zone's
  double scratch_um = 0;     ///< depth that its scratches reach [um]
  double ra_um = 0;          ///< roughness it leaves [um]
  double rq_um = 0;          ///< the same, root mean square [um]
  double reading_gu = 0;     ///< what a glossmeter then reads at the angle of the target [GU]
  double rate_um_per_m = 0;  ///< film removed per metre of sliding, mean between two cleanings
  bool machine = false;      ///< whether the sheet's machine works here, and no hand sets the pace
  std::optional<double> soft_mpa{};  ///< of that machine: soft_modulus_mpa()
};

/// In how many of the zones of a sheet its machine works.
inline std::size_t machine_zones(const std::vector<SheetInZone>& zones) {
  return static_cast<std::size_t>(std::count_if(
      zones.begin(), zones.end(), [](const SheetInZone& one) { return one.machine; }));
}

/// The tool that levels, as film is counted: a pad that nobody measured is taken for soft.
inline Block leveller_of(const SheetInZone& work) {
  Block tool = work.tool;
  tool.modulus_mpa = work.soft_mpa.value_or(tool.modulus_mpa);
  return tool;
}

/// Abrasive grain as it removes and as it scratches: a compound breaks down in between, paper does not.
struct Grain {
  double size_um = 0;
  double worn_um = 0;
  double log_spread = 0;
  double wear_share = 1;

  friend bool operator==(const Grain&, const Grain&) = default;
};

/// How this grain on this backing touches the coat under this tool: contact().
inline Contact contact_of(const Job& job, const Model& model, const Grain& grain,
                          const Backing& backing, const Block& tool) {
  return contact({.size_um = grain.worn_um,
                  .log_spread = grain.log_spread,
                  .tip_spread = backing.tip_spread,
                  .modulus_mpa = backing.modulus_mpa,
                  .pressure_kpa = tool.pressure_kpa(),
                  .hardness_mpa = job.coating.hardness_mpa,
                  .flank_deg = model.flank_deg,
                  .packing = model.packing});
}

/// Scratch, roughness, gloss and rate of this grain on this backing under this tool.
/// Formulas: contact(), scratch_depth_um(), mean_reading_gu(), removal_rate_um_per_m(), clogging_share(); times what a shop
/// has learned.
/// Throws: OutOfRange where the state is outside their domains
inline SheetInZone sheet_in_zone(const Job& job, const Model& model, const Grain& grain,
                                 const Backing& backing, const Block& tool,
                                 const SheetFactors& factors = {}) {
  const Coating& coating = job.coating;
  const Contact touch = contact_of(job, model, grain, backing, tool);
  const double fresh_rate =
      grain.wear_share * removal_rate_with(wear_of(coating, model), grain.size_um,
                                           tool.pressure_kpa(), coating.hardness_mpa,
                                           model.size_exponent, model.saturation_um);
  const double rq_um = factors.scratch * levigate::rq_um(touch);
  return {.tool = tool,
          .scratch_um = factors.scratch * scratch_depth_um(touch, job.rules.scratch_quantile),
          .ra_um = factors.scratch * ra_um(touch),
          .rq_um = rq_um,
          .reading_gu = mean_reading_gu(coating.refractive_index, job.target.angle_deg, rq_um,
                                        model.flank_deg),
          .rate_um_per_m = factors.rate * fresh_rate *
                           clogging_share(backing.clean_every_m, backing.fade_m, backing.floor)};
}

/// What it takes to lower a zone by some depth.
struct Effort {
  double removal_um = 0;
  double travel_m = 0;  ///< of the block
  double minutes = 0;
  double sheets_used = 0;
};

/// Effort of lowering a zone by removal_um. A block of area a covers one part of a zone of area A at a time; duty is
/// what a shop has learned of the hand, and counts 1 where a machine works:
///
///   travel = (R / rate) A / a,   minutes = travel / speed / tool's duty / duty / 60,
///   sheets = travel / life * a wrap / sheet
inline Effort effort(double removal_um, const SheetInZone& work, const Zone& zone,
                     const Sheet& sheet, double duty) {
  const double travel_m = removal_um / work.rate_um_per_m * zone.area_cm2 / work.tool.area_cm2;
  return {.removal_um = removal_um,
          .travel_m = travel_m,
          .minutes =
              travel_m / work.tool.speed_m_s / work.tool.duty / (work.machine ? 1.0 : duty) / 60.0,
          .sheets_used = travel_m / sheet.backing.life_m * work.tool.area_cm2 * work.tool.wrap /
                         sheet.area_cm2()};
}

}  // namespace levigate
