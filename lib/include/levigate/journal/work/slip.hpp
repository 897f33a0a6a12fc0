// The work behind journal/slip.hpp: defines what it declares.
#pragma once

#include <string>

#include "levigate/journal/slip.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/plan/job.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK void require_likely_readings(const Entry& entry, const Job& job) {
  if (entry.kind != EntryKind::film_read) return;
  for (const Zone& zone : job.zones) {
    if (zone.name != entry.zone || !zone.film) continue;
    const double film_um = zone.film->mean_um + zone.below_um;
    for (const double reading_um : entry.readings_um) {
      const bool high = reading_um > unit_slip_most * film_um;
      if (!high && !(reading_um < unit_slip_least * film_um)) continue;
      throw BadInput::of("readings_um",
                         "readings_um holds " + detail::number_text(reading_um) +
                             " um, and the job has a film of " + detail::number_text(film_um) +
                             " um in zone '" + zone.name +
                             "'. That is most likely a slip of the unit, which is um, or of the "
                             "zone: nothing is recorded");
    }
  }
}

}  // namespace levigate
