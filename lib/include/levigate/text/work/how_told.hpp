// What a card says of the numbers that a person typed: how film and orange peel were got, and how sure they are.
#pragma once

#include <fmt/format.h>

#include <string>
#include <string_view>

#include "levigate/film/film.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/surface/peel.hpp"
#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

/// How the film of a zone and its orange peel were got, and by how much they may be off.
inline std::string how_told_text(const PlannedZone& zone) {
  const auto film = [](FilmHow how) -> std::string_view {
    switch (how) {
      case FilmHow::stated: return "is as you stated it";
      case FilmHow::gauge: return "was read with a gauge";
      case FilmHow::wet_comb: return "comes from a wet comb";
      case FilmHow::coats_counted: return "comes from counted coats";
    }
    return "";
  };
  const auto peel = [](PeelHow how) -> std::string_view {
    switch (how) {
      case PeelHow::by_eye: return "was judged by eye";
      case PeelHow::comparison_plate: return "was judged by a comparison plate";
      case PeelHow::profile: return "was read from a profile";
    }
    return "";
  };
  const double se_um = zone.film_se_um.value_or(0.0);
  std::string text =
      fmt::format("The film of {} {}. ", shortened(zone.zone, 24), film(*zone.film_how));
  text += se_um > 0.0 ? fmt::format("Its mean may be off by {:.1f} um.", se_um)
                      : "Its mean is taken as exact.";
  if (!zone.peel_how) return text;
  const double peel_um = zone.peel_um.value_or(zone.levelled_peel_um.value_or(0.0));
  text += fmt::format(" Its orange peel of {:.0f} um {}. That may be off by a factor of {:g}.",
                      peel_um, peel(*zone.peel_how), zone.peel_factor.value_or(1.0));
  return zone.levelled_peel_um ? text + " Nobody has read the film since a step levelled it."
                               : text;
}

}  // namespace detail

}  // namespace levigate
