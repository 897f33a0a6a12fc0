// Sentences on the findings of a stack and of a sequence.
#pragma once

#include <string>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/fact.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/take_down.hpp"
#include "levigate/text/work/facts.hpp"
#include "levigate/text/work/sentences_of_surface.hpp"
#include "levigate/text/work/sentences_of_wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string bridged(const std::vector<Bridge>& ways) {
  std::vector<std::string> texts;
  for (const Bridge& way : ways) texts.push_back(list_text(way.labels));
  return list_text(texts, " or ");
}

/// A finding of which sentences are made, by short names.
class FindingText {
 public:
  explicit FindingText(const Finding& finding) : finding_(finding) {}

  std::string text() const {
    const Named first = named_at(finding_.about, 0), second = named_at(finding_.about, 1);
    switch (finding_.kind) {
      case FindingKind::ambiguous_label:
      case FindingKind::unknown_label: return first.name + ": " + finding_.error;
      case FindingKind::extrapolated_size:
        return labelled(first) +
               " has no published size; this one is extrapolated. Give size_um if the maker "
               "states it";
      case FindingKind::misleading_numbers:
        return labelled(second) + " is finer than " + labelled(first) +
               (value("coarse_number") == value("fine_number") ? " though both bear the same number"
                                                               : " though its number is lower");
      case FindingKind::near_duplicate:
        return labelled(first) + " and " + labelled(second) + " are a ratio of " +
               told("ratio", 2) + " apart, below min_ratio " + told("min_ratio", 2) +
               ": one of them is enough";
      case FindingKind::gap:
        return "from " + labelled(first) + " to " + labelled(second) + above_max_ratio() +
               (finding_.bridges.empty() ? "; no standard grade bridges it" : bridged());
      case FindingKind::coarse_tail:
        return labelled(second) + " may hold stray grain up to " +
               size_text(value("fine_tail_um")) + ", coarser than the " +
               size_text(value("coarse_tail_um")) + " of " + labelled(first) +
               ": it can scratch deeper than the step before it";
      case FindingKind::target_out_of_reach: return "no sheet meets the target";
      case FindingKind::paper_short:
        return figure(finding_.numbers, "sheets_needed")
                   ? sized(first) + " needs " + told("sheets_needed", 2) + " sheets, " +
                         told("on_hand", 2) + " on hand"
                   : labelled(first) + " is used up: none on hand";
      case FindingKind::price_missing: return sized(first) + " has no price and counts as free";
      case FindingKind::step_too_long:
        return step() + above_max_ratio() + (finding_.bridges.empty() ? "" : bridged());
      case FindingKind::step_too_short:
        return step() + " is a ratio of " + told("ratio", 2) + ", below min_ratio " +
               told("min_ratio", 2) + ": it costs film and time and gains little";
      case FindingKind::not_finer:
        return step() + " is not finer: its scratches undo the step before";
      case FindingKind::repeated_sheet: return sized(first) + " comes more than once";
      case FindingKind::scratch_too_deep:
        return figure(finding_.numbers, "reach_um")
                   ? sized(first) + " takes out scratches of up to " + told("reach_um", 2) +
                         " um; those of " + sized(second) + " are " + told("scratch_um", 2) +
                         " um deep"
                   : sized(first) + " is a compound and cannot level orange peel";
      case FindingKind::film_short:
        return zone() + " is " + told("depth_um", 1) + " um deep after " + sized(first) +
               ", its budget is " + told("budget_um", 1) + " um";
      case FindingKind::round_entered:
        return zone() + " is sanded through its last round of " + told("film_um", 1) + " um" +
               (value("below_um") > 0 ? " into the one below" : "") +
               ": a witness line shows that no polish hides";
      case FindingKind::tall_defect: return tall_defect();
      case FindingKind::soft_first:
        return "levelling " + zone() + " with " + name_of(finding_.about, "block") + " (" +
               number_text(value("modulus_mpa")) + " MPa) costs " + told("removal_um", 1) +
               " um of film, " + fixed(value("removal_um") / value("hard_removal_um"), 1) +
               " times the " + told("hard_removal_um", 1) +
               " um of a hard block: a soft face follows the orange peel";
      case FindingKind::after_target:
        return sized(first) + " already meets the target; what follows spends film beyond it";
      case FindingKind::target_missed:
        return "ends with " + sized(first) + " and misses the target, " +
               target_text(figure(finding_.numbers, "target_um"),
                           figure(finding_.numbers, "target_gloss_gu"),
                           figure(finding_.numbers, "target_gloss_high_gu"),
                           name_of(finding_.about, "target"));
      case FindingKind::sheen_over:
        return zone() + " ends at " + told("gloss_gu", 0) + " GU or more, above the " +
               told("gloss_high_gu", 0) + " GU of " + name_of(finding_.about, "sheen");
      case FindingKind::young_coat: return young_coat();
      case FindingKind::wheel_speed:
        return first.name + ": " + speed_text(finding_.about, finding_.numbers);
      case FindingKind::wheel_unknown:
        return first.name + ": the rim runs at " + told("surface_speed_m_s", 1) +
               " m/s; the speed and heat that " + name_of(finding_.about, "surface") +
               " stands are not known: try it on scrap first";
      case FindingKind::wheel_heat:
        return first.name + ": " + dwell_text(finding_.about, finding_.numbers);
    }
    return "";
  }

 private:
  double value(std::string_view name) const { return value_of(finding_.numbers, name); }
  std::string told(std::string_view name, int decimals) const {
    return fixed(finding_.numbers, name, decimals);
  }
  std::string zone() const { return "zone " + finding_.zone; }
  std::string step() const {
    return "step to " + sized(named_at(finding_.about, 0)) + " from " +
           sized(named_at(finding_.about, 1));
  }
  std::string above_max_ratio() const {
    return " is a ratio of " + told("ratio", 2) + ", above max_ratio " + told("max_ratio", 2);
  }
  std::string bridged() const {
    return "; " + detail::bridged(finding_.bridges) + " would bridge it";
  }

  std::string tall_defect() const {
    LocalWork work;
    work.shaved = work.masked = true;
    work.tape_um = value("tape_um");
    work.residual_um = value("residual_um");
    work.local.minutes = value("local_minutes");
    work.flat = {value("flat_minutes"), value("flat_film_um")};
    return name_of(finding_.about, "defect") + " of " + told("height_um", 0) + " um in " + zone() +
           ": " + sentence_of(work);
  }

  std::string young_coat() const {
    CureState cure;
    cure.age_h = value("age_h");
    cure.hard_cure_h = value("hard_cure_h");
    cure.hardness_ratio = figure(finding_.numbers, "hardness_ratio");
    cure.scratch_ratio = figure(finding_.numbers, "scratch_ratio");
    cure.first_h = figure(finding_.numbers, "first_h");
    cure.last_h = figure(finding_.numbers, "last_h");
    cure.shrink_left = value("shrink_left");
    return "the coat is " + sentence_of(cure);
  }

  const Finding& finding_;
};

inline std::string sentence_of(const Finding& finding) { return FindingText(finding).text(); }

}  // namespace detail

}  // namespace levigate
