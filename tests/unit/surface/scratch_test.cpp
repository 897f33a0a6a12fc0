#include "levigate/surface/scratch.hpp"

#include "levigate/surface/removal.hpp"
#include "levigate/surface/roughness.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace scratch_test {
namespace {

using namespace levigate;

Contact touch(double size_um, double pressure_kpa, double hardness_mpa) {
  return contact({.size_um = size_um,
                  .log_spread = 0.28,
                  .tip_spread = 0.15,
                  .modulus_mpa = 20.0,
                  .pressure_kpa = pressure_kpa,
                  .hardness_mpa = hardness_mpa});
}

// Ra over grain size of metals ground with paper, belt or paste: 0.004 to 0.02. General tables for
// tool steel and stainless steel, which differ by a factor of 2 to 8 at one grade.
TEST(Scratch, RoughnessStaysInThePublishedBand) {
  for (const double size_um : {5.0, 18.3, 58.5, 125.0}) {
    for (const double pressure_kpa : {1.0, 1.7, 10.0}) {
      for (const double hardness_mpa : {60.0, 150.0, 200.0}) {
        const double ratio = ra_um(touch(size_um, pressure_kpa, hardness_mpa)) / size_um;
        EXPECT_GT(ratio, 0.004) << size_um << " " << pressure_kpa << " " << hardness_mpa;
        EXPECT_LT(ratio, 0.02) << size_um << " " << pressure_kpa << " " << hardness_mpa;
      }
    }
  }
}

// The same tables: Ra grows as the 0.94th to 1.20th power of the size. The model has exactly 1 for
// grades of equal spread.
TEST(Scratch, RoughnessIsProportionalToTheGrain) {
  const double exponent =
      std::log(ra_um(touch(125.0, 1.7, 150.0)) / ra_um(touch(8.4, 1.7, 150.0))) /
      std::log(125.0 / 8.4);
  EXPECT_NEAR(exponent, 1.0, 1e-12);
}

// The steady state of random V grooves integrated in independent arithmetic for P1000 latex paper at
// 1.7 kPa on 150 MPa gives these Ra and Rq; the law may differ by 0.6 and 1.9 %.
TEST(Scratch, RoughnessOfP1000Paper) {
  struct Case {
    double flank_deg, ra_um, rq_um, groove_depth_um;
  };
  for (const Case& at :
       {Case{20.0, 0.198179, 0.249784, 0.541869}, Case{11.0, 0.111207, 0.140133, 0.303549}}) {
    const Contact c = contact({.size_um = 18.3,
                               .log_spread = 0.280634,
                               .tip_spread = 0.15,
                               .modulus_mpa = 20.0,
                               .pressure_kpa = 1.7,
                               .hardness_mpa = 150.0,
                               .flank_deg = at.flank_deg});
    EXPECT_NEAR(ra_um(c), at.ra_um, 0.006 * at.ra_um);
    EXPECT_NEAR(rq_um(c), at.rq_um, 0.019 * at.rq_um);
    EXPECT_NEAR(ra_um(c), 0.366 * at.groove_depth_um, 5e-7);
    EXPECT_NEAR(rq_um(c), 0.468 * at.groove_depth_um, 5e-7);
  }
}

// Removal, roughness and marks count the same grooves: each takes off the share f of its area.
TEST(Scratch, GroovesAreThoseThatTheRemovalTakes) {
  for (const double flank_deg : {8.0, 11.0, 16.0}) {
    for (const double efficiency : {0.15, 0.6}) {
      const Contact c = contact({.size_um = 100.0,
                                 .log_spread = 0.2,
                                 .tip_spread = 0.15,
                                 .modulus_mpa = 20.0,
                                 .pressure_kpa = 1.7,
                                 .hardness_mpa = 150.0,
                                 .flank_deg = flank_deg});
      const double rate =
          removal_rate_um_per_m(wear_coefficient(efficiency, flank_deg), 100.0, 1.7, 150.0);
      const double groove_um2 = efficiency * c.rms_depth_um() * c.rms_depth_um() /
                                std::tan(flank_deg * std::numbers::pi / 180.0);
      EXPECT_NEAR(grooves_per_um2(c, rate) * groove_um2, 1.0, 1e-11);
    }
  }
}

TEST(Scratch, DepthIsTheQuantile) {
  const Contact c = touch(18.3, 1.7, 150.0);
  EXPECT_EQ(scratch_depth_um(c, 0.99), c.depth_um(0.99));
  EXPECT_GT(scratch_depth_um(c, 0.999), scratch_depth_um(c, 0.99));
  EXPECT_THROW(scratch_depth_um(c, 1.5), OutOfRange);
}

TEST(Scratch, NanIn) {
  const Contact c = touch(std::nan(""), 1.7, 150.0);
  EXPECT_TRUE(std::isnan(ra_um(c)));
  EXPECT_TRUE(std::isnan(rq_um(c)));
  EXPECT_TRUE(std::isnan(scratch_depth_um(c, 0.99)));
  EXPECT_TRUE(std::isnan(scratch_depth_um(touch(18.3, 1.7, 150.0), std::nan(""))));
}

}  // namespace
}  // namespace scratch_test
