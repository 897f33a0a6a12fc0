// A bench sheet as a page: one file, to print on A4 or Letter and to read on a phone, in black and white.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/text/sheet_facts.hpp"
#include "levigate/text/work/flowed.hpp"
#include "levigate/text/work/markup.hpp"
#include "levigate/text/work/sheet_picture.hpp"

namespace levigate::inline v0 {

namespace detail {

/// No size of paper: the printer's is taken. Wide fonts are set as small as the usual one. On a phone each row of a table becomes a block.
inline constexpr std::string_view sheet_style = R"(@page { margin: 7mm 12mm; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 192mm; padding: 8px; color: #000; background: #fff;
  font: 9.4pt/1.24 "Liberation Sans", Arial, Helvetica, sans-serif; overflow-wrap: anywhere; font-size-adjust: 0.519; }
h1 { font-size: 14pt; margin: 0 0 0.6mm; }
h2 { font-size: 10.5pt; margin: 0; }
.line { display: flex; flex-wrap: wrap; column-gap: 3mm; align-items: baseline; }
.line p { margin: 0; }
.line p:last-child { margin-left: auto; }
p, ul { margin: 0 0 0.6mm; }
ul { padding-left: 4mm; }
header { display: flex; flex-wrap: wrap; column-gap: 8mm; justify-content: space-between;
  align-items: baseline; border-bottom: 1.5pt solid #000; margin-bottom: 1.6mm; padding-bottom: 0.6mm; }
header div { flex: 1 1 100%; }
.blank { display: inline-block; min-width: 15mm; border-bottom: 0.7pt solid #000; }
.wide { min-width: 28mm; }
.urgent { border: 2pt solid #000; padding: 0.6mm 2mm 0.6mm 6mm; margin: 0 0 1.6mm; font-weight: bold; }
.top { display: flex; gap: 6mm; }
.top > * { flex: 1 1 50%; min-width: 0; }
.top, .reading { font-size: 8.6pt; }
figure { margin: 0; }
svg { display: block; width: 100%; height: auto; max-width: 480px; }
svg text { font-size: 9.5px; }
svg .name { font-weight: bold; font-size: 10.5px; }
section { break-inside: avoid; border-top: 0.7pt solid #000; padding-top: 1mm; margin-top: 1.3mm; }
label { display: flex; align-items: baseline; gap: 1.5mm; }
input { appearance: none; flex: none; width: 4mm; height: 4mm; border: 1.2pt solid #000; margin: 0;
  align-self: center; background: #fff; }
input:checked { background: #000; }
table { width: 100%; table-layout: fixed; border-collapse: collapse; margin: 0.4mm 0 0.8mm; }
caption { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
th, td { text-align: left; font-weight: normal; padding: 0.35mm 0 0.35mm 2mm; vertical-align: baseline;
  border-bottom: 0.4pt solid #888; }
th:first-child { padding-left: 0; width: 22%; }
thead th { font-size: 8pt; padding-top: 0; }
tbody th, .strong { font-weight: bold; }
.what { width: 26%; }
.how { width: 30%; }
.number { text-align: right; }
@media print { body { padding: 0; max-width: none; } }
@media screen and (max-width: 600px) {
  body { font-size: 12pt; }
  .top, .reading { font-size: 11pt; }
  .top, table, tbody, tr, th { display: block; }
  thead { display: none; }
  tr { border-bottom: 0.7pt solid #000; padding: 1mm 0; }
  th, th:first-child, td { border: 0; padding: 0; }
  th:first-child, .what, .how { width: auto; }
  td { display: inline-block; margin-right: 4mm; }
  td.none { display: none; }
  td::before { content: attr(data-label) ": "; font-weight: normal; }
}
)";

/// Writes a bench sheet.
class SheetHtml {
 public:
  explicit SheetHtml(const BenchSheet& sheet) : sheet_(sheet) {}

  std::string text() && {
    text_ = fmt::format(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta "
        "name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>Bench sheet: "
        "{}</title>\n<style>\n{}</style>\n</head>\n<body>\n",
        escaped(sheet_.job), sheet_style);
    head();
    text_ += "<main>\n";
    top();
    if (!sheet_.no_plan.empty()) {
      text_ += "<section>\n" + paragraph(sheet_.no_plan) + "</section>\n";
    } else {
      before();
      for (std::size_t i = 0; i < sheet_.steps.size(); ++i) step(i);
      text_ += "<section>\n" + tick("Last look") + paragraph(sheet_.sun) + "</section>\n";
    }
    text_ +=
        "</main>\n<footer>" + paragraph("More: " + sheet_.more) + "</footer>\n</body>\n</html>\n";
    return std::move(text_);
  }

 private:
  static constexpr std::string_view blank = "<span class=\"blank\">&nbsp;</span>";

  static std::string paragraph(std::string_view text) {
    return text.empty() ? "" : "<p>" + escaped(text) + "</p>\n";
  }

  static std::string paragraph(const std::vector<std::string>& lines) {
    return paragraph(flowed(lines));
  }

  static std::string list(std::string_view style, const std::vector<std::string>& lines) {
    std::string text = fmt::format("<ul{}>\n", style);
    for (const std::string& line : lines) text += "<li>" + escaped(line) + "</li>\n";
    return lines.empty() ? "" : text + "</ul>\n";
  }

  /// A heading with a box to tick, on paper or on the screen.
  static std::string tick(std::string_view text) {
    return "<h2><label><input type=\"checkbox\">" + escaped(text) + "</label></h2>\n";
  }

  void head() {
    text_ += "<header>\n<h1>Bench sheet: " + escaped(sheet_.job) + "</h1>\n" +
             "<p>Date <span class=\"blank wide\">&nbsp;</span> Name <span class=\"blank "
             "wide\">&nbsp;</span></p>\n" +
             "<div>\n" + paragraph({sheet_.on, sheet_.goal}) + paragraph(sheet_.time) +
             (sheet_.lay_out.empty() ? "" : "<p><b>" + escaped(sheet_.lay_out) + "</b></p>\n") +
             "</div>\n</header>\n" + list(" class=\"urgent\"", sheet_.urgent);
  }

  /// The picture with how to read it, beside the cautions.
  void top() {
    text_ += "<div class=\"top\">\n<figure>\n" + SheetPicture(sheet_).text() +
             "<figcaption>Squares: zones by area. Bars: film to scale, surface at the right. Dark: "
             "what the steps take. Thick line: the budget ends." +
             (rounds_below() ? " Hatched: rounds below." : "") +
             "</figcaption>\n</figure>\n<div>\n<h2>Before you start</h2>\n" +
             list("", sheet_.cautions) + "</div>\n</div>\n" +
             list(" class=\"reading\"", sheet_.reading);
  }

  bool rounds_below() const {
    return std::any_of(sheet_.bars.begin(), sheet_.bars.end(),
                       [](const SheetBar& bar) { return bar.below_um > 0.0; });
  }

  /// One column: its title, and how its cells stand.
  struct Column {
    std::string title;
    std::string_view style = "";
  };

  /// Opens a table whose first column names the rows.
  void open_table(std::string_view caption, const std::vector<Column>& columns) {
    text_ += "<table>\n<caption>" + escaped(caption) + "</caption>\n<thead><tr>";
    for (const Column& column : columns)
      text_ += fmt::format("<th scope=\"col\" class=\"{}\">{}</th>", column.style,
                           escaped(column.title));
    text_ += "</tr></thead>\n<tbody>\n";
  }

  void cell(const Column& column, std::string_view markup) {
    text_ += fmt::format("<td class=\"{}{}\" data-label=\"{}\">{}</td>", column.style,
                         markup.empty() ? " none" : "", escaped(column.title),
                         markup.empty() ? "-" : markup);
  }

  void before() {
    if (sheet_.before.empty()) return;
    const std::vector<Column> columns{
        {"zone"}, {"what", "what"}, {"with"}, {"how", "how"}, {"time", "number"}};
    text_ += "<section>\n<h2>Before the first step</h2>\n";
    open_table("Work before the first step", columns);
    for (const SheetTask& task : sheet_.before) {
      text_ += "<tr><th scope=\"row\"><label><input type=\"checkbox\">" + escaped(task.zone) +
               "</label></th>";
      cell(columns[1], escaped(task.what));
      cell(columns[2], escaped(task.tool));
      cell(columns[3], escaped(task.how));
      cell(columns[4], escaped(task.time));
      text_ += "</tr>\n";
    }
    text_ += "</tbody>\n</table>\n" + paragraph(sheet_.before_done) + "</section>\n";
  }

  void step(std::size_t i) {
    const SheetStep& step = sheet_.steps[i];
    text_ += "<section>\n<div class=\"line\">\n" +
             tick(fmt::format("Step {} of {}: take {}", i + 1, sheet_.steps.size(), step.take)) +
             (step.beware.empty() ? "" : "<p><b>" + escaped(step.beware) + "</b></p>\n") +
             "<p>Took " + std::string(blank) + " min</p>\n</div>\n" +
             paragraph({step.way, step.look});
    const Column with{"with"}, kept_off{"take off", "number strong"},
        off{"take off, " + sheet_.film_unit, "number"}, time{"time", "number"},
        stop{"stop below, " + sheet_.film_unit, "number strong"}, risk{"risk", "number"},
        reads{"gauge reads", "number"};
    std::vector<Column> columns{{"zone"}, with, off, time};
    if (sheet_.gauge) columns.push_back(stop);
    if (sheet_.chances) columns.push_back(risk);
    if (sheet_.gauge) columns.push_back(reads);
    open_table(fmt::format("Step {}, zone by zone", i + 1), columns);
    for (const SheetZone& zone : step.zones) {
      text_ += "<tr><th scope=\"row\">" + escaped(zone.zone) + "</th>";
      cell(with, escaped(zone.tool));
      cell(zone.worked ? off : kept_off, escaped(zone.take_off));
      cell(time, escaped(zone.time));
      if (sheet_.gauge) cell(stop, escaped(zone.stop));
      if (sheet_.chances) cell(risk, escaped(zone.chance));
      if (sheet_.gauge) cell(reads, zone.worked ? blank : "");
      text_ += "</tr>\n";
    }
    text_ += "</tbody>\n</table>\n" +
             paragraph({flowed(step.notes), "Time: " + step.time + ".", step.upkeep}) +
             "</section>\n";
  }

  const BenchSheet& sheet_;
  std::string text_;
};

}  // namespace detail

}  // namespace levigate
