#include "levigate/surface/cure.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "levigate/text/sentences.hpp"

namespace cure_test {
namespace {

using namespace levigate;
using testing::HasSubstr;
using testing::ThrowsMessage;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr ContactInput p1000{.size_um = 18.3,
                             .log_spread = 0.280634,
                             .tip_spread = 0.15,
                             .modulus_mpa = 20,
                             .pressure_kpa = 1.7,
                             .hardness_mpa = nan};
const Cure urethane{168.0, 0.02, {{1.0, 30.0}, {10.0, 60.0}, {168.0, 150.0}}};

TEST(Cure, HardnessIsLinearInTheLogarithmOfAge) {
  EXPECT_NEAR(hardness_at(urethane, std::sqrt(10.0)).hardness_mpa, 45.0, 1e-12);
  EXPECT_NEAR(hardness_at(urethane, std::sqrt(1680.0)).hardness_mpa, 105.0, 1e-12);
  EXPECT_TRUE(sentence(hardness_at(urethane, 20.0)).empty());
  for (const HardnessPoint& point : urethane.points) {
    EXPECT_EQ(hardness_at(urethane, point.hours).hardness_mpa, point.hardness_mpa);
    EXPECT_TRUE(sentence(hardness_at(urethane, point.hours)).empty());
  }
}

TEST(Cure, OutsideThePointsItStaysAndSaysSo) {
  EXPECT_EQ(hardness_at(urethane, 0.0).hardness_mpa, 30.0);
  EXPECT_THAT(sentence(hardness_at(urethane, 0.5)),
              HasSubstr("first hardness is for 1 h. The coat is younger"));
  EXPECT_EQ(hardness_at(urethane, 500.0).hardness_mpa, 150.0);
  EXPECT_THAT(sentence(hardness_at(urethane, 500.0)),
              HasSubstr("last hardness is for 168 h. The coat is older"));
}

TEST(Cure, HardnessNeverFalls) {
  double before = 0;
  for (double age_h = 0.5; age_h < 400; age_h *= 1.07) {
    const double hardness = hardness_at(urethane, age_h).hardness_mpa;
    EXPECT_GE(hardness, before);
    before = hardness;
  }
}

TEST(Cure, AYoungCoatIsScratchedDeeperAndShrinks) {
  const CureState state = cure_state(urethane, 10.0, p1000, 0.99);
  EXPECT_FALSE(state.hard);
  EXPECT_DOUBLE_EQ(*state.hardness_ratio, 0.4);
  ContactInput soft = p1000, cured = p1000;
  soft.hardness_mpa = 60.0;
  cured.hardness_mpa = 150.0;
  EXPECT_DOUBLE_EQ(*state.scratch_ratio,
                   contact(soft).depth_um(0.99) / contact(cured).depth_um(0.99));
  // A tip's depth under its own load goes as H^-1/2; more tips in contact make it less than that.
  EXPECT_GT(*state.scratch_ratio, 1.2);
  EXPECT_LT(*state.scratch_ratio, std::sqrt(2.5));
  EXPECT_DOUBLE_EQ(state.shrink_left, 0.02 * 0.6);
  EXPECT_THAT(sentence(state), HasSubstr("10 h old. It needs 168 h to cure fully"));
  EXPECT_THAT(sentence(state), HasSubstr("40 % of its hardness"));
  EXPECT_THAT(sentence(state), HasSubstr("still shrink by up to 1.2 %"));
}

TEST(Cure, WithoutPointsNothingIsEstimatedButTheShrink) {
  const CureState state = cure_state(cure_named("nitrocellulose lacquer"), 48.0, p1000, 0.99);
  EXPECT_FALSE(state.hard || state.hardness_ratio || state.scratch_ratio);
  EXPECT_EQ(state.shrink_left, cure_named("nitrocellulose lacquer").shrink);
  EXPECT_THAT(sentence(state), HasSubstr("unless the data sheet says otherwise"));
}

TEST(Cure, AHardCoatNeedsNoSentence) {
  const CureState state = cure_state(urethane, 168.0, p1000, 0.99);
  EXPECT_TRUE(state.hard);
  EXPECT_TRUE(sentence(state).empty());
  EXPECT_EQ(state.shrink_left, 0.0);
}

TEST(Cure, BeforeTheFirstPointTheTextSaysSo) {
  EXPECT_THAT(sentence(cure_state(urethane, 0.5, p1000, 0.99)), HasSubstr("The coat is younger"));
}

TEST(Cure, WhatCannotBe) {
  EXPECT_THAT([] { cure_named("epoxi"); },
              ThrowsMessage<BadInput>(HasSubstr("nearest is 'epoxy'")));
  EXPECT_THAT(
      [] {
        hardness_at({168.0, 0.0, {}}, 1.0);
      },
      ThrowsMessage<BadInput>(HasSubstr("points is empty")));
  EXPECT_THROW(hardness_at(urethane, nan), OutOfRange);
  EXPECT_THROW(hardness_at(urethane, -1.0), OutOfRange);
  const auto state = [](const Cure& cure, double age_h = 1.0, double quantile = 0.99) {
    return cure_state(cure, age_h, p1000, quantile);
  };
  EXPECT_THROW(state({0.0, 0.0, {}}), OutOfRange);
  EXPECT_THROW(state({168.0, 1.0, {}}), OutOfRange);
  EXPECT_THROW(state({168.0, 0.0, {{0.0, 50.0}}}), OutOfRange);
  EXPECT_THROW(state({168.0, 0.0, {{1.0, nan}}}), OutOfRange);
  EXPECT_THAT(
      [&] {
        state({168.0, 0.0, {{2.0, 50.0}, {2.0, 60.0}}});
      },
      ThrowsMessage<BadInput>(HasSubstr("points[1]")));
  EXPECT_THROW(state({168.0, 0.0, {{1.0, 50.0}, {2.0, 49.0}}}), BadInput);
  EXPECT_THROW(state(urethane, nan), OutOfRange);
  EXPECT_THROW(state(urethane, 1.0, 1.1), OutOfRange);
}

}  // namespace
}  // namespace cure_test
