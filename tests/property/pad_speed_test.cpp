// The mean speed of a pad by following points of it, and the bound on how warm it makes a spot by going over it.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

#include "levigate/stack/machine.hpp"
#include "levigate/stack/machine_table.hpp"
#include "levigate/stack/speed.hpp"
#include "levigate/surface/wheel_limits.hpp"
#include "levigate/wheel/machine.hpp"
#include "property/random.hpp"

namespace pad_speed_test {
namespace {

using namespace levigate;
using random_numbers::Random;

constexpr double pi = std::numbers::pi;

/// Path of the points of a pad over many rounds, by their places at small steps of time, over that time [m/s]. The points stand for
/// rings of equal area.
double followed_m_s(double pad_mm, double pad_rpm, double orbit_mm, double rpm) {
  constexpr int rings = 200, moments = 720;
  double sum = 0;
  for (int ring = 0; ring < rings; ++ring) {
    const double r_mm = 0.5 * pad_mm * std::sqrt((ring + 0.5) / rings);
    double path = 0;
    for (int i = 0; i < moments; ++i) {
      // The angle between the two motions goes through all values as their rates have no common measure.
      const double orbit = 2 * pi * i / moments, turn = 0.0;
      const double dt_s = 1e-7, w = 2 * pi * rpm / 60 * dt_s, u = 2 * pi * pad_rpm / 60 * dt_s;
      const double x = 0.5 * orbit_mm * (std::cos(orbit + w) - std::cos(orbit)) +
                       r_mm * (std::cos(turn + u) - std::cos(turn));
      const double y = 0.5 * orbit_mm * (std::sin(orbit + w) - std::sin(orbit)) +
                       r_mm * (std::sin(turn + u) - std::sin(turn));
      path += std::hypot(x, y) / dt_s;
    }
    sum += path / moments;
  }
  return sum / rings / 1e3;
}

TEST(PadSpeed, IsThatOfPointsThatAreFollowed) {
  Random random(11);
  for (int i = 0; i < 200; ++i) {
    const double pad_mm = random.between(50, 250), pad_rpm = random.between(0, 2000);
    const double orbit_mm = random.chance(0.1) ? 0.0 : random.between(0.5, 30);
    const double rpm = random.between(100, 12000);
    const double followed = followed_m_s(pad_mm, pad_rpm, orbit_mm, rpm);
    // Rings of equal area stand for the disc to a few parts in 1e5, steps of 1e-7 s for a motion of 200 rounds a second to 1e-4.
    EXPECT_NEAR(pad_speed_m_s(pad_mm, pad_rpm, orbit_mm, rpm) / followed, 1.0, 2e-4)
        << pad_mm << " " << pad_rpm << " " << orbit_mm << " " << rpm;
  }
}

TEST(PadSpeed, LiesBetweenTheFasterMotionAloneAndTheFastestPoint) {
  Random random(12);
  for (int i = 0; i < 2000; ++i) {
    const double pad_mm = random.between(50, 250), pad_rpm = random.between(0, 2000);
    const double orbit_mm = random.between(0, 30), rpm = random.between(100, 12000);
    const double both = pad_speed_m_s(pad_mm, pad_rpm, orbit_mm, rpm);
    const double orbit = pad_speed_m_s(pad_mm, 0, orbit_mm, rpm);
    const double turn = pad_speed_m_s(pad_mm, pad_rpm, 0, rpm);
    EXPECT_GE(both, std::max(orbit, turn) * (1 - 1e-11));
    EXPECT_LE(both, (orbit + turn) * (1 + 1e-11));
  }
}

/// How warm a rotary makes a spot that its pad goes over at a distance from its middle: heat by the speed over the spot, spread as into a
/// half-space, at the warmest moment of the pass [K].
double warmest_k(const Machine& machine, const WheelLimits& limits, double off) {
  constexpr int moments = 4000;
  const double radius_m = 0.5e-3 * machine.pad_mm;
  const double half_m = radius_m * std::sqrt(1 - off * off);
  const double dt_s = 2 * half_m / machine.feed_m_s / moments;
  const WheelHeatInput heat = heat_of(machine, limits);
  std::vector<double> flux;
  for (int i = 0; i < moments; ++i) {
    const double along_m = -half_m + (i + 0.5) * 2 * half_m / moments;
    const double speed_m_s = 2 * pi * machine.rpm / 60 * std::hypot(along_m, off * radius_m);
    flux.push_back(heat.share * heat.friction * 1e3 * heat.pressure_kpa * speed_m_s);
  }
  double rise_k = 0;
  for (int end = moments / 2; end <= moments; end += moments / 40) {
    double sum = 0;  // of flux / sqrt(pi (t - t')) over each step, exactly for an even flux in it
    for (int i = 0; i < end; ++i) {
      const double from = (end - i) * dt_s, to = (end - i - 1) * dt_s;
      sum += flux[static_cast<std::size_t>(i)] * 2 * (std::sqrt(from) - std::sqrt(to));
    }
    rise_k = std::max(rise_k, sum / std::sqrt(pi) / limits.effusivity);
  }
  return rise_k;
}

TEST(MachineHeat, IsABoundOnEverySpotUnderARotary) {
  const Machine rotary = machine_named("rotary polisher");
  const WheelLimits limits{11, 17, 450, 40};
  const double bound_k = temperature_rise_k(heat_of(rotary, limits), dwell_s(rotary));
  double warmest = 0;
  for (int i = 0; i < 40; ++i) warmest = std::max(warmest, warmest_k(rotary, limits, i / 40.0));
  EXPECT_LT(warmest, bound_k);
  EXPECT_GT(warmest, 0.65 * bound_k);  // and no idle one
}

}  // namespace
}  // namespace pad_speed_test
