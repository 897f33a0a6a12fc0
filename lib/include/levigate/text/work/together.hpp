// The work behind text/together.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/text/together.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/phrases.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string joined_ids(const std::vector<std::string>& ids) {
  std::string text;
  for (const std::string& id : ids) text += (text.empty() ? "" : ", ") + shortened(id, 24);
  return text;
}

inline std::string shares_text(double sheets) { return fmt::format("{:.2f}", sheets); }

inline void say_pieces(Page& page, const Together& together) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < together.pieces.size(); ++i) {
    const Piece& piece = together.pieces[i];
    rows.push_back({fmt::format("{}", i + 1), shortened(piece.job, 24),
                    piece.has_plan ? duration_text(piece.minutes) : "-",
                    piece.has_plan ? duration_text(piece.alone_minutes) : "-",
                    piece.has_plan ? joined_ids(piece.sheets)
                    : piece.done   ? "meets its target already"
                                   : "no plan"});
  }
  page.title("The pieces, in the order of the work:");
  page.table({{"", true}, {"piece"}, {"time", true}, {"alone", true}, {"sheets"}}, rows);
  page.say("",
           "Times are at usual numbers, with going back for marks. Alone: with the whole drawer.");
  for (std::size_t i = 0; i < together.pieces.size(); ++i) {
    if (together.pieces[i].wait)
      page.say(fmt::format("Piece {}: ", i + 1), wait_text(*together.pieces[i].wait));
  }
  for (std::size_t i = 0; i < together.pieces.size(); ++i) {
    if (together.pieces[i].has_plan || together.pieces[i].done) continue;
    page.say(fmt::format("Piece {}: ", i + 1), sentence(*together.plans[i].why));
  }
}

/// What sharing changes.
inline void say_sharing(Page& page, const Together& together) {
  page.blank();
  if (!together.starves) {
    page.say(
        "", "Each piece can have its best plan. The paper on hand does for all, at usual numbers.");
    return;
  }
  page.say("", fmt::format("Piece {} starves first, where each takes its best plan in this order.",
                           *together.starves + 1));
  for (const PaperShort& one : together.lacks) {
    page.say("  ", fmt::format("It needs {} of {}; {} are left.", shares_text(one.needed),
                               shortened(one.sheet, 24), shares_text(one.on_hand)));
  }
  const bool all = std::all_of(together.pieces.begin(), together.pieces.end(),
                               [](const Piece& piece) { return piece.has_plan || piece.done; });
  if (all && !together.found) {
    page.say("",
             "No choice of plans makes the paper do for all. The plans here are the best of each; "
             "buy what they lack.");
    return;
  }
  std::size_t changed = 0;
  for (const Piece& piece : together.pieces) changed += piece.sheets != piece.alone_sheets ? 1 : 0;
  page.say("",
           fmt::format("Planned together, {} of {} pieces take other sheets, and the paper does.",
                       changed, together.pieces.size()));
  page.say("", fmt::format("All take {} together; {} with each its best plan.",
                           duration_text(together.minutes), duration_text(together.alone_minutes)));
}

inline void say_paper(Page& page, const Together& together) {
  if (together.paper.empty()) return;
  std::vector<Page::Column> titles{{"sheet"}, {"on hand", true}, {"used", true}, {"buy", true}};
  const bool draws = together.draws > 0;
  if (draws) titles.insert(titles.end(), {{"9 of 10", true}, {"buy", true}});
  titles.push_back({"alone: buy", true});
  std::vector<std::vector<std::string>> rows;
  for (const PaperOfAll& row : together.paper) {
    std::vector<std::string>& cells = rows.emplace_back();
    cells = {shortened(row.sheet, 24), row.on_hand ? shares_text(*row.on_hand) : "no limit",
             shares_text(row.sheets_used), fmt::format("{}", row.buy)};
    if (draws) {
      cells.push_back(shares_text(*row.sheets_enough));
      cells.push_back(fmt::format("{}", *row.enough_buy));
    }
    cells.push_back(fmt::format("{}", row.alone_buy));
  }
  page.title("Paper for all pieces, in sheets. Worn sheets go on to the next piece:");
  page.table(titles, rows);
  page.say("", "Used, and buy beside it: at usual numbers. Alone: for the best plan of each.");
  if (!draws) return;
  page.say("", "9 of 10: so many of each sheet are enough at once in 9 of 10 simulated runs.");
  page.say("",
           fmt::format("The simulation made {} runs (seed {}).", together.draws, together.seed));
  page.say("", fmt::format("The paper on hand does in {:.0f} of 100 runs.",
                           100.0 * together.suffices->share));
}

}  // namespace detail

LEVIGATE_WORK std::string together_card(const Together& together) {
  detail::Page page;
  page.rule('=');
  page.say("From one drawer: ", fmt::format("{} {}, best in {}", together.pieces.size(),
                                            together.pieces.size() == 1 ? "piece" : "pieces",
                                            to_string(together.prefer)));
  page.rule('=');
  detail::say_pieces(page, together);
  detail::say_sharing(page, together);
  detail::say_paper(page, together);
  page.title("Before you start:");
  std::set<std::string> said;
  for (const Plan& plan : together.plans) {
    for (const Caution& caution : plan.cautions) {
      if (said.insert(caution.text).second) page.say("  - ", caution.text);
    }
  }
  return std::move(page).text();
}

}  // namespace levigate
