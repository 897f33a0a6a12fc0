// The work behind text/spraying.hpp: defines what it declares.
#pragma once

#include <fmt/format.h>

#include <string>
#include <utility>
#include <vector>

#include "levigate/text/spraying.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/page.hpp"
#include "levigate/units.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string film_in_both(double um) {
  return fmt::format("{:.0f} um ({:.1f} mil)", um, um / um_from_mil(1.0));
}

inline std::string volume_in_both(double ml) {
  return fmt::format("{:.0f} ml ({:.1f} fl oz)", ml, ml / ml_from_fl_oz(1.0));
}

inline void say_zones(Page& page, const Spraying& spraying) {
  std::vector<std::vector<std::string>> rows;
  for (const SprayedZone& zone : spraying.zones) {
    rows.push_back({shortened(zone.zone, 18), fmt::format("{}", zone.coats),
                    film_in_both(zone.film_um), film_in_both(zone.wanted_um),
                    chance_text(1.0 - zone.chance), fmt::format("{:.0f}", zone.mix_ml)});
  }
  page.table({{"zone"},
              {"coats", true},
              {"dry film", true},
              {"at least", true},
              {"cut through", true},
              {"mix, ml", true}},
             rows);
}

/// What it all rests on.
inline void say_basis(Page& page, const Spraying& spraying) {
  const SprayOptions& how = spraying.how;
  const auto percent = [](double share) { return fmt::format("{:.0f} %", 100.0 * share); };
  page.title("It rests on these numbers:");
  page.say("  - ",
           fmt::format("{} of the paint's volume stays. The data sheet tells its own number.",
                       percent(*how.volume_solids)));
  if (how.thinner > 0.0)
    page.say("  - ", fmt::format("{:g} parts of thinner go to one part of paint.", how.thinner));
  page.say("  - ", fmt::format("The film varies from spot to spot by {} of its mean.",
                               percent(*how.film_cv)));
  page.say("  - ", fmt::format("{} of the spray lands on the work. The gun: {}.",
                               percent(*how.transfer_efficiency), how.gun));
  page.say("  - ", fmt::format("{} of the mix stays in cup and hose.", percent(*how.loss_share)));
  page.say("  - ", "Films that the job states are left aside here. Read a gauge after spraying.");
}

}  // namespace detail

LEVIGATE_WORK std::string spray_card(const Spraying& spraying) {
  using detail::Page;
  Page page;
  page.rule('=');
  page.say("What to spray: ", spraying.job);
  page.rule('=');
  if (spraying.zones.empty()) {
    page.say("", "No film is enough for a plan.");
    if (spraying.why) page.say("", sentence(*spraying.why));
  } else {
    const SprayOptions& how = spraying.how;
    page.say("", fmt::format("Mix {} of {} for the last round.",
                             detail::volume_in_both(spraying.mix_ml), spraying.coating));
    page.say("", fmt::format("A coat is {} wet and leaves {} dry.",
                             detail::film_in_both(spraying.wet_um_per_coat),
                             detail::film_in_both(*how.dry_um_per_coat)));
    page.say("", fmt::format("The chance that this film suffices everywhere is {:.2f} %.",
                             100.0 * spraying.chance));
    if (how.way_back) page.say("", "It keeps film for one way back.");
    page.blank();
    detail::say_zones(page, spraying);
    page.say("", "Spray edges with their flat. They hold less of each coat.");
    detail::say_basis(page, spraying);
  }
  page.title("Before you spray:");
  for (const Caution& caution : spraying.cautions) page.say("  - ", caution.text);
  return std::move(page).text();
}

}  // namespace levigate
