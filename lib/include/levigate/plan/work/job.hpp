// The work behind plan/job.hpp: defines what it declares.
#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/plan/job.hpp"

#include "levigate/detail/moment.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/grade/work/label_text.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/defect.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK void require_one_target(const Target& target, std::string_view where) {
  if (target.size_um.has_value() == target.gloss_gu.has_value()) {
    throw BadInput("target needs one of size_um and gloss_gu, in " + std::string(where));
  }
  if (target.gloss_high_gu && !(target.gloss_gu && *target.gloss_high_gu >= *target.gloss_gu)) {
    throw BadInput("gloss_high_gu needs a gloss_gu that is no higher, in " + std::string(where));
  }
  const double angle_deg = target.angle_deg;
  if (angle_deg != 20.0 && angle_deg != 60.0 && angle_deg != 85.0) {
    throw BadInput::of("angle_deg", "angle_deg = " + detail::number_text(angle_deg) +
                                        " deg, expected 20, 60 or 85, in " + std::string(where));
  }
  if (target.size_um && angle_deg != 60.0) {
    throw BadInput::of("angle_deg", "angle_deg does not go with size_um, in " + std::string(where));
  }
}

namespace detail {

/// Throws: BadInput where the film of a zone does not go with the coating, or leaves nothing to remove.
inline void require_film(const Job& job, const Zone& zone, const std::string& place,
                         const std::string& pointer) {
  if (job.coating.kind == CoatingKind::solid) {
    if (zone.film)
      throw BadInput("film is given, but the coating is a solid, in " + place, pointer + "/film");
    return;
  }
  if (!zone.film) throw BadInput("film is missing: a coat needs it, in " + place, pointer);
  const bool one_round = job.coating.redissolves.value_or(false);
  if (zone.film->mean_um + (one_round ? zone.below_um : 0.0) <= job.rules.reserve_um) {
    Fault fault = told("film mean_um = " + number_text(zone.film->mean_um) + " um" +
                       (one_round && zone.below_um > 0 ? " with the rounds below" : "") +
                       " is not above reserve_um = " + number_text(job.rules.reserve_um) +
                       " um: nothing may be removed, in " + place);
    fault.quantity = "mean_um";
    fault.contradicts = {"reserve_um"};
    fault.pointer = pointer + "/film";
    throw BadInput(std::move(fault));
  }
}

/// Throws: BadInput unless an edge belongs to a flat zone.
inline void require_flat_beside(const Job& job, const Zone& zone, const std::string& place,
                                const std::string& pointer) {
  for (const Zone& other : job.zones) {
    if (other.name == zone.edge->of && !other.edge) return;
  }
  throw BadInput("edge_of '" + zone.edge->of + "' is not a flat zone of the job, in " + place,
                 pointer + "/edge_of");
}

/// Throws: BadInput where the moment at which the coat has its age is none, or goes with no age.
inline void require_moment_of_age(const Job& job) {
  if (job.age_at.empty()) return;
  const std::string told = "age_at is " + detail::quoted(job.age_at);
  if (!job.age_h)
    throw BadInput(told + ", and age_h is missing: what age has the coat then?", "/age_at");
  if (const std::string fault = moment_fault(job.age_at); !fault.empty())
    throw BadInput(told + ", expected a date and time of RFC 3339: " + fault, "/age_at");
}

}  // namespace detail

LEVIGATE_WORK void require_workable(const Job& job, std::string_view) {
  std::vector<Fault> faults;
  const auto collect = [&](auto check) {
    try {
      check();
    } catch (const Error& error) {
      faults.push_back(error.fault());
    }
  };
  collect([&] { detail::require_moment_of_age(job); });
  std::set<std::string_view> names;
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    const Zone& zone = job.zones[i];
    const std::string pointer = "/zones/" + std::to_string(i);
    const std::string place = pointer + " ('" + zone.name + "')";
    collect([&] { detail::require_film(job, zone, place, pointer); });
    if (zone.edge) collect([&] { detail::require_flat_beside(job, zone, place, pointer); });
    if (!names.insert(zone.name).second) {
      faults.push_back(
          BadInput("zone '" + zone.name + "' is repeated, in " + pointer, pointer + "/name")
              .fault());
    }
  }
  throw_faults(std::move(faults));
}

}  // namespace levigate
