// How much to spray: the coats that it says make a plan, and one less does not.
#include "levigate/bench/spray.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "levigate/film/edge.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/io/json.hpp"
#include "levigate/text/card.hpp"
#include "unit/workshop.hpp"

namespace spray_test {
namespace {

using namespace workshop;
using testing::HasSubstr;

const Stack drawer = papers({"P400", "P600", "P800", "P1000", "P1200", "P1500", "P2000"});

/// A top with its edge, and a front with less peel.
Job clock_case() {
  Job job = top(35);
  job.zones.push_back({.name = "front",
                       .area_cm2 = 300,
                       .block = block_named("cork block"),
                       .film = Film{80, 6},
                       .peel_um = 20,
                       .peel_wavelength_mm = 3});
  job.zones.push_back({.name = "edge",
                       .area_cm2 = 40,
                       .block = block_named("foam pad"),
                       .film = Film{40, 6},
                       .edge = Edge{"top", 2.0}});
  return job;
}

/// The job with so many coats on each zone, told as a person would.
Job coated(Job job, const Spraying& told, const std::string& one_less = "") {
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    const SprayedZone& zone = told.zones[i];
    const std::string flat = zone.edge_of.empty() ? zone.zone : zone.edge_of;
    const int coats = zone.coats - (flat == one_less ? 1 : 0);
    const Film film =
        film_from_coats(coats, *told.how.dry_um_per_coat, 0.08 * coats * *told.how.dry_um_per_coat);
    job.zones[i].film = zone.edge_of.empty() ? film : edge_film(film, 2.0);
  }
  return job;
}

TEST(Spray, ItsCoatsMakeAPlanAndOneLessDoesNot) {
  for (const double dry_um_per_coat : {12.0, 25.0, 40.0}) {
    for (const Objective prefer : {Objective::minutes, Objective::film, Objective::cost}) {
      Job job = clock_case();
      job.prefer = prefer;
      const Spraying told =
          how_much_to_spray(Bench(job, drawer), {.dry_um_per_coat = dry_um_per_coat});
      ASSERT_EQ(told.zones.size(), 3U);
      const Plan enough = plan(coated(job, told), drawer);
      ASSERT_TRUE(enough.found) << sentence(*enough.why);
      double kept = 1;
      for (std::size_t i = 0; i < told.zones.size(); ++i) {
        const SprayedZone& zone = told.zones[i];
        const double last = enough.steps.back().zones[i].cut_through.value();
        EXPECT_NEAR(1 - zone.chance, last, 2e-3 * last + 1e-12) << zone.zone;
        EXPECT_GE(zone.chance, 1 - job.rules.cut_through_limit) << zone.zone;
        EXPECT_GE(zone.film_um, zone.wanted_um) << zone.zone;
        kept *= zone.chance;
      }
      EXPECT_DOUBLE_EQ(told.chance, kept);
      for (const char* flat : {"top", "front"}) {
        const auto is_it = [&](const SprayedZone& z) { return z.zone == flat; };
        if (std::find_if(told.zones.begin(), told.zones.end(), is_it)->coats == 1) continue;
        const Job less = coated(job, told, flat);
        bool untouchable = false;
        const Workings thinner = workings(less, drawer);
        for (const auto& budget_um : thinner.budget_um) untouchable |= !(*budget_um > 1e-6);
        EXPECT_TRUE(untouchable || !plan(less, drawer).found) << flat << " " << dry_um_per_coat;
      }
    }
  }
}

TEST(Spray, FilmsThatTheJobStatesAreLeftAside) {
  Job thick = clock_case();
  for (Zone& zone : thick.zones) zone.film = Film{300, 40, 20};
  EXPECT_EQ(how_much_to_spray(Bench(thick, drawer)),
            how_much_to_spray(Bench(clock_case(), drawer)));
}

TEST(Spray, TheUsersNumbersStandInPlaceOfTheUsual) {
  const Bench bench(clock_case(), drawer);
  const Spraying usual = how_much_to_spray(bench);
  EXPECT_EQ(usual.how.volume_solids, 0.45);
  EXPECT_EQ(usual.how.dry_um_per_coat, 40.0);
  EXPECT_EQ(usual.how.transfer_efficiency, 0.6);
  EXPECT_NEAR(usual.wet_um_per_coat, 40 / 0.45, 1e-12);
  const Spraying own = how_much_to_spray(
      bench, {.volume_solids = 0.9, .transfer_efficiency = 0.3, .loss_share = 0.1});
  EXPECT_NEAR(own.mix_ml, usual.mix_ml, 1e-9 * usual.mix_ml);
  // A film that varies more from spot to spot must be thicker on the mean: the plan would refuse the same coats.
  const Spraying uneven = how_much_to_spray(bench, {.film_cv = 0.12});
  EXPECT_EQ(usual.how.film_cv, 0.08);
  EXPECT_GT(uneven.zones[0].wanted_um, usual.zones[0].wanted_um);
  const Spraying thin = how_much_to_spray(bench, {.thinner = 0.5});
  EXPECT_NEAR(thin.mix_ml, 1.5 * usual.mix_ml, 1e-9 * usual.mix_ml);
  EXPECT_NEAR(thin.wet_um_per_coat, 60 / 0.45, 1e-12);
}

TEST(Spray, KeepsFilmForOneWayBackIfAsked) {
  const Bench bench(clock_case(), drawer);
  const Spraying once = how_much_to_spray(bench, {.dry_um_per_coat = 1});
  const Spraying twice = how_much_to_spray(bench, {.dry_um_per_coat = 1, .way_back = true});
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(once.zones[i].way_back_um, 0);
    // A plan of one step leaves the edge as sprayed.
    EXPECT_EQ(twice.zones[i].way_back_um > 0, twice.zones[i].depth_um > 0) << twice.zones[i].zone;
    if (!bench.job().zones[i].edge) {
      EXPECT_GT(twice.zones[i].way_back_um, 0);
    }
    EXPECT_GE(twice.zones[i].coats, once.zones[i].coats);
    EXPECT_GE(twice.zones[i].chance, 1 - bench.job().rules.cut_through_limit);
  }
  EXPECT_GT(twice.mix_ml, once.mix_ml);
}

TEST(Spray, SaysWhyNoFilmIsEnough) {
  Stack empty_drawer = drawer;
  for (Sheet& sheet : empty_drawer.sheets) sheet.on_hand = 0;
  const Spraying none = how_much_to_spray(Bench(clock_case(), empty_drawer));
  EXPECT_TRUE(none.zones.empty());
  EXPECT_EQ(none.why.value().blocked_by, Blocker::paper);
  EXPECT_THAT(flowing(spray_card(none)), HasSubstr("No film is enough for a plan."));
}

TEST(Spray, RefusesWhatItCannotKnow) {
  const Bench bench(clock_case(), drawer);
  EXPECT_THROW(how_much_to_spray(bench, {.gun = "brush"}), BadInput);
  EXPECT_THROW(how_much_to_spray(bench, {.volume_solids = 45.0}), OutOfRange);
  EXPECT_THROW(how_much_to_spray(bench, {.thinner = std::nan("")}), OutOfRange);
  Job own = clock_case();
  own.coating.name = "my own";
  EXPECT_THROW(how_much_to_spray(Bench(own, drawer)), BadInput);
  EXPECT_FALSE(how_much_to_spray(Bench(own, drawer), {.volume_solids = 0.4, .dry_um_per_coat = 30})
                   .zones.empty());
  Job solid = top(0);
  solid.coating = coating_named("acrylic sheet");
  solid.zones[0].film.reset();
  EXPECT_THROW(how_much_to_spray(Bench(solid, drawer)), BadInput);
}

TEST(Spray, ReadsBackAndTellsBothUnits) {
  const Spraying told = how_much_to_spray(Bench(clock_case(), drawer));
  EXPECT_EQ(spraying_from_json(to_json(told)), told);
  const std::string card = flowing(spray_card(told));
  EXPECT_THAT(card, HasSubstr("A coat is 89 um (3.5 mil) wet and leaves 40 um (1.6 mil) dry."));
  EXPECT_THAT(card, HasSubstr(" fl oz) of two-part urethane for the last round."));
  const auto first = card.find("isocyanates");
  EXPECT_NE(first, std::string::npos);
  EXPECT_EQ(card.find("isocyanates", first + 1), std::string::npos);
}

}  // namespace
}  // namespace spray_test
