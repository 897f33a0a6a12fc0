#include "levigate/surface/meter.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include "levigate/detail/quadrature.hpp"

namespace meter_test {
namespace {

using namespace levigate;

constexpr double angles_deg[] = {20.0, 60.0, 85.0};
constexpr Lay lays[] = {Lay::across, Lay::along};

// A coat after P1500.
constexpr MeterInput coat{.refractive_index = 1.52,
                          .angle_deg = 60.0,
                          .rq_um = 0.1,
                          .flank_deg = 11.0,
                          .lay = Lay::across};

MeterInput with(double MeterInput::*member, double value, MeterInput input = coat) {
  input.*member = value;
  return input;
}

TEST(Meter, SmoothFilmReadsItsGloss) {
  for (const double angle_deg : angles_deg) {
    for (const Lay lay : lays) {
      for (const double rq_um : {0.0, 1e-200, 1e-10}) {
        EXPECT_DOUBLE_EQ(meter_reading_gu({1.567, angle_deg, rq_um, 11.0, lay}), 100.0);
        EXPECT_EQ(meter_reading_gu({1.52, angle_deg, rq_um, 11.0, lay}),
                  gloss_gu(1.52, angle_deg, 0.0));
      }
    }
  }
}

TEST(Meter, LiesBetweenMirrorImageAndSmoothFilm) {
  for (const double angle_deg : angles_deg) {
    for (const Lay lay : lays) {
      for (double flank_deg = 1.0; flank_deg <= 80.0; flank_deg *= 1.2) {
        for (double rq_um = 1e-4; rq_um < 1000.0; rq_um *= 1.5) {
          const double reading = meter_reading_gu({1.52, angle_deg, rq_um, flank_deg, lay});
          EXPECT_GE(reading, gloss_gu(1.52, angle_deg, rq_um));
          EXPECT_LE(reading, gloss_gu(1.52, angle_deg, 0.0));
        }
      }
    }
  }
}

TEST(Meter, NeverRisesWithRoughness) {
  for (const double angle_deg : angles_deg) {
    for (const Lay lay : lays) {
      for (double flank_deg = 1.0; flank_deg <= 80.0; flank_deg *= 1.1) {
        double before = meter_reading_gu({1.52, angle_deg, 1e-4, flank_deg, lay});
        for (double rq_um = 1.05e-4; rq_um < 1000.0; rq_um *= 1.05) {
          const double reading = meter_reading_gu({1.52, angle_deg, rq_um, flank_deg, lay});
          ASSERT_LE(reading, before) << angle_deg << " " << flank_deg << " " << rq_um;
          before = reading;
        }
      }
    }
  }
}

TEST(Meter, FallsWithTheFlankAndGrowsWithTheIndex) {
  for (const double angle_deg : angles_deg) {
    for (const Lay lay : lays) {
      for (double flank_deg = 8.0; flank_deg < 16.0; flank_deg += 0.5) {
        const MeterInput input{1.52, angle_deg, 0.1, flank_deg, lay};
        const double reading = meter_reading_gu(input);
        EXPECT_GT(reading, meter_reading_gu(with(&MeterInput::flank_deg, flank_deg + 0.5, input)));
        EXPECT_LT(reading, meter_reading_gu(with(&MeterInput::refractive_index, 1.53, input)));
      }
    }
  }
}

// The receptor is wider to the sides, and no cosine shortens the wave number there.
TEST(Meter, ReadsMoreAlongTheLayThanAcross) {
  for (const double angle_deg : angles_deg) {
    for (double rq_um = 0.01; rq_um < 3.0; rq_um *= 1.3) {
      EXPECT_GT(meter_reading_gu({1.52, angle_deg, rq_um, 11.0, Lay::along}),
                meter_reading_gu({1.52, angle_deg, rq_um, 11.0, Lay::across}));
    }
  }
}

/// 1 / pi times the integral of C(s) sin(K s) / s over all s, with the correlation of the scattered
/// light as documented. It dies as exp(-0.97 s): 40 leaves 1e-17.
double share_by_quadrature(double phase, double reach) {
  const double u = phase / gain_phase;
  const double gain = std::pow(2.0 * u / (1.0 + u * u), 3);
  const double b = phase / std::sqrt(1.0 - std::exp(-phase * phase)) * (1.0 + facet_gain * gain);
  const double a = edges_per_rq * (1.0 + edge_gain * gain);
  const double w = std::sqrt(b * b - a * a);
  double integral = 0;
  detail::for_each_node(0.0, 40.0, 200, [&](double s, double weight) {
    const double correlation = std::exp(-a * s) * (std::cos(w * s) + a / w * std::sin(w * s));
    integral += weight * correlation * std::sin(reach * s) / s;
  });
  const double specular = std::exp(-phase * phase);
  return specular + (1.0 - specular) * 2.0 / std::numbers::pi * integral;
}

TEST(Meter, IsTheTransformOfTheCorrelation) {
  for (const double phase : {0.1, 0.5, 1.0, 1.8, 3.0, 8.0}) {
    for (const double reach : {0.01, 0.1, 0.5, 1.0, 3.0, 10.0}) {
      EXPECT_NEAR(detail::share_within(phase, reach), share_by_quadrature(phase, reach), 1e-12)
          << phase << " " << reach;
    }
  }
}

struct Rim {
  double angle_deg, in_plane_deg, sideways_deg;
};

// The same from lengths and angles.
TEST(Meter, UsesTheRimsOfTheReceptor) {
  constexpr double rad_per_deg = std::numbers::pi / 180.0;
  constexpr double flank_deg = 16.0;
  const double wave_per_um = 2.0 * std::numbers::pi / 0.55;
  const double length_um = 0.1 / std::tan(flank_deg * rad_per_deg);
  for (const Rim& rim : {Rim{20.0, 0.9, 1.8}, Rim{60.0, 2.2, 5.85}, Rim{85.0, 2.0, 3.0}}) {
    const double cosine = std::cos(rim.angle_deg * rad_per_deg);
    const double smooth_gu = gloss_gu(1.52, rim.angle_deg, 0.0);
    const double phase = 2.0 * wave_per_um * 0.1 * cosine;
    const double across = wave_per_um * cosine * std::sin(rim.in_plane_deg * rad_per_deg);
    const double along = wave_per_um * std::sin(rim.sideways_deg * rad_per_deg);
    EXPECT_NEAR(meter_reading_gu({1.52, rim.angle_deg, 0.1, flank_deg, Lay::across}),
                smooth_gu * share_by_quadrature(phase, across * length_um), 1e-10);
    EXPECT_NEAR(meter_reading_gu({1.52, rim.angle_deg, 0.1, flank_deg, Lay::along}),
                smooth_gu * share_by_quadrature(phase, along * length_um), 1e-10);
  }
}

// At 85 degrees along the lay the receptor takes in the mirror images in flanks of 11 degrees. The
// share then has a minimum over the roughness, and the reading stays there.
TEST(Meter, StaysAtItsLeastWhereItTakesInTheFlanks) {
  const MeterInput grazing{1.52, 85.0, 0.0, 11.0, Lay::along};
  constexpr double rad_per_deg = std::numbers::pi / 180.0;
  const double ratio = std::sin(3.0 * rad_per_deg) / std::cos(85.0 * rad_per_deg) /
                       (2.0 * std::tan(11.0 * rad_per_deg));
  ASSERT_GT(ratio, 1.0);
  double least = 1.0;
  for (double phase = 0.01; phase < 20.0; phase *= 1.001) {
    least = std::min(least, detail::share_within(phase, ratio * phase));
  }
  EXPECT_LT(least, detail::share_within(20.0, 20.0 * ratio) - 0.02);
  const double rough = meter_reading_gu(with(&MeterInput::rq_um, 10.0, grazing));
  EXPECT_NEAR(rough, gloss_gu(1.52, 85.0, 0.0) * least, 1e-4);
  EXPECT_EQ(meter_reading_gu(with(&MeterInput::rq_um, 1000.0, grazing)), rough);
}

TEST(Meter, RoughFilmIsMatt) {
  EXPECT_LT(meter_reading_gu(with(&MeterInput::rq_um, 1.0)), 1.5);
  EXPECT_LT(meter_reading_gu(with(&MeterInput::rq_um, 1000.0)), 1e-2);
}

TEST(Meter, NanIn) {
  for (const auto member : {&MeterInput::refractive_index, &MeterInput::angle_deg,
                            &MeterInput::rq_um, &MeterInput::flank_deg}) {
    EXPECT_TRUE(std::isnan(meter_reading_gu(with(member, std::nan("")))));
  }
  EXPECT_TRUE(std::isnan(specular_phase(std::nan(""), 0.1)));
  EXPECT_TRUE(std::isnan(specular_phase(60.0, std::nan(""))));
}

TEST(Meter, RejectsWhatIsOutOfRange) {
  const double infinity = std::numeric_limits<double>::infinity();
  EXPECT_THROW(meter_reading_gu(with(&MeterInput::refractive_index, 0.99)), OutOfRange);
  EXPECT_THROW(meter_reading_gu(with(&MeterInput::refractive_index, 4.1)), OutOfRange);
  EXPECT_THROW(meter_reading_gu(with(&MeterInput::rq_um, -0.1)), OutOfRange);
  EXPECT_THROW(meter_reading_gu(with(&MeterInput::rq_um, infinity)), OutOfRange);
  EXPECT_THROW(meter_reading_gu(with(&MeterInput::flank_deg, 0.9)), OutOfRange);
  EXPECT_THROW(meter_reading_gu(with(&MeterInput::flank_deg, 81.0)), OutOfRange);
}

TEST(Meter, RefusesAnAngleThatNoMeterHas) {
  try {
    meter_reading_gu(with(&MeterInput::angle_deg, 45.0));
    FAIL();
  } catch (const BadInput& error) {
    EXPECT_EQ(error.quantity(), "angle_deg");
    EXPECT_EQ(std::string(error.what()),
              "angle_deg = 45 deg is no angle of a meter: it has 20, 60 and 85 deg");
  }
}

TEST(Meter, LayHasAName) {
  EXPECT_EQ(to_string(Lay::across), "across");
  EXPECT_EQ(to_string(Lay::along), "along");
  EXPECT_EQ(choices<Lay>.size(), 2U);
}

}  // namespace
}  // namespace meter_test
