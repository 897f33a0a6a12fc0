// Roughness of a sanded surface by simulation: V grooves with the depths of a contact's active
// tips, each below the running mean of the profile, at random places, until the profile is steady.
// The slope of the flanks only stretches the profile, so lengths are in units of the half-width of
// a groove of mean depth, heights in units of that depth.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <random>
#include <span>
#include <vector>

#include "levigate/surface/scratch.hpp"

namespace {

using namespace levigate;

constexpr double step = 0.04;  // 0.01 to 0.1 give the same to three digits
constexpr std::size_t points_per_unit = 25;

// P1000 latex paper by hand on a coat.
constexpr ContactInput paper{.size_um = 18.3,
                             .log_spread = 0.2806,
                             .tip_spread = 0.15,
                             .modulus_mpa = 20.0,
                             .pressure_kpa = 1.7,
                             .hardness_mpa = 150.0};

std::vector<double> sanded_profile(const Contact& contact, std::uint64_t seed) {
  constexpr std::size_t length = 2500;
  constexpr int grooves_per_unit = 40;  // steady from 5 on
  std::mt19937_64 engine(seed);
  const auto uniform = [&] { return static_cast<double>(engine() >> 11) * 0x1p-53; };
  std::vector<double> profile(length * points_per_unit, 0.0);
  const std::size_t size = profile.size();
  double sum = 0.0;
  for (std::size_t groove = 0; groove < grooves_per_unit * length; ++groove) {
    const auto centre = static_cast<std::size_t>(uniform() * static_cast<double>(size));
    const double bottom =
        sum / static_cast<double>(size) - contact.depth_um(uniform()) / contact.mean_depth_um();
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
  return profile;
}

struct Roughness {
  double ra, rq, rt;
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

/// Mean of independent runs, and the standard error of that mean.
struct Estimate {
  double mean, standard_error;
};

Estimate estimate(const std::vector<double>& runs) {
  const auto count = static_cast<double>(runs.size());
  double sum = 0, squares = 0;
  for (const double run : runs) sum += run;
  for (const double run : runs) squares += (run - sum / count) * (run - sum / count);
  return {sum / count, std::sqrt(squares / (count - 1.0) / count)};
}

struct Measured {
  Estimate ra, rq, rt_per_ra;
};

Measured measure(const ContactInput& input) {
  const Contact c = contact(input);
  std::vector<double> ra, rq, rt_per_ra;
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    const std::vector<double> profile = sanded_profile(c, seed);
    const Roughness whole = roughness(profile);
    ra.push_back(whole.ra);
    rq.push_back(whole.rq);
    // 1250 half-widths are 1.2 mm here, five cut-offs of 0.25 mm: the length that Rt is read on.
    rt_per_ra.push_back(roughness(std::span(profile).first(1250 * points_per_unit)).rt / whole.ra);
  }
  return {estimate(ra), estimate(rq), estimate(rt_per_ra)};
}

// What scratch.hpp states of the simulation.
TEST(ContactRoughness, OfPaperOnACoat) {
  const Measured m = measure(paper);
  EXPECT_LT(m.ra.standard_error, 0.01);
  EXPECT_LT(m.rq.standard_error, 0.01);
  EXPECT_NEAR(m.ra.mean, 0.631, 3.0 * m.ra.standard_error);
  EXPECT_NEAR(m.rq.mean, 0.795, 3.0 * m.rq.standard_error);
}

TEST(ContactRoughness, SpansTheConstantsFromSoftToRigidBackings) {
  ContactInput backed = paper;
  backed.modulus_mpa = 0.5;
  const Measured soft = measure(backed);
  EXPECT_NEAR(soft.ra.mean, 0.56, 0.02);
  EXPECT_NEAR(soft.rq.mean, 0.70, 0.02);
  backed.modulus_mpa = std::numeric_limits<double>::infinity();
  const Measured rigid = measure(backed);
  EXPECT_NEAR(rigid.ra.mean, 0.93, 0.05);
  EXPECT_NEAR(rigid.rq.mean, 1.20, 0.06);
}

TEST(ContactRoughness, ConstantsAreLowByLessThanAFifth) {
  for (const double tip_spread : {0.08, 0.12, 0.15, 0.20}) {
    ContactInput sheet = paper;
    sheet.tip_spread = tip_spread;
    const Measured m = measure(sheet);
    EXPECT_GT(ra_per_mean_depth / m.ra.mean, 0.8);
    EXPECT_LT(ra_per_mean_depth / m.ra.mean, 1.0);
    EXPECT_GT(rq_per_mean_depth / m.rq.mean, 0.8);
    EXPECT_LT(rq_per_mean_depth / m.rq.mean, 1.0);
  }
}

// General tables of surface texture: Rt is 5 to 10 times Ra for Ra from 0.05 to 1.6 um.
TEST(ContactRoughness, DeepestValleyIsInThePublishedBand) {
  const Measured m = measure(paper);
  EXPECT_GT(m.rt_per_ra.mean, 5.0);
  EXPECT_LT(m.rt_per_ra.mean, 10.0);
}

}  // namespace
