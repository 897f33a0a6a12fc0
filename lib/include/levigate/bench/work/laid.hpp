// What a Bench holds: job, stack, shop and journal, and their Workings.
#pragma once

#include <algorithm>
#include <cstddef>
#include <exception>
#include <numeric>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/bench/work/open_ends.hpp"
#include "levigate/error.hpp"
#include "levigate/journal/done.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/shop_factors.hpp"
#include "levigate/journal/struck.hpp"
#include "levigate/plan/factors.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/work/film_walk.hpp"
#include "levigate/recover/work/present_body.hpp"
#include "levigate/recover/work/zone_done.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What lies on a bench.
struct Laid {
  Job job;
  Stack stack;
  std::optional<Shop> shop;
  std::vector<Entry> journal;
  std::vector<int> lines;  ///< of each entry of it, in its file
  std::vector<DoneStep> done;
  std::vector<levigate::Mark> marks;  ///< that are open, in the order of the journal
  Workings begun;                     ///< of the job before the first step
  Job now;                            ///< the job as it stands
  Stack paper;                        ///< the paper left on hand
  std::vector<double> sheets_used;    ///< of each sheet of the stack, by the journal
  std::optional<Standing> standing;   ///< of zones and films
  std::optional<Workings> left;  ///< of the job as it stands, where a step or a reading tells of it
  std::vector<Finding> findings;  ///< on the journal
  std::exception_ptr no_present;  ///< why it is not known how the job stands
};

/// Runs a call on an entry of the journal. Throws: BadInput that names its line and how to mend it
template <typename Call>
auto on_line(const Laid& laid, std::size_t entry, Call call) {
  try {
    return call();
  } catch (const BadInput& error) {
    throw BadInput(error.what() + (", in line " + std::to_string(laid.lines[entry])) +
                   " of the journal. Put it into job or stack, or strike the line");
  }
}

/// The readings of a gauge among the steps done, where a zone has a film.
/// Throws: BadInput for a sheet or zone of an entry that is not there
inline std::vector<FilmRead> films_read(const Laid& laid) {
  std::vector<FilmRead> reads;
  std::size_t steps = 0;
  for (std::size_t i = 0; i < laid.journal.size(); ++i) {
    const Entry& entry = laid.journal[i];
    if (entry.kind == EntryKind::step_ended) {
      ++steps;
      on_line(laid, i, [&] { return sheet_index(laid.stack, entry.sheet); });
      if (!entry.zone.empty()) on_line(laid, i, [&] { return zone_index(laid.job, entry.zone); });
    } else if (entry.kind == EntryKind::film_read) {
      const std::size_t zone = on_line(laid, i, [&] { return zone_index(laid.job, entry.zone); });
      reads.push_back({steps, zone, entry.readings_um, {}});
    }
  }
  return reads;
}

/// Counts the sheets that the journal used off those on hand: those that it tells, else those computed. Never below 0.
inline void count_off_paper(Laid& laid) {
  std::size_t step = 0;
  for (const Entry& entry : laid.journal) {
    if (entry.kind != EntryKind::step_ended) continue;
    laid.sheets_used[sheet_index(laid.stack, entry.sheet)] +=
        entry.sheets_used.value_or(laid.standing->sheets_used[step]);
    ++step;
  }
  Finding counted{.kind = FindingKind::paper_counted_off, .severity = Severity::note, .sheets = {}};
  for (std::size_t i = 0; i < laid.paper.sheets.size(); ++i) {
    std::optional<double>& on_hand = laid.paper.sheets[i].on_hand;
    const double used = laid.sheets_used[i];
    if (!on_hand || used == 0.0) continue;
    const std::string& id = laid.paper.sheets[i].id;
    counted.sheets.push_back(id);
    counted.numbers.push_back({"sheets_used", used});
    if (used > *on_hand) {
      laid.findings.push_back({.kind = FindingKind::paper_overused,
                               .severity = Severity::warning,
                               .sheets = {id},
                               .about = {{"sheet", id}},
                               .numbers = {{"sheets_used", used}, {"on_hand", *on_hand}}});
    }
    on_hand = std::max(0.0, *on_hand - used);
  }
  if (!counted.sheets.empty()) laid.findings.push_back(std::move(counted));
}

/// Says which readings contradict the film that they were to meet.
inline void doubt_readings(Laid& laid) {
  for (std::size_t i = 0; i < laid.job.zones.size(); ++i) {
    const std::optional<FilmSoFar>& film = laid.standing->films[i];
    if (!film || !film->doubt()) continue;
    const ReadingDoubt& doubt = *film->doubt();
    laid.findings.push_back({.kind = FindingKind::reading_contradicts,
                             .severity = Severity::warning,
                             .sheets = {},
                             .zone = laid.job.zones[i].name,
                             .numbers = {{"read_um", doubt.read_um},
                                         {"expected_um", doubt.expected_um},
                                         {"uncertainty_um", doubt.uncertainty_um},
                                         {"counts_um", doubt.counts_um()}}});
  }
}

/// Says which other jobs of a journal have nearly the name of this one.
inline std::vector<Finding> near_jobs(const Job& job, const std::vector<Entry>& journal) {
  std::vector<Finding> result;
  for (const std::string& name : jobs_nearly_named(journal, job.name)) {
    result.push_back({.kind = FindingKind::job_name_near,
                      .severity = Severity::warning,
                      .sheets = {},
                      .about = {{"job", job.name}, {"job", name}}});
  }
  return result;
}

/// `factors`: what planning takes of the shop; `journal`, with the line of each entry, is that of the job alone, without struck lines.
inline Laid laid_with(Job job, Stack stack, std::optional<Shop> shop, std::vector<Entry> journal,
                      std::vector<int> lines, std::vector<Finding> findings, Factors factors) {
  Workings begun = workings(job, stack, factors);
  Job now = with_films(job, factors);
  Stack paper = stack;
  std::vector<double> used(stack.sheets.size(), 0.0);
  Laid laid{std::move(job),
            std::move(stack),
            std::move(shop),
            std::move(journal),
            std::move(lines),
            {},
            {},
            std::move(begun),
            std::move(now),
            std::move(paper),
            std::move(used),
            {},
            {},
            std::move(findings),
            {}};
  laid.done = done_steps(laid.journal, laid.job.name);
  laid.marks = open_marks(laid.journal);
  tell_open_ends(laid.begun, laid.journal, laid.marks, laid.findings);
  try {
    const std::vector<FilmRead> reads = films_read(laid);
    laid.standing = standing_of(laid.begun, laid.job, laid.done, reads);
    if (laid.done.empty() && reads.empty()) return laid;
    doubt_readings(laid);
    count_off_paper(laid);
    laid.now = present(laid.begun, laid.job, *laid.standing);
    factors.film_offset_um = factors.film_se_um = 0;  // these films have it in
    laid.left = workings(laid.now, laid.paper, factors);
  } catch (const Error&) {
    laid.no_present = std::current_exception();
  }
  return laid;
}

inline Laid laid_out(Job job, Stack stack, std::optional<Shop> shop, std::vector<Entry> journal,
                     std::vector<int> lines) {
  if (lines.empty()) {
    lines.resize(journal.size());
    std::iota(lines.begin(), lines.end(), 1);
  }
  if (lines.size() != journal.size()) {
    throw BadInput("lines has " + std::to_string(lines.size()) + " entries, the journal " +
                   std::to_string(journal.size()) + ": one each");
  }
  std::vector<Finding> findings = near_jobs(job, journal);
  journal = without_struck(std::move(journal));
  std::size_t kept = 0;
  for (std::size_t i = 0; i < journal.size(); ++i) {
    if (journal[i].job != job.name) continue;
    lines[kept] = lines[i];
    if (kept != i) journal[kept] = std::move(journal[i]);
    ++kept;
  }
  journal.resize(kept);
  lines.resize(kept);
  Factors factors = shop ? factors_of(*shop, job, stack) : Factors{};
  return laid_with(std::move(job), std::move(stack), std::move(shop), std::move(journal),
                   std::move(lines), std::move(findings), std::move(factors));
}

/// What is known of zones and films. Throws: what kept it from being known
inline const Standing& standing_of(const Laid& laid) {
  if (!laid.standing) std::rethrow_exception(laid.no_present);
  return *laid.standing;
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
