#include "levigate/film/rounds.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

#include "levigate/film/agreement.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/text/sentences.hpp"

namespace rounds_test {
namespace {

using namespace levigate;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::ThrowsMessage;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

Coat dry_coat(double dry_um, double applied_h) {
  return {.dry_um = dry_um, .applied_h = applied_h};
}

TEST(Rounds, CoatsWithinTheWindowFuse) {
  // 12 h from the second coat to the third is the window itself; 12.5 h to the fourth is beyond.
  const std::vector<Coat> coats{dry_coat(30, 0), dry_coat(35, 2), dry_coat(40, 14),
                                dry_coat(25, 26.5), dry_coat(20, 27)};
  EXPECT_THAT(rounds(coats, 12.0),
              ElementsAre(Round{3, 105.0, 0.0, 14.0}, Round{2, 45.0, 26.5, 27.0}));
  EXPECT_EQ(rounds(coats, 0.0).size(), 5u);
  EXPECT_EQ(rounds(coats, 1e6).size(), 1u);
}

TEST(Rounds, DryFilmOfWetThinnedAndShrinkingCoats) {
  const std::vector<Coat> coats{
      {.wet_um = 100, .volume_solids = 0.3, .thinner = 0.25},
      {.wet_um = 161, .volume_solids = 0.62},
      {.wet_um = 100, .volume_solids = 0.3, .thinner = 0.25, .shrink = 0.1},
      {.dry_um = 50.0, .shrink = 0.1}};
  EXPECT_NEAR(rounds(coats, 1.0).front().dry_um, 24.0 + 99.82 + 21.6 + 45.0, 1e-12);
}

TEST(Rounds, TheLastIsTheBudget) {
  const std::vector<Round> all{{3, 105.0, 0.0, 14.0}, {2, 45.0, 26.5, 27.0}};
  const Film film = film_of_last_round(all, 6.0, 2.0);
  EXPECT_EQ(film.mean_um, 45.0);
  EXPECT_EQ(film.sd_um, 6.0);
  EXPECT_EQ(film.mean_se_um, 2.0);
  EXPECT_EQ(film.readings, 0u);
  EXPECT_THROW(film_of_last_round({}, 6.0), BadInput);
  EXPECT_THROW(film_of_last_round(all, -1.0), OutOfRange);
  EXPECT_THROW(film_of_last_round(all, 6.0, nan), OutOfRange);
}

TEST(Rounds, WhatADepthLeaves) {
  const std::vector<Round> all{{3, 105.0, 0.0, 14.0}, {2, 45.0, 26.5, 27.0}};
  const RoundLeft some = witness_depth(all, 36.0);
  EXPECT_EQ(some.left_um, 9.0);
  EXPECT_DOUBLE_EQ(some.left_share, 0.2);
  EXPECT_FALSE(some.enters_below);
  EXPECT_EQ(some.in_round, 1u);
  EXPECT_FALSE(witness_depth(all, 45.0).enters_below);
  const RoundLeft none = witness_depth(all, 45.5);
  EXPECT_EQ(none.left_um, 0.0);
  EXPECT_TRUE(none.enters_below);
  EXPECT_EQ(none.in_round, 0u);
  EXPECT_EQ(witness_depth(all, 150.0).in_round, 0u);
  EXPECT_EQ(witness_depth(all, infinity).in_round, 2u);
  EXPECT_THROW(witness_depth({}, 1.0), BadInput);
  EXPECT_THROW(witness_depth(all, -1.0), OutOfRange);
  EXPECT_THROW(witness_depth(all, nan), OutOfRange);
}

TEST(Rounds, CoatsThatCannotBe) {
  const auto with = [](std::vector<Coat> coats, double window_h = 1.0) {
    return [=] { rounds(coats, window_h); };
  };
  EXPECT_THAT(with({}), ThrowsMessage<BadInput>(HasSubstr("coats is empty")));
  EXPECT_THAT(with({dry_coat(30, 2), dry_coat(30, 1)}),
              ThrowsMessage<BadInput>(HasSubstr("coats[1] was applied at 1 h, before")));
  EXPECT_THAT(with({{.wet_um = 10, .dry_um = 5.0}}),
              ThrowsMessage<BadInput>(HasSubstr("coats[0] has wet_um and dry_um")));
  EXPECT_THROW(with({dry_coat(30, 0)}, nan)(), OutOfRange);
  EXPECT_THROW(with({dry_coat(nan, 0)})(), OutOfRange);
  EXPECT_THROW(with({dry_coat(30, -1)})(), OutOfRange);
  EXPECT_THROW(with({{.dry_um = 5.0, .shrink = 1.0}})(), OutOfRange);
  EXPECT_THROW(with({{.wet_um = -1.0, .volume_solids = 0.5}})(), OutOfRange);
  EXPECT_THAT(with({{.wet_um = 10, .volume_solids = 1.5}}),
              ThrowsMessage<OutOfRange>(HasSubstr("coats[0] volume_solids = 1.5")));
  EXPECT_THROW(with({{.wet_um = 10, .volume_solids = 0.5, .thinner = nan}})(), OutOfRange);
}

TEST(Gauge, ItsErrorDoesNotAverageOut) {
  const Gauge gauge = gauge_named("ultrasonic");
  EXPECT_DOUBLE_EQ(uncertainty_um(gauge, 100.0), 5.0 / std::sqrt(3.0));
  std::vector<double> readings_um;
  for (int i = 0; i < 1000; ++i) readings_um.push_back(i % 2 == 0 ? 99.0 : 101.0);
  EXPECT_NEAR(film_from_gauge(readings_um, gauge).mean_se_um, 5.0 / std::sqrt(3.0), 2e-4);
  const std::vector<double> five{100.0, 104.0, 96.0, 108.0, 92.0};
  EXPECT_DOUBLE_EQ(film_from_gauge(five, gauge).mean_se_um, std::sqrt(8.0 + 25.0 / 3.0));
  EXPECT_DOUBLE_EQ(film_from_gauge(five, gauge).sd_um, std::sqrt(40.0));
}

TEST(Gauge, OneReadingIsAsUncertainAsASpot) {
  // u = (2 + 0.05 * 80) / sqrt(3) = sqrt(12), so that 3^2 + 2^2 + 12 = 25.
  EXPECT_EQ(film_from_reading(80, 3, 2, {2.0, 0.05}), (Film{.mean_um = 80,
                                                            .sd_um = 3,
                                                            .mean_se_um = 5,
                                                            .sd_se_um = 2,
                                                            .readings = 1,
                                                            .how = FilmHow::gauge}));
  for (const double bad : {-1.0, 3e4, nan}) {
    EXPECT_THROW(film_from_reading(bad, 3, 2, {}), OutOfRange);
    EXPECT_THROW(film_from_reading(80, bad, 2, {}), OutOfRange);
    EXPECT_THROW(film_from_reading(80, 3, bad, {}), OutOfRange);
    EXPECT_THROW(film_from_reading(80, 3, 2, {bad, 0.0}), OutOfRange);
    EXPECT_THROW(film_from_reading(80, 3, 2, {0.0, bad}), OutOfRange);
  }
}

TEST(Gauge, AgreesWithinItsUncertainty) {
  const Film coats{.mean_um = 105.0, .sd_um = 9.0, .mean_se_um = 4.0};
  Film readings{.mean_um = 115.0, .sd_um = 9.0, .mean_se_um = 3.0};
  const Agreement agreement = agrees(coats, readings);
  EXPECT_EQ(agreement.difference_um, 10.0);
  EXPECT_DOUBLE_EQ(agreement.uncertainty_um, 5.0);
  EXPECT_DOUBLE_EQ(agreement.sigmas, 2.0);
  EXPECT_FALSE(agreement.contradicts);
  EXPECT_EQ(sentence(agreement), "");
  readings.mean_um = 120.0;
  EXPECT_FALSE(agrees(coats, readings).contradicts);
  readings.mean_um = 89.0;
  EXPECT_TRUE(agrees(coats, readings).contradicts);
  EXPECT_THAT(sentence(agrees(coats, readings)),
              HasSubstr("reads 89.0 um where the coats make 105.0 um: 3.2 standard"));
}

TEST(Gauge, FilmsTakenAsKnownMustBeEqual) {
  EXPECT_EQ(agrees({105.0, 9.0}, {105.0, 9.0}).sigmas, 0.0);
  EXPECT_EQ(agrees({105.0, 9.0}, {105.1, 9.0}).sigmas, infinity);
}

TEST(Gauge, WhatCannotBe) {
  EXPECT_THAT([] { gauge_named("ultrasonik"); },
              ThrowsMessage<BadInput>(HasSubstr("nearest is 'ultrasonic'")));
  EXPECT_THROW(uncertainty_um({-1.0, 0.0}, 10.0), OutOfRange);
  EXPECT_THROW(uncertainty_um({0.0, 1.1}, 10.0), OutOfRange);
  EXPECT_THROW(uncertainty_um({0.0, 0.0}, -1.0), OutOfRange);
  EXPECT_TRUE(std::isnan(uncertainty_um({nan, 0.0}, 10.0)));
  const std::vector<double> readings_um{100.0, 101.0};
  EXPECT_THROW(film_from_gauge(readings_um, {nan, 0.0}), OutOfRange);
  EXPECT_THROW(film_from_gauge(readings_um, {0.0, nan}), OutOfRange);
  EXPECT_THROW(film_from_gauge(std::vector<double>{1.0}, {}), BadInput);
  EXPECT_THROW(film_from_gauge(std::vector<double>{1.0, nan}, {}), OutOfRange);
  EXPECT_THROW(agrees({nan, 9.0}, {105.0, 9.0}), OutOfRange);
  EXPECT_THROW(agrees({105.0, 9.0}, {.mean_um = 1, .sd_um = 1, .mean_se_um = -1}), OutOfRange);
}

TEST(Gauge, ContradictsFromThreeStandardUncertaintiesOn) {
  const Film coats{100, 5, 3};
  const Film near{100 + 2.995 * 5, 5, 4};  // hypot(3, 4) = 5
  const Film far{100 + 3.005 * 5, 5, 4};
  EXPECT_FALSE(agrees(coats, near).contradicts);
  EXPECT_TRUE(agrees(coats, far).contradicts);
}

}  // namespace
}  // namespace rounds_test
