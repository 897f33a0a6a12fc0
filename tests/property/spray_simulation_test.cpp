// The chance that a sprayed film suffices, against draws of the film that the gun leaves.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "levigate/bench/spray.hpp"
#include "levigate/surface/levelling.hpp"
#include "levigate/surface/peel.hpp"
#include "unit/workshop.hpp"

namespace spray_simulation_test {
namespace {

using namespace workshop;

TEST(SpraySimulation, TheChanceIsThatOfDrawnFilms) {
  const Stack drawer = papers({"P400", "P600", "P800", "P1000", "P1200", "P1500", "P2000"});
  Job job = top(30);
  job.zones[0].area_cm2 = 200;
  job.rules.cut_through_limit = 0.1;
  job.zones.push_back({.name = "edge",
                       .area_cm2 = 30,
                       .block = block_named("foam pad"),
                       .film = Film{40, 6},
                       .edge = Edge{"top", 1.0}});
  const Spraying told = how_much_to_spray(Bench(job, drawer), {.dry_um_per_coat = 3});
  std::mt19937_64 engine(7);
  std::normal_distribution<double> normal;
  constexpr int draws = 60'000;
  for (std::size_t i = 0; i < told.zones.size(); ++i) {
    const SprayedZone& zone = told.zones[i];
    const double flat_um = 3.0 * zone.coats;
    const Zone& of = job.zones[i];
    const double critical_um =
        of.peel_wavelength_mm * of.block.pressure_kpa() / (std::acos(-1.0) * of.block.modulus_mpa);
    const auto levelled = [&](double peel_um) {
      return peel_um > 0
                 ? levelling_removal_um({peel_um, of.peel_wavelength_mm,
                                         critical_um > 0.5 * job.rules.residual_peel_um
                                             ? of.block.modulus_mpa
                                             : std::numeric_limits<double>::infinity(),
                                         of.block.pressure_kpa(), job.rules.residual_peel_um})
                 : 0.0;
    };
    int cut = 0;
    for (int draw = 0; draw < draws; ++draw) {
      const double mean_um = zone.film_um * (1 + 0.15 / std::sqrt(3.0) * normal(engine));
      const double peel_um = of.edge ? 0.0 : of.peel_um * std::pow(1.4, normal(engine));
      const double depth_um =
          std::max(0.0, zone.depth_um + levelled(peel_um) - levelled(of.edge ? 0.0 : of.peel_um));
      bool through = false;
      for (int spot = 0; spot < static_cast<int>(of.area_cm2) && !through; ++spot) {
        const double film_um = mean_um + 0.08 * flat_um * normal(engine);
        const double gone_um = depth_um * (1 + job.rules.removed_cv * normal(engine));
        through = film_um - gone_um < job.rules.reserve_um;
      }
      cut += through ? 1 : 0;
    }
    const double expected = 1 - zone.chance, drawn = static_cast<double>(cut) / draws;
    // Wilson's interval at four standard deviations: a normal one is too narrow where hardly a draw is cut through.
    const double wilson = 4 * std::sqrt(expected * (1 - expected) / draws + 4.0 / draws / draws);
    EXPECT_NEAR(drawn, expected, wilson + 1e-3 * expected) << zone.zone;
  }
  EXPECT_GT(1 - told.chance, 0.02) << "or the draws show nothing";
}

}  // namespace
}  // namespace spray_simulation_test
