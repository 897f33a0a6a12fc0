// Several pieces planned together from one drawer: who gets which paper, what to buy, and who would starve first.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/error.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/plan/cure_wait.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/risk/share.hpp"
#include "levigate/risk/simulate_options.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// One of several pieces: what it gets, beside what it would take alone.
struct Piece {
  std::string job;
  bool done = false;
  bool has_plan = false;
  std::optional<CureWait> wait{};
  double minutes = 0;
  double alone_minutes = 0;
  std::vector<std::string> sheets{};
  std::vector<std::string> alone_sheets{};

  friend bool operator==(const Piece&, const Piece&) = default;
};

template <std::same_as<Piece> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Piece", "One of several pieces: what it gets, beside what it would take alone.",
    member<&Value::job>("job", "its name"),
    member<&Value::done>("done", "whether it meets its target already"),
    member<&Value::has_plan>("has_plan", "whether it has a plan of its own"),
    member<&Value::wait>("wait", "how long its coat must stand before; none where it is cured"),
    member<&Value::minutes>("minutes", at_least(0),
                            "of its plan, with what going back for marks is expected to take"),
    member<&Value::alone_minutes>("alone_minutes", at_least(0),
                                  "the same of its best plan, with the whole drawer to itself"),
    member<&Value::sheets>("sheets", "ids, in the order of the work"),
    member<&Value::alone_sheets>("alone_sheets",
                                 "the same of its best plan, with the whole drawer to itself"));

/// What all pieces take of one sheet. A worn sheet goes on to the next piece, so that fractions add up.
struct PaperOfAll {
  std::string sheet;
  std::optional<double> on_hand{};
  double sheets_used = 0;
  std::int64_t buy = 0;
  double alone_sheets_used = 0;
  std::int64_t alone_buy = 0;
  std::optional<double> sheets_enough{};
  std::optional<std::int64_t> enough_buy{};

  friend bool operator==(const PaperOfAll&, const PaperOfAll&) = default;
};

template <std::same_as<PaperOfAll> Value>
inline constexpr auto described<Value> = describe<Value>(
    "PaperOfAll", "What all pieces take of one sheet; fractions of a sheet add up.",
    member<&Value::sheet>("sheet", "its id"),
    member<&Value::on_hand>("on_hand", at_least(0), "sheets in the drawer; none: no limit")
        .in_unit("sheets"),
    member<&Value::sheets_used>("sheets_used", at_least(0), "by the plans, at usual numbers"),
    member<&Value::buy>("buy", at_least(0), "whole sheets that the plans lack, at usual numbers"),
    member<&Value::alone_sheets_used>("alone_sheets_used", at_least(0),
                                      "by the plans that the pieces would take alone"),
    member<&Value::alone_buy>("alone_buy", at_least(0),
                              "whole sheets that those lack, at usual numbers"),
    member<&Value::sheets_enough>(
        "sheets_enough", at_least(0),
        "so many of each sheet are enough at once in nine draws of ten; none without draws"),
    member<&Value::enough_buy>("enough_buy", at_least(0),
                               "whole sheets that lack of these; none without draws"));

/// Several pieces planned together.
struct Together {
  bool found = false;
  Objective prefer = Objective::minutes;
  std::vector<Piece> pieces{};
  std::vector<Plan> plans{};
  std::vector<PaperOfAll> paper{};
  std::optional<std::size_t> starves{};
  std::vector<PaperShort> lacks{};
  double minutes = 0;
  double alone_minutes = 0;
  double cost = 0;
  double alone_cost = 0;
  std::int64_t draws = 0;
  std::uint64_t seed = 0;
  std::optional<Share> suffices{};

  friend bool operator==(const Together&, const Together&) = default;
};

template <std::same_as<Together> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Together", "Several pieces planned together from one drawer.",
    member<&Value::found>("found", "whether each piece has a plan, and the paper does for all"),
    member<&Value::prefer>("prefer", "what all pieces prefer"),
    member<&Value::pieces>("pieces", "in the order of the work"),
    member<&Value::plans>(
        "plans", "of each piece; where the paper does not do for all, those of each alone"),
    member<&Value::paper>("paper", "that the plans take, in the order of the stack"),
    member<&Value::starves>("starves",
                            "place of the first piece that lacks paper, from 0, each with its best "
                            "plan; none: no piece"),
    member<&Value::lacks>("lacks", "what that piece then needs, and what is left of it"),
    member<&Value::minutes>("minutes", at_least(0),
                            "of all plans, with what going back for marks is expected to take"),
    member<&Value::alone_minutes>("alone_minutes", at_least(0),
                                  "the same of the best plans of each with the whole drawer"),
    member<&Value::cost>("cost", at_least(0), "of the sheets that the plans use"),
    member<&Value::alone_cost>("alone_cost", at_least(0),
                               "the same of the best plans of each with the whole drawer"),
    member<&Value::draws>("draws", at_least(0), "that were made; 0: none"),
    member<&Value::seed>("seed", "of the random numbers; the same seed gives the same figures"),
    member<&Value::suffices>("suffices",
                             "of the draws in which the paper on hand does; none without draws"));

/// The best plans for several pieces that share the paper on hand, with what to buy.
///
/// The choice is exact. No other choice of sequences that keeps the rules, and takes no more of any sheet than is on hand, is better.
/// In minutes each piece may take 3 % more than in the quickest choice of all; of what is within that, the fewest fragile steps count,
/// then the film. In film the worst piece counts first, then the next. See best_together(). One piece gets the answer of plan().
///
///   on_hand >= sum over pieces of sheets used,   buy = ceil(max(0, sum - on_hand)),   of each sheet
///
/// The paper of each draw is that of simulate(). Hand, backings, coatings and shop take the same values for all pieces in a draw;
/// orange peel has a seed of its own in each. sheets_enough is the least rank at which the values of all sheets together hold in nine
/// draws of ten.
///
/// @param jobs     in the order of the work; 1 to most_pieces, all of which prefer the same
/// @param stack    the paper on hand
/// @param shop     what journals taught
/// @param options  draws (0: none), seed, threads
/// Throws:    BadInput where jobs prefer different things; OutOfRange for none or more than most_pieces of them, or where a choice
///            would take more than 50 000 looks; what plan() and simulate() throw
/// NaN:       rejected
/// Accuracy:  sums to a millisecond, a hundredth of a cent and a millionth of a sheet
/// Source:    that of plan(); that rests of sheets go on to the next piece: common practice
Together plan_together(const std::vector<Job>& jobs, const Stack& stack,
                       const std::optional<Shop>& shop = std::nullopt,
                       const SimulateOptions& options = {});

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/risk/work/together.hpp"
#endif
