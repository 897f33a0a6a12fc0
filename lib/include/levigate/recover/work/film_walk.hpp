// The film of each zone through the steps done and the gauge's readings between them.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/film/agreement.hpp"
#include "levigate/film/edge.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/film/work/above.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/work/coat_of.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/levelling_of.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/work/zone_done.hpp"
#include "levigate/surface/peel.hpp"
#include "levigate/surface/shrink_back.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The gauge that entries of a journal are read with: they name none, and this is the one that reads a film on wood.
inline constexpr std::string_view journal_gauge = "ultrasonic";

/// One time that a gauge read a zone, or a film of all rounds that somebody made of readings: that counts as it is.
struct FilmRead {
  std::size_t after_steps = 0;  ///< how many steps were done before
  std::size_t zone = 0;
  std::vector<double> readings_um{};
  std::optional<Film> film{};
};

/// A reading that contradicts the film it was to meet, of all rounds.
struct ReadingDoubt {
  double read_um = 0;
  double expected_um = 0;
  double uncertainty_um = 0;  ///< standard uncertainty of the difference

  double counts_um() const { return std::min(read_um, expected_um); }
};

/// A film after so much was taken off by hand.
inline Film lowered(Film film, double removed_um, double removed_cv) {
  film.mean_um -= removed_um;
  film.sd_um = std::hypot(film.sd_um, removed_cv * removed_um);
  return film;
}

/// The film of the last round of one zone, step by step and reading by reading.
///
///   a step:     removed' = removed + R
///   a reading:  film' = read, removed' = 0,   where it agrees with an earlier reading, or is not thinner than computed and within
///               contradiction_sigmas of it
///               mean' = mean_read, each error the larger of both,   where it is thinner than computed
///               film' = film,   where it is thicker, beyond contradiction_sigmas
///
/// Computed is as uncertain as the job says, the peel that was levelled, and removed_cv of what came off. The film is what a coat
/// that is not cured keeps until it is; a reading is of the film before that, and what it keeps counts.
class FilmSoFar {
 public:
  /// `zone`: of a job as planned with; `told`: its film as the job has it.
  FilmSoFar(const Job& job, const Zone& zone, const Film& told)
      : zone_(zone),
        rules_(job.rules),
        shrink_back_(job.coating.shrink_back),
        kept_(1.0 - cure_of(job).shrink_left),
        to_level_(has_peel_to_level(job, zone)),
        base_(*zone.film),
        told_(told),
        read_um_(zone.film->mean_um),
        told_um_(told.mean_um) {}

  /// `softer_um`: how much of it is counted only because nobody measured a machine's pad.
  void step(std::size_t sheet, double removal_um, bool known, double softer_um = 0) {
    // The same sheet again takes nothing more off as computed. A reading in between may have been before all of it.
    const bool goes_on = last_sheet_ == sheet && removal_um == 0.0;
    if (!goes_on) last_um_ = removal_um;
    removed_um_ += goes_on && !group_.empty() ? last_um_ : removal_um;
    since_um_ += goes_on && !group_.empty() ? last_um_ : removal_um;
    taken_um_ += removal_um - softer_um;  // more off would have been more film before
    last_sheet_ = sheet;
    unknown_ = unknown_ || !known;
    if (to_level_) unread_peel_ = true;
    softer_um_ += softer_um;
    to_level_ = false;
    worked_ = true;
    group_.clear();
    counts_.clear();
  }

  void take(const Film& of_all_rounds) { anchor(of_all_rounds); }

  /// Share of the film told, all rounds together, that was there before the work, as far as is known now: 1 unless read.
  double share_of_told() const {
    return (now().mean_um + taken_um_ + kept_ * zone_.below_um) /
           (kept_ * (told_um_ + zone_.below_um));
  }

  /// Of an edge that nobody has read: its flat was found to have this share of the film told. Thinner counts, thicker does not.
  void as_thin_as_flat(double share) {
    if (read_) return;
    const double thinner_um = (1.0 - std::min(1.0, share)) * (told_um_ + zone_.below_um);
    base_.mean_um = zone_.film->mean_um - kept_ * thinner_um;
    told_.mean_um = told_um_ - thinner_um;
  }

  void read(const std::vector<double>& readings_um) {
    if (group_.empty()) {
      before_ = base_;
      group_worked_ = worked_;
      anchored_here_ = false;
    }
    group_.push_back(readings_um);
    const Film one = film_of({readings_um});
    std::vector<std::vector<double>> alike;
    std::vector<bool> counts(group_.size(), false);
    for (std::size_t i = 0; i < group_.size(); ++i) {
      if (agrees(film_of({group_[i]}), one).contradicts) continue;
      alike.push_back(group_[i]);
      counts[i] = true;
    }
    const Film computed = now();
    const Film expected = of_all_rounds(before_cure(computed));
    const Film last = kept(above(one, zone_.below_um));
    const bool thinner = last.mean_um < computed.mean_um;
    const Agreement with_told = agrees(of_all_rounds(compared()), one);
    const bool contradicts = anchored_here_ || with_told.contradicts;
    const bool first_counts = unknown_ || (!contradicts && (read_ || !thinner));
    counts_.resize(group_.size(), false);
    if (alike.size() > 1 || first_counts || thinner) counts_ = std::move(counts);
    if (alike.size() > 1) {
      anchor(film_of(alike));
    } else if (first_counts) {
      anchor(one);
    } else {
      if (thinner) widen(last, computed);
      if (contradicts) doubt_ = {one.mean_um, expected.mean_um, with_told.uncertainty_um};
    }
  }

  Film now() const { return lowered(base_, removed_um_, rules_.removed_cv); }
  Film before_cure() const { return before_cure(now()); }  ///< as a gauge would read it today
  bool is_read() const { return read_; }                   ///< whether it rests on a reading
  bool read_once() const { return once_; }  ///< on a thinner one that no second one has settled
  bool unread_peel() const { return unread_peel_; }
  double since_um() const { return since_um_; }        ///< removed since it was read
  double base_um() const { return read_um_ / kept_; }  ///< what it was then, on the mean
  const std::optional<ReadingDoubt>& doubt() const { return doubt_; }

  /// Of the readings since the last step, in order, those that the film rests on.
  const std::vector<bool>& counts() const { return counts_; }

 private:
  Film kept(Film film) const {
    film.mean_um *= kept_;
    return film;
  }

  Film before_cure(Film film) const {
    film.mean_um /= kept_;
    return film;
  }

  Film of_all_rounds(Film film) const {
    film.mean_um = std::max(0.0, film.mean_um + zone_.below_um);
    if (zone_.below_um > 0.0)
      film.mean_se_um = std::hypot(film.mean_se_um, uncertainty_of_coats_um(zone_.below_um));
    return film;
  }

  /// What a reading is compared with: the film as the job tells it, less what came off, with the errors of both.
  Film compared() const {
    Film film = lowered(told_, removed_um_, 0.0);
    film.mean_se_um = std::hypot(film.mean_se_um, rules_.removed_cv * removed_um_);
    if (softer_um_ > 0.0) film.mean_se_um = std::hypot(film.mean_se_um, softer_um_);
    if (unread_peel_) {
      const double factor = peel_factor(zone_.peel_how).value;
      const auto off = [&](double peel_um) {
        return levelling_of(zone_, zone_.block, peel_um, rules_.residual_peel_um) *
               with_shrink_back(shrink_back_);
      };
      film.mean_se_um =
          std::hypot(film.mean_se_um, off(factor * zone_.peel_um) - off(zone_.peel_um));
    }
    return film;
  }

  /// The film of all rounds by readings. One of a time tells no spread, and a second at the same spot none either: it is taken for
  /// what was known before, and for the unevenness of what came off by this reading.
  ///
  ///   sd^2 = sd_before^2 + (removed_cv R)^2,   R = max(0, mean_before + below - reading)
  Film film_of(const std::vector<std::vector<double>>& times) const {
    const Gauge gauge = gauge_named(journal_gauge);
    std::vector<double> all_um;
    bool singly = true;
    for (const std::vector<double>& readings_um : times) {
      singly = singly && readings_um.size() == 1;
      all_um.insert(all_um.end(), readings_um.begin(), readings_um.end());
    }
    if (!singly) return film_from_gauge(all_um, gauge);
    double mean_um = 0;
    for (const double reading_um : all_um)
      mean_um += reading_um / static_cast<double>(all_um.size());
    const double off_um =
        group_worked_ ? std::max(0.0, before_.mean_um / kept_ + zone_.below_um - mean_um) : 0.0;
    Film film = film_from_reading(mean_um, std::hypot(before_.sd_um, rules_.removed_cv * off_um),
                                  before_.sd_se_um, gauge);
    film.readings = all_um.size();
    return film;
  }

  void anchor(const Film& of_all) {
    told_ = above(of_all, zone_.below_um);
    base_ = kept(told_);
    removed_um_ = softer_um_ = 0;
    read_ = anchored_here_ = true;
    once_ = unread_peel_ = unknown_ = worked_ = false;
    since_um_ = 0;
    read_um_ = base_.mean_um;
    doubt_.reset();
  }

  /// Takes the thinner mean and the larger of each error. What came off stays what it was, so that its unevenness goes on.
  void widen(const Film& read, const Film& computed) {
    base_.mean_um += read.mean_um - computed.mean_um;
    since_um_ = 0;
    read_um_ = read.mean_um;
    const double uneven_um = rules_.removed_cv * removed_um_;
    if (read.sd_um > computed.sd_um)
      base_.sd_um = std::sqrt((read.sd_um - uneven_um) * (read.sd_um + uneven_um));
    base_.mean_se_um = std::max(read.mean_se_um, base_.mean_se_um);
    base_.sd_se_um = std::max(read.sd_se_um, base_.sd_se_um);
    base_.readings = base_.readings > 0 ? std::min(base_.readings, read.readings) : read.readings;
    base_.how = FilmHow::gauge;
    told_ = base_;
    told_.mean_um = read.mean_um / kept_ + removed_um_;
    read_ = once_ = anchored_here_ = true;
    doubt_.reset();
  }

  Zone zone_;
  Rules rules_;
  std::optional<ShrinkBack> shrink_back_;
  double kept_;  ///< share of today's film that is left once the coat is cured
  bool to_level_;
  Film base_;
  Film told_;  ///< what a reading is compared with, but for what came off since
  double read_um_;
  double told_um_;       ///< the mean as the job has it
  double taken_um_ = 0;  ///< removed in all
  double removed_um_ = 0;
  double softer_um_ = 0;  ///< of that, as counted for a pad that nobody measured
  double since_um_ = 0;
  double last_um_ = 0;
  std::optional<std::size_t> last_sheet_{};
  bool read_ = false, once_ = false, unread_peel_ = false, unknown_ = false, worked_ = false;
  std::vector<std::vector<double>> group_{};  ///< readings since the last step
  std::vector<bool> counts_{};                ///< which of them the film rests on
  Film before_{};                             ///< the base before them
  bool group_worked_ = false;                 ///< whether a step lies between it and them
  bool anchored_here_ = false;                ///< whether one of them counts
  std::optional<ReadingDoubt> doubt_{};
};

/// What was done to each zone, its film, and what each step used.
struct Standing {
  std::vector<ZoneDone> done;
  std::vector<std::optional<FilmSoFar>> films;  ///< none on a solid
  std::vector<double> sheets_used;              ///< by each step, as computed
};

/// Whether the film of a zone is that of its flat, as far as is told: it is an edge of it that no gauge has read. A film worked out
/// from the flat is as that was got, so that of a flat that was read is no reading of the edge.
inline bool rests_on(const Zone& zone, const Zone& flat) {
  if (!zone.edge || zone.edge->of != flat.name || !zone.film || !flat.film) return false;
  return zone.film->how != FilmHow::gauge ||
         (zone.edge->radius_mm && *zone.film == edge_film(*flat.film, *zone.edge->radius_mm));
}

/// How much of what a step took off is counted only because nobody measured the pad that levelled [um].
inline double softer_um_in(const Workings& workings, std::size_t sheet, std::size_t zone,
                           double removal_um) {
  const SheetInZone& work = workings.work[sheet][zone];
  if (!work.soft_mpa || workings.starts[zone] || removal_um != levelling_um(workings, sheet, zone))
    return 0.0;
  return removal_um - levelling_with(workings, work.tool, zone);
}

/// Walks the steps done and the readings. `told`: the job as given, without what a shop has learned.
/// Throws: as walk_done(); BadInput for a reading of a solid
inline Standing standing_of(const Workings& workings, const Job& told,
                            const std::vector<DoneStep>& done, const std::vector<FilmRead>& reads) {
  Standing result{{}, {}, std::vector<double>(done.size(), 0.0)};
  const Job film_told = as_one_round(told);
  const std::size_t zones = workings.job.zones.size();
  std::vector<std::size_t> known_before(zones, 0);  // a later reading tells what these steps left
  for (std::size_t i = 0; i < zones; ++i) {
    const Zone& zone = workings.job.zones[i];
    result.films.push_back(
        zone.film ? std::optional(FilmSoFar(workings.job, zone, *film_told.zones[i].film))
                  : std::nullopt);
  }
  for (const FilmRead& read : reads) {
    if (!result.films[read.zone])
      throw BadInput("zone '" + workings.job.zones[read.zone].name + "' is solid: it has no film");
    known_before[read.zone] = std::max(known_before[read.zone], read.after_steps);
  }
  std::size_t next = 0;
  const auto read_until = [&](std::size_t steps) {
    for (; next < reads.size() && reads[next].after_steps <= steps; ++next) {
      FilmSoFar& film = *result.films[reads[next].zone];
      reads[next].film ? film.take(*reads[next].film) : film.read(reads[next].readings_um);
      const Zone& flat = told.zones[reads[next].zone];
      for (std::size_t i = 0; i < zones; ++i) {
        if (result.films[i] && rests_on(told.zones[i], flat))
          result.films[i]->as_thin_as_flat(film.share_of_told());
      }
    }
  };
  result.done = walk_done(
      workings, done, known_before,
      [&](std::size_t step, std::size_t sheet, std::size_t zone, double removal_um, bool known) {
        read_until(step);
        const double softer_um = softer_um_in(workings, sheet, zone, removal_um);
        if (result.films[zone]) result.films[zone]->step(sheet, removal_um, known, softer_um);
        result.sheets_used[step] +=
            effort(removal_um - softer_um, workings.work[sheet][zone], workings.job.zones[zone],
                   workings.stack.sheets[sheet], workings.factors.duty)
                .sheets_used;
      });
  read_until(done.size());
  return result;
}

}  // namespace detail

}  // namespace levigate
