// The work behind bench/bench.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <exception>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/bench/bench.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/film/film.hpp"
#include "levigate/journal/done.hpp"
#include "levigate/journal/shop.hpp"
#include "levigate/plan/factors.hpp"
#include "levigate/plan/work/plan.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/work/diagnosis.hpp"
#include "levigate/recover/work/go_back.hpp"
#include "levigate/recover/work/present.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The films that a gauge read after the last step of their zones, by zone. One reading tells no spread and is left aside.
inline std::map<std::string, Film> films_read(const Job& job, const std::vector<Entry>& journal) {
  std::map<std::string, Film> films;
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
    if (worked && readings_um.size() >= 2)
      films.emplace(zone.name, film_from_readings(readings_um));
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

/// The job after what was done, with what it is worked out from.
struct Standing {
  Job job;
  Workings workings;
};

/// What lies on a bench.
struct Laid {
  Job job;
  Stack stack;
  std::optional<Shop> shop;
  std::vector<Entry> journal;
  std::vector<DoneStep> done;
  std::optional<levigate::Mark> mark;
  Workings begun;                    ///< of the job before the first step
  std::optional<Standing> standing;  ///< where something was done
  std::exception_ptr no_standing;    ///< why it is not known how the job stands
};

inline Laid laid_out(Job job, Stack stack, std::optional<Shop> shop, std::vector<Entry> journal) {
  std::erase_if(journal, [&](const Entry& entry) { return entry.job != job.name; });
  Factors factors = shop ? factors_of(*shop, job, stack) : Factors{};
  Workings begun = workings(job, stack, factors);
  Laid laid{std::move(job),
            std::move(stack),
            std::move(shop),
            std::move(journal),
            {},
            {},
            std::move(begun),
            {},
            {}};
  laid.done = done_steps(laid.journal, laid.job.name);
  laid.mark = open_mark(laid.journal);
  if (laid.done.empty()) return laid;
  try {
    Job now = present(laid.begun, laid.job, laid.done, films_read(laid.job, laid.journal));
    factors.film_offset_um = factors.film_se_um = 0;  // these films have it in
    Workings left = workings(now, laid.stack, factors);
    laid.standing = Standing{std::move(now), std::move(left)};
  } catch (const Error&) {
    laid.no_standing = std::current_exception();
  }
  return laid;
}

inline const Workings& workings_now(const Bench& bench) {
  const Laid& laid = bench.laid();
  if (laid.no_standing) std::rethrow_exception(laid.no_standing);
  return laid.standing ? laid.standing->workings : laid.begun;
}

}  // namespace detail

LEVIGATE_WORK Bench::Bench(Job job, Stack stack, std::optional<Shop> shop,
                           std::vector<Entry> journal)
    : laid_(std::make_shared<const detail::Laid>(detail::laid_out(
          std::move(job), std::move(stack), std::move(shop), std::move(journal)))) {}

LEVIGATE_WORK const Job& Bench::job() const noexcept { return laid_->job; }
LEVIGATE_WORK const Stack& Bench::stack() const noexcept { return laid_->stack; }
LEVIGATE_WORK const std::optional<Shop>& Bench::shop() const noexcept { return laid_->shop; }
LEVIGATE_WORK const std::vector<Entry>& Bench::journal() const noexcept { return laid_->journal; }
LEVIGATE_WORK const std::vector<Grade>& Bench::grades() const noexcept {
  return laid_->begun.grades;
}
LEVIGATE_WORK const std::vector<DoneStep>& Bench::done() const noexcept { return laid_->done; }
LEVIGATE_WORK const std::optional<Mark>& Bench::open_mark() const noexcept { return laid_->mark; }

LEVIGATE_WORK const Job& present(const Bench& bench) {
  const Workings& now = detail::workings_now(bench);
  const detail::Laid& laid = bench.laid();
  return laid.standing ? laid.standing->job : now.job;
}

LEVIGATE_WORK Plan plan(const Bench& bench) { return plan(detail::workings_now(bench)); }

LEVIGATE_WORK Plan evaluate(const Bench& bench, const std::vector<std::string>& sequence) {
  return evaluate(detail::workings_now(bench), sequence);
}

LEVIGATE_WORK Diagnosis diagnose(const Bench& bench, const Mark& mark) {
  return diagnose(bench.laid().begun, bench.done(), mark);
}

LEVIGATE_WORK WayBack go_back(const Bench& bench, const Mark& mark) {
  return go_back(bench.laid().begun, bench.done(), mark);
}

LEVIGATE_WORK WayBack go_back(const Bench& bench) {
  if (!bench.open_mark()) {
    throw BadInput(
        "no mark is open: none was found since the last step of its zone, in the "
        "journal of '" +
        bench.job().name + "'");
  }
  return go_back(bench, *bench.open_mark());
}

LEVIGATE_WORK Observed observe(const Bench& bench) {
  return observe(bench.job(), bench.stack(), bench.journal());
}

LEVIGATE_WORK Learned learn(const Bench& bench) {
  return learn(bench.shop().value_or(Shop{}), bench.job(), bench.stack(), bench.journal());
}

}  // namespace levigate
