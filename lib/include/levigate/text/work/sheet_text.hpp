// A bench sheet as plain text.
#pragma once

#include <fmt/format.h>

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "levigate/text/columns.hpp"
#include "levigate/text/sheet_facts.hpp"
#include "levigate/text/work/flowed.hpp"
#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Writes a bench sheet.
class SheetText {
 public:
  explicit SheetText(const BenchSheet& sheet) : sheet_(sheet) {}

  std::string text() && {
    head();
    page_.say("", "Before you start:");
    list(sheet_.cautions);
    if (!sheet_.no_plan.empty()) {
      page_.blank();
      page_.say("", sheet_.no_plan);
    } else {
      list(sheet_.reading);
      before();
      for (std::size_t i = 0; i < sheet_.steps.size(); ++i) step(i);
      page_.blank();
      page_.say("[ ] ", "Last look. " + flowed(sheet_.sun));
    }
    page_.say("More: ", sheet_.more);
    return std::move(page_).text();
  }

 private:
  void head() {
    page_.rule('=');
    title();
    page_.say("", flowed({sheet_.on, sheet_.goal}));
    page_.say("", flowed({sheet_.time, sheet_.lay_out}));
    for (const std::string& line : sheet_.urgent) page_.say("  ! ", line);
  }

  /// The job, and blanks to fill in: beside it where they find room.
  void title() {
    const std::string name = "Bench sheet: " + clean(sheet_.job);
    const std::string blanks_to_fill = "Date __________  Name __________";
    const std::size_t used = columns(name) + columns(blanks_to_fill);
    if (used + 2 <= card_columns) {
      page_.lines("", {name + blanks(card_columns - used) + blanks_to_fill});
      return;
    }
    page_.say("", name);
    page_.lines("", {blanks_to_fill});
  }

  void list(const std::vector<std::string>& lines) {
    for (const std::string& line : lines) page_.say("  - ", line);
  }

  void before() {
    if (sheet_.before.empty()) return;
    page_.title("Before the first step. " + sheet_.before_done);
    for (const SheetTask& task : sheet_.before) {
      page_.say("[ ] ", fmt::format("{}: {}, with {}. {} Takes {}.", task.zone, task.what,
                                    task.tool, task.how, task.time));
    }
  }

  void step(std::size_t i) {
    const SheetStep& step = sheet_.steps[i];
    page_.blank();
    page_.say(fmt::format("[ ] Step {} of {}: ", i + 1, sheet_.steps.size()),
              flowed({"take " + step.take + ".", step.beware}));
    page_.say("  ", flowed({step.way, step.look}));
    zones(step);
    page_.say("  ", flowed({flowed(step.notes), "Time: " + step.time + ".", step.upkeep,
                            "Took ______ min."}));
  }

  /// The parts of a row that the sheet has.
  template <typename Cell>
  std::vector<Cell> parts(std::vector<Cell> first, Cell stop, Cell chance, Cell reads) const {
    if (sheet_.gauge) first.push_back(std::move(stop));
    if (sheet_.chances) first.push_back(std::move(chance));
    if (sheet_.gauge) first.push_back(std::move(reads));
    return first;
  }

  void zones(const SheetStep& step) {
    const auto or_dash = [](const std::string& text) { return text.empty() ? "-" : text; };
    std::vector<std::vector<std::string>> rows;
    for (const SheetZone& zone : step.zones) {
      rows.push_back(parts<std::string>(
          {shortened(zone.zone, 18), or_dash(shortened(zone.tool, 14)), zone.take_off,
           or_dash(zone.time)},
          or_dash(zone.stop), or_dash(zone.chance), zone.worked ? "______" : "-"));
    }
    const std::string off = "off, " + sheet_.film_unit, stop = "stop, " + sheet_.film_unit;
    page_.table(parts<Page::Column>({{"zone"}, {"with"}, {off, true}, {"time", true}}, {stop, true},
                                    {"risk", true}, {"gauge", true}),
                rows);
  }

  const BenchSheet& sheet_;
  Page page_;
};

}  // namespace detail

}  // namespace levigate
