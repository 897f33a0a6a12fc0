// Sentences on the findings of a stack and of a sequence.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/moment.hpp"
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

/// "To bridge it, buy P500 and P600. Or buy CAMI 400": a sentence for each way, without the last full stop.
inline std::string to_buy(const std::string& lead, const std::vector<Bridge>& ways) {
  std::string text = lead;
  for (const Bridge& way : ways) {
    text += (&way == &ways.front() ? ", buy " : ". Or buy ") + list_text(way.labels);
  }
  return text;
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
      case FindingKind::label_by_rule: return by_rule(first);
      case FindingKind::extrapolated_size:
        return labelled(first) + " has no published size. " + size_text(first.size_um) +
               " is an extrapolation. Give size_um if the maker states it";
      case FindingKind::misleading_numbers:
        return labelled(second) + " is finer than " + labelled(first) +
               (value("coarse_number") == value("fine_number")
                    ? ". Both carry the same number"
                    : ". The finer one has the lower number");
      case FindingKind::near_duplicate:
        return labelled(first) + " and " + labelled(second) + " are a ratio of " +
               told("ratio", 2) + " apart. The min_ratio is " + told("min_ratio", 2) +
               ". One of them is enough";
      case FindingKind::gap:
        return "The ratio from " + labelled(first) + " to " + labelled(second) + " is " +
               told("ratio", 2) + ", above max_ratio " + told("max_ratio", 2) +
               (finding_.bridges.empty() ? ". No standard grade bridges the gap" : bridged());
      case FindingKind::coarse_tail:
        return labelled(second) + " may hold stray grain up to " +
               size_text(value("fine_tail_um")) + ". Stray grain of " + labelled(first) +
               " reaches " + size_text(value("coarse_tail_um")) +
               ". The finer sheet can scratch deeper than the coarser one";
      case FindingKind::paper_short:
        return figure(finding_.numbers, "sheets_needed")
                   ? sized(first) + " needs " + told("sheets_needed", 2) +
                         " sheets. The stack has " + told("on_hand", 2)
                   : "The stack has no sheet of " + labelled(first) + " left";
      case FindingKind::price_missing:
        return sized(first) + " has no price. The plan counts it as free";
      case FindingKind::step_too_long:
        return step() + " has a ratio of " + told("ratio", 2) + ", above max_ratio " +
               told("max_ratio", 2) + (finding_.bridges.empty() ? "" : bridged());
      case FindingKind::step_too_short:
        return step() + " has a ratio of " + told("ratio", 2) + ", below min_ratio " +
               told("min_ratio", 2) + ". It costs film and time and gains little";
      case FindingKind::fragile_step:
        return step() + " has a ratio of " + told("ratio", 2) + ". It keeps max_ratio " +
               told("max_ratio", 2) + " only if both sizes are as printed";
      case FindingKind::not_finer:
        return step() + " does not go finer. Its scratches undo the step before";
      case FindingKind::repeated_sheet: return "The sequence repeats " + sized(first);
      case FindingKind::scratch_too_deep:
        return figure(finding_.numbers, "reach_um")
                   ? sized(first) + " takes out scratches of up to " + told("reach_um", 2) +
                         " um. Scratches of " + sized(second) + " are " + told("scratch_um", 2) +
                         " um deep"
                   : sized(first) + " is a compound and cannot level orange peel";
      case FindingKind::film_too_thin: return film_too_thin();
      case FindingKind::film_short:
        return sized(first) + " takes " + zone() + " down by " + told("depth_um", 1) +
               " um in all. Its film budget is " + told("budget_um", 1) + " um" +
               still_after(finding_.numbers);
      case FindingKind::round_entered:
        if (!name_of(finding_.about, "film").empty()) {
          return "The sequence sands through all " + told("film_um", 1) + " um of film in " +
                 zone() + ". Its rounds melt together. The bottom shows. No polish hides it";
        }
        return "The sequence sands through the last round of " + told("film_um", 1) + " um in " +
               zone() + (value("below_um") > 0 ? ", into the round below" : "") +
               ". A witness line will show. No polish hides it";
      case FindingKind::tall_defect: return tall_defect();
      case FindingKind::soft_first:
        return "Levelling " + zone() + " with " + name_of(finding_.about, "block") + " (" +
               number_text(value("modulus_mpa")) + " MPa) costs " + told("removal_um", 1) +
               " um of film. That is " + fixed(value("removal_um") / value("hard_removal_um"), 1) +
               " times the " + told("hard_removal_um", 1) +
               " um of a hard block. A soft face follows the orange peel";
      case FindingKind::reading_contradicts: return reading_contradicts();
      case FindingKind::job_name_near:
        return "The journal has lines of job '" + second.name + "', nearly '" + first.name +
               "'. They do not count here. If they are of this job, strike and record them again";
      case FindingKind::rest_due: return rest_due();
      case FindingKind::mark_open:
        return "The journal has an open mark: " + first.name + " in zone " + finding_.zone +
               ". go-back tells the way for one mark at a time, the last first";
      case FindingKind::paper_counted_off: return paper_counted_off();
      case FindingKind::paper_overused:
        return "The journal used " + told("sheets_used", 1) + " sheets of " + first.name +
               ". The stack had " + told("on_hand", 1) + ". Count them and correct on_hand";
      case FindingKind::after_target:
        return sized(first) + " already meets the target. The steps after it only cost film";
      case FindingKind::target_missed:
        return "The sequence ends with " + sized(first) + " and misses the target. The target is " +
               target_text(figure(finding_.numbers, "target_um"),
                           figure(finding_.numbers, "target_gloss_gu"),
                           figure(finding_.numbers, "target_gloss_high_gu"),
                           figure(finding_.numbers, "target_angle_deg").value_or(60.0),
                           name_of(finding_.about, "target")) +
               rub_out_text(name_of(finding_.about, "rub_out"));
      case FindingKind::sheen_over:
        return "Zone " + finding_.zone + " ends at about " + told("reading_gu", 0) +
               " GU. The limit" + limited() + " is " + told("gloss_high_gu", 0) + " GU";
      case FindingKind::young_coat: return young_coat();
      case FindingKind::cure_unknown:
        return "The coat is " + told("age_h", 0) + " h old. How long " +
               name_of(finding_.about, "coating") +
               " cures is not known here. The plan counts it as cured. Follow its data sheet";
      case FindingKind::wheel_speed:
        return first.name + ": " + speed_text(finding_.about, finding_.numbers) +
               still_after(finding_.numbers);
      case FindingKind::wheel_unknown:
        return first.name + ": The rim runs at " + told("surface_speed_m_s", 1) +
               " m/s. No limits of speed and heat are known for " +
               name_of(finding_.about, "surface") + ". Try it on scrap first" +
               still_after(finding_.numbers);
      case FindingKind::machine_by_hand: return machine_by_hand();
      case FindingKind::machine_strip:
        return "Keep " + machine() + " " + told("keep_off_mm", 0) +
               " mm off every edge. The strip there stays hand work. Its minutes are not in the "
               "plan";
      case FindingKind::machine_narrow:
        return "Zone " + finding_.zone + " is not levelled, so it may be narrow. " +
               machine("The ") +
               " may cut through at an edge. Tell its edge_of, or keep the machine off it";
      case FindingKind::curls_show:
        return sized(first) + " on " + machine() +
               " comes last and leaves curls. A sheen shows them. Rub the last grade by hand along "
               "the grain";
      case FindingKind::piece_too_heavy:
        return "The piece weighs " + told("weight_kg", 1) + " kg. Two hands hold up to " +
               told("most_kg", 1) + " kg to a wheel. The plan refuses " +
               list_text(finding_.sheets) + ". Use a hand-held polisher";
      case FindingKind::piece_unweighed:
        return "Zone " + finding_.zone + " has " + told("area_cm2", 0) +
               " cm2, and weight_kg is not told. Two hands hold up to " + told("most_kg", 1) +
               " kg to a wheel. Weigh the piece before you use " + list_text(finding_.sheets);
      case FindingKind::wheel_heat:
        return first.name + ": " + dwell_text(finding_.about, finding_.numbers) +
               still_after(finding_.numbers);
    }
    return "";
  }

 private:
  double value(std::string_view name) const { return value_of(finding_.numbers, name); }
  std::string told(std::string_view name, int decimals) const {
    return fixed(finding_.numbers, name, decimals);
  }
  std::string zone() const { return "zone " + finding_.zone; }
  std::string machine(const char* article = "the ") const {
    return article + name_of(finding_.about, "machine");
  }

  /// What a bare number was read as.
  std::string by_rule(const Named& sheet) const {
    const std::string maker = name_of(finding_.about, "maker");
    const bool of_maker = name_of(finding_.about, "rule") == "maker";
    return sheet.name + ": " + name_of(finding_.about, "label") +
           (maker.empty() ? "" : " of " + maker) + " read as " + name_of(finding_.about, "system") +
           " (" + size_text(sheet.size_um) + "), by the rule for " +
           (of_maker ? maker : "all makers");
  }

  /// A zone that stays hand work.
  std::string machine_by_hand() const {
    const bool small = figure(finding_.numbers, "room_cm2").has_value();
    return "Zone " + finding_.zone +
           (small ? " has " + told("area_cm2", 0) + " cm2" : " is an edge") + ". " +
           (small ? machine("The ") + " needs " + told("room_cm2", 0) + " cm2"
                  : machine("The ") + " keeps off it") +
           ". Work the zone by hand with the same grade on " + name_of(finding_.about, "block");
  }

  std::string step() const {
    return "The step from " + sized(named_at(finding_.about, 1)) + " to " +
           sized(named_at(finding_.about, 0));
  }
  /// " of satin (institute)", where the band has a name.
  std::string limited() const {
    const std::string sheen = name_of(finding_.about, "sheen");
    return sheen.empty() ? "" : " of " + sheen;
  }
  std::string bridged() const { return ". " + to_buy("To bridge it", finding_.bridges); }

  /// Few readings tell little of how thin the thinnest spot is.
  std::string few_readings() const {
    constexpr double enough = 8;
    const auto readings = figure(finding_.numbers, "readings");
    if (!readings || *readings >= enough) return "";
    return fixed(*readings, 0) + " readings tell little of the thinnest spot. Take 8 or more. ";
  }

  std::string film_too_thin() const {
    return "Zone " + finding_.zone + " has " + told("film_um", 1) + " +- " + told("film_sd_um", 1) +
           " um of film. " + told("reserve_um", 1) +
           " um of it must stay. Before any work, the chance of less is " +
           fixed(100.0 * value("cut_through"), 2) + " %. The limit is " +
           fixed(100.0 * value("cut_through_limit"), 2) + " %. " + few_readings() +
           "Do not sand the zone";
  }

  std::string reading_contradicts() const {
    return "The gauge read " + told("read_um", 0) + " um in zone " + finding_.zone + ". " +
           told("expected_um", 0) + " um +- " + told("uncertainty_um", 0) +
           " um were expected. The thinner, " + told("counts_um", 0) +
           " um, counts until you read again";
  }

  std::string paper_counted_off() const {
    std::vector<std::string> used;
    for (std::size_t i = 0; i < finding_.sheets.size(); ++i)
      used.push_back(fixed(finding_.numbers[i].value, 1) + " of " + finding_.sheets[i]);
    return "Sheets used by the journal are counted off: " + list_text(used);
  }

  std::string rest_due() const {
    std::vector<std::string> zones;
    for (const Named& named : finding_.about)
      if (named.what == "zone") zones.push_back(named.name);
    const std::string sheets = list_text(finding_.sheets);
    const std::string not_before = name_of(finding_.about, "not_before");
    return "Wait " + told("rest_h", 0) + " h after levelling " + list_text(zones) + " with " +
           sheets + ". The coat shrinks back and part of the peel comes back. " +
           (moment_fault(not_before).empty()
                ? "The next step begins not before " + spoken_moment(not_before) + ". "
                : "") +
           "Level once more with " + sheets + " first";
  }

  std::string tall_defect() const {
    LocalWork work;
    work.shaved = work.masked = true;
    work.tape_um = value("tape_um");
    work.residual_um = value("residual_um");
    work.local.minutes = value("local_minutes");
    work.flat = {value("flat_minutes"), value("flat_film_um")};
    return "Zone " + finding_.zone + " has a " + name_of(finding_.about, "defect") + " of " +
           told("height_um", 0) + " um. " + sentence_of(work);
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
    return sentence_of(cure) + (cure.shrink_left > 0 ? ". The plan counts that as lost" : "");
  }

  const Finding& finding_;
};

/// "2 marks are open. go-back tells the way."; empty where none is.
inline std::string marks_open_text(const std::vector<Finding>& findings) {
  const auto open = std::count_if(findings.begin(), findings.end(), [](const Finding& finding) {
    return finding.kind == FindingKind::mark_open;
  });
  if (open == 0) return "";
  return std::to_string(open) + (open == 1 ? " mark is" : " marks are") +
         " open. go-back tells the way.";
}

inline std::string sentence_of(const Finding& finding) { return FindingText(finding).text(); }

}  // namespace detail

}  // namespace levigate
