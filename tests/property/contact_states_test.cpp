// The force balance over the whole domain: it is always solved, and solved right.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "levigate/surface/contact.hpp"

namespace contact_states_test {
namespace {

using namespace levigate;

constexpr double infinity = std::numeric_limits<double>::infinity();

class States {
 public:
  ContactInput next() {
    ContactInput input{.size_um = log_uniform(0.01, 1e4),
                       .log_spread = uniform(),
                       .tip_spread = log_uniform(1e-3, 1.0),
                       .modulus_mpa = log_uniform(0.01, 1e6),
                       .pressure_kpa = log_uniform(0.01, 1e3),
                       .hardness_mpa = log_uniform(1.0, 1e5),
                       .flank_deg = log_uniform(1.0, 80.0),
                       .packing = log_uniform(0.01, 1.0)};
    const double kind = uniform();
    if (kind < 0.1) input.modulus_mpa = infinity;
    if (kind > 0.6) input.log_spread = 0.0;
    return input;
  }

 private:
  double uniform() { return (static_cast<double>(engine_() >> 11) + 0.5) * 0x1p-53; }
  double log_uniform(double low, double high) { return low * std::pow(high / low, uniform()); }

  std::mt19937_64 engine_{20240607};
};

/// Pressure [kPa] that the tips carry, from the formulas as they are printed: tanh-sinh quadrature
/// over the heights in extended precision, sharing nothing with the solver but the plane it found.
double carried_kpa(const ContactInput& in, double plane_um) {
  using real = long double;
  const real spread = in.size_um * std::hypot(in.tip_spread, in.log_spread / 2);
  const real tangent = std::tan(real{in.flank_deg} * std::numbers::pi_v<real> / 180);
  const real cone = std::numbers::pi_v<real> * real{in.hardness_mpa} / (2 * tangent * tangent);
  const real spring = real{in.modulus_mpa} * real{in.size_um};
  const auto load = [&](real gap, real height) {
    const real depth =
        std::isinf(in.modulus_mpa) ? gap : 2 * gap / (1 + std::sqrt(1 + 4 * cone * gap / spring));
    const real x = height / spread;
    return cone * depth * depth * std::exp(-x * x / 2);
  };
  const real low = std::max<real>(plane_um, -12 * spread);
  const real half = (8 * spread - low) / 2;
  real sum = 0;
  constexpr real step = 1.0L / 32;
  for (int i = -112; i <= 112; ++i) {
    const real u = std::numbers::pi_v<real> / 2 * std::sinh(i * step);
    const real from_low = half * std::exp(u) / std::cosh(u);  // distance from the lower end
    const real weight = half * std::cosh(i * step) / (std::cosh(u) * std::cosh(u));
    sum += weight * load(low - plane_um + from_low, low + from_low);
  }
  sum *= step * std::numbers::pi_v<real> / 2 / (spread * std::sqrt(2 * std::numbers::pi_v<real>));
  return static_cast<double>(1000 * sum * in.packing / (real{in.size_um} * in.size_um));
}

void expect_sound(const ContactInput& in) {
  const Contact c = contact(in);
  ASSERT_LE(std::abs(c.load_residual()), 1e-12)
      << in.size_um << " " << in.log_spread << " " << in.tip_spread << " " << in.modulus_mpa << " "
      << in.pressure_kpa << " " << in.hardness_mpa << " " << in.flank_deg << " " << in.packing;
  const double tips_per_mm2 = 1e6 * in.packing / (in.size_um * in.size_um);
  ASSERT_GT(c.active_per_mm2(), 0.0);
  ASSERT_LE(c.active_per_mm2(), tips_per_mm2 * (1.0 + 1e-12));
  ASSERT_GT(c.mean_depth_um(), 0.0);
  ASSERT_GT(c.depth_um(0.99), c.depth_um(0.5));
  ASSERT_GT(c.depth_um(0.99), c.mean_depth_um());
  ASSERT_GT(c.groove_depth_um(), c.mean_depth_um());
}

TEST(ContactStates, AreAllSolved) {
  States states;
  for (int i = 0; i < 100000; ++i) expect_sound(states.next());
}

TEST(ContactStates, CornersOfTheDomainAreSolved) {
  for (int corner = 0; corner < 256; ++corner) {
    const auto pick = [corner](int bit, double low, double high) {
      return (corner >> bit & 1) != 0 ? high : low;
    };
    expect_sound({.size_um = pick(0, 0.01, 1e4),
                  .log_spread = pick(1, 0.0, 1.0),
                  .tip_spread = pick(2, 1e-3, 1.0),
                  .modulus_mpa = pick(3, 0.01, infinity),
                  .pressure_kpa = pick(4, 0.01, 1e3),
                  .hardness_mpa = pick(5, 1.0, 1e5),
                  .flank_deg = pick(6, 1.0, 80.0),
                  .packing = pick(7, 0.01, 1.0)});
  }
}

TEST(ContactStates, TipsCarryThePressure) {
  States states;
  for (int i = 0; i < 3000; ++i) {
    const ContactInput in = states.next();
    const double carried = carried_kpa(in, contact(in).plane_height_um());
    ASSERT_NEAR(carried / in.pressure_kpa, 1.0, 1e-12)
        << in.size_um << " " << in.log_spread << " " << in.tip_spread << " " << in.modulus_mpa
        << " " << in.hardness_mpa << " " << in.flank_deg << " " << in.packing;
  }
}

// Against a rigid plane the integrals close: mean depth s (phi(x) / Q(x) - x), with Q the tail, phi
// the density and x the plane in units of s; and s^3 ((x^2 + 2) phi(x) / Q(x) - x^3 - 3 x) for cubes.
TEST(ContactStates, RigidDepthsHaveTheirClosedForms) {
  States states;
  int compared = 0;
  for (int i = 0; i < 3000; ++i) {
    ContactInput in = states.next();
    in.modulus_mpa = infinity;
    const double spread_um = in.size_um * std::hypot(in.tip_spread, 0.5 * in.log_spread);
    const Contact c = contact(in);
    const double x = c.plane_height_um() / spread_um;
    if (x > 3.0) continue;  // the closed form cancels, and lacks the cut at 8 s
    const double tail = 0.5 * std::erfc(x / std::numbers::sqrt2);
    const double density = std::exp(-0.5 * x * x) / std::sqrt(2.0 * std::numbers::pi);
    const double mean = density / tail - x;
    ASSERT_NEAR(c.mean_depth_um() / (spread_um * mean), 1.0, 1e-11) << x;
    if (x < 1.0) {  // cubes cancel sooner
      const double cube = (x * x + 2.0) * density / tail - x * x * x - 3.0 * x;
      const double square = 1.0 + x * x - x * density / tail;
      const double groove = std::sqrt(cube / square * std::sqrt(cube / mean));
      ASSERT_NEAR(c.groove_depth_um() / (spread_um * groove), 1.0, 1e-11) << x;
    }
    ++compared;
  }
  EXPECT_GT(compared, 500);
}

}  // namespace
}  // namespace contact_states_test
