// Roughness of a sanded surface: V grooves with the depths of a contact's active tips, each below a
// plane that sinks with the profile, at random places, until the profile is steady. Once by dropping
// grooves on a profile, once by the law of that steady state; the constants of roughness.hpp, and
// what a groove takes off, are held to both. The slope of the flanks only stretches the profile, so lengths are in units of the
// half-width of a groove of mean depth, heights in units of that depth.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <span>
#include <vector>

#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/removal.hpp"
#include "levigate/surface/roughness.hpp"
#include "property/simulation.hpp"

namespace roughness_simulation_test {
namespace {

using namespace levigate;
using namespace levigate_tests;

constexpr double infinity = std::numeric_limits<double>::infinity();

// P1000 latex paper by hand on a coat.
constexpr ContactInput paper{.size_um = 18.3,
                             .log_spread = 0.2806,
                             .tip_spread = 0.15,
                             .modulus_mpa = 20.0,
                             .pressure_kpa = 1.7,
                             .hardness_mpa = 150.0};

ContactInput with(double ContactInput::*member, double value) {
  ContactInput input = paper;
  input.*member = value;
  return input;
}

// ---- grooves on a profile

constexpr double step = 0.04;  // 0.01 to 0.1 give the same to three digits
constexpr std::size_t points_per_unit = 25;

struct Sanded {
  std::vector<double> profile;
  double taken_off = 0;  ///< by a groove of the second half, over what it would take of a flat film
};

/// The plane that depths are counted from stands `plane` above the mean.
Sanded sanded_profile(const Contact& contact, std::uint64_t seed, std::size_t grooves_per_unit,
                      double plane) {
  constexpr std::size_t length = 2500;
  Random random(seed);
  std::vector<double> profile(length * points_per_unit, 0.0);
  const std::size_t size = profile.size();
  double sum = 0.0, half = 0.0;
  const std::size_t grooves = grooves_per_unit * length;
  for (std::size_t groove = 0; groove < grooves; ++groove) {
    if (2 * groove == grooves) half = sum;
    const auto centre = static_cast<std::size_t>(random.uniform() * static_cast<double>(size));
    const double bottom = sum / static_cast<double>(size) + plane -
                          contact.depth_um(random.uniform()) / contact.mean_depth_um();
    // The profile is nowhere steeper than a flank, so a groove ends where it first meets it.
    const auto cut = [&](std::size_t i, double flank) {
      if (profile[i] <= flank) return false;
      sum += flank - profile[i];
      profile[i] = flank;
      return true;
    };
    for (std::size_t j = 0; cut((centre + j) % size, bottom + step * static_cast<double>(j));) ++j;
    for (std::size_t j = 1;
         cut((centre + size - j) % size, bottom + step * static_cast<double>(j));)
      ++j;
  }
  const double area = (half - sum) * step / (0.5 * static_cast<double>(grooves));
  const double flat = contact.rms_depth_um() / contact.mean_depth_um();
  return {std::move(profile), area / (flat * flat)};
}

struct Roughness {
  double ra, rq, rt;
  double mean = 0;
};

/// Of one stretch, about its own mean.
Roughness roughness(std::span<const double> stretch) {
  const auto count = static_cast<double>(stretch.size());
  double level = 0, deviation = 0, squares = 0;
  for (const double z : stretch) level += z / count;
  for (const double z : stretch) {
    deviation += std::abs(z - level);
    squares += (z - level) * (z - level);
  }
  const auto [low, high] = std::minmax_element(stretch.begin(), stretch.end());
  return {deviation / count, std::sqrt(squares / count), *high - *low};
}

// ---- the law of the steady state

/// A groove of depth delta dropped when the plane stood w higher reaches below y at a point where its
/// axis is nearer than y + delta - w. Grooves are a Poisson process in place and time, so no groove
/// does with chance exp(-c E[max(0, y + delta)^2]). Heights are over the plane; c = 1 / E[delta^2]
/// where a groove takes off on the mean what it would of a flat film.
Roughness steady(const Contact& contact) {
  constexpr int count = 1200;
  const double mean = contact.mean_depth_um();
  const double deepest = contact.depth_um(1.0) / mean;
  const double fine = deepest / count;
  // squares[i]: E[max(0, delta - i fine)^2], the exceedance integrated twice.
  std::vector<double> squares(count + 1, 0.0);
  double tail = 0, beyond = 0;
  for (int i = count - 1; i >= 0; --i) {
    const double here = contact.exceedance(i * fine * mean);
    const double tail_here = tail + 0.5 * fine * (here + beyond);
    squares[static_cast<std::size_t>(i)] =
        squares[static_cast<std::size_t>(i) + 1] + fine * (tail_here + tail);
    tail = tail_here;
    beyond = here;
  }
  const double c = 1.0 / squares[0];
  const auto exceeds = [&](double y) {                                 // P(Y > y)
    if (y >= 0) return std::exp(-c * (squares[0] + 2.0 * y + y * y));  // the mean depth is 1
    const double place = -y / fine;
    if (place >= count) return 1.0;
    const auto i = static_cast<std::size_t>(place);
    return std::exp(-c * std::lerp(squares[i], squares[i + 1], place - static_cast<double>(i)));
  };
  double above = 0, below = 0, square = 0;
  for (int i = 0; i <= count; ++i) {
    const double weight = i == 0 || i == count ? 0.5 : 1.0;
    const double u = i * fine;
    const double deeper = -std::expm1(-c * squares[static_cast<std::size_t>(i)]);
    below += weight * fine * deeper;
    square += weight * fine * 2.0 * u * deeper;
    const double up = 8.0 / std::sqrt(c) / count;
    const double y = i * up;
    const double higher = exceeds(y);
    above += weight * up * higher;
    square += weight * up * 2.0 * y * higher;
  }
  // The mean lies below the plane, so half of Ra is what lies over the mean.
  const double level = above - below;
  double over = 0;
  for (int i = 0; i <= count; ++i) {
    const double weight = i == 0 || i == count ? 0.5 : 1.0;
    const double y = level + i * (8.0 / std::sqrt(c) - level) / count;
    over += weight * (8.0 / std::sqrt(c) - level) / count * exceeds(y);
  }
  return {2.0 * mean * over, mean * std::sqrt(square - level * level), 0.0, mean * level};
}

struct Measured {
  Estimate ra_per_mean, rq_per_mean, rt_per_ra, taken_off;
};

Measured measure(const ContactInput& input, std::size_t grooves_per_unit = 10) {
  const Contact c = contact(input);
  const double plane = -steady(c).mean / c.mean_depth_um();
  std::vector<double> ra, rq, rt_per_ra, taken_off;
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    const auto [profile, taken] = sanded_profile(c, seed, grooves_per_unit, plane);
    taken_off.push_back(taken);
    const Roughness whole = roughness(profile);
    ra.push_back(whole.ra);
    rq.push_back(whole.rq);
    // 1250 half-widths are 1.2 mm here, five cut-offs of 0.25 mm: the length that Rt is read on.
    rt_per_ra.push_back(roughness(std::span(profile).first(1250 * points_per_unit)).rt / whole.ra);
  }
  return {estimate_of(ra), estimate_of(rq), estimate_of(rt_per_ra), estimate_of(taken_off)};
}

TEST(RoughnessSimulation, LawOfTheSteadyStateIsThatOfConstantDepth) {
  // All tips equally deep: heights above the groove bottoms have a Rayleigh distribution.
  const Contact c = contact({.size_um = 10.0,
                             .log_spread = 0.0,
                             .tip_spread = 0.001,
                             .modulus_mpa = infinity,
                             .pressure_kpa = 1000.0,
                             .hardness_mpa = 1.0});
  const Roughness level = steady(c);
  // exp(-h^2) for the height h over the bottom: mean sqrt(pi) / 2, variance 1 - pi / 4.
  EXPECT_NEAR(level.rq / c.mean_depth_um(), std::sqrt(1.0 - std::numbers::pi / 4.0), 1e-3);
  EXPECT_NEAR(level.ra / c.mean_depth_um(),
              std::sqrt(std::numbers::pi) * std::erfc(std::sqrt(std::numbers::pi) / 2.0), 1e-3);
  EXPECT_NEAR(level.mean / c.mean_depth_um(), std::sqrt(std::numbers::pi) / 2.0 - 1.0, 1e-3);
}

// ---- comparisons

void expect_inside(double value, const Estimate& interval) {
  EXPECT_GE(value, interval.low);
  EXPECT_LE(value, interval.high);
}

void expect_steady(const ContactInput& input, const Measured& m) {
  const Contact c = contact(input);
  const Roughness law = steady(c);
  expect_inside(law.ra / c.mean_depth_um(), m.ra_per_mean);
  expect_inside(law.rq / c.mean_depth_um(), m.rq_per_mean);
  // Removal, roughness and marks count the same grooves: one takes off what it would of a flat film.
  EXPECT_NEAR(m.taken_off.value, 1.0, 0.02);
}

TEST(RoughnessSimulation, Paper) {
  const Measured m = measure(paper);
  expect_steady(paper, m);
  expect_committed("ra_paper", m.ra_per_mean);
  expect_committed("rq_paper", m.rq_per_mean);
  expect_committed("rt_paper", m.rt_per_ra);
  // General tables of surface texture: Rt is 5 to 10 times Ra for Ra from 0.05 to 1.6 um.
  EXPECT_GT(m.rt_per_ra.low, 5.0);
  EXPECT_LT(m.rt_per_ra.high, 10.0);
}

TEST(RoughnessSimulation, SoftBacking) {
  const ContactInput soft = with(&ContactInput::modulus_mpa, 0.5);
  const Measured m = measure(soft);
  expect_steady(soft, m);
  expect_committed("ra_soft", m.ra_per_mean);
  expect_committed("rq_soft", m.rq_per_mean);
}

TEST(RoughnessSimulation, RigidBacking) {
  const ContactInput rigid = with(&ContactInput::modulus_mpa, infinity);
  const Measured m = measure(rigid);
  expect_steady(rigid, m);
  expect_committed("ra_rigid", m.ra_per_mean);
  expect_committed("rq_rigid", m.rq_per_mean);
}

TEST(RoughnessSimulation, FlatAndSteepTips) {
  for (const double flank_deg : {10.0, 30.0}) {
    const ContactInput input = with(&ContactInput::flank_deg, flank_deg);
    expect_steady(input, measure(input));
  }
}

TEST(RoughnessSimulation, IsSteady) { expect_steady(paper, measure(paper, 30)); }

struct Spread {
  double low = infinity, high = 0;
  void add(double x) {
    low = std::min(low, x);
    high = std::max(high, x);
  }
};

struct LawSpread {
  Spread ra, rq, ra_per_mean;

  void add(const ContactInput& input) {
    const Contact c = contact(input);
    const Roughness law = steady(c);
    ra.add(law.ra / c.groove_depth_um());
    rq.add(law.rq / c.groove_depth_um());
    ra_per_mean.add(law.ra / c.mean_depth_um());
    EXPECT_DOUBLE_EQ(ra_um(c), ra_per_groove_depth * c.groove_depth_um());
    EXPECT_DOUBLE_EQ(rq_um(c), rq_per_groove_depth * c.groove_depth_um());
  }
};

void expect_within(const Spread& spread, double constant, double share) {
  EXPECT_GT(spread.low, constant * (1.0 - share));
  EXPECT_LT(spread.high, constant * (1.0 + share));
}

// Every backing, and a rigid one, with the ends of its bands, under every block, on the softest and
// the hardest coating, for narrow and wide grades. Sizes only scale (unit/surface/contact_test.cpp).
TEST(RoughnessSimulation, LawHoldsForTheProfiles) {
  double softest_mpa = infinity, hardest_mpa = 0;
  for (const CoatingProfile& coating : coating_table) {
    softest_mpa = std::min(softest_mpa, coating.hardness_mpa.low);
    hardest_mpa = std::max(hardest_mpa, coating.hardness_mpa.high);
  }
  LawSpread spread;
  for (const BackingProfile& backing : backing_table) {
    for (const double modulus_mpa : {backing.modulus_mpa.low, backing.modulus_mpa.high, infinity}) {
      for (const double tip_spread : {backing.tip_spread.low, backing.tip_spread.high}) {
        for (const BlockProfile& block : block_table) {
          for (const double hardness_mpa : {softest_mpa, hardest_mpa}) {
            for (const double log_spread : {0.15, 0.3}) {
              spread.add(
                  {.size_um = 18.3,
                   .log_spread = log_spread,
                   .tip_spread = tip_spread,
                   .modulus_mpa = modulus_mpa,
                   .pressure_kpa = kpa_from_n_per_cm2(block.force_n.value, block.area_cm2.value),
                   .hardness_mpa = hardness_mpa});
            }
          }
        }
      }
    }
  }
  expect_within(spread.ra, ra_per_groove_depth, 0.006);
  expect_within(spread.rq, rq_per_groove_depth, 0.019);
  // What rules out a multiple of the mean depth.
  EXPECT_LT(spread.ra_per_mean.low, 0.6);
  EXPECT_GT(spread.ra_per_mean.high, 0.9);
  expect_committed("ra_law", {ra_per_groove_depth, spread.ra.low, spread.ra.high});
  expect_committed("rq_law", {rq_per_groove_depth, spread.rq.low, spread.rq.high});
}

TEST(RoughnessSimulation, LawHoldsForAnyContact) {
  Random random(7);
  LawSpread spread;
  for (int i = 0; i < 200; ++i) {
    spread.add({.size_um = random.log_uniform(0.01, 1e4),
                .log_spread = random.uniform(),
                .tip_spread = random.log_uniform(1e-3, 1.0),
                .modulus_mpa = i % 10 == 0 ? infinity : random.log_uniform(0.01, 1e6),
                .pressure_kpa = random.log_uniform(0.01, 1e3),
                .hardness_mpa = random.log_uniform(1.0, 1e5),
                .flank_deg = random.log_uniform(1.0, 80.0),
                .packing = random.log_uniform(0.01, 1.0)});
  }
  expect_within(spread.ra, ra_per_groove_depth, 0.02);
  expect_within(spread.rq, rq_per_groove_depth, 0.03);
}

}  // namespace
}  // namespace roughness_simulation_test
