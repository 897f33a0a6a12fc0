// Sentences on why there is no plan.
#pragma once

#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/text/work/facts.hpp"
#include "levigate/text/work/sentences_of_finding.hpp"
#include "levigate/text/work/sentences_of_wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string target_text(const Target& target) {
  return target_text(target.size_um, target.gloss_gu, target.gloss_high_gu, target.angle_deg,
                     target.label);
}

inline std::string nearest_text(const Nearest& nearest, bool by_size) {
  return ". The nearest is " + nearest.sheet + " with " +
         (by_size ? size_text(nearest.size_um) : fixed(nearest.reading_gu, 1) + " GU") +
         (nearest.too_near_to_work
              ? " in zone " + nearest.zone + ". It is too close to the grain there to work the zone"
              : "") +
         (nearest.wheel_refused ? ". Its wheel or polisher is too fast or too hot for the coat"
                                : "") +
         (nearest.too_heavy ? ". The piece is too heavy to hold to its wheel" : "") +
         (nearest.still ? ". " + still_text(nearest.still->film_um, nearest.still->rise_k) : "");
}

inline std::string gap_text(const Gap& gap) {
  const std::string text = "The ratio from " + gap.coarse + " (" + size_text(gap.coarse_um) +
                           ") to " + gap.fine + " (" + size_text(gap.fine_um) + ") is " +
                           fixed(gap.ratio, 2);
  return gap.bridges.empty() ? text + ". No standard grade bridges it"
                             : text + ". " + to_buy("To bridge it", gap.bridges);
}

/// What film a zone needs.
inline std::string film_text(const FilmNeeded& film) {
  if (!film.needed_um) {
    return "No film is enough in zone " + film.zone +
           ": its errors are too large. Read a film gauge at more spots";
  }
  const std::string needed = fixed(*film.needed_um, 0);
  std::string text = "Zone " + film.zone + " needs " + needed + " um of film on the mean. It has " +
                     fixed(film.film_um, 1) + " um";
  if (film.coats) {
    text += ". " + needed + " um takes " + fixed(*film.coats, 0) +
            (*film.coats == 1.0 ? " coat of " : " coats of ") + fixed(*film.dry_um_per_coat, 1) +
            " um";
  }
  if (film.on_flat_um) {
    text += ". An edge holds less than the flat: spray " + fixed(*film.on_flat_um, 0) +
            " um on the flat";
  }
  return text;
}

/// The lifts that would yield a plan, one after another.
inline std::string lifts_text(const Why& why) {
  std::vector<std::string> lifts;
  if (why.largest_min_ratio) {
    lifts.push_back("The largest min_ratio that allows a plan is " +
                    fixed(*why.largest_min_ratio, 4));
  }
  if (why.smallest_max_ratio) {
    lifts.push_back("The smallest max_ratio that allows a plan is " +
                    fixed(*why.smallest_max_ratio, 4));
    for (const Gap& gap : why.gaps) lifts.push_back(gap_text(gap));
  }
  if (why.too_deep_um) {
    lifts.push_back("Compound " + why.compound + " meets scratches that are " +
                    fixed(*why.too_deep_um, 2) +
                    " um too deep for it. A finer paper before it would help");
  }
  if (why.film_short_um) {
    lifts.push_back("Even the plan that takes least goes " + fixed(*why.film_short_um, 2) +
                    " um too deep in zone " + why.zone + ". The film budget there is " +
                    fixed(why.budget_um.value_or(0.0), 2) + " um");
    for (const FilmNeeded& film : why.films) lifts.push_back(film_text(film));
  }
  if (!why.paper.empty()) {
    lifts.push_back("Paper runs out");
    if (!why.film_short_um) lifts.push_back("More film does not help");
    for (const PaperShort& p : why.paper) {
      lifts.push_back(p.sheet + " needs " + fixed(p.needed, 2) + " sheets. The stack has " +
                      fixed(p.on_hand, 2));
    }
  }
  std::string text;
  for (const std::string& lift : lifts) text += " " + lift + ".";
  return text;
}

inline std::string sentence_of(const Why& why) {
  switch (why.kind) {
    case WhyKind::done:
      return "Nothing to do. Every zone already meets the target. The target is " +
             target_text(why.target) + ".";
    case WhyKind::no_sheets: return "No plan. The stack has no sheets.";
    case WhyKind::out_of_reach:
      return "No plan. No sheet meets the target. The target is " + target_text(why.target) +
             rub_out_text(why.target.rub_out) +
             (why.nearest ? nearest_text(*why.nearest, why.target.size_um.has_value()) : "") + "." +
             (why.most_gu ? " A surface of this coat without a scratch reads " +
                                fixed(*why.most_gu, 1) + " GU."
                          : "");
    case WhyKind::one_limit: return "No plan. Changing one limit is enough." + lifts_text(why);
    case WhyKind::several_limits:
      return "No plan. Several limits are in the way at once." + lifts_text(why);
    case WhyKind::different_limits:
      return "No plan. Each sequence breaks more than one limit, and not always the same ones. To "
             "see them, evaluate " +
             list_text(why.sheets, ", ") + ".";
    case WhyKind::carried_finer:
      return "No plan. The work already carries " + why.carried +
             ". No sheet that meets the target is finer.";
    case WhyKind::compounds_only:
      return "No plan. Only compounds meet the target, and no paper comes before them. Compounds "
             "cannot level orange peel.";
  }
  return "";
}

}  // namespace detail

}  // namespace levigate
