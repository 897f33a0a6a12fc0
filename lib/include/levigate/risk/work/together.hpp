// The work behind risk/together.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "levigate/risk/together.hpp"

#include "levigate/bench/bench.hpp"
#include "levigate/bench/work/laid.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/plan/work/joint.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/plan_body.hpp"
#include "levigate/plan/work/plan_of_sequence.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/sunlight.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/share.hpp"
#include "levigate/risk/simulate_options.hpp"
#include "levigate/risk/work/crew.hpp"
#include "levigate/risk/work/simulate_body.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A piece on its bench, with all that it could do with the whole drawer.
struct PieceOnBench {
  const Bench& bench;
  const Workings& workings;
  Shared shared;
  std::vector<Sequence> found;
  std::optional<PieceOption> alone{};   ///< the best of them
  std::optional<PieceOption> chosen{};  ///< with the others

  explicit PieceOnBench(const Bench& of)
      : bench(of),
        workings(workings_now(of.laid())),
        shared(workings),
        found(sequences_of(workings, shared.sun)) {
    if (!found.empty()) alone = with_paper(workings, best(found, workings.job.prefer));
    chosen = alone;
  }
};

/// Whole sheets that lack, of micro-sheets.
inline std::int64_t whole_sheets(std::int64_t micro) {
  constexpr auto whole = static_cast<std::int64_t>(micro_per_sheet);
  return std::max<std::int64_t>(0, micro + whole - 1) / whole;
}

inline double minutes_of(const Sequence& sequence) {
  return static_cast<double>(sequence.expected_milliseconds()) / ms_per_minute;
}

inline std::vector<std::string> ids_of(const Stack& stack, const Sequence& sequence) {
  std::vector<std::string> result;
  for (const std::size_t sheet : sequence.sheets) result.push_back(stack.sheets[sheet].id);
  return result;
}

/// Tells which piece lacks paper first, where each takes its best plan.
inline void tell_starving(const std::deque<PieceOnBench>& pieces, const Stack& stack,
                          Together& result) {
  std::vector<std::optional<std::int64_t>> left;
  for (const Sheet& sheet : stack.sheets)
    left.push_back(sheet.on_hand ? std::optional(micro_sheets(*sheet.on_hand)) : std::nullopt);
  for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
    if (!pieces[piece].alone) continue;
    for (std::size_t i = 0; i < left.size(); ++i) {
      const std::int64_t uses = pieces[piece].alone->micro_sheets[i];
      if (!left[i]) continue;
      if (uses > *left[i]) {
        result.lacks.push_back({stack.sheets[i].id, static_cast<double>(uses) / micro_per_sheet,
                                static_cast<double>(*left[i]) / micro_per_sheet});
      }
      *left[i] -= uses;
    }
    if (result.lacks.empty()) continue;
    result.starves = piece;
    return;
  }
}

/// The seed of what is of a piece alone: the first has that of simulate().
inline std::uint64_t seed_of_piece(std::uint64_t seed, std::size_t piece) {
  constexpr std::uint64_t golden_ratio = 0x9E3779B97F4A7C15;
  return seed + golden_ratio * piece;
}

/// Sheets of the stack that all pieces use, draw by draw.
inline std::vector<std::vector<double>> paper_draws(const std::deque<PieceOnBench>& pieces,
                                                    const Stack& stack,
                                                    const SimulateOptions& options) {
  const auto draws = static_cast<std::size_t>(options.draws);
  std::vector<std::vector<double>> result(stack.sheets.size(), std::vector<double>(draws, 0.0));
  for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
    if (!pieces[piece].chosen) continue;
    const Sequence& sequence = pieces[piece].chosen->sequence;
    SimulateOptions whole = options;
    whole.progress = {};
    const std::vector<std::vector<double>> used =
        drawn_sheets(pieces[piece].bench, sequence.sheets, sequence.overcuts, whole,
                     seed_of_piece(options.seed, piece));
    for (std::size_t step = 0; step < used.size(); ++step) {
      for (std::size_t draw = 0; draw < draws; ++draw)
        result[sequence.sheets[step]][draw] += used[step][draw];
    }
  }
  return result;
}

/// Of the values of each column: that of the least rank which holds in all columns at once in nine rows of ten.
inline std::vector<double> enough_at_once(const std::vector<std::vector<double>>& columns) {
  const std::size_t rows = columns.front().size();
  std::vector<std::vector<double>> sorted = columns;
  std::vector<std::size_t> ranks(rows, 0);
  for (std::size_t column = 0; column < columns.size(); ++column) {
    std::vector<double>& values = sorted[column];
    std::sort(values.begin(), values.end());
    for (std::size_t row = 0; row < rows; ++row) {
      const auto at = std::lower_bound(values.begin(), values.end(), columns[column][row]);
      ranks[row] = std::max(ranks[row], static_cast<std::size_t>(at - values.begin()));
    }
  }
  std::sort(ranks.begin(), ranks.end());
  const std::size_t rank = ranks[(9 * rows + 9) / 10 - 1];
  std::vector<double> result;
  for (const std::vector<double>& values : sorted) result.push_back(values[rank]);
  return result;
}

/// Tells how much paper is enough.
inline void tell_draws(const std::vector<std::vector<double>>& columns, const Stack& stack,
                       const SimulateOptions& options, Together& result) {
  const std::vector<double> enough = enough_at_once(columns);
  for (PaperOfAll& row : result.paper) {
    const std::size_t sheet = sheet_index(stack, row.sheet);
    row.sheets_enough = enough[sheet];
    row.enough_buy =
        row.on_hand ? whole_sheets(micro_sheets(enough[sheet]) - micro_sheets(*row.on_hand)) : 0;
  }
  std::int64_t suffices = 0;
  for (std::size_t draw = 0; draw < columns.front().size(); ++draw) {
    bool all = true;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const std::optional<double>& on_hand = stack.sheets[i].on_hand;
      all = all && (!on_hand || columns[i][draw] <= *on_hand);
    }
    suffices += all ? 1 : 0;
  }
  result.draws = options.draws;
  result.suffices = exact_share(suffices, options.draws);
}

inline void tell_paper(const std::deque<PieceOnBench>& pieces, const Stack& stack,
                       Together& result) {
  for (std::size_t i = 0; i < stack.sheets.size(); ++i) {
    std::int64_t uses = 0, alone = 0;
    for (const PieceOnBench& piece : pieces) {
      if (!piece.alone) continue;
      uses += piece.chosen->micro_sheets[i];
      alone += piece.alone->micro_sheets[i];
    }
    if (uses == 0 && alone == 0) continue;
    const std::optional<double>& on_hand = stack.sheets[i].on_hand;
    const auto lacks = [&](std::int64_t micro) {
      return on_hand ? whole_sheets(micro - micro_sheets(*on_hand)) : 0;
    };
    result.paper.push_back({.sheet = stack.sheets[i].id,
                            .on_hand = on_hand,
                            .sheets_used = static_cast<double>(uses) / micro_per_sheet,
                            .buy = lacks(uses),
                            .alone_sheets_used = static_cast<double>(alone) / micro_per_sheet,
                            .alone_buy = lacks(alone)});
  }
}

/// Refuses jobs that cannot be planned together.
inline void require_pieces(const std::vector<Job>& jobs, const SimulateOptions& options) {
  constexpr auto where = "plan_together";
  require_range(static_cast<double>(jobs.size()), 1.0, static_cast<double>(most_pieces), "jobs", "",
                where);
  for (const Job& job : jobs) {
    if (job.prefer == jobs.front().prefer) continue;
    throw BadInput("jobs prefer different things: '" + jobs.front().name + "' " +
                   std::string(to_string(jobs.front().prefer)) + ", '" + job.name + "' " +
                   std::string(to_string(job.prefer)) + "; give all the same, in " + where);
  }
  if (options.draws == 0) return;
  require_range(static_cast<double>(options.draws), 10.0, 1e6, "draws", "", where);
  require_range(options.threads, 0.0, 1024.0, "threads", "", where);
}

}  // namespace detail

LEVIGATE_WORK Together plan_together(const std::vector<Job>& jobs, const Stack& stack,
                                     const std::optional<Shop>& shop,
                                     const SimulateOptions& options) {
  detail::require_pieces(jobs, options);
  std::deque<Bench> benches;
  std::deque<detail::PieceOnBench> pieces;
  for (const Job& job : jobs) pieces.emplace_back(benches.emplace_back(job, stack, shop));

  Together result{.prefer = jobs.front().prefer, .seed = options.seed};
  std::vector<PieceInSun> sharing;
  for (detail::PieceOnBench& piece : pieces) {
    if (piece.alone) sharing.push_back({piece.workings, piece.shared.sun});
  }
  const auto together = best_together(sharing, result.prefer);
  result.found = together.has_value();
  std::size_t next = 0;
  for (detail::PieceOnBench& piece : pieces) {
    if (piece.alone && together) piece.chosen = (*together)[next++];
    Piece& row = result.pieces.emplace_back();
    row.job = piece.workings.job.name;
    row.has_plan = piece.alone.has_value();
    result.plans.push_back(detail::plan_choosing(piece.workings, piece.shared, piece.found,
                                                 piece.chosen ? &piece.chosen->sequence : nullptr));
    row.wait = result.plans.back().wait;
    if (!piece.alone) {
      row.done = result.plans.back().why->blocked_by == Blocker::done;
      result.found = result.found && row.done;
      continue;
    }
    const Sequence &chosen = piece.chosen->sequence, &alone = piece.alone->sequence;
    row.minutes = detail::minutes_of(chosen);
    row.alone_minutes = detail::minutes_of(alone);
    row.sheets = detail::ids_of(stack, chosen);
    row.alone_sheets = detail::ids_of(stack, alone);
    result.minutes += row.minutes;
    result.alone_minutes += row.alone_minutes;
    result.cost += static_cast<double>(chosen.cost) / detail::cost_per_currency;
    result.alone_cost += static_cast<double>(alone.cost) / detail::cost_per_currency;
  }
  detail::tell_starving(pieces, stack, result);
  detail::tell_paper(pieces, stack, result);
  if (options.draws > 0 && !result.paper.empty())
    detail::tell_draws(detail::paper_draws(pieces, stack, options), stack, options, result);
  return result;
}

}  // namespace levigate
