// Why there is no plan: which limit stands in the way, by how much, and what would help.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/ladder.hpp"
#include "levigate/stack/check.hpp"

namespace levigate::inline v0 {

/// The limit that stands in the way. Where lifting one of several would do, the first in this order.
enum class Blocker {
  target,   ///< no sheet meets the target
  ratio,    ///< max_ratio, or min_ratio
  scratch,  ///< a compound's reach
  film,     ///< a zone's film
  paper,    ///< the sheets on hand
  several,  ///< more than one at once
};

constexpr std::string_view to_string(Blocker blocker) noexcept {
  switch (blocker) {
    case Blocker::target: return "target";
    case Blocker::ratio: return "ratio";
    case Blocker::scratch: return "scratch";
    case Blocker::film: return "film";
    case Blocker::paper: return "paper";
    case Blocker::several: return "several";
  }
  return "";
}

/// A step that the rules do not allow, but the way past them needs.
struct Gap {
  std::string coarse;  ///< id of the sheet, or the label of the grade the work carries
  std::string fine;    ///< id of the sheet
  double coarse_um = 0;
  double fine_um = 0;
  double ratio = 0;
  std::vector<Bridge> bridges;  ///< one per system that has any
};

/// A sheet that runs out.
struct PaperShort {
  std::string sheet;
  double needed = 0;
  double on_hand = 0;
};

/// The reason for no plan. What does not apply is empty.
struct Why {
  Blocker blocked_by = Blocker::target;
  std::string message;                       ///< all of it in words
  std::optional<double> smallest_max_ratio;  ///< that would do, all else as it is
  std::optional<double> largest_min_ratio;   ///< that would do, all else as it is
  std::vector<Gap> gaps;                     ///< at smallest_max_ratio, the steps above max_ratio
  std::string compound;                      ///< that meets scratches beyond its reach
  std::optional<double> too_deep_um;         ///< by at least so much
  std::string zone;                          ///< that runs out of film
  std::optional<double> film_short_um;       ///< by at least so much
  std::vector<PaperShort> paper;  ///< the sheets that run out, in the plan with least missing
};

namespace detail {

inline std::vector<Sequence> found_under(const Bench& bench, const Limits& limits) {
  return search(ladder(bench, limits));
}

/// All ratios that a step of this bench could have, ascending.
inline std::vector<double> possible_ratios(const Bench& bench) {
  std::vector<double> from;
  for (std::size_t sheet = 0; sheet < bench.grades.size(); ++sheet)
    from.push_back(worn_um(bench, sheet));
  if (bench.job.scratched_by) from.push_back(bench.job.scratched_by->median_um);
  std::vector<double> ratios;
  for (const double coarse : from) {
    for (const Grade& grade : bench.grades) {
      if (grade.median_um < coarse) ratios.push_back(coarse / grade.median_um);
    }
  }
  std::sort(ratios.begin(), ratios.end());
  ratios.erase(std::unique(ratios.begin(), ratios.end()), ratios.end());
  return ratios;
}

/// The first of these bounds, each looser than the one before, under which there is a plan. A looser bound only adds
/// steps, so bisection is exact.
inline std::optional<double> first_that_does(const Bench& bench, Limits limits,
                                             double Limits::*bound,
                                             const std::vector<double>& values) {
  const auto too_tight = [&](double value) {
    limits.*bound = value;
    return found_under(bench, limits).empty();
  };
  const auto at = std::partition_point(values.begin(), values.end(), too_tight);
  return at == values.end() ? std::nullopt : std::optional(*at);
}

/// The smallest max_ratio, from the present one up, under which there is a plan.
inline std::optional<double> smallest_max_ratio(const Bench& bench, const Limits& limits) {
  std::vector<double> values = possible_ratios(bench);
  std::erase_if(values, [&](double ratio) { return ratio <= limits.max_ratio; });
  values.insert(values.begin(), limits.max_ratio);
  return first_that_does(bench, limits, &Limits::max_ratio, values);
}

/// The largest min_ratio, from the present one down, under which there is a plan.
inline std::optional<double> largest_min_ratio(const Bench& bench, const Limits& limits) {
  std::vector<double> values = possible_ratios(bench);
  std::erase_if(values, [&](double ratio) { return ratio >= limits.min_ratio; });
  values.push_back(limits.min_ratio);
  std::reverse(values.begin(), values.end());
  return first_that_does(bench, limits, &Limits::min_ratio, values);
}

/// The least depth by which scratches must be allowed to exceed a compound's reach, for there to be a plan.
inline std::optional<double> least_deeper_um(const Bench& bench, const Limits& limits) {
  std::vector<double> values{limits.deeper_um};
  for (std::size_t to = 0; to < bench.grades.size(); ++to) {
    if (bench.job.scratched_by) values.push_back(too_deep_um(bench, std::nullopt, to));
    for (std::size_t from = 0; from < bench.grades.size(); ++from) {
      values.push_back(too_deep_um(bench, Before{from, true}, to));
      values.push_back(too_deep_um(bench, Before{from, false}, to));
    }
  }
  std::erase_if(values, [&](double value) { return value < limits.deeper_um; });
  std::sort(values.begin(), values.end());
  return first_that_does(bench, limits, &Limits::deeper_um, values);
}

/// The steps of a sequence that are longer than max_ratio.
inline std::vector<Gap> gaps_in(const Bench& bench, const Sequence& sequence) {
  std::vector<Gap> gaps;
  for_each_step(sequence.sheets, [&](std::optional<Before> before, std::size_t sheet) {
    const std::optional<double> coarse_um = size_before_um(bench, before);
    const double fine_um = bench.grades[sheet].median_um;
    if (!coarse_um || fit_of(*coarse_um, fine_um, bench.job.rules) != StepFit::too_long) return;
    gaps.push_back({before ? bench.stack.sheets[before->sheet].id : bench.job.scratched_by->label,
                    bench.stack.sheets[sheet].id, *coarse_um, fine_um, *coarse_um / fine_um,
                    bridges(*coarse_um, fine_um, bench.job.rules)});
  });
  return gaps;
}

/// How far the zone that is shortest of film is beyond its budget, at least: the least over all sequences of the
/// worst zone's excess.
struct FilmShort {
  std::size_t zone = 0;
  double excess_um = 0;
};

/// Depths are shifted so that equal excess means equal depth; the search for the least film then finds the least excess.
inline std::optional<FilmShort> least_film_short(const Bench& bench, Limits limits) {
  const Ladder strict = ladder(bench, limits);
  limits.film = false;
  Ladder shifted = ladder(bench, limits);
  std::int64_t largest = 0;
  for (const auto& budget : strict.budget_pm) largest = std::max(largest, budget.value_or(0));
  for (std::vector<Rung>* rungs : {&shifted.as_first, &shifted.later}) {
    for (Rung& rung : *rungs) {
      for (std::size_t zone = 0; zone < rung.scratch_pm.size(); ++zone) {
        rung.scratch_pm[zone] += largest - strict.budget_pm[zone].value_or(0);
      }
    }
  }
  const std::vector<Sequence> found = search(shifted);
  if (found.empty()) return std::nullopt;
  const std::vector<std::int64_t>& depth = best(found, Objective::film).depth_pm;
  const auto worst = std::max_element(depth.begin(), depth.end());
  return FilmShort{static_cast<std::size_t>(worst - depth.begin()),
                   static_cast<double>(*worst - largest) / pm_per_um};
}

/// The sheets that run out in the sequence that needs the fewest sheets beyond what is on hand.
inline std::vector<PaperShort> least_paper_short(const Bench& bench, Limits limits) {
  limits.paper = false;
  Ladder counted = ladder(bench, limits);
  const auto missing = [&](std::optional<Before> before, std::size_t sheet) {
    return micro_short(bench, efforts(bench, before, sheet), sheet);
  };
  for (std::size_t sheet = 0; sheet < counted.first.size(); ++sheet) {
    if (counted.first[sheet]) counted.first[sheet]->cost = missing(std::nullopt, sheet);
    for (LadderStep& step : counted.as_first[sheet].next) {
      step.cost.cost = missing(Before{sheet, true}, step.to);
    }
    for (LadderStep& step : counted.later[sheet].next) {
      step.cost.cost = missing(Before{sheet, false}, step.to);
    }
  }
  const std::vector<Sequence> found = search(counted);
  if (found.empty()) return {};
  std::vector<PaperShort> result;
  for_each_step(
      best(found, Objective::cost).sheets, [&](std::optional<Before> before, std::size_t sheet) {
        const std::vector<Effort> step = efforts(bench, before, sheet);
        if (micro_short(bench, step, sheet) == 0) return;
        result.push_back(
            {bench.stack.sheets[sheet].id, sheets_used(step), *bench.stack.sheets[sheet].on_hand});
      });
  return result;
}

inline std::string target_text(const Bench& bench) {
  const Target& target = bench.job.target;
  if (target.gloss_gu) {
    return "a gloss of at least " + fixed(*target.gloss_gu, 1) + " GU at 60 degrees in every zone";
  }
  const std::string label = target.label.empty() ? "" : " (" + target.label + ")";
  return "a size of at most " + size_text(*target.size_um) + label;
}

/// What comes nearest to the target, in words.
inline std::string nearest_to_target_text(const Bench& bench) {
  std::size_t nearest = 0;
  const auto lowest_gloss = [&](std::size_t sheet) {
    const auto& work = bench.work[sheet];
    return std::min_element(work.begin(), work.end(),
                            [](const auto& a, const auto& b) { return a.gloss_gu < b.gloss_gu; })
        ->gloss_gu;
  };
  for (std::size_t sheet = 1; sheet < bench.grades.size(); ++sheet) {
    const bool nearer = bench.job.target.gloss_gu
                            ? lowest_gloss(sheet) > lowest_gloss(nearest)
                            : bench.grades[sheet].median_um < bench.grades[nearest].median_um;
    if (nearer) nearest = sheet;
  }
  const std::string text = "; the nearest is " + bench.stack.sheets[nearest].id + " with ";
  return text + (bench.job.target.gloss_gu ? fixed(lowest_gloss(nearest), 1) + " GU"
                                           : size_text(bench.grades[nearest].median_um));
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
inline std::optional<std::string> way_by_ratio(const Bench& bench, const Limits& limits, Why& why) {
  const std::optional<double> wanted = smallest_max_ratio(bench, limits);
  if (!wanted) {
    const std::optional<double> nearer = largest_min_ratio(bench, limits);
    if (!nearer || *nearer >= limits.min_ratio) return std::nullopt;
    why.largest_min_ratio = nearer;
    return "the largest min_ratio that would do is " + fixed(*nearer, 4);
  }
  if (*wanted <= limits.max_ratio) return std::nullopt;
  why.smallest_max_ratio = wanted;
  Limits wider = limits;
  wider.max_ratio = *wanted;
  why.gaps = gaps_in(bench, best(found_under(bench, wider), bench.job.prefer));
  std::vector<std::string> gaps;
  for (const Gap& gap : why.gaps) gaps.push_back(gap_text(gap));
  return "the smallest max_ratio that would do is " + fixed(*wanted, 4) + ": " +
         list_text(gaps, "; ");
}

inline std::optional<std::string> way_by_scratch(const Bench& bench, const Limits& limits,
                                                 Why& why) {
  const std::optional<double> deeper_um = least_deeper_um(bench, limits);
  if (!deeper_um || *deeper_um <= limits.deeper_um) return std::nullopt;
  Limits wider = limits;
  wider.deeper_um = *deeper_um;
  for_each_step(best(found_under(bench, wider), bench.job.prefer).sheets,
                [&](std::optional<Before> before, std::size_t sheet) {
                  if (too_deep_um(bench, before, sheet) > limits.deeper_um) {
                    why.compound = bench.stack.sheets[sheet].id;
                  }
                });
  why.too_deep_um = deeper_um;
  return "compound " + why.compound + " meets scratches that are " + fixed(*deeper_um, 2) +
         " um too deep for it: a finer paper before it would help";
}

inline std::optional<std::string> way_by_film(const Bench& bench, const Limits& limits, Why& why) {
  const std::optional<FilmShort> least = least_film_short(bench, limits);
  if (!least || least->excess_um <= 0) return std::nullopt;
  why.zone = bench.job.zones[least->zone].name;
  why.film_short_um = least->excess_um;
  return "zone " + why.zone + " is short of film by " + fixed(least->excess_um, 2) +
         " um in the plan that spares it most, its budget being " +
         fixed(bench.budget_um[least->zone].value_or(0.0), 2) + " um";
}

inline std::optional<std::string> way_by_paper(const Bench& bench, const Limits& limits, Why& why) {
  why.paper = least_paper_short(bench, limits);
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
inline Why why_no_plan(const Bench& bench) {
  Why why;
  if (bench.grades.empty()) {
    why.message = "No plan: the stack has no sheets.";
    return why;
  }
  bool reachable = false;
  for (std::size_t sheet = 0; sheet < bench.grades.size(); ++sheet) {
    reachable = reachable || meets_target(bench, sheet);
  }
  if (!reachable) {
    why.message = "No plan: no sheet meets the target, " + detail::target_text(bench) +
                  detail::nearest_to_target_text(bench) + ".";
    return why;
  }

  const auto told = [&](std::string_view opening, const Limits& by_ratio, const Limits& by_scratch,
                        const Limits& by_film, const Limits& by_paper) {
    std::vector<std::string> ways;
    for (const auto& way :
         {detail::way_by_ratio(bench, by_ratio, why),
          detail::way_by_scratch(bench, by_scratch, why), detail::way_by_film(bench, by_film, why),
          detail::way_by_paper(bench, by_paper, why)}) {
      if (way) ways.push_back(*way);
    }
    if (ways.empty()) return false;
    why.message = std::string(opening) + detail::list_text(ways, "; ") + ".";
    return true;
  };
  const Limits limits = limits_of(bench.job.rules);
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
  const std::vector<Sequence> unlimited = detail::found_under(bench, none);
  if (!unlimited.empty()) {
    std::vector<std::string> ids;
    for (const std::size_t sheet : best(unlimited, bench.job.prefer).sheets) {
      ids.push_back(bench.stack.sheets[sheet].id);
    }
    why.message =
        "No plan: each way breaks more than one limit, and not the same ones. To see them, "
        "evaluate " +
        detail::list_text(ids, ", ") + ".";
    return why;
  }
  why.blocked_by = Blocker::target;
  why.message = bench.job.scratched_by
                    ? "No plan: no sheet that meets the target is finer than " +
                          bench.job.scratched_by->label + ", which the work carries."
                    : "No plan: only compounds meet the target, with no paper before them, and "
                      "they cannot level "
                      "orange peel.";
  return why;
}

}  // namespace levigate
