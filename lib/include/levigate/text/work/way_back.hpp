// The work behind text/way_back.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

#include "levigate/text/way_back.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/way_back.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/facts.hpp"
#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

/// "0.3 um", "12 um": as exact as a shop can use it.
inline std::string off_text(double removal_um) {
  return fmt::format("{:.{}f} um", removal_um, removal_um < 9.95 ? 1 : 0);
}

inline void say_try(Page& page, const Try& one, std::string_view lead) {
  std::string text =
      fmt::format("go back to {} and take {} off ({})", one.steps.front().sheet,
                  off_text(one.steps.front().removal_um), duration_text(one.steps.front().minutes));
  for (std::size_t i = 1; i < one.steps.size(); ++i) {
    text += fmt::format("{}{} ({})", i == 1 ? ". Then " : ", ", one.steps[i].sheet,
                        duration_text(one.steps[i].minutes));
  }
  page.say(lead,
           text + fmt::format(
                      ". In all {} with changing and looking. The mark is then gone in {} cases.",
                      duration_text(one.minutes), of_hundred(one.gone_chance)));
}

inline void say_tries(Page& page, const WayBack& way) {
  page.title("Where to go back to, in zone " + way.diagnosis.mark.zone + " alone:");
  constexpr std::size_t most = 4;
  const std::size_t told = std::min(most, way.tries.size());
  for (std::size_t i = 0; i < told; ++i) {
    say_try(page, way.tries[i], i == 0 ? "  First: " : "  If it still shows: ");
  }
  if (told < way.tries.size())
    page.say("  ", fmt::format("There are {} tries in all.", way.tries.size()));
  std::string text = fmt::format(
      "Expect {} on average, further tries and another round included. Another round with all "
      "steps takes {} and the days of curing.",
      duration_text(way.expected_minutes), duration_text(way.round_minutes));
  if (way.film_um) text += fmt::format(" The film here allows {} more.", off_text(*way.film_um));
  page.say("  ", text);
}

}  // namespace detail

LEVIGATE_WORK std::string way_back_card(const WayBack& way) {
  using detail::Page;
  Page page;
  page.rule('=');
  page.say("After the last step: ",
           std::string(to_string(way.diagnosis.mark.kind)) + " in zone " + way.diagnosis.mark.zone);
  page.rule('=');
  for (const Evidence& evidence : way.diagnosis.signs) page.say("  ", sentence(evidence));
  if (way.found) {
    detail::say_tries(page, way);
  } else {
    page.title("No way back. " + sentence(way) + ".");
    for (const Remedy remedy : way.remedies) page.say("  - ", sentence(remedy));
  }
  page.title(
      "Chances rest on assumptions about missed spots, stray grain and the eye. Minutes are "
      "uncertain by a factor of 2 to 3 until you calibrate them. Where it matters, try one spot "
      "first.");
  page.title("Before you start:");
  for (const Caution& caution : way.cautions) page.say("  - ", caution.text);
  return std::move(page).text();
}

}  // namespace levigate
