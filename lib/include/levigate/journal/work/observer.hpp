// Going through the entries of a journal in order: what they show of a job, and why one teaches nothing.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "levigate/journal/entry.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/journal/work/observed_names.hpp"
#include "levigate/journal/work/patch.hpp"
#include "levigate/journal/work/prior.hpp"
#include "levigate/journal/work/step_entries.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/coat_of.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/work/film_walk.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/stack.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/scratch_width.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Goes through the entries in order and keeps where each zone stands.
class Observer {
 public:
  /// Of the first so many entries of the job it only keeps where they left its zones.
  /// `told`: the job as given.
  Observer(const std::vector<Entry>& entries, const Workings& workings, const Job& told,
           std::size_t known_lines)
      : entries_(entries),
        workings_(workings),
        names_(workings),
        told_(as_one_round(told)),
        zones_(workings.job.zones.size()) {
    for (; known_lines > 0 && new_from_ < entries.size(); ++new_from_) {
      if (entries[new_from_].job == workings.job.name) --known_lines;
    }
  }

  Observed observe() {
    for (at_ = 0; at_ < entries_.size(); ++at_) tell(at_, take(entries_[at_]));
    for (const Work& work : works_) finish(work);
    for (const FilmReadings& one : films_) finish(one);
    std::sort(seen_.unmatched.begin(), seen_.unmatched.end(),
              [](const Unmatched& a, const Unmatched& b) { return a.place.entry < b.place.entry; });
    return std::move(seen_);
  }

 private:
  /// Keeps the reason why an entry teaches nothing, where there is one and it is not of what was known.
  void tell(std::size_t entry, const std::optional<Reason>& reason) {
    if (!reason || entry < new_from_) return;
    seen_.unmatched.push_back({{entry, entries_[entry].at, entry + 1},
                               reason->kind,
                               reason->names,
                               entries_[entry].sheet});
  }

  /// Entries that tell of the same step; merged where an entry of all zones joins them.
  struct Work {
    std::size_t sheet = 0;
    std::set<std::size_t> zones;
    double predicted_minutes = 0;
    double actual_minutes = 0;
    std::vector<std::size_t> entries;
    std::optional<Reason> reason{};  ///< why it is not compared
  };

  /// Where a zone stands.
  struct Standing {
    std::optional<Before> before;     ///< the step it is at
    std::optional<std::size_t> work;  ///< and its work
    std::optional<std::size_t> film;  ///< its readings so far
    bool film_known = false;          ///< learned before
  };

  /// The film of a zone, and the entries that read it before the first step.
  struct FilmReadings {
    std::size_t zone;
    FilmSoFar film;
    std::vector<std::size_t> entries;
  };

  Place place() const { return {at_, entries_[at_].at}; }

  /// Takes an entry in. The reason why it teaches nothing, where it was meant to.
  std::optional<Reason> take(const Entry& entry) {
    const bool teaches =
        entry.kind == EntryKind::step_begun || entry.kind == EntryKind::step_ended ||
        entry.kind == EntryKind::film_read || entry.kind == EntryKind::scratch_read ||
        entry.kind == EntryKind::patch_worked;
    if (!teaches) return std::nullopt;
    if (entry.job != workings_.job.name) return Reason{UnmatchedKind::other_job, {entry.job}};
    const std::optional<std::size_t> zone = names_.zone_at(entry.zone);
    if (!entry.zone.empty() && !zone) return Reason{UnmatchedKind::no_such_zone, {entry.zone}};
    if (entry.kind == EntryKind::film_read) return take_film(entry, zone);
    const std::optional<std::size_t> sheet = names_.sheet_at(entry.sheet);
    if (!sheet) return Reason{UnmatchedKind::no_such_sheet, {entry.sheet}};
    if (entry.kind == EntryKind::scratch_read) return take_scratch(entry, zone, *sheet);
    if (entry.kind == EntryKind::patch_worked) return take_patch(entry, zone, *sheet);
    std::vector<std::size_t> zones(workings_.job.zones.size());
    std::iota(zones.begin(), zones.end(), std::size_t{0});
    if (zone) zones = {*zone};
    if (entry.kind == EntryKind::step_begun) return take_begun(entry, zones);
    if (!entry.minutes) return Reason{UnmatchedKind::no_minutes};
    take_step(*sheet, zones, entry);
    return std::nullopt;
  }

  /// A step that is begun opens no work: it only has to be ended some time.
  std::optional<Reason> take_begun(const Entry& begun, const std::vector<std::size_t>& zones) {
    for (const std::size_t zone : zones) begun_.insert(zone);
    const bool ended =
        std::any_of(entries_.begin() + static_cast<std::ptrdiff_t>(at_), entries_.end(),
                    [&](const Entry& later) { return ends(later, begun); });
    if (ended) return std::nullopt;
    return Reason{UnmatchedKind::not_ended, {begun.sheet}};
  }

  void take_step(std::size_t sheet, const std::vector<std::size_t>& zones, const Entry& entry) {
    const std::size_t mine = works_.size();
    works_.push_back({sheet, {}, 0, *entry.minutes, {at_}});
    for (const std::size_t zone : zones) {
      begun_.insert(zone);
      Standing& standing = zones_[zone];
      if (standing.work && works_[*standing.work].sheet == sheet) {
        join(mine, *standing.work);
        works_[mine].predicted_minutes += minutes_of(entry.removal_um.value_or(0.0), sheet, zone);
      } else {
        const bool told = !entry.zone.empty() || !passes(sheet, zone, standing);
        begin(mine, zone, standing, told ? entry.removal_um : std::nullopt, entry.overcut);
      }
    }
  }

  /// Whether a step of all zones passes this one by.
  bool passes(std::size_t sheet, std::size_t zone, const Standing& standing) const {
    if (standing.before) return false;
    return workings_.starts[zone] ? workings_.stands[sheet][zone] : passed_by(workings_, zone);
  }

  double minutes_of(double removal_um, std::size_t sheet, std::size_t zone) const {
    return effort(removal_um, workings_.work[sheet][zone], workings_.job.zones[zone],
                  workings_.stack.sheets[sheet], workings_.factors.duty)
        .minutes;
  }

  void begin(std::size_t mine, std::size_t zone, Standing& standing, std::optional<double> taken_um,
             std::optional<double> overcut) {
    Work& work = works_[mine];
    const std::optional<Before> before = standing.before;
    if (taken_um) {
      work.predicted_minutes += minutes_of(*taken_um, work.sheet, zone);
    } else if (before &&
               worn_um(workings_, before->sheet) <= workings_.grades[work.sheet].median_um) {
      work.reason =
          Reason{UnmatchedKind::goes_back,
                 {workings_.stack.sheets[before->sheet].id, workings_.stack.sheets[work.sheet].id}};
    } else {
      work.predicted_minutes += minutes_of(
          usual_removal_um(workings_, before, work.sheet, zone, overcut), work.sheet, zone);
    }
    work.zones.insert(zone);
    standing.before = after(workings_, before, work.sheet);
    standing.work = mine;
  }

  /// Takes the work of an earlier entry of the same step into that of this one.
  void join(std::size_t mine, std::size_t other) {
    if (mine == other) return;
    Work taken = std::exchange(works_[other], {});
    Work& work = works_[mine];
    work.predicted_minutes += taken.predicted_minutes;
    work.actual_minutes += taken.actual_minutes;
    if (!work.reason) work.reason = taken.reason;
    work.entries.insert(work.entries.begin(), taken.entries.begin(), taken.entries.end());
    for (const std::size_t zone : taken.zones) {
      work.zones.insert(zone);
      zones_[zone].work = mine;
    }
  }

  void finish(const Work& work) {
    if (work.entries.empty()) return;  // taken into another
    const auto known = std::count_if(work.entries.begin(), work.entries.end(),
                                     [&](std::size_t entry) { return entry < new_from_; });
    if (known == std::ssize(work.entries)) return;
    std::optional<Reason> reason = work.reason;
    if (known > 0) reason = Reason{UnmatchedKind::step_known_in_part};
    const auto machines =
        std::count_if(work.zones.begin(), work.zones.end(),
                      [&](std::size_t zone) { return names_.by_machine(work.sheet, zone); });
    const bool machine = machines > 0;
    if (!reason) reason = names_.nameless(work.sheet, machine);
    if (!reason && machine && machines < std::ssize(work.zones))
      reason = Reason{UnmatchedKind::hand_and_machine};
    if (!reason && !(work.predicted_minutes > 0.0))
      reason = Reason{UnmatchedKind::nothing_to_remove};
    if (!reason && !(work.actual_minutes > 0.0)) reason = Reason{UnmatchedKind::took_no_minutes};
    if (reason) {
      for (const std::size_t entry : work.entries) tell(entry, reason);
      return;
    }
    const std::size_t last = work.entries.back();
    const bool one = work.zones.size() == 1 && workings_.job.zones.size() > 1;
    seen_.paces.push_back({workings_.job.coating.name,
                           names_.learned(work.sheet, machine),
                           workings_.stack.sheets[work.sheet].id,
                           one ? workings_.job.zones[*work.zones.begin()].name : "",
                           work.predicted_minutes,
                           work.actual_minutes,
                           {last, entries_[last].at},
                           0,
                           machine});
  }

  std::optional<Reason> take_scratch(const Entry& entry, std::optional<std::size_t> zone,
                                     std::size_t sheet) {
    if (at_ < new_from_) return std::nullopt;
    if (!zone) return Reason{UnmatchedKind::names_no_zone};
    const bool machine = names_.by_machine(sheet, *zone);
    if (auto reason = names_.nameless(sheet, machine)) return reason;
    const SheetInZone& work = workings_.work[sheet][*zone];
    ScratchSeen seen{workings_.job.coating.name,
                     names_.learned(sheet, machine),
                     entry.sheet,
                     entry.zone,
                     0,
                     0,
                     place()};
    if (entry.width_um) {
      seen.predicted_um = work.scratch_um;
      seen.seen_um = depth_of_width_um(*entry.width_um, workings_.model.flank_deg);
    } else if (entry.ra_um) {
      seen.predicted_um = work.ra_um;
      seen.seen_um = *entry.ra_um;
    }
    if (!(seen.seen_um > 0.0)) return Reason{UnmatchedKind::no_scratch};
    seen_.scratches.push_back(std::move(seen));
    return std::nullopt;
  }

  /// The block of that name: the sheet's own, one of the job, or of the profiles.
  std::optional<Block> tool_named(const std::string& name, std::size_t sheet) const {
    for (const SheetInZone& work : workings_.work[sheet]) {
      if (work.tool.name == name) return work.tool;
    }
    for (const Zone& zone : workings_.job.zones) {
      if (zone.block.name == name) return zone.block;
    }
    for (const BlockProfile& block : block_table) {
      if (block.name == name) return block_named(name);
    }
    return std::nullopt;
  }

  /// Film that came off a patch, as its entry tells it.
  PatchRemoval removal_of(const Entry& patch, std::optional<std::size_t> zone,
                          const Block& tool) const {
    if (!patch.before_um.empty()) {
      return gauged_removal(patch.before_um, patch.after_um, workings_.job.rules.removed_cv);
    }
    if (patch.before_g && patch.after_g) {
      return weighed_removal(*patch.before_g, *patch.after_g, *patch.area_cm2);
    }
    return levelled_removal(workings_.job.zones[*zone], tool, workings_.job.rules.residual_peel_um);
  }

  /// A patch changes no zone: it is beside the work, or too small a part of it.
  std::optional<Reason> take_patch(const Entry& entry, std::optional<std::size_t> zone,
                                   std::size_t sheet) {
    if (at_ < new_from_) return std::nullopt;
    const bool by_readings = !entry.before_um.empty() || entry.before_g;
    if (!by_readings && !zone) return Reason{UnmatchedKind::names_no_zone};
    if (!entry.area_cm2 || !entry.minutes) return Reason{UnmatchedKind::no_minutes};
    if (!(*entry.minutes > 0.0)) return Reason{UnmatchedKind::took_no_minutes};
    const Machine* own = machine_of(workings_.stack.sheets[sheet]);
    const bool machine = own && entry.tool == own->name;
    if (auto reason = names_.nameless(sheet, machine)) return reason;
    const std::optional<Block> tool =
        machine ? std::optional(face_of(*own)) : tool_named(entry.tool, sheet);
    if (!tool) return Reason{UnmatchedKind::no_such_tool, {entry.tool}};
    const PatchRemoval off = removal_of(entry, zone, *tool);
    if (std::isnan(off.removal_um)) return Reason{UnmatchedKind::not_a_number};
    if (!(off.removal_um > 0.0) || (by_readings && off.log_sd > most_patch_log_sd))
      return Reason{UnmatchedKind::patch_too_thin};
    const Sheet& paper = workings_.stack.sheets[sheet];
    Zone patch;
    patch.area_cm2 = *entry.area_cm2;
    const SheetFactors factors = workings_.factors.of(sheet);
    SheetInZone work =
        sheet_in_zone(workings_.job, workings_.model, grain_of(workings_, sheet), paper.backing,
                      *tool, own && !machine ? factors.by_hand() : factors);
    work.machine = machine;
    seen_.paces.push_back(
        {workings_.job.coating.name, names_.learned(sheet, machine), paper.id, entry.zone,
         effort(off.removal_um, work, patch, paper, workings_.factors.duty).minutes, *entry.minutes,
         place(), off.log_sd, machine});
    return std::nullopt;
  }

  std::optional<Reason> take_film(const Entry& entry, std::optional<std::size_t> at) {
    if (!at) return Reason{UnmatchedKind::names_no_zone};
    const Zone& zone = workings_.job.zones[*at];
    if (!zone.film) return Reason{UnmatchedKind::solid};
    if (zone.film->readings > 0) return Reason{UnmatchedKind::film_of_readings};
    if (zone.edge) return Reason{UnmatchedKind::edge};
    if (begun_.contains(*at)) return Reason{UnmatchedKind::sanded_before};
    if (entry.readings_um.empty()) return Reason{UnmatchedKind::no_readings};
    for (const double reading_um : entry.readings_um) {
      if (std::isnan(reading_um)) return Reason{UnmatchedKind::not_a_number};
    }
    if (auto reason = names_.nameless()) return reason;
    if (at_ >= new_from_ && zones_[*at].film_known) return Reason{UnmatchedKind::film_known};
    std::optional<std::size_t>& film = zones_[*at].film;
    if (!film) {
      film = films_.size();
      const double coats_um = std::hypot(film_noise_um, std::sqrt(film_variance_um2()));
      films_.push_back(
          {*at, FilmSoFar(workings_.job, zone, moved(*told_.zones[*at].film, 0, coats_um)), {}});
    }
    films_[*film].film.read(entry.readings_um);
    films_[*film].entries.push_back(at_);
    // What was in doubt has taught nothing yet.
    if (at_ < new_from_) zones_[*at].film_known = !films_[*film].film.doubt();
    return std::nullopt;
  }

  /// What the readings of a film teach: those that its plan rests on, where none is in doubt. What the coats leave is what is to be
  /// learned, so that a reading contradicts them by what is known of them before any journal.
  void finish(const FilmReadings& one) {
    if (zones_[one.zone].film_known) return;
    const Zone& zone = told_.zones[one.zone];
    FilmSeen seen{workings_.job.coating.name,
                  zone.name,
                  zone.film->mean_um + zone.below_um,
                  workings_.job.zones[one.zone].film->sd_um,
                  {},
                  {}};
    for (std::size_t i = 0; i < one.entries.size(); ++i) {
      const Entry& entry = entries_[one.entries[i]];
      if (one.film.doubt() || !one.film.counts()[i]) {
        tell(one.entries[i], Reason{UnmatchedKind::reading_contradicts});
        continue;
      }
      seen.readings_um.insert(seen.readings_um.end(), entry.readings_um.begin(),
                              entry.readings_um.end());
      seen.place = {one.entries[i], entry.at};
    }
    if (!seen.readings_um.empty()) seen_.films.push_back(std::move(seen));
  }

  const std::vector<Entry>& entries_;
  const Workings& workings_;
  ObservedNames names_;
  Job told_;                  ///< rounds that melt together are one
  std::size_t new_from_ = 0;  ///< entries before it are known
  std::vector<Standing> zones_;
  std::set<std::size_t> begun_;  ///< zones that a step has reached
  std::vector<Work> works_;
  std::vector<FilmReadings> films_;
  std::size_t at_ = 0;
  Observed seen_;
};

}  // namespace detail

}  // namespace levigate
