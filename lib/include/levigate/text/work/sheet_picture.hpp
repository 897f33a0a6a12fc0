// The picture of a bench sheet, as SVG: each zone as a square by its area, its film as a bar from the bottom to the surface, with
// where the budget ends and what each step takes. It is drawn for a phone's width, in black, white and greys.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

#include "levigate/text/sheet_facts.hpp"
#include "levigate/text/work/markup.hpp"
#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Draws the zones of a sheet. All lengths are pixels of the picture.
class SheetPicture {
 public:
  explicit SheetPicture(const BenchSheet& sheet) : sheet_(sheet), steps_(sheet.steps.size()) {
    for (const SheetBar& bar : sheet.bars) {
      most_area_cm2_ = std::max(most_area_cm2_, bar.area_cm2);
      most_um_ = std::max(most_um_, bar.film_um.value_or(0.0) + bar.below_um);
    }
  }

  std::string text() && {
    for (const SheetBar& bar : sheet_.bars) zone(bar);
    return fmt::format(
        "<svg viewBox=\"0 0 {:.0f} {:.0f}\" role=\"img\" aria-labelledby=\"picture-title "
        "picture-words\">\n<title id=\"picture-title\">The zones by area, and their film to "
        "scale</title>\n<desc id=\"picture-words\">{}</desc>\n"
        "<defs><pattern id=\"below\" width=\"4\" height=\"4\" patternUnits=\"userSpaceOnUse\">"
        "<path d=\"M0 4L4 0\" stroke=\"#000\" stroke-width=\"0.7\"/></pattern></defs>\n{}</svg>\n",
        width, y_, words_, drawn_);
  }

 private:
  static constexpr double width = 360, left = 44, right = 354, square = 36, bar_height = 12;

  double x_of(double level_um) const {
    return left + (right - left) * (most_um_ > 0.0 ? level_um / most_um_ : 0.0);
  }

  void rectangle(double x, double y, double wide, double high, std::string_view fill,
                 std::string_view stroke = "none") {
    drawn_ += fmt::format(
        "<rect x=\"{:.2f}\" y=\"{:.2f}\" width=\"{:.2f}\" height=\"{:.2f}\" fill=\"{}\" "
        "stroke=\"{}\"/>\n",
        x, y, std::max(0.0, wide), high, fill, stroke);
  }

  void write(double x, double y, std::string_view anchor, std::string_view style,
             std::string_view text) {
    drawn_ += fmt::format(
        "<text x=\"{:.2f}\" y=\"{:.2f}\" text-anchor=\"{}\" class=\"{}\">{}"
        "</text>\n",
        x, y, anchor, style, escaped(text));
  }

  void zone(const SheetBar& bar) {
    constexpr double name_height = 12, words_height = 12, gap = 7;
    constexpr std::size_t name_columns = 32, words_columns = 62;
    const double side = square * std::sqrt(bar.area_cm2 / most_area_cm2_);
    rectangle(2, y_ + 1, side, side, "#fff", "#000");
    write(left, y_ + 9, "start", "name", shortened(bar.zone, name_columns) + ", " + bar.area);
    const double top = y_ + name_height;
    if (bar.film_um) film(bar, top);
    const std::string words = bar.film + (bar.stop.empty() ? "" : "; " + bar.stop);
    write(left, top + (bar.film_um ? bar_height : 0.0) + 10, "start", "words",
          shortened(words, words_columns));
    words_ += escaped(bar.zone + ": " + bar.area + ", " + words +
                      (bar.takes.empty() ? "" : ". " + bar.takes) + ". ");
    y_ += std::max(side, name_height + bar_height + words_height) + gap;
  }

  void film(const SheetBar& bar, double top) {
    const double surface_um = bar.below_um + *bar.film_um;
    double level_um = surface_um;
    for (const double take_um : bar.takes_um) level_um -= take_um;
    rectangle(x_of(0), top, x_of(bar.below_um) - x_of(0), bar_height, "url(#below)", "#000");
    const double stays_um = std::min(bar.stop_um.value_or(bar.below_um), level_um);
    rectangle(x_of(bar.below_um), top, x_of(stays_um) - x_of(bar.below_um), bar_height, "#ddd");
    takes(bar, surface_um, top);
    rectangle(x_of(0), top, x_of(surface_um) - x_of(0), bar_height, "none", "#000");
    if (bar.stop_um) {
      const double x = x_of(std::max(0.0, *bar.stop_um));
      drawn_ += fmt::format(
          "<path d=\"M{:.2f} {:.2f}V{:.2f}\" stroke=\"#000\" "
          "stroke-width=\"2.5\"/>\n",
          x, top - 3, top + bar_height + 1);
    }
  }

  /// What each step takes, from the surface down, dark and less dark in turn; numbers of steps that are too narrow stand together.
  void takes(const SheetBar& bar, double surface_um, double top) {
    constexpr double room = 9;
    double level_um = surface_um, from_x = x_of(surface_um);
    std::size_t from = 0;
    for (std::size_t i = 0; i < bar.takes_um.size(); ++i) {
      const double upper = x_of(level_um);
      level_um -= bar.takes_um[i];
      const double lower = x_of(level_um);
      rectangle(lower, top, upper - lower, bar_height, i % 2 == 0 ? "#444" : "#999");
      const bool last = i + 1 == bar.takes_um.size();
      if (upper - lower < room && !last) continue;
      if (upper - lower >= room && from < i) {  // those before it had no room
        number(from, i - 1, upper, from_x, top);
        from = i;
        from_x = upper;
      }
      number(from, i, lower, from_x, top);
      from = i + 1;
      from_x = lower;
    }
  }

  void number(std::size_t first, std::size_t last, double lower, double upper, double top) {
    if (upper - lower <= 0.0) return;
    constexpr double letters = 24;  // of numbers that have no room above their own part of a bar
    if (first < last && last + 1 == steps_ && first == 0 && upper + letters <= width) {
      write(upper + 3, top + bar_height - 2, "start", "words", fmt::format("1-{}", last + 1));
    } else if (first == last) {
      write(0.5 * (lower + upper), top - 2, "middle", "words", fmt::format("{}", first + 1));
    } else {
      write(upper, top - 2, "end", "words", fmt::format("{}-{}", first + 1, last + 1));
    }
  }

  const BenchSheet& sheet_;
  double most_area_cm2_ = 1;
  double most_um_ = 0;
  double y_ = 0;
  std::size_t steps_;
  std::string drawn_;
  std::string words_;
};

}  // namespace detail

}  // namespace levigate
