// The exact choice for several pieces that share the paper on hand. Integers, as the search for one piece.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <iterator>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/sun.hpp"
#include "levigate/plan/work/sunlight.hpp"
#include "levigate/plan/work/workings.hpp"

namespace levigate::inline v0 {

/// A sequence for one of several pieces, with the paper that it uses.
struct PieceOption {
  Sequence sequence;
  std::vector<std::int64_t> micro_sheets;  ///< of each sheet of the stack [1/1 000 000 sheet]
};

/// More pieces than that are not planned together.
inline constexpr std::size_t most_pieces = 12;

namespace detail {

/// A search for several pieces that would look at more choices than that is given up.
inline constexpr std::int64_t most_joint_choices = 50'000;

/// Sums of the sequences of some pieces. In their order, adding the same to both sides changes nothing. So without a limit on
/// paper each piece gets the best of its own.
struct JointSum {
  std::int64_t lead = 0;
  bool film_leads = false;
  std::vector<FilmShare> films{};  ///< of the pieces, the worst first
  std::int64_t milliseconds = 0;   ///< expected
  std::int64_t cost = 0;
  std::int64_t fragile = 0;
  std::size_t steps = 0;
  std::vector<std::size_t> places{};  ///< of the sequences, in the order of the stack

  auto order() const {
    const std::vector<FilmShare> none;
    return std::make_tuple(lead, film_leads ? films : none, milliseconds, films, cost, fragile,
                           steps, std::cref(places));
  }

  friend bool operator<(const JointSum& a, const JointSum& b) { return a.order() < b.order(); }

  friend JointSum operator+(const JointSum& a, const JointSum& b) {
    JointSum sum{a.lead + b.lead,
                 a.film_leads || b.film_leads,
                 {},
                 a.milliseconds + b.milliseconds,
                 a.cost + b.cost,
                 a.fragile + b.fragile,
                 a.steps + b.steps,
                 a.places};
    std::merge(a.films.begin(), a.films.end(), b.films.begin(), b.films.end(),
               std::back_inserter(sum.films), std::greater<>());
    sum.places.insert(sum.places.end(), b.places.begin(), b.places.end());
    return sum;
  }
};

/// What a choice is best in: as best(), or in expected minutes alone.
struct JointOrder {
  Objective prefer = Objective::minutes;
  bool quickest = false;

  JointSum of(const Sequence& s, std::size_t place) const {
    std::int64_t lead = 0;
    if (quickest) {
      lead = s.expected_milliseconds();
    } else if (prefer == Objective::minutes) {
      lead = s.fragile;
    } else if (prefer == Objective::cost) {
      lead = s.cost;
    } else if (prefer == Objective::steps) {
      lead = static_cast<std::int64_t>(s.steps());
    }
    const bool film = !quickest && (prefer == Objective::minutes || prefer == Objective::film);
    return {lead, film, {s.film}, s.expected_milliseconds(), s.cost, s.fragile, s.steps(), {place}};
  }
};

/// Branch and bound over the pieces. A branch ends where the rest, each piece with the best that the paper left allows it alone,
/// does not beat the best choice so far; or where another branch got as far with no more of any sheet and a better sum.
class JointSearch {
 public:
  /// `near`: of each piece, the most expected milliseconds that a sequence may take; none: any
  /// `left`: micro-sheets on hand of each shared sheet
  JointSearch(const std::vector<std::vector<PieceOption>>& pieces, JointOrder order,
              const std::vector<std::size_t>& shared, std::vector<std::int64_t> left,
              const std::vector<std::int64_t>& close_by)
      : seen_(pieces.size() + 1) {
    for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
      ways_.push_back(ways_of(pieces[piece], order, shared,
                              close_by.empty() ? std::nullopt : std::optional(close_by[piece])));
    }
    std::vector<std::size_t> chosen;
    visit(JointSum{}, left, chosen);
  }

  /// The option of each piece; none where the paper does not do.
  const std::optional<std::vector<std::size_t>>& best() const { return best_; }

 private:
  struct Way {
    JointSum sum;
    std::vector<std::int64_t> uses;  ///< micro-sheets of each shared sheet
    std::size_t option;
  };
  struct Seen {
    JointSum sum;
    std::vector<std::int64_t> left;
  };

  static bool fits(const std::vector<std::int64_t>& uses, const std::vector<std::int64_t>& left) {
    return std::equal(uses.begin(), uses.end(), left.begin(), std::less_equal<>());
  }

  /// Best first, without those that another beats with no more of any shared sheet.
  static std::vector<Way> ways_of(const std::vector<PieceOption>& options, const JointOrder& order,
                                  const std::vector<std::size_t>& shared,
                                  std::optional<std::int64_t> close_by) {
    std::vector<std::size_t> in_order(options.size());
    for (std::size_t i = 0; i < options.size(); ++i) in_order[i] = i;
    std::sort(in_order.begin(), in_order.end(), [&](std::size_t a, std::size_t b) {
      const Sequence &x = options[a].sequence, &y = options[b].sequence;
      return std::tie(x.sheets, x.overcuts) < std::tie(y.sheets, y.overcuts);
    });
    std::vector<Way> all;
    for (std::size_t place = 0; place < in_order.size(); ++place) {
      const PieceOption& option = options[in_order[place]];
      if (close_by && option.sequence.expected_milliseconds() > *close_by) continue;
      Way& way = all.emplace_back(Way{order.of(option.sequence, place), {}, in_order[place]});
      for (const std::size_t sheet : shared) way.uses.push_back(option.micro_sheets[sheet]);
    }
    std::sort(all.begin(), all.end(), [](const Way& a, const Way& b) { return a.sum < b.sum; });
    std::vector<Way> kept;
    for (Way& way : all) {
      const bool beaten = std::any_of(kept.begin(), kept.end(),
                                      [&](const Way& k) { return fits(k.uses, way.uses); });
      if (!beaten) kept.push_back(std::move(way));
    }
    return kept;
  }

  /// The sum with the pieces from `piece` on, each with the best that fits alone. None where none does.
  std::optional<JointSum> bound(JointSum sum, std::size_t piece,
                                const std::vector<std::int64_t>& left) const {
    for (; piece < ways_.size(); ++piece) {
      const auto at = std::find_if(ways_[piece].begin(), ways_[piece].end(),
                                   [&](const Way& way) { return fits(way.uses, left); });
      if (at == ways_[piece].end()) return std::nullopt;
      sum = sum + at->sum;
    }
    return sum;
  }

  void visit(const JointSum& sum, const std::vector<std::int64_t>& left,
             std::vector<std::size_t>& chosen) {
    const std::size_t piece = chosen.size();
    if (piece == ways_.size()) {
      if (!best_ || sum < best_sum_) {
        best_ = chosen;
        best_sum_ = sum;
      }
      return;
    }
    require_range(static_cast<double>(++choices_), 0.0, static_cast<double>(most_joint_choices),
                  "choices", "", "plan_together");
    const std::optional<JointSum> least = bound(sum, piece, left);
    if (!least || (best_ && !(*least < best_sum_))) return;
    const bool beaten = std::any_of(seen_[piece].begin(), seen_[piece].end(), [&](const Seen& s) {
      return s.sum < sum && fits(left, s.left);
    });
    if (beaten) return;
    seen_[piece].push_back({sum, left});
    for (const Way& way : ways_[piece]) {
      if (!fits(way.uses, left)) continue;
      const JointSum with = sum + way.sum;
      if (const auto rest = bound(with, piece + 1, left); best_ && rest && !(*rest < best_sum_))
        return;
      std::vector<std::int64_t> after = left;
      for (std::size_t i = 0; i < after.size(); ++i) after[i] -= way.uses[i];
      chosen.push_back(way.option);
      visit(with, after, chosen);
      chosen.pop_back();
    }
  }

  std::vector<std::vector<Way>> ways_;
  std::vector<std::vector<Seen>> seen_;
  std::optional<std::vector<std::size_t>> best_;
  JointSum best_sum_;
  std::int64_t choices_ = 0;
};

/// Choices for all pieces under a limit on some sheets: the one to take last, before it those that it hangs on. Empty where the paper does not do.
///
/// In minutes, each piece may take equal_minutes_percent more than in the quickest choice of all; what is within that is equal, as in
/// best().
/// Throws: OutOfRange where it would take more than most_joint_choices
inline std::vector<std::vector<std::size_t>> joint_choices(
    const std::vector<std::vector<PieceOption>>& pieces, Objective prefer,
    const std::vector<std::size_t>& shared, const std::vector<std::int64_t>& on_hand) {
  std::vector<std::vector<std::size_t>> result;
  std::vector<std::int64_t> close_by;
  if (prefer == Objective::minutes) {
    const JointSearch quickest(pieces, {prefer, true}, shared, on_hand, close_by);
    if (!quickest.best()) return {};
    result.push_back(*quickest.best());
    for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
      const std::int64_t least =
          pieces[piece][result.back()[piece]].sequence.expected_milliseconds();
      close_by.push_back(least + least / 100 * equal_minutes_percent);
    }
  }
  const JointSearch search(pieces, {prefer, false}, shared, on_hand, close_by);
  if (!search.best()) return {};
  result.push_back(*search.best());
  return result;
}

/// A sequence with the paper that it uses.
inline PieceOption with_paper(const Workings& workings, Sequence sequence) {
  PieceOption option{std::move(sequence),
                     std::vector<std::int64_t>(workings.stack.sheets.size(), 0)};
  for_each_step(workings, option.sequence,
                [&](std::optional<Before> before, std::size_t sheet, double overcut) {
                  option.micro_sheets[sheet] +=
                      micro_sheets(sheets_used(efforts(workings, before, sheet, overcut)));
                });
  return option;
}

}  // namespace detail

/// A piece to be planned with others: what it is worked out from, and its sun. Both must outlive the search.
struct PieceInSun {
  const Workings& workings;
  Sun& sun;
};

/// The sequence of each piece, so that the paper on hand of one stack does for all. None where it does not.
///
/// Sheets are limited one after the other: first none, then those that the choice would take too much of, until it takes too much of
/// none. A choice that is best under fewer limits and keeps all of them is best under all.
///
/// @param pieces  each with a sequence of its own under the rules; all of the same stack
/// @param prefer  what all of them prefer
/// Throws: OutOfRange where it would take more than detail::most_joint_choices
/// Source: -
inline std::optional<std::vector<PieceOption>> best_together(const std::vector<PieceInSun>& pieces,
                                                             Objective prefer) {
  if (pieces.empty()) return std::vector<PieceOption>{};
  const std::vector<Sheet>& sheets = pieces.front().workings.stack.sheets;
  std::vector<std::size_t> shared;
  while (true) {
    std::vector<std::vector<PieceOption>> options;
    for (const PieceInSun& piece : pieces) {
      std::vector<PieceOption>& ways = options.emplace_back();
      for (Sequence& sequence : sequences_sharing(piece.workings, piece.sun, shared))
        ways.push_back(detail::with_paper(piece.workings, std::move(sequence)));
    }
    std::vector<std::int64_t> on_hand;
    for (const std::size_t sheet : shared) on_hand.push_back(micro_sheets(*sheets[sheet].on_hand));
    const auto choices = detail::joint_choices(options, prefer, shared, on_hand);
    if (choices.empty()) return std::nullopt;
    const std::size_t limited = shared.size();
    for (std::size_t sheet = 0; sheet < sheets.size(); ++sheet) {
      if (!sheets[sheet].on_hand ||
          std::find(shared.begin(), shared.end(), sheet) != shared.end()) {
        continue;
      }
      const bool over = std::any_of(choices.begin(), choices.end(), [&](const auto& choice) {
        std::int64_t uses = 0;
        for (std::size_t piece = 0; piece < pieces.size(); ++piece)
          uses += options[piece][choice[piece]].micro_sheets[sheet];
        return uses > micro_sheets(*sheets[sheet].on_hand);
      });
      if (over) shared.push_back(sheet);
    }
    if (shared.size() > limited) continue;
    std::vector<PieceOption> result;
    for (std::size_t piece = 0; piece < pieces.size(); ++piece)
      result.push_back(std::move(options[piece][choices.back()[piece]]));
    return result;
  }
}

}  // namespace levigate
