// Finding out why there is no plan, by lifting one limit alone, then all but one.
#pragma once

#include <algorithm>
#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "levigate/plan/job.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/plan/work/film_needed.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/least_lift.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/surface/meter.hpp"

namespace levigate::inline v0 {

namespace detail {

/// How far a zone that ends so is off the target; at most zero where it meets it.
inline double off_target(const Target& target, const Ending& zone) {
  if (target.size_um) return zone.size_um - *target.size_um;
  return std::max(*target.gloss_gu - zone.reading_gu,
                  target.gloss_high_gu ? zone.reading_gu - *target.gloss_high_gu : 0.0);
}

/// Label of the coarsest grade that a zone carries.
inline std::string coarsest_label(const Workings& workings) {
  const double coarsest_um = coarsest_carried_um(workings.job);
  for (const std::optional<Start>& start : workings.starts) {
    if (start && start->worn_um == coarsest_um) return start->label;
  }
  return "";
}

/// What comes nearest to the target.
inline Nearest nearest_to_target(const Workings& workings) {
  const Target& target = workings.job.target;
  const std::size_t zones = workings.job.zones.size();
  const auto off = [&](std::size_t sheet) {
    double most = off_target(target, ending(workings, sheet, 0));
    for (std::size_t zone = 1; zone < zones; ++zone) {
      most = std::max(most, off_target(target, ending(workings, sheet, zone)));
    }
    return most;
  };
  std::optional<std::size_t> best_end;
  for (std::size_t sheet = 0; sheet < workings.grades.size(); ++sheet) {
    if (may_end(workings, sheet) && (!best_end || off(sheet) < off(*best_end))) best_end = sheet;
  }
  const std::size_t nearest = best_end.value_or(0);
  std::size_t worst = 0;  // coarsest, or of least reading
  for (std::size_t zone = 1; zone < zones; ++zone) {
    const Ending here = ending(workings, nearest, zone), there = ending(workings, nearest, worst);
    if (target.size_um ? here.size_um > there.size_um : here.reading_gu < there.reading_gu)
      worst = zone;
  }
  const Ending left = ending(workings, nearest, worst);
  const bool heavy = too_heavy(workings.job, workings.stack.sheets[nearest]);
  return {.sheet = workings.stack.sheets[nearest].id,
          .zone = workings.job.zones[worst].name,
          .size_um = left.size_um,
          .reading_gu = left.reading_gu,
          .too_near_to_work = workings.stands[nearest][worst],
          .wheel_refused = workings.refused[nearest] && !heavy,
          .too_heavy = heavy,
          .still = still_of(workings, nearest)};
}

/// The ways past the limits, each lifting one of them under the others as given. Each notes in `why` the least
/// lift that yields a plan; whether one does, and is needed.
inline bool way_by_ratio(const Workings& workings, const Limits& limits, Why& why) {
  const std::optional<double> wanted = smallest_max_ratio(workings, limits);
  if (!wanted) {
    const std::optional<double> nearer = largest_min_ratio(workings, limits);
    if (!nearer || *nearer >= limits.min_ratio) return false;
    why.largest_min_ratio = nearer;
    return true;
  }
  if (*wanted <= limits.max_ratio) return false;
  why.smallest_max_ratio = wanted;
  Limits wider = limits;
  wider.max_ratio = *wanted;
  why.gaps = gaps_in(workings, best(found_under(workings, wider), workings.job.prefer));
  return true;
}

inline bool way_by_scratch(const Workings& workings, const Limits& limits, Why& why) {
  const std::optional<double> deeper_um = least_deeper_um(workings, limits);
  if (!deeper_um || *deeper_um <= limits.deeper_um) return false;
  Limits wider = limits;
  wider.deeper_um = *deeper_um;
  for_each_step(workings, best(found_under(workings, wider), workings.job.prefer).sheets,
                [&](std::optional<Before> before, std::size_t sheet) {
                  if (too_deep_um(workings, before, sheet) > limits.deeper_um) {
                    why.compound = workings.stack.sheets[sheet].id;
                  }
                });
  why.too_deep_um = deeper_um;
  return true;
}

inline bool way_by_film(const Workings& workings, const Limits& limits, Why& why) {
  const std::optional<FilmShort> least = least_film_short(workings, limits);
  if (!least || least->excess_um <= 0 || !workings.budget_um[least->zone]) return false;
  why.zone = workings.job.zones[least->zone].name;
  why.film_short_um = least->excess_um;
  why.budget_um = workings.budget_um[least->zone];
  why.films = films_needed(workings, limits, least->depth_pm);
  return true;
}

inline bool way_by_paper(const Workings& workings, const Limits& limits, Why& why) {
  why.paper = least_paper_short(workings, limits);
  return !why.paper.empty();
}

}  // namespace detail

/// Why the rules leave no plan. Each limit is lifted alone, and the least lift that yields a plan is reported. If no single one
/// does, each is reported with all others lifted.
inline Why why_no_plan(const Workings& workings) {
  Why why;
  why.target = workings.job.target;
  if (already_done(workings)) {
    why.blocked_by = Blocker::done;
    why.kind = WhyKind::done;
    return why;
  }
  if (workings.grades.empty()) {
    why.kind = WhyKind::no_sheets;
    return why;
  }
  bool reachable = false;
  for (std::size_t sheet = 0; sheet < workings.grades.size(); ++sheet) {
    reachable = reachable || meets_target(workings, sheet);
  }
  if (!reachable) {
    why.kind = WhyKind::out_of_reach;
    why.nearest = detail::nearest_to_target(workings);
    const double most_gu =
        mean_reading_gu(workings.job.coating.refractive_index, workings.job.target.angle_deg, 0.0,
                        workings.model.flank_deg);
    if (most_gu < workings.job.target.gloss_gu.value_or(0.0)) why.most_gu = most_gu;
    return why;
  }

  const auto told = [&](WhyKind kind, const Limits& by_ratio, const Limits& by_scratch,
                        const Limits& by_film, const Limits& by_paper) {
    const bool ratio = detail::way_by_ratio(workings, by_ratio, why);
    const bool scratch = detail::way_by_scratch(workings, by_scratch, why);
    const bool film = detail::way_by_film(workings, by_film, why);
    const bool paper = detail::way_by_paper(workings, by_paper, why);
    why.kind = kind;
    return ratio || scratch || film || paper;
  };
  const Limits limits = limits_of(workings.job.rules);
  if (told(WhyKind::one_limit, limits, limits, limits, limits)) {
    why.blocked_by = why.smallest_max_ratio || why.largest_min_ratio ? Blocker::ratio
                     : why.too_deep_um                               ? Blocker::scratch
                     : why.film_short_um                             ? Blocker::film
                                                                     : Blocker::paper;
    return why;
  }
  why.blocked_by = Blocker::several;
  constexpr double any = std::numeric_limits<double>::infinity();
  const Limits none{
      .min_ratio = 1.0, .max_ratio = any, .deeper_um = any, .film = false, .paper = false};
  Limits only_ratio = none, only_scratch = none, only_film = none, only_paper = none;
  only_ratio.min_ratio = limits.min_ratio;
  only_ratio.max_ratio = limits.max_ratio;
  only_scratch.deeper_um = limits.deeper_um;
  only_film.film = true;
  only_paper.paper = true;
  if (told(WhyKind::several_limits, only_ratio, only_scratch, only_film, only_paper)) {
    return why;
  }
  // Different ways break different limits, each more than one: no limit is in the way of all.
  const std::vector<Sequence> unlimited = detail::found_under(workings, none);
  if (!unlimited.empty()) {
    why.kind = WhyKind::different_limits;
    for (const std::size_t sheet : best(unlimited, workings.job.prefer).sheets) {
      why.sheets.push_back(workings.stack.sheets[sheet].id);
    }
    return why;
  }
  why.blocked_by = Blocker::target;
  why.kind = workings.levels ? WhyKind::compounds_only : WhyKind::carried_finer;
  if (!workings.levels) why.carried = detail::coarsest_label(workings);
  return why;
}

}  // namespace levigate
