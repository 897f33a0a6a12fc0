// What a check has to say: one finding, its weight, and the facts it is about.
#pragma once

#include <array>
#include <concepts>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/fact.hpp"
#include "levigate/grade/system.hpp"

namespace levigate::inline v0 {

/// What a finding is about.
enum class FindingKind {
  ambiguous_label,      ///< a label that several systems claim
  unknown_label,        ///< a label that no system has
  label_by_rule,        ///< a bare number that the rule for bare numbers settles
  extrapolated_size,    ///< a size continued beyond the published numbers
  misleading_numbers,   ///< order of the numbers contradicts order of the sizes
  near_duplicate,       ///< two sheets closer than min_ratio
  gap,                  ///< neighbours further apart than max_ratio
  coarse_tail,          ///< a finer sheet with coarser stray grains than its coarser neighbour
  paper_short,          ///< a step needs more paper than is on hand
  price_missing,        ///< cost asked for, but a sheet has no price
  step_too_long,        ///< size ratio above max_ratio
  step_too_short,       ///< size ratio below min_ratio
  fragile_step,         ///< size ratio above max_ratio at an end of the band of a size
  not_finer,            ///< a step that is not finer than the one before
  repeated_sheet,       ///< a sheet that comes twice in one sequence
  scratch_too_deep,     ///< a compound meets scratches beyond its reach, or orange peel
  film_too_thin,        ///< a zone whose film affords no work, before any
  film_short,           ///< a zone goes deeper than its budget
  round_entered,        ///< a zone goes through its last round into the one below
  tall_defect,          ///< a run or sag that must not be sanded out flat
  soft_first,           ///< a soft block or pad does the levelling
  after_target,         ///< steps after the target is met
  target_missed,        ///< the sequence ends before the target
  sheen_over,           ///< more sheen than the band that was asked for
  young_coat,           ///< a coat that is not yet fully cured
  cure_unknown,         ///< the age of a coat is told, and nothing is known of how it cures
  wheel_speed,          ///< a wheel whose rim is too fast or too slow for the coat
  wheel_heat,           ///< a wheel under which the coat gets too warm
  wheel_unknown,        ///< a wheel on a coat of which no limits are known
  reading_contradicts,  ///< a gauge reads another film than job or steps make
  job_name_near,        ///< the journal has lines of a job whose name is nearly this one
  rest_due,   ///< a coat that shrinks back was levelled, and the step after the rest was not begun
  mark_open,  ///< a mark that no later step of its zone worked
  paper_counted_off,  ///< sheets that the journal used, counted off those on hand
  paper_overused,     ///< more of a sheet was used than was on hand
  machine_by_hand,    ///< a zone that the hand works in place of a machine
  machine_strip,      ///< the strip along the edges that a machine keeps off
  machine_narrow,     ///< a zone under a machine that may be narrow, as an edge is
  curls_show,  ///< a machine's curls that show at the end, where strokes should run along the grain
  piece_too_heavy,  ///< a piece that two hands do not hold to a wheel
  piece_unweighed,  ///< a large piece of unknown weight, and a wheel
};

constexpr std::string_view to_string(FindingKind kind) noexcept {
  switch (kind) {
    case FindingKind::ambiguous_label: return "ambiguous_label";
    case FindingKind::unknown_label: return "unknown_label";
    case FindingKind::label_by_rule: return "label_by_rule";
    case FindingKind::extrapolated_size: return "extrapolated_size";
    case FindingKind::misleading_numbers: return "misleading_numbers";
    case FindingKind::near_duplicate: return "near_duplicate";
    case FindingKind::gap: return "gap";
    case FindingKind::coarse_tail: return "coarse_tail";
    case FindingKind::paper_short: return "paper_short";
    case FindingKind::price_missing: return "price_missing";
    case FindingKind::step_too_long: return "step_too_long";
    case FindingKind::step_too_short: return "step_too_short";
    case FindingKind::fragile_step: return "fragile_step";
    case FindingKind::not_finer: return "not_finer";
    case FindingKind::repeated_sheet: return "repeated_sheet";
    case FindingKind::scratch_too_deep: return "scratch_too_deep";
    case FindingKind::film_too_thin: return "film_too_thin";
    case FindingKind::film_short: return "film_short";
    case FindingKind::round_entered: return "round_entered";
    case FindingKind::tall_defect: return "tall_defect";
    case FindingKind::soft_first: return "soft_first";
    case FindingKind::after_target: return "after_target";
    case FindingKind::target_missed: return "target_missed";
    case FindingKind::sheen_over: return "sheen_over";
    case FindingKind::young_coat: return "young_coat";
    case FindingKind::cure_unknown: return "cure_unknown";
    case FindingKind::wheel_speed: return "wheel_speed";
    case FindingKind::wheel_heat: return "wheel_heat";
    case FindingKind::wheel_unknown: return "wheel_unknown";
    case FindingKind::reading_contradicts: return "reading_contradicts";
    case FindingKind::job_name_near: return "job_name_near";
    case FindingKind::rest_due: return "rest_due";
    case FindingKind::mark_open: return "mark_open";
    case FindingKind::paper_counted_off: return "paper_counted_off";
    case FindingKind::paper_overused: return "paper_overused";
    case FindingKind::machine_by_hand: return "machine_by_hand";
    case FindingKind::machine_strip: return "machine_strip";
    case FindingKind::machine_narrow: return "machine_narrow";
    case FindingKind::curls_show: return "curls_show";
    case FindingKind::piece_too_heavy: return "piece_too_heavy";
    case FindingKind::piece_unweighed: return "piece_unweighed";
  }
  return "";
}

template <>
inline constexpr auto choices<FindingKind> = std::to_array({FindingKind::ambiguous_label,
                                                            FindingKind::unknown_label,
                                                            FindingKind::label_by_rule,
                                                            FindingKind::extrapolated_size,
                                                            FindingKind::misleading_numbers,
                                                            FindingKind::near_duplicate,
                                                            FindingKind::gap,
                                                            FindingKind::coarse_tail,
                                                            FindingKind::paper_short,
                                                            FindingKind::price_missing,
                                                            FindingKind::step_too_long,
                                                            FindingKind::step_too_short,
                                                            FindingKind::fragile_step,
                                                            FindingKind::not_finer,
                                                            FindingKind::repeated_sheet,
                                                            FindingKind::scratch_too_deep,
                                                            FindingKind::film_too_thin,
                                                            FindingKind::film_short,
                                                            FindingKind::round_entered,
                                                            FindingKind::tall_defect,
                                                            FindingKind::soft_first,
                                                            FindingKind::after_target,
                                                            FindingKind::target_missed,
                                                            FindingKind::sheen_over,
                                                            FindingKind::young_coat,
                                                            FindingKind::cure_unknown,
                                                            FindingKind::wheel_speed,
                                                            FindingKind::wheel_heat,
                                                            FindingKind::wheel_unknown,
                                                            FindingKind::reading_contradicts,
                                                            FindingKind::job_name_near,
                                                            FindingKind::rest_due,
                                                            FindingKind::mark_open,
                                                            FindingKind::paper_counted_off,
                                                            FindingKind::paper_overused,
                                                            FindingKind::machine_by_hand,
                                                            FindingKind::machine_strip,
                                                            FindingKind::machine_narrow,
                                                            FindingKind::curls_show,
                                                            FindingKind::piece_too_heavy,
                                                            FindingKind::piece_unweighed});

/// How much a finding matters.
enum class Severity {
  note,     ///< good to know
  warning,  ///< the work may suffer
  error,    ///< cannot be worked as it stands
};

constexpr std::string_view to_string(Severity severity) noexcept {
  switch (severity) {
    case Severity::note: return "note";
    case Severity::warning: return "warning";
    case Severity::error: return "error";
  }
  return "";
}

template <>
inline constexpr auto choices<Severity> = std::to_array({Severity::note, Severity::warning,
                                                         Severity::error});

/// Grades of one system that would bridge a gap.
struct Bridge {
  System system = System::fepa_p;
  std::vector<std::string> labels;

  friend bool operator==(const Bridge&, const Bridge&) = default;
};

template <std::same_as<Bridge> Value>
inline constexpr auto described<Value> =
    describe<Value>("Bridge", "Standard grades that would bridge a gap.",
                    member<&Value::system>("system", "whose grades"),
                    member<&Value::labels>("labels", "coarse to fine"));

/// One finding of a check, as facts: sentence() of text/sentences.hpp says it.
struct Finding {
  FindingKind kind = FindingKind::gap;
  Severity severity = Severity::note;
  std::vector<std::string> sheets;
  std::string zone{};
  std::vector<Named> about{};
  std::vector<Quantity> numbers{};
  std::vector<Bridge> bridges{};
  std::string error{};

  friend bool operator==(const Finding&, const Finding&) = default;
};

template <std::same_as<Finding> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Finding", "Something to know.", member<&Value::kind>("kind", "what it is about"),
    member<&Value::severity>("severity", "how much it matters"),
    member<&Value::sheets>("sheets", "ids of the sheets it is about"),
    member<&Value::zone>("zone", "name of the zone it is about").optional(),
    member<&Value::about>("about", "what it names, in an order of the kind's own").optional(),
    member<&Value::numbers>("numbers", "what it rests on").optional(),
    member<&Value::bridges>("bridges", "grades that would bridge a gap").optional(),
    member<&Value::error>("error", "what reading a label said, where it gives no size").optional());

}  // namespace levigate
