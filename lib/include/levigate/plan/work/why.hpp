// Finding out why there is no plan, by lifting one rule after another.
#pragma once

#include <algorithm>
#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/lift.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/check.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string target_text(const Workings& workings) {
  const Target& target = workings.job.target;
  const std::string label = target.label.empty() ? "" : " (" + target.label + ")";
  if (target.size_um) return "a size of at most " + size_text(*target.size_um) + label;
  return "a gloss of " +
         (target.gloss_high_gu
              ? fixed(*target.gloss_gu, 1) + " to " + fixed(*target.gloss_high_gu, 1)
              : "at least " + fixed(*target.gloss_gu, 1)) +
         " GU at 60 degrees in every zone" + label;
}

/// How far a zone that ends so is off the target; at most zero where it meets it.
inline double off_target(const Target& target, const Ending& zone) {
  if (target.size_um) return zone.size_um - *target.size_um;
  return std::max(*target.gloss_gu - zone.gloss_gu,
                  target.gloss_high_gu ? zone.gloss_gu - *target.gloss_high_gu : 0.0);
}

/// Label of the coarsest grade that a zone carries.
inline std::string coarsest_label(const Workings& workings) {
  const double coarsest_um = coarsest_carried_um(workings.job);
  for (const std::optional<Start>& start : workings.starts) {
    if (start && start->worn_um == coarsest_um) return start->label;
  }
  return "";
}

/// What comes nearest to the target, in words.
inline std::string nearest_to_target_text(const Workings& workings) {
  const Target& target = workings.job.target;
  const std::size_t zones = workings.job.zones.size();
  const auto off = [&](std::size_t sheet) {
    double most = off_target(target, ending(workings, sheet, 0));
    for (std::size_t zone = 1; zone < zones; ++zone) {
      most = std::max(most, off_target(target, ending(workings, sheet, zone)));
    }
    return most;
  };
  std::size_t nearest = 0;
  for (std::size_t sheet = 1; sheet < workings.grades.size(); ++sheet) {
    if (off(sheet) < off(nearest)) nearest = sheet;
  }
  std::size_t worst = 0;  // coarsest, or of least gloss
  for (std::size_t zone = 1; zone < zones; ++zone) {
    const Ending here = ending(workings, nearest, zone), there = ending(workings, nearest, worst);
    if (target.size_um ? here.size_um > there.size_um : here.gloss_gu < there.gloss_gu)
      worst = zone;
  }
  const Ending left = ending(workings, nearest, worst);
  return "; the nearest is " + workings.stack.sheets[nearest].id + " with " +
         (target.size_um ? size_text(left.size_um) : fixed(left.gloss_gu, 1) + " GU") +
         (workings.stands[nearest][worst]
              ? " in zone " + workings.job.zones[worst].name + ", which it is too near to work"
              : "") +
         (workings.refused[nearest] ? ", whose wheel the coat does not stand" : "");
}

inline std::string gap_text(const Gap& gap) {
  const std::string text = "from " + gap.coarse + " (" + size_text(gap.coarse_um) + ") to " +
                           gap.fine + " (" + size_text(gap.fine_um) + ") is a ratio of " +
                           fixed(gap.ratio, 2);
  return gap.bridges.empty() ? text + ", which no standard grade bridges"
                             : text + "; bought, " + bridges_text(gap.bridges) + " would bridge it";
}

/// The ways past the limits, each lifting one of them under the others as given. Each notes in `why` the least
/// lift that yields a plan and says it in words; no words where it yields none, or where none is needed.
inline std::optional<std::string> way_by_ratio(const Workings& workings, const Limits& limits,
                                               Why& why) {
  const std::optional<double> wanted = smallest_max_ratio(workings, limits);
  if (!wanted) {
    const std::optional<double> nearer = largest_min_ratio(workings, limits);
    if (!nearer || *nearer >= limits.min_ratio) return std::nullopt;
    why.largest_min_ratio = nearer;
    return "the largest min_ratio that would do is " + fixed(*nearer, 4);
  }
  if (*wanted <= limits.max_ratio) return std::nullopt;
  why.smallest_max_ratio = wanted;
  Limits wider = limits;
  wider.max_ratio = *wanted;
  why.gaps = gaps_in(workings, best(found_under(workings, wider), workings.job.prefer));
  std::vector<std::string> gaps;
  for (const Gap& gap : why.gaps) gaps.push_back(gap_text(gap));
  return "the smallest max_ratio that would do is " + fixed(*wanted, 4) + ": " +
         list_text(gaps, "; ");
}

inline std::optional<std::string> way_by_scratch(const Workings& workings, const Limits& limits,
                                                 Why& why) {
  const std::optional<double> deeper_um = least_deeper_um(workings, limits);
  if (!deeper_um || *deeper_um <= limits.deeper_um) return std::nullopt;
  Limits wider = limits;
  wider.deeper_um = *deeper_um;
  for_each_step(workings, best(found_under(workings, wider), workings.job.prefer).sheets,
                [&](std::optional<Before> before, std::size_t sheet) {
                  if (too_deep_um(workings, before, sheet) > limits.deeper_um) {
                    why.compound = workings.stack.sheets[sheet].id;
                  }
                });
  why.too_deep_um = deeper_um;
  return "compound " + why.compound + " meets scratches that are " + fixed(*deeper_um, 2) +
         " um too deep for it: a finer paper before it would help";
}

inline std::optional<std::string> way_by_film(const Workings& workings, const Limits& limits,
                                              Why& why) {
  const std::optional<FilmShort> least = least_film_short(workings, limits);
  if (!least || least->excess_um <= 0) return std::nullopt;
  why.zone = workings.job.zones[least->zone].name;
  why.film_short_um = least->excess_um;
  return "zone " + why.zone + " is short of film by " + fixed(least->excess_um, 2) +
         " um in the plan that spares it most, its budget being " +
         fixed(workings.budget_um[least->zone].value_or(0.0), 2) + " um";
}

inline std::optional<std::string> way_by_paper(const Workings& workings, const Limits& limits,
                                               Why& why) {
  why.paper = least_paper_short(workings, limits);
  if (why.paper.empty()) return std::nullopt;
  std::vector<std::string> texts;
  for (const PaperShort& p : why.paper) {
    texts.push_back(p.sheet + " needs " + fixed(p.needed, 2) + " sheets with " +
                    fixed(p.on_hand, 2) + " on hand");
  }
  return "paper runs out: " + list_text(texts);
}

}  // namespace detail

/// Why the rules leave no plan. Each limit is lifted alone, and the least lift that yields a plan is told. Where no single one
/// does, each is told with the other two lifted.
inline Why why_no_plan(const Workings& workings) {
  Why why;
  if (already_done(workings)) {
    why.blocked_by = Blocker::done;
    why.message = "Nothing to do: every zone already meets the target, " +
                  detail::target_text(workings) + ".";
    return why;
  }
  if (workings.grades.empty()) {
    why.message = "No plan: the stack has no sheets.";
    return why;
  }
  bool reachable = false;
  for (std::size_t sheet = 0; sheet < workings.grades.size(); ++sheet) {
    reachable = reachable || meets_target(workings, sheet);
  }
  if (!reachable) {
    why.message = "No plan: no sheet meets the target, " + detail::target_text(workings) +
                  detail::nearest_to_target_text(workings) + ".";
    return why;
  }

  const auto told = [&](std::string_view opening, const Limits& by_ratio, const Limits& by_scratch,
                        const Limits& by_film, const Limits& by_paper) {
    std::vector<std::string> ways;
    for (const auto& way : {detail::way_by_ratio(workings, by_ratio, why),
                            detail::way_by_scratch(workings, by_scratch, why),
                            detail::way_by_film(workings, by_film, why),
                            detail::way_by_paper(workings, by_paper, why)}) {
      if (way) ways.push_back(*way);
    }
    if (ways.empty()) return false;
    why.message = std::string(opening) + detail::list_text(ways, "; ") + ".";
    return true;
  };
  const Limits limits = limits_of(workings.job.rules);
  if (told("No plan. Lifting one limit would do: ", limits, limits, limits, limits)) {
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
  if (told("No plan, and no single limit is to blame: ", only_ratio, only_scratch, only_film,
           only_paper)) {
    return why;
  }
  // Different ways break different limits, each more than one: no limit stands in the way of all.
  const std::vector<Sequence> unlimited = detail::found_under(workings, none);
  if (!unlimited.empty()) {
    std::vector<std::string> ids;
    for (const std::size_t sheet : best(unlimited, workings.job.prefer).sheets) {
      ids.push_back(workings.stack.sheets[sheet].id);
    }
    why.message =
        "No plan: each way breaks more than one limit, and not the same ones. To see them, "
        "evaluate " +
        detail::list_text(ids, ", ") + ".";
    return why;
  }
  why.blocked_by = Blocker::target;
  why.message = !workings.levels
                    ? "No plan: no sheet that meets the target is finer than " +
                          detail::coarsest_label(workings) + ", which the work carries."
                    : "No plan: only compounds meet the target, with no paper before them, and "
                      "they cannot level "
                      "orange peel.";
  return why;
}

}  // namespace levigate
