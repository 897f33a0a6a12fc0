// What learning did to a plan: the first step that differs, why the sequence before it is no longer the best, and which learned number does it.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/describe.hpp"
#include "levigate/stack/finding.hpp"

namespace levigate::inline v0 {

/// One step of a sequence, as its choice was.
struct ChosenStep {
  std::string sheet;
  std::string label;
  double longer = 1;

  friend bool operator==(const ChosenStep&, const ChosenStep&) = default;
};

template <std::same_as<ChosenStep> Value>
inline constexpr auto described<Value> = describe<Value>(
    "ChosenStep", "One step of a sequence.", member<&Value::sheet>("sheet", "its id"),
    member<&Value::label>("label", "of the grade, as read"),
    member<&Value::longer>("longer", at_least(1), "its overcut over the least that the rules ask"));

/// What a shop can learn.
enum class LearnedKind {
  hand,     ///< work of the person in a minute
  rate,     ///< removal of a backing on the coating
  scratch,  ///< depth of the scratches of a backing on the coating
  film,     ///< films of the coating
};

template <>
inline constexpr auto choices<LearnedKind> =
    std::to_array({LearnedKind::hand, LearnedKind::rate, LearnedKind::scratch, LearnedKind::film});

constexpr std::string_view to_string(LearnedKind kind) noexcept {
  switch (kind) {
    case LearnedKind::hand: return "hand";
    case LearnedKind::rate: return "rate";
    case LearnedKind::scratch: return "scratch";
    case LearnedKind::film: return "film";
  }
  return "";
}

/// A learned number, and whether it changes the plan alone.
struct LearnedCause {
  LearnedKind kind = LearnedKind::hand;
  std::string backing;
  double factor = 1;
  std::optional<double> offset_um;
  bool alone = false;

  friend bool operator==(const LearnedCause&, const LearnedCause&) = default;
};

template <std::same_as<LearnedCause> Value>
inline constexpr auto described<Value> = describe<Value>(
    "LearnedCause", "A learned number, and whether it changes the plan alone.",
    member<&Value::kind>("kind", "what was learned"),
    member<&Value::backing>("backing", "of a rate or a scratch; empty elsewhere"),
    member<&Value::factor>("factor", at_least(0), "over what is computed; 1 of a film"),
    member<&Value::offset_um>("offset_um", "added to films; of a film alone"),
    member<&Value::alone>("alone",
                          "whether the plan with this number alone takes the same first change"));

/// Why the sequence without what was learned is not the best any more: the first that applies.
enum class ChangeReason {
  no_plan_before,  ///< nothing: there was no plan
  blocked,         ///< it breaks a rule
  minutes,         ///< it takes longer, by more than counts as equal where minutes choose
  fragile,         ///< as long, but more steps on the edge of max_ratio
  film,            ///< as long, but more film
  cost,            ///< it costs more
  steps,           ///< it has more steps
  tie,             ///< nothing: both are equal
};

template <>
inline constexpr auto choices<ChangeReason> =
    std::to_array({ChangeReason::no_plan_before, ChangeReason::blocked, ChangeReason::minutes,
                   ChangeReason::fragile, ChangeReason::film, ChangeReason::cost,
                   ChangeReason::steps, ChangeReason::tie});

constexpr std::string_view to_string(ChangeReason reason) noexcept {
  switch (reason) {
    case ChangeReason::no_plan_before: return "no plan before";
    case ChangeReason::blocked: return "blocked";
    case ChangeReason::minutes: return "minutes";
    case ChangeReason::fragile: return "fragile";
    case ChangeReason::film: return "film";
    case ChangeReason::cost: return "cost";
    case ChangeReason::steps: return "steps";
    case ChangeReason::tie: return "tie";
  }
  return "";
}

/// What more sheets of one kind would give.
struct MoreSheets {
  std::string sheet;
  std::string label;
  double sheets = 1;
  double less_minutes = 0;

  friend bool operator==(const MoreSheets&, const MoreSheets&) = default;
};

template <std::same_as<MoreSheets> Value>
inline constexpr auto described<Value> = describe<Value>(
    "MoreSheets", "What more sheets of one kind would give.", member<&Value::sheet>("sheet", "id"),
    member<&Value::label>("label", "of its grade"),
    member<&Value::sheets>("sheets", at_least(0), "more on hand"),
    member<&Value::less_minutes>(
        "less_minutes", at_least(0),
        "of the best plan with them, with going back; 0 where they gain nothing"));

/// What learning did to a plan, as facts: sentence() of text/sentences.hpp says it. Minutes are at usual numbers.
struct LearnedChange {
  std::vector<ChosenStep> before;
  std::size_t step = 1;
  std::optional<ChosenStep> was;
  std::optional<ChosenStep> now;
  ChangeReason reason = ChangeReason::tie;
  std::vector<Finding> findings;
  double minutes = 0;
  double back_minutes = 0;
  double more_minutes = 0;
  std::vector<LearnedCause> learned;
  std::vector<MoreSheets> more_sheets;

  friend bool operator==(const LearnedChange&, const LearnedChange&) = default;
};

template <std::same_as<LearnedChange> Value>
inline constexpr auto described<Value> = describe<Value>(
    "LearnedChange", "How a plan differs from the one without what was learned, and why.",
    member<&Value::before>("before",
                           "the sequence without what was learned; empty where there was no plan"),
    member<&Value::step>("step", at_least(1), "number of the first step that differs, from 1"),
    member<&Value::was>("was", "that step before; none where the sequence had ended"),
    member<&Value::now>("now", "that step now; none where the sequence has ended"),
    member<&Value::reason>("reason", "why the sequence before is not the best now"),
    member<&Value::findings>("findings", "rules that it breaks now"),
    member<&Value::minutes>("minutes", at_least(0), "that it takes now, as planned"),
    member<&Value::back_minutes>("back_minutes", at_least(0),
                                 "that going back for marks is expected to take beside them"),
    member<&Value::more_minutes>("more_minutes",
                                 "that it takes now over the plan, with going back; below 0 less"),
    member<&Value::learned>("learned", "the numbers, each put in alone"),
    member<&Value::more_sheets>("more_sheets", "where paper blocks it: what more would give"));

}  // namespace levigate
