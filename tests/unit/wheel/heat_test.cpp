#include "levigate/wheel/heat.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "levigate/stack/speed.hpp"
#include "levigate/units.hpp"

namespace heat_test {
namespace {

using namespace levigate;

constexpr WheelHeatInput wheel{
    .effusivity = 600.0, .friction = 0.4, .pressure_kpa = 10.0, .speed_m_s = 12.776, .share = 0.5};

TEST(WheelSpeed, CheckValues) {
  EXPECT_NEAR(surface_speed_m_s(305.0, 800.0), 12.7758, 5e-5);
  // An instrument maker's wheel of 14 in at 750 rpm: 2749 ft/min, 13.96 m/s.
  EXPECT_NEAR(surface_speed_m_s(mm_from_inch(14.0), 750.0), 13.96, 5e-3);
  EXPECT_NEAR(surface_speed_m_s(mm_from_inch(14.0), 750.0), m_s_from_ft_min(2749.0), 3e-3);
  EXPECT_EQ(surface_speed_m_s(305.0, 0.0), 0.0);
}

// pi (600 x 40 / (2 x 0.5 x 0.4 x 10 000 x 12.776))^2.
TEST(WheelHeat, CheckValueOfTheDwellLimit) {
  EXPECT_NEAR(dwell_limit_s(wheel, 40.0), 0.692887, 5e-7);
}

TEST(WheelHeat, DwellLimitInvertsTheRise) {
  for (const double rise_k : {0.0, 1.0, 40.0, 300.0}) {
    EXPECT_NEAR(temperature_rise_k(wheel, dwell_limit_s(wheel, rise_k)), rise_k, 1e-12 * rise_k);
  }
}

// A half-space that takes in a constant flux,
// stepped in time (explicit differences; density, heat capacity, conductivity and effusivity 1).
TEST(WheelHeat, AgreesWithConductionSteppedInTime) {
  constexpr int cells = 200;
  constexpr double width = 0.05;
  constexpr double step = 0.4 * width * width;
  const WheelHeatInput unit{
      .effusivity = 1.0, .friction = 1.0, .pressure_kpa = 1.0, .speed_m_s = 1e-3, .share = 1.0};
  double temperature[cells] = {};
  double time = 0.0;
  while (time < 1.0) {
    double inflow = 1.0;  // W/m2, at the surface
    for (int i = 0; i + 1 < cells; ++i) {
      const double outflow = (temperature[i] - temperature[i + 1]) / width;
      temperature[i] += step * (inflow - outflow) / width;
      inflow = outflow;
    }
    time += step;
  }
  const double surface =
      temperature[0] + 0.5 * width;  // half a cell at the surface's gradient of 1
  EXPECT_NEAR(temperature_rise_k(unit, time), surface, 2e-3);
}

constexpr double WheelHeatInput::*members[] = {
    &WheelHeatInput::effusivity, &WheelHeatInput::friction, &WheelHeatInput::pressure_kpa,
    &WheelHeatInput::speed_m_s, &WheelHeatInput::share};

TEST(WheelHeat, NanInAndOutOfRange) {
  for (const auto member : members) {
    WheelHeatInput input = wheel;
    input.*member = std::nan("");
    EXPECT_TRUE(std::isnan(dwell_limit_s(input, 40.0)));
    EXPECT_TRUE(std::isnan(temperature_rise_k(input, 1.0)));
    input.*member = 0.0;
    EXPECT_THROW(dwell_limit_s(input, 40.0), OutOfRange);
    EXPECT_THROW(temperature_rise_k(input, 1.0), OutOfRange);
  }
  EXPECT_TRUE(std::isnan(dwell_limit_s(wheel, std::nan(""))));
  EXPECT_TRUE(std::isnan(temperature_rise_k(wheel, std::nan(""))));
  EXPECT_THROW(dwell_limit_s(wheel, -1.0), OutOfRange);
  EXPECT_THROW(temperature_rise_k(wheel, -1.0), OutOfRange);
}

TEST(WheelSpeed, NanInAndOutOfRange) {
  EXPECT_TRUE(std::isnan(surface_speed_m_s(std::nan(""), 800.0)));
  EXPECT_TRUE(std::isnan(surface_speed_m_s(305.0, std::nan(""))));
  EXPECT_THROW(surface_speed_m_s(0.0, 800.0), OutOfRange);
  EXPECT_THROW(surface_speed_m_s(305.0, -1.0), OutOfRange);
}

}  // namespace
}  // namespace heat_test
