// The work behind text/buying.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/text/buying.hpp"

#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/surface/inspection_table.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Writes the parts of a list to buy by.
class BuyingCard {
 public:
  explicit BuyingCard(const Buying& buying) : buying_(buying) {}

  std::string text() && {
    page_.rule('=');
    page_.say("To buy: ", buying_.job);
    page_.rule('=');
    sheets();
    offers();
    for (const OpenLabel& label : buying_.labels) open(label);
    return std::move(page_).text();
  }

 private:
  void sheets() {
    if (!buying_.found) {
      page_.say("", "The sheets whose labels are settled give no plan.");
      if (buying_.why) page_.say("  ", sentence(*buying_.why));
      return;
    }
    std::vector<std::vector<std::string>> rows;
    for (const SheetsNeeded& one : buying_.sheets) {
      rows.push_back({one.sheet, shortened(one.label, 16), shortened(one.maker, 16),
                      fmt::format("{:.1f}", one.usual), fmt::format("{:.0f}", one.pieces),
                      one.on_hand ? fmt::format("{:g}", *one.on_hand) : "no limit",
                      one.buy > 0.0 ? fmt::format("{:.0f}", one.buy) : "-"});
    }
    page_.table({{"sheet"},
                 {"label"},
                 {"maker"},
                 {"usual", true},
                 {"enough", true},
                 {"on hand", true},
                 {"buy", true}},
                rows);
    page_.say("  ", fmt::format("These suffice in {:.0f} of 100 simulated runs, of {} (seed {}).",
                                std::floor(100.0 * buying_.enough), buying_.draws, buying_.seed));
  }

  void offers() {
    page_.title(fmt::format("One kind more, of {} tried:", buying_.tried));
    if (buying_.offers.empty()) {
      page_.say("  ", buying_.found
                          ? "None of them shortens the day by more than 3 %. That counts as "
                            "equal."
                          : "None of them alone gives a plan.");
      return;
    }
    for (const Offer& offer : buying_.offers) page_.say("  - ", offer_text(offer));
    page_.say("  ", "Less than 3 % of the day counts as equal.");
  }

  std::string offer_text(const Offer& offer) const {
    const std::string kind = fmt::format("{:.0f} {} of {}{} on {} ({})", offer.sheets,
                                         offer.sheets == 1.0 ? "sheet" : "sheets", offer.label,
                                         offer.maker.empty() ? "" : " by " + offer.maker,
                                         offer.backing, size_text(offer.size_um));
    const std::string gives = buying_.minutes > 0.0 ? duration_text(offer.less_minutes) + " less"
                                                    : "there is then a plan";
    return kind + ": " + gives + ". Sequence: " + list_text(offer.sequence, ", ") + ".";
  }

  void open(const OpenLabel& label) {
    page_.title(fmt::format("{} is printed {}{}:", label.sheet, clean(label.printed),
                            label.known ? "" : ", which no system has"));
    std::vector<std::vector<std::string>> rows;
    for (const Meaning& one : label.meanings) {
      rows.push_back(
          {one.label, size_text(one.size_um), one.width_um ? fixed(*one.width_um, 1) + " um" : "-",
           one.found ? duration_text(one.minutes) : "no plan", list_text(one.sequence, ", ")});
    }
    page_.table({{"meaning"},
                 {"grain", true},
                 {"scratch", true},
                 {"time with going back", true},
                 {"sheets"}},
                rows);
    if (!label.matters) {
      page_.say("  ", "What it means changes nothing.");
      return;
    }
    page_.say("  ", "What it means decides the plan. Find it out before you start.");
    if (label.known) page_.say("  ", marks_text(label));
    page_.say("  ", scratch_test_text(label));
  }

  /// What a maker prints beside the number.
  static std::string marks_text(const OpenLabel& label) {
    const auto any = [&](std::string_view start) {
      return std::any_of(label.meanings.begin(), label.meanings.end(),
                         [&](const Meaning& one) { return one.label.starts_with(start); });
    };
    std::vector<std::string> marks;
    if (any("P")) marks.push_back("P for FEPA P");
    if (any("JIS")) marks.push_back("# or J for JIS");
    if (any("CAMI")) marks.push_back("CAMI or ANSI for CAMI");
    if (any("F")) marks.push_back("F for FEPA F");
    if (marks.size() < 2) return "Ask the maker for the grain size.";
    return "Look at the maker's other sheets and the packet: " + list_text(marks) +
           ". Or ask the maker for the grain size.";
  }

  /// Scratches under a loupe tell sizes apart that differ by more than the reading does, and that its scale shows: see loupe_log_sd.
  static std::string scratch_test_text(const OpenLabel& label) {
    constexpr double line_um = 10.0;  // of the scale; read to that share of a line
    const double log_sd = inspection_table[0].loupe_log_sd.value;
    const Meaning& coarse = label.meanings.front();
    const Meaning& fine = label.meanings.back();
    if (!coarse.width_um || !fine.width_um || *coarse.width_um < log_sd * line_um ||
        *coarse.width_um < std::exp(2.0 * log_sd) * *fine.width_um)
      return "Their scratches are too fine or too much alike for a loupe.";
    return fmt::format(
        "Or sand a scrap of this coat and read the widest scratches with a loupe. They are {:.1f} "
        "um "
        "wide with {}, {:.1f} um with {}.",
        *coarse.width_um, coarse.label, *fine.width_um, fine.label);
  }

  const Buying& buying_;
  Page page_;
};

}  // namespace detail

LEVIGATE_WORK std::string buying_card(const Buying& buying) {
  return detail::BuyingCard(buying).text();
}

}  // namespace levigate
