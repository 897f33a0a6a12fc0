// The work behind text/way_back.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <utility>

#include "levigate/text/way_back.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/leg.hpp"
#include "levigate/recover/way_back.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/facts.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/text/work/say_findings.hpp"
#include "levigate/text/work/sentences_of_wheel.hpp"

namespace levigate::inline v0 {

namespace detail {

/// "0.3 um", "12 um": as exact as a shop can use it.
inline std::string off_text(double removal_um) {
  return fmt::format("{:.{}f} um", removal_um, removal_um < 9.95 ? 1 : 0);
}

/// "6 cm", "15 cm".
inline std::string patch_text(double patch_mm) { return fmt::format("{:.0f} cm", patch_mm / 10.0); }

/// "1.4 min", "25 min": as a clock is read between looks.
inline std::string sanded_text(double minutes) {
  return minutes < 9.95 ? fmt::format("{:.1f} min", minutes) : duration_text(minutes);
}

/// Beyond this share of marks gone, the card tells no more looks.
inline bool nearly_all(double gone_chance) { return gone_chance > 0.995; }

/// "After 4.0 min the mark is gone in 60 of 100 cases. After 8.0 min in 85, after 12 min in over 99."
inline std::string looks_text(const Leg& leg) {
  std::string text =
      fmt::format("After {} the mark is gone in {} cases.",
                  sanded_text(leg.looks[0].sanded_minutes), of_hundred(leg.looks[0].gone_chance));
  for (std::size_t i = 1; i < leg.looks.size(); ++i) {
    if (nearly_all(leg.looks[i - 1].gone_chance)) return i > 1 ? text + "." : text;
    const std::string share = of_hundred(leg.looks[i].gone_chance);
    text +=
        fmt::format("{} {} in {}", i == 1 ? " After" : ", after",
                    sanded_text(leg.looks[i].sanded_minutes), share.substr(0, share.find(" of")));
  }
  return leg.looks.size() > 1 ? text + "." : text;
}

/// Each leg but the first begins after a look, with the last sheet at hand.
inline void say_leg(Page& page, const Leg& leg, bool first) {
  const bool once = leg.looks.size() == 1;
  std::string text =
      fmt::format("{} {} {} {}", first || !leg.then.empty() ? "take" : "go on with", leg.sheet,
                  once ? "for" : "and look every", sanded_text(leg.every_minutes));
  for (std::size_t i = 0; i < leg.then.size(); ++i)
    text += (i > 0  ? ", "
             : once ? ". Then follow with "
                    : ". Before each look, follow with ") +
            leg.then[i];
  const Look& last = leg.looks.back();
  page.say(first ? "  First: " : "  If it still shows: ",
           text + ". " + looks_text(leg) +
               fmt::format(" {} is off at the mark{}. With changing and looking, {} takes {}.",
                           off_text(last.removal_um), once ? "" : " by the last look",
                           once ? "that" : "all of it", duration_text(last.minutes)));
}

/// Where to work, and what the other way would take.
inline std::string ground_text(const WayBack& way) {
  const Look& first = way.legs.front().looks.front();
  const Look& last = way.legs.back().looks.back();
  if (!first.patch_mm) {
    return "Work the whole zone." +
           (way.patch_minutes
                ? fmt::format(" A patch would take {} on average, the whole zone {}.",
                              duration_text(*way.patch_minutes), duration_text(way.zone_minutes))
                : "");
  }
  const std::string wide = patch_text(*first.patch_mm), wider = patch_text(*last.patch_mm);
  return fmt::format(
      "Work a patch {} wide{} and feather it out to its rim. At the mark, the hollow is {} deep at "
      "the first look{}. The patch takes {} on average, the whole zone {}.",
      wide, wide == wider ? "" : ", at the last look " + wider + ",", off_text(first.removal_um),
      &first == &last ? "" : ", " + off_text(last.removal_um) + " at the last",
      duration_text(*way.patch_minutes), duration_text(way.zone_minutes));
}

inline void say_legs(Page& page, const WayBack& way) {
  page.title("Where to go back to, in zone " + way.diagnosis.mark.zone + " alone:");
  page.say("  ", ground_text(way));
  for (std::size_t i = 0; i < way.legs.size(); ++i) {
    if (i > 0 && nearly_all(way.legs[i - 1].looks.back().gone_chance)) {
      page.say("  ", "Fewer than 1 of 100 such marks still show then.");
      break;
    }
    say_leg(page, way.legs[i], i == 0);
  }
  std::set<std::string_view> wheels;
  for (const Try& one : way.tries) {
    for (const TryStep& step : one.steps) {
      if (!step.wheel || !wheels.insert(step.sheet).second) continue;
      page.say("  ", fmt::format("At the wheel of {}, a pass takes {:.0f} s. {}.", step.sheet,
                                 std::ceil(step.wheel->pass_s),
                                 still_text(step.wheel->still.film_um, step.wheel->still.rise_k)));
    }
  }
  for (const Finding& finding : way.findings) {
    if (finding.kind != FindingKind::machine_strip) continue;
    page.say("  ", fmt::format("Use {} with the {}. Work edges by hand.", list_text(finding.sheets),
                               name_of(finding.about, "machine")));
  }
  const double expected = std::min(way.zone_minutes, way.patch_minutes.value_or(way.zone_minutes));
  std::string text = fmt::format(
      "Expect {} on average, further looks and another round included. Another round with all "
      "steps takes {} and the days of curing.",
      duration_text(expected), duration_text(way.round_minutes));
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
  detail::say_findings(page, way.findings);
  for (const Evidence& evidence : way.diagnosis.signs) page.say("  ", sentence(evidence));
  if (way.found) {
    detail::say_legs(page, way);
  } else {
    page.title("No way back. " + sentence(way) + ".");
    for (const Remedy remedy : way.remedies) page.say("  - ", sentence(remedy));
  }
  page.title(
      "Chances and patches rest on assumptions about missed spots, stray grain and the eye. "
      "Minutes "
      "are uncertain by a factor of 2 to 3 until you calibrate them. Where it matters, try one "
      "spot "
      "first.");
  page.title("Before you start:");
  for (const Caution& caution : way.cautions) page.say("  - ", caution.text);
  return std::move(page).text();
}

}  // namespace levigate
