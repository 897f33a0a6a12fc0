// The closed formula for the heat of a wheel, against conduction into a body solved by Crank-Nicolson steps.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "levigate/wheel/heat.hpp"
#include "levigate/wheel/limits.hpp"
#include "levigate/wheel/pass.hpp"

namespace wheel_heat_simulation_test {
namespace {

using namespace levigate;

/// A material that conducts.
struct Matter {
  double conductivity;  ///< [W/(m K)]
  double capacity;      ///< of a volume [J/(m3 K)]

  double effusivity() const { return std::sqrt(conductivity * capacity); }
  double diffusivity() const { return conductivity / capacity; }
};

constexpr Matter acrylic{0.19, 1190.0 * 1450.0};
constexpr Matter steel{16.0, 8000.0 * 500.0};
constexpr Matter wood{0.14, 600.0 * 1500.0};

/// Rise of the surface of a body, cold at first, that takes in a constant flux for a time: a layer of `top`
/// on `below`. Cells of constant width down to ten diffusion lengths, where no heat arrives; two damped
/// steps of backward Euler first, as the flux sets in at once.
double surface_rise_k(const Matter& top, const Matter& below, double layer_m, double flux_w_m2,
                      double time_s) {
  constexpr std::size_t cells = 600;
  constexpr int steps = 400;
  const double depth = 10.0 * std::sqrt(std::max(top.diffusivity(), below.diffusivity()) * time_s);
  const double width = depth / cells;
  const double step = time_s / steps;
  const auto matter = [&](std::size_t i) {
    return (static_cast<double>(i) + 0.5) * width < layer_m ? top : below;
  };
  std::vector<double> link(cells, 0.0);  // conductance between i and i + 1
  for (std::size_t i = 0; i + 1 < cells; ++i) {
    link[i] = 2.0 / width / (1.0 / matter(i).conductivity + 1.0 / matter(i + 1).conductivity);
  }
  std::vector<double> rise(cells, 0.0), diagonal(cells), right(cells);
  for (int n = 0; n < steps; ++n) {
    const double implicit = n < 2 ? 1.0 : 0.5;
    for (std::size_t i = 0; i < cells; ++i) {
      const double store = matter(i).capacity * width / step;
      const double above = i > 0 ? link[i - 1] : 0.0;
      const double inflow = (i > 0 ? above * (rise[i - 1] - rise[i]) : flux_w_m2) -
                            (i + 1 < cells ? link[i] * (rise[i] - rise[i + 1]) : 0.0);
      const double explicit_inflow =
          i > 0 ? (1.0 - implicit) * inflow : (1.0 - implicit) * (inflow - flux_w_m2) + flux_w_m2;
      diagonal[i] = store + implicit * (above + link[i]);
      right[i] = store * rise[i] + explicit_inflow;
    }
    for (std::size_t i = 1; i < cells; ++i) {  // Thomas's elimination
      const double factor = implicit * link[i - 1] / diagonal[i - 1];
      diagonal[i] -= factor * implicit * link[i - 1];
      right[i] += factor * right[i - 1];
    }
    rise[cells - 1] = right[cells - 1] / diagonal[cells - 1];
    for (std::size_t i = cells - 1; i-- > 0;) {
      rise[i] = (right[i] + implicit * link[i] * rise[i + 1]) / diagonal[i];
    }
  }
  return rise[0] + flux_w_m2 * 0.5 * width / top.conductivity;  // half a cell up to the surface
}

double surface_rise_k(const Matter& matter, double flux_w_m2, double time_s) {
  return surface_rise_k(matter, matter, 1.0, flux_w_m2, time_s);
}

/// A wheel that brings a flux into a body of an effusivity.
WheelHeatInput bringing(double flux_w_m2, double effusivity) {
  return {.effusivity = effusivity,
          .friction = 0.4,
          .pressure_kpa = flux_w_m2 / (0.5 * 0.4 * 1e3 * 10.0),
          .speed_m_s = 10.0,
          .share = 0.5};
}

TEST(WheelHeatSimulation, RiseAgreesToOnePercent) {
  for (const Matter& matter : {acrylic, steel, wood}) {
    for (const double flux : {1e3, 1e4, 5e4, 3e5}) {
      for (const double time : {0.01, 0.1, 0.7, 5.0, 60.0}) {
        const double simulated = surface_rise_k(matter, flux, time);
        const double ours = temperature_rise_k(bringing(flux, matter.effusivity()), time);
        EXPECT_NEAR(ours / simulated, 1.0, 0.01) << flux << " W/m2 for " << time << " s";
      }
    }
  }
}

TEST(WheelHeatSimulation, AtTheDwellLimitTheSurfaceIsAsWarmAsAllowed) {
  for (const double flux : {1e4, 2.6e4, 1e5}) {
    for (const double rise : {20.0, 40.0, 60.0}) {
      const double limit = dwell_limit_s(bringing(flux, acrylic.effusivity()), rise);
      EXPECT_NEAR(surface_rise_k(acrylic, flux, limit) / rise, 1.0, 0.01);
    }
  }
}

// The default effusivity of a coat stands for a thin coat on wood: in the dwell of the profiles a spot must
// not get warmer than the formula says.
TEST(WheelHeatSimulation, DefaultOfACoatIsSafeForAThinCoatOnWood) {
  const WheelLimits coat = wheel_limits_named("two-part urethane");
  constexpr double flux = 2e4;
  for (const char* name : {"loose flannel", "loose muslin", "sewn", "felt"}) {
    const double dwell = wheel_pass(wheel_named(name), coat, 1.0, 0.0).dwell_s;
    const double ours = temperature_rise_k(bringing(flux, coat.effusivity), dwell);
    for (const double layer_um : {80.0, 120.0, 200.0}) {
      const double on_wood = surface_rise_k(acrylic, wood, 1e-6 * layer_um, flux, dwell);
      EXPECT_LE(on_wood, ours) << name << ", " << layer_um << " um";
      EXPECT_GE(on_wood, 0.75 * ours) << name << ", " << layer_um << " um";
    }
    const double bare_wood = surface_rise_k(wood, flux, dwell);
    EXPECT_GT(bare_wood, ours) << "a layer matters";
  }
}

}  // namespace
}  // namespace wheel_heat_simulation_test
