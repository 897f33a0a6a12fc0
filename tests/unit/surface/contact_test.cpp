#include "levigate/surface/contact.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace contact_test {
namespace {

using namespace levigate;

constexpr double infinity = std::numeric_limits<double>::infinity();

// P1000 (33.7 / 18.3 / 12.4 um, at most 3 % and at least 95 % coarser) on latex paper, by hand on a
// coat. The log spread is that of the limits; 1.88 and 1.64 are the normal quantiles of 3 and 95 %.
const ContactInput paper{
    .size_um = 18.3,
    .log_spread = 0.5 * (std::log(33.7 / 18.3) / 1.8807936 + std::log(18.3 / 12.4) / 1.6448536),
    .tip_spread = 0.15,
    .modulus_mpa = 20.0,
    .pressure_kpa = 1.7,
    .hardness_mpa = 150.0,
    .flank_deg = 20.0};

ContactInput with(double ContactInput::*member, double value) {
  ContactInput input = paper;
  input.*member = value;
  return input;
}

// The force balance solved in independent arithmetic, to the digits printed.
TEST(Contact, CheckValuesOfP1000Paper) {
  const Contact c = contact(paper);
  EXPECT_NEAR(c.active_per_mm2(), 5.737992, 5e-7);
  EXPECT_NEAR(c.mean_depth_um(), 0.350422, 5e-7);
  EXPECT_NEAR(c.rms_depth_um(), 0.408136, 5e-7);
  EXPECT_NEAR(c.groove_depth_um(), 0.541869, 5e-7);
  EXPECT_NEAR(c.depth_um(0.5), 0.326974, 5e-7);
  EXPECT_NEAR(c.depth_um(0.99), 0.900687, 5e-7);
}

TEST(Contact, LoadsOfTheTipsAddUpToThePressure) {
  // Mean load per active tip: A times the mean square depth, which is the integral of 2 delta times
  // the exceedance; here by the trapezoidal rule.
  const Contact c = contact(paper);
  const double tangent = std::tan(20.0 * std::numbers::pi / 180.0);
  const double cone_mpa = std::numbers::pi * 150.0 / (2.0 * tangent * tangent);
  const double step_um = 1e-4;
  double mean_square_um2 = 0;
  double mean_um = 0.5 * step_um;
  for (double depth_um = step_um; depth_um < 3.0; depth_um += step_um) {
    mean_square_um2 += 2.0 * depth_um * c.exceedance(depth_um) * step_um;
    mean_um += c.exceedance(depth_um) * step_um;
  }
  EXPECT_NEAR(c.active_per_mm2() * 1e-6 * cone_mpa * mean_square_um2, 1.7e-3, 1.7e-3 * 1e-6);
  EXPECT_NEAR(c.mean_depth_um(), mean_um, 1e-7);
}

TEST(Contact, QuantileInvertsExceedance) {
  for (const double modulus_mpa : {0.01, 1.0, 20.0, 1e4, infinity}) {
    for (const double pressure_kpa : {0.01, 1.7, 1000.0}) {
      ContactInput input = with(&ContactInput::modulus_mpa, modulus_mpa);
      input.pressure_kpa = pressure_kpa;
      const Contact c = contact(input);
      for (const double q : {1e-6, 0.01, 0.5, 0.99, 1.0 - 1e-6}) {
        EXPECT_NEAR(c.exceedance(c.depth_um(q)) / (1.0 - q), 1.0, 1e-9) << modulus_mpa << " " << q;
      }
    }
  }
}

TEST(Contact, EndsOfTheDistribution) {
  const Contact c = contact(paper);
  EXPECT_EQ(c.depth_um(0.0), 0.0);
  EXPECT_EQ(c.exceedance(0.0), 1.0);
  EXPECT_EQ(c.exceedance(-1.0), 1.0);
  EXPECT_EQ(c.exceedance(infinity), 0.0);
  EXPECT_EQ(c.exceedance(c.depth_um(1.0) * (1.0 + 1e-12)), 0.0);  // heights end at 8 s
}

TEST(Contact, ScalesWithTheGrain) {
  const Contact c = contact(paper);
  for (const double size_um : {0.01, 0.1, 5.0, 200.0, 1e4}) {
    const Contact scaled = contact(with(&ContactInput::size_um, size_um));
    const double factor = size_um / 18.3;
    EXPECT_NEAR(scaled.mean_depth_um() / (factor * c.mean_depth_um()), 1.0, 1e-14);
    EXPECT_NEAR(scaled.groove_depth_um() / (factor * c.groove_depth_um()), 1.0, 1e-14);
    EXPECT_NEAR(scaled.depth_um(0.99) / (factor * c.depth_um(0.99)), 1.0, 1e-14);
    EXPECT_NEAR(scaled.active_per_mm2() * factor * factor / c.active_per_mm2(), 1.0, 1e-14);
  }
}

TEST(Contact, DependsOnRatiosOfPressureHardnessAndModulus) {
  ContactInput scaled = paper;
  scaled.pressure_kpa *= 3.7;
  scaled.hardness_mpa *= 3.7;
  scaled.modulus_mpa *= 3.7;
  const Contact c = contact(paper);
  EXPECT_NEAR(contact(scaled).mean_depth_um() / c.mean_depth_um(), 1.0, 1e-12);
  EXPECT_NEAR(contact(scaled).active_per_mm2() / c.active_per_mm2(), 1.0, 1e-12);
}

TEST(Contact, OnlyTheCombinedSpreadCounts) {
  ContactInput level = paper;
  level.tip_spread = std::hypot(paper.tip_spread, 0.5 * paper.log_spread);
  level.log_spread = 0.0;
  EXPECT_NEAR(contact(level).mean_depth_um() / contact(paper).mean_depth_um(), 1.0, 1e-12);
}

TEST(Contact, PressureBringsMoreTipsAndDeeperOnes) {
  Contact last = contact(with(&ContactInput::pressure_kpa, 0.01));
  for (double pressure_kpa = 0.02; pressure_kpa < 1000.0; pressure_kpa *= 2.0) {
    const Contact c = contact(with(&ContactInput::pressure_kpa, pressure_kpa));
    EXPECT_GT(c.active_per_mm2(), last.active_per_mm2());
    EXPECT_GT(c.mean_depth_um(), last.mean_depth_um());
    EXPECT_GT(c.depth_um(0.99), last.depth_um(0.99));
    last = c;
  }
}

TEST(Contact, SofterFilmTakesMoreTipsAndDeeperOnes) {
  Contact last = contact(with(&ContactInput::hardness_mpa, 1e5));
  for (double hardness_mpa = 5e4; hardness_mpa > 1.0; hardness_mpa /= 2.0) {
    const Contact c = contact(with(&ContactInput::hardness_mpa, hardness_mpa));
    EXPECT_GT(c.active_per_mm2(), last.active_per_mm2());
    EXPECT_GT(c.mean_depth_um(), last.mean_depth_um());
    EXPECT_GT(c.depth_um(0.99), last.depth_um(0.99));
    last = c;
  }
}

TEST(Contact, StifferBackingPressesFewerAndDeeperTips) {
  Contact last = contact(with(&ContactInput::modulus_mpa, 0.01));
  for (double modulus_mpa = 0.02; modulus_mpa < 1e4; modulus_mpa *= 2.0) {
    const Contact c = contact(with(&ContactInput::modulus_mpa, modulus_mpa));
    EXPECT_LT(c.active_per_mm2(), last.active_per_mm2());
    EXPECT_GT(c.mean_depth_um(), last.mean_depth_um());
    EXPECT_GT(c.depth_um(0.99), last.depth_um(0.99));
    last = c;
  }
}

TEST(Contact, RigidBackingIsTheLimitOfStiffOnes) {
  const Contact rigid = contact(with(&ContactInput::modulus_mpa, infinity));
  for (const double modulus_mpa : {1e7, 1e8, 1e9}) {
    const Contact stiff = contact(with(&ContactInput::modulus_mpa, modulus_mpa));
    const double distance = stiff.mean_depth_um() / rigid.mean_depth_um() - 1.0;
    EXPECT_LT(std::abs(distance), 1e4 / modulus_mpa);
    EXPECT_NEAR(stiff.active_per_mm2() / rigid.active_per_mm2(), 1.0, 1e5 / modulus_mpa);
  }
}

// Against a rigid plane that all tips reach, the integrals close: mean square depth z^2 + s^2, mean
// depth -z.
TEST(Contact, RigidPlaneThatAllTipsReach) {
  const ContactInput pressed{.size_um = 10.0,
                             .log_spread = 0.0,
                             .tip_spread = 0.05,
                             .modulus_mpa = infinity,
                             .pressure_kpa = 1000.0,
                             .hardness_mpa = 2.0,
                             .flank_deg = 45.0};
  const Contact c = contact(pressed);
  // packing A (z^2 + s^2) = P d^2, A = pi H / 2
  const double spread_um = 0.5;
  const double mean_square_um2 = 100.0 / (0.5 * std::numbers::pi);
  const double plane_um = -std::sqrt(mean_square_um2 - spread_um * spread_um);
  ASSERT_LT(plane_um, -9.0 * spread_um);
  EXPECT_NEAR(c.plane_height_um(), plane_um, 1e-12);
  EXPECT_NEAR(c.mean_depth_um(), -plane_um, 1e-12);
  EXPECT_NEAR(c.rms_depth_um(), std::sqrt(mean_square_um2), 1e-12);
  const double cube_over_mean = plane_um * plane_um + 3.0 * spread_um * spread_um;
  EXPECT_NEAR(c.groove_depth_um(),  // E[delta^3] = mean^3 + 3 mean s^2
              std::sqrt(-plane_um * cube_over_mean / mean_square_um2 * std::sqrt(cube_over_mean)),
              1e-11);
  EXPECT_NEAR(c.depth_um(0.5), -plane_um, 1e-12);
  EXPECT_NEAR(c.active_share(), 1.0, 1e-15);
  EXPECT_NEAR(c.active_per_mm2(), 5000.0, 1e-8);
}

// A backing far softer than the film: tips hardly press in, each spring carries k (h - z) and with
// all tips in contact the pressure is packing / d^2 times -k z.
TEST(Contact, VerySoftBackingCarriesThePressureOnItsSprings) {
  const ContactInput soft{.size_um = 10.0,
                          .log_spread = 0.0,
                          .tip_spread = 0.01,
                          .modulus_mpa = 0.01,
                          .pressure_kpa = 10.0,
                          .hardness_mpa = 1e5};
  const double plane_um = -(10e-3 * 100.0) / (0.5 * 0.01 * 10.0);
  EXPECT_NEAR(contact(soft).plane_height_um(), plane_um, -1e-3 * plane_um);
}

TEST(Contact, VanishesWithTheLoad) {
  const Contact light = contact(with(&ContactInput::pressure_kpa, 0.01));
  const Contact c = contact(paper);
  EXPECT_LT(light.active_per_mm2(), 0.01 / 1.7 * 2.0 * c.active_per_mm2());
  // Per tip little changes: that is why light pressure does not make paper finer.
  EXPECT_GT(light.mean_depth_um(), 0.5 * c.mean_depth_um());
}

constexpr double ContactInput::*members[] = {
    &ContactInput::size_um,     &ContactInput::log_spread,   &ContactInput::tip_spread,
    &ContactInput::modulus_mpa, &ContactInput::pressure_kpa, &ContactInput::hardness_mpa,
    &ContactInput::flank_deg,   &ContactInput::packing};

TEST(Contact, NanIn) {
  for (const auto member : members) {
    const Contact c = contact(with(member, std::nan("")));
    EXPECT_TRUE(std::isnan(c.active_per_mm2()));
    EXPECT_TRUE(std::isnan(c.active_share()));
    EXPECT_TRUE(std::isnan(c.mean_depth_um()));
    EXPECT_TRUE(std::isnan(c.groove_depth_um()));
    EXPECT_TRUE(std::isnan(c.plane_height_um()));
    EXPECT_TRUE(std::isnan(c.load_residual()));
    EXPECT_TRUE(std::isnan(c.depth_um(0.5)));
    EXPECT_TRUE(std::isnan(c.exceedance(0.5)));
  }
  EXPECT_TRUE(std::isnan(contact(paper).depth_um(std::nan(""))));
  EXPECT_TRUE(std::isnan(contact(paper).exceedance(std::nan(""))));
}

TEST(Contact, RejectsWhatIsOutOfRange) {
  for (const auto member : members) {
    EXPECT_THROW(contact(with(member, -1.0)), OutOfRange);
    if (member != &ContactInput::modulus_mpa) {
      EXPECT_THROW(contact(with(member, infinity)), OutOfRange);
    }
  }
  EXPECT_THROW(contact(with(&ContactInput::size_um, 0.009)), OutOfRange);
  EXPECT_THROW(contact(with(&ContactInput::modulus_mpa, 0.009)), OutOfRange);
  EXPECT_THROW(contact(with(&ContactInput::flank_deg, 81.0)), OutOfRange);
  ContactInput level = paper;
  level.log_spread = level.tip_spread = 0.0;
  EXPECT_THROW(contact(level), OutOfRange);
  EXPECT_THROW(contact(paper).depth_um(-0.1), OutOfRange);
  EXPECT_THROW(contact(paper).depth_um(1.1), OutOfRange);
}

}  // namespace
}  // namespace contact_test
