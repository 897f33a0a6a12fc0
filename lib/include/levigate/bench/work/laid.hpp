// What a Bench holds: job, stack, shop and journal, and their Workings.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <exception>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/journal/done.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/shop_factors.hpp"
#include "levigate/plan/factors.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/work/present_body.hpp"
#include "levigate/recover/work/zone_done.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The gauge that entries of a journal are read with: they name none, and this is the one that reads a film on wood.
inline constexpr std::string_view journal_gauge = "ultrasonic";

/// The film of a zone, of all rounds, from the readings after its last step. One reading tells no spread: that is taken for what the
/// job says, and for the unevenness of what came off by this reading.
///
///   sd^2 = sd_stated^2 + (removed_cv R)^2,   R = max(0, mean_stated + below - reading)
inline Film film_read(const Zone& zone, const Rules& rules,
                      const std::vector<double>& readings_um) {
  const Gauge gauge = gauge_named(journal_gauge);
  if (readings_um.size() != 1) return film_from_gauge(readings_um, gauge);
  const Film stated = zone.film.value_or(Film{});
  const double reading_um = readings_um.front();
  const double removed_um = std::max(0.0, stated.mean_um + zone.below_um - reading_um);
  return film_from_reading(reading_um, std::hypot(stated.sd_um, rules.removed_cv * removed_um),
                           stated.sd_se_um, gauge);
}

/// The films that a gauge read after the last step of their zones, by zone. `job`: before the first step.
/// Throws: BadInput for a reading in a zone that the job does not have, naming the nearest
inline std::map<std::string, Film> films_read(const Job& job, const std::vector<Entry>& journal) {
  std::map<std::string, Film> films;
  for (const Entry& entry : journal) {
    if (entry.kind == EntryKind::film_read) zone_index(job, entry.zone);
  }
  for (const Zone& zone : job.zones) {
    std::vector<double> readings_um;
    bool worked = false;
    for (const Entry& entry : journal) {
      if (entry.kind == EntryKind::step_ended && (entry.zone.empty() || entry.zone == zone.name)) {
        worked = true;
        readings_um.clear();
      } else if (entry.kind == EntryKind::film_read && entry.zone == zone.name) {
        readings_um.insert(readings_um.end(), entry.readings_um.begin(), entry.readings_um.end());
      }
    }
    if (worked && !readings_um.empty())
      films.emplace(zone.name, film_read(zone, job.rules, readings_um));
  }
  return films;
}

/// The mark that was found last, unless its zone was worked since.
inline std::optional<levigate::Mark> open_mark(const std::vector<Entry>& journal) {
  std::optional<levigate::Mark> open;
  for (const Entry& entry : journal) {
    if (entry.mark) {
      open = entry.mark;
    } else if (open && entry.kind == EntryKind::step_ended &&
               (entry.zone.empty() || entry.zone == open->zone)) {
      open.reset();
    }
  }
  return open;
}

/// What lies on a bench.
struct Laid {
  Job job;
  Stack stack;
  std::optional<Shop> shop;
  std::vector<Entry> journal;
  std::vector<DoneStep> done;
  std::optional<levigate::Mark> mark;
  Workings begun;                 ///< of the job before the first step
  Job now;                        ///< the job as it stands
  std::optional<Workings> left;   ///< of the job as it stands, where something was done
  std::exception_ptr no_present;  ///< why it is not known how the job stands
};

/// `factors`: what planning takes of the shop; the journal is that of the job alone.
inline Laid laid_with(Job job, Stack stack, std::optional<Shop> shop, std::vector<Entry> journal,
                      Factors factors) {
  Workings begun = workings(job, stack, factors);
  Job now = with_films(job, factors);
  Laid laid{std::move(job),
            std::move(stack),
            std::move(shop),
            std::move(journal),
            {},
            {},
            std::move(begun),
            std::move(now),
            {},
            {}};
  laid.done = done_steps(laid.journal, laid.job.name);
  laid.mark = open_mark(laid.journal);
  if (laid.done.empty()) return laid;
  try {
    laid.now = present(laid.begun, laid.job, laid.done, films_read(laid.begun.job, laid.journal));
    factors.film_offset_um = factors.film_se_um = 0;  // these films have it in
    laid.left = workings(laid.now, laid.stack, factors);
  } catch (const Error&) {
    laid.no_present = std::current_exception();
  }
  return laid;
}

inline Laid laid_out(Job job, Stack stack, std::optional<Shop> shop, std::vector<Entry> journal) {
  std::erase_if(journal, [&](const Entry& entry) { return entry.job != job.name; });
  Factors factors = shop ? factors_of(*shop, job, stack) : Factors{};
  return laid_with(std::move(job), std::move(stack), std::move(shop), std::move(journal),
                   std::move(factors));
}

/// The job as it stands. Throws: what kept it from being known
inline const Job& job_now(const Laid& laid) {
  if (laid.no_present) std::rethrow_exception(laid.no_present);
  return laid.now;
}

/// What it is worked out from. Throws: as job_now()
inline const Workings& workings_now(const Laid& laid) {
  job_now(laid);
  return laid.left ? *laid.left : laid.begun;
}

}  // namespace detail

}  // namespace levigate
