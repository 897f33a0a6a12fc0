// What a card says of the numbers that a person typed: how film and orange peel were got, and how sure they are.
#pragma once

#include <fmt/format.h>

#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/film/film.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/surface/peel.hpp"
#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string how_text(FilmHow how) {
  switch (how) {
    case FilmHow::stated: return "as you stated";
    case FilmHow::gauge: return "gauge";
    case FilmHow::wet_comb: return "wet comb";
    case FilmHow::coats_counted: return "counted coats";
  }
  return "";
}

inline std::string how_text(PeelHow how) {
  switch (how) {
    case PeelHow::by_eye: return "eye";
    case PeelHow::comparison_plate: return "comparison plate";
    case PeelHow::profile: return "profile";
    case PeelHow::usual: return "usual";
  }
  return "";
}

/// How the film of each zone and its orange peel were got, and by how much they may be off.
inline void say_how_told(Page& page, const Plan& plan) {
  std::vector<std::vector<std::string>> rows;
  std::vector<std::string> levelled;
  std::vector<std::string> spreads;
  std::vector<std::string> waves;
  double usual_mm = 0;
  for (const PlannedZone& zone : plan.zones) {
    if (!zone.film_how) continue;
    const double se_um = zone.film_se_um.value_or(0.0);
    std::vector<std::string>& row = rows.emplace_back(std::vector<std::string>{
        shortened(zone.zone, 24), how_text(*zone.film_how),
        se_um > 0.0 ? fmt::format("{:.1f}", se_um) : "exact", "-", "-", "-"});
    if (zone.usual_spread) spreads.push_back(zone.zone);
    if (zone.usual_wavelength_mm) {
      waves.push_back(zone.zone);
      usual_mm = *zone.usual_wavelength_mm;
    }
    if (!zone.peel_how) continue;
    row[3] = fixed(zone.peel_um.value_or(zone.levelled_peel_um.value_or(0.0)), 0);
    row[4] = how_text(*zone.peel_how);
    row[5] = fmt::format("{:g}", zone.peel_factor.value_or(1.0));
    if (zone.levelled_peel_um) levelled.push_back(zone.zone);
  }
  if (rows.empty()) return;
  page.table({{"zone"},
              {"film by"},
              {"mean off by, um", true},
              {"peel, um", true},
              {"by"},
              {"off by factor", true}},
             rows);
  if (!spreads.empty())
    page.say("  ", fmt::format("The spread of the film from spot to spot is taken as usual: {}.",
                               list_text(spreads)));
  if (!waves.empty())
    page.say("  ",
             fmt::format("The crests of the peel are taken to be {:g} mm apart, as usual: {}.",
                         usual_mm, list_text(waves)));
  if (!levelled.empty())
    page.say("  ", fmt::format("Nobody has read the film of {} since a step levelled it.",
                               list_text(levelled)));
}

}  // namespace detail

}  // namespace levigate
