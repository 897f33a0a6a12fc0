#include "levigate/surface/levelling.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace levelling_test {
namespace {

using namespace levigate;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr LevellingInput peel{.peel_um = 12.0,
                              .wavelength_mm = 3.0,
                              .modulus_mpa = 15.0,
                              .pressure_kpa = 1.7,
                              .residual_um = 0.2};

LevellingInput with_modulus(double modulus_mpa) {
  LevellingInput input = peel;
  input.modulus_mpa = modulus_mpa;
  return input;
}

LevellingInput from_to(double peel_um, double residual_um, double modulus_mpa) {
  LevellingInput input = with_modulus(modulus_mpa);
  input.peel_um = peel_um;
  input.residual_um = residual_um;
  return input;
}

struct Row {
  double modulus_mpa;
  double removal_um;
};

// The closed form in independent arithmetic: block, hard rubber, rubber, foam.
constexpr Row rows[] = {{1000, 5.9000}, {15, 5.9003}, {3, 6.3726}, {0.2, 33.2334}};

TEST(Levelling, CheckValues) {
  for (const auto& row : rows) {
    EXPECT_NEAR(levelling_removal_um(with_modulus(row.modulus_mpa)), row.removal_um, 5e-5)
        << row.modulus_mpa;
  }
}

TEST(Levelling, FoamCostsFiveTimesTheFilmOfABlock) {
  EXPECT_GT(levelling_removal_um(with_modulus(0.2)), 5 * levelling_removal_um(with_modulus(1000)));
}

TEST(Levelling, RigidBlockOnlyCutsCrests) {
  EXPECT_EQ(critical_amplitude_um(3.0, infinity, 1.7), 0.0);
  EXPECT_DOUBLE_EQ(levelling_removal_um(with_modulus(infinity)), 5.9);
  EXPECT_NEAR(levelling_removal_um(with_modulus(1e9)), 5.9, 1e-12);
}

TEST(Levelling, CriticalAmplitudeIsWestergaards) {
  EXPECT_NEAR(critical_amplitude_um(3.0, 0.2, 1.7), 3000.0 * 0.0017 / (3.14159265358979 * 0.2),
              1e-12);
}

// The laws themselves, stepped in time: crests go one for one, full contact decays as -a / a_c.
TEST(Levelling, AgreesWithTimeStepping) {
  for (const double modulus_mpa : {infinity, 100.0, 3.0, 1.0, 0.3, 0.1}) {
    const double critical = critical_amplitude_um(3.0, modulus_mpa, 1.7);
    const auto fall = [&](double a) { return critical > 0 ? std::min(1.0, a / critical) : 1.0; };
    const double step = 1e-4;
    double amplitude = 6.0;
    double removed = 0.0;
    while (amplitude > 0.1) {
      const double middle = amplitude - 0.5 * step * fall(amplitude);
      const double next = amplitude - step * fall(middle);
      removed += next > 0.1 ? step : step * (amplitude - 0.1) / (amplitude - next);
      amplitude = next;
    }
    EXPECT_NEAR(levelling_removal_um(with_modulus(modulus_mpa)), removed, 1e-5 * removed)
        << modulus_mpa;
  }
}

TEST(Levelling, StagesAddUp) {
  for (const double modulus_mpa : {infinity, 15.0, 1.0, 0.4, 0.2}) {
    for (const double middle_um : {0.3, 2.0, 5.0, 10.0}) {
      EXPECT_NEAR(levelling_removal_um(from_to(12.0, 0.2, modulus_mpa)),
                  levelling_removal_um(from_to(12.0, middle_um, modulus_mpa)) +
                      levelling_removal_um(from_to(middle_um, 0.2, modulus_mpa)),
                  1e-12)
          << modulus_mpa << " " << middle_um;
    }
  }
}

TEST(Levelling, IsContinuousWhereTheContactCloses) {
  const double critical_peel_um = 2 * critical_amplitude_um(3.0, 1.0, 1.7);
  for (const double factor : {1 - 1e-9, 1.0, 1 + 1e-9}) {
    EXPECT_NEAR(levelling_removal_um(from_to(critical_peel_um * factor, 0.2, 1.0)),
                levelling_removal_um(from_to(critical_peel_um, 0.2, 1.0)), 1e-8);
    EXPECT_NEAR(levelling_removal_um(from_to(12.0, critical_peel_um * factor, 1.0)),
                levelling_removal_um(from_to(12.0, critical_peel_um, 1.0)), 1e-8);
  }
}

TEST(Levelling, NothingToDoCostsNothing) {
  EXPECT_EQ(levelling_removal_um(from_to(0.0, 0.2, 15.0)), 0.0);
  EXPECT_EQ(levelling_removal_um(from_to(0.2, 0.2, 0.2)), 0.0);
  EXPECT_EQ(levelling_removal_um(from_to(0.1, 0.2, infinity)), 0.0);
}

TEST(Levelling, GrowsWithPeelSoftnessAndPressure) {
  double last = 0;
  for (double peel_um = 0.4; peel_um < 100.0; peel_um *= 1.3) {
    const double removal = levelling_removal_um(from_to(peel_um, 0.2, 1.0));
    EXPECT_GT(removal, last);
    last = removal;
  }
  last = 0;
  for (double modulus_mpa = 20.0; modulus_mpa > 0.05; modulus_mpa /= 1.3) {
    const double removal = levelling_removal_um(with_modulus(modulus_mpa));
    EXPECT_GT(removal, last);
    last = removal;
  }
  LevellingInput pressed = with_modulus(1.0);
  pressed.pressure_kpa = 5.0;
  EXPECT_GT(levelling_removal_um(pressed), levelling_removal_um(with_modulus(1.0)));
}

constexpr double LevellingInput::*members[] = {
    &LevellingInput::peel_um, &LevellingInput::wavelength_mm, &LevellingInput::modulus_mpa,
    &LevellingInput::pressure_kpa, &LevellingInput::residual_um};

TEST(Levelling, NanIn) {
  for (const auto member : members) {
    LevellingInput input = peel;
    input.*member = std::nan("");
    EXPECT_TRUE(std::isnan(levelling_removal_um(input)));
  }
  EXPECT_TRUE(std::isnan(critical_amplitude_um(std::nan(""), 1.0, 1.0)));
  EXPECT_TRUE(std::isnan(critical_amplitude_um(1.0, std::nan(""), 1.0)));
  EXPECT_TRUE(std::isnan(critical_amplitude_um(1.0, 1.0, std::nan(""))));
}

TEST(Levelling, RejectsWhatIsOutOfRange) {
  for (const auto member : members) {
    LevellingInput input = peel;
    input.*member = -1.0;
    EXPECT_THROW(levelling_removal_um(input), OutOfRange);
  }
  EXPECT_THROW(levelling_removal_um(from_to(12.0, 0.0, 15.0)), OutOfRange);
  EXPECT_THROW(levelling_removal_um(from_to(infinity, 0.2, 15.0)), OutOfRange);
  EXPECT_THROW(critical_amplitude_um(0.0, 1.0, 1.0), OutOfRange);
  EXPECT_THROW(critical_amplitude_um(1.0, 0.0, 1.0), OutOfRange);
  EXPECT_THROW(critical_amplitude_um(1.0, 1.0, 0.0), OutOfRange);
}

}  // namespace
}  // namespace levelling_test
