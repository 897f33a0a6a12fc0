// The work behind plan/job.hpp: defines what it declares.
#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <string_view>

#include "levigate/plan/job.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/defect.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK void validate(const Zone& zone, const Coating& coating, const Rules& rules,
                            bool sprayed, std::string_view where) {
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

LEVIGATE_WORK void validate(const Target& target, std::string_view where) {
  if (target.size_um.has_value() == target.gloss_gu.has_value()) {
    throw BadInput("target needs one of size_um and gloss_gu, in " + std::string(where));
  }
  if (target.size_um) detail::require_range(*target.size_um, 0.01, 1e4, "size_um", "um", where);
  if (target.gloss_high_gu && !(target.gloss_gu && *target.gloss_high_gu >= *target.gloss_gu)) {
    throw BadInput("gloss_high_gu needs a gloss_gu that is no higher, in " + std::string(where));
  }
  if (target.gloss_gu) detail::require_range(*target.gloss_gu, 0.0, 200.0, "gloss_gu", "GU", where);
}

LEVIGATE_WORK void validate(const Job& job) {
  validate(job.coating, "/coating");
  validate(job.rules, "/rules");
  validate(job.target, "/target");
  if (job.age_h) detail::require_range(*job.age_h, 0.01, 1e6, "age_h", "h", "/age_h");
  if (job.cure) validate(*job.cure, "/cure");
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
