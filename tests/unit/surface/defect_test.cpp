#include "levigate/surface/defect.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <vector>

#include "levigate/surface/removal.hpp"
#include "levigate/surface/take_down.hpp"
#include "levigate/text/sentences.hpp"

namespace defect_test {
namespace {

using namespace levigate;
using testing::HasSubstr;
using testing::ThrowsMessage;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr Defect run{DefectKind::run, 150.0, 12.0, 60.0};

LocalBlock with_p600(const char* name) {
  const Block block = block_named(name);
  return {block, removal_rate_um_per_m(0.02, 25.8, block.pressure_kpa(), 150.0)};
}

LocalTools tools_with(const char* zone_block) {
  return {.small_block = with_p600("small hard block"), .zone_block = with_p600(zone_block)};
}

TEST(Defect, HeightFromTwoReadings) {
  EXPECT_EQ(height_from_readings_um(255.0, 105.0, 5.0), 150.0);
  EXPECT_EQ(height_from_readings_um(110.0, 105.0, 5.0), 5.0);
  EXPECT_THAT([] { height_from_readings_um(105.0, 105.0, 0.0); },
              ThrowsMessage<BadInput>(HasSubstr("nothing that stands proud")));
  EXPECT_THROW(height_from_readings_um(100.0, 105.0, 0.0), BadInput);
  EXPECT_THAT([] { height_from_readings_um(109.0, 105.0, 5.0); },
              ThrowsMessage<BadInput>(HasSubstr("less than their uncertainty of 5 um")));
  EXPECT_THROW(height_from_readings_um(-1.0, 0.0, 0.0), OutOfRange);
  EXPECT_THROW(height_from_readings_um(9.0, -1.0, 0.0), OutOfRange);
  EXPECT_THROW(height_from_readings_um(9.0, 1.0, nan), OutOfRange);
}

TEST(Defect, Volumes) {
  EXPECT_DOUBLE_EQ(volume_above_mm3(run, 0.0), 2.0 / 3.0 * 0.15 * 12.0 * 60.0);
  EXPECT_DOUBLE_EQ(volume_above_mm3({DefectKind::nib, 40.0, 2.0, 2.0}, 0.0),
                   std::numbers::pi / 8.0 * 0.04 * 4.0);
  EXPECT_EQ(volume_above_mm3(run, 150.0), 0.0);
  EXPECT_EQ(volume_above_mm3(run, 151.0), 0.0);
  EXPECT_THROW(volume_above_mm3(run, nan), OutOfRange);
}

// Slices of the shape itself, width and length at each height.
TEST(Defect, VolumeAboveAHeightIsThatOfItsSlices) {
  for (const DefectKind kind : {DefectKind::ridge, DefectKind::drip}) {
    const Defect defect{kind, 120.0, 5.0, 9.0};
    double sum = 0;
    constexpr int slices = 1000000;  // the root at the top leaves 0.09 / slices^1.5
    const double thick = (120.0 - 60.0) / slices;
    for (int i = 0; i < slices; ++i) {
      const double across = std::sqrt(1.0 - (60.0 + (i + 0.5) * thick) / 120.0);
      sum += 1e-3 * thick * 5.0 * across *
             (kind == DefectKind::drip ? std::numbers::pi / 4.0 * 9.0 * across : 9.0);
    }
    EXPECT_NEAR(volume_above_mm3(defect, 60.0) / sum, 1.0, 1e-9);
  }
}

TEST(Defect, WhatCannotBe) {
  const auto volume = [](Defect defect) { return volume_above_mm3(defect, 0.0); };
  EXPECT_THROW(volume({DefectKind::run, 0.0, 1.0, 1.0}), OutOfRange);
  EXPECT_THROW(volume({DefectKind::run, nan, 1.0, 1.0}), OutOfRange);
  EXPECT_THROW(volume({DefectKind::run, 10.0, 0.0, 1.0}), OutOfRange);
  EXPECT_THROW(volume({DefectKind::run, 10.0, 1.0, 2e5}), OutOfRange);
  EXPECT_THROW(volume({DefectKind::run, 10.0, 1.0, 1.0, 0}), OutOfRange);
  EXPECT_THAT(
      [&] {
        volume({DefectKind::run, 10.0, 2.0, 1.0});
      },
      ThrowsMessage<BadInput>(HasSubstr("the longer side is the length")));
}

// A rigid block stroke by stroke: moments for the tilted block, even pressure for one beside the
// defect; what lands on each place. phi and the peak are printed in the comment of sanded_flat().
TEST(Defect, SandedFlatEqualsASteppedRigidBlock) {
  for (const double stroke : {60.0, 150.0, 320.0}) {
    LocalTools tools = tools_with("hard block");
    tools.zone_block.block.modulus_mpa = std::numeric_limits<double>::infinity();
    tools.stroke_mm = stroke;
    const double face = 10.0 * std::sqrt(tools.zone_block.block.area_cm2);
    std::vector<double> landed(1000, 0.0);  // load on each 0.5 mm beside the defect
    double on_defect = 0;
    constexpr int places = 200001;
    for (int i = 0; i < places; ++i) {
      const double middle = stroke * ((i + 0.5) / places - 0.5);
      if (std::abs(middle) < 0.5 * face) {
        const double arm = std::abs(middle);  // the defect's, from the middle; the far end's is L/2
        const double far = arm / (arm + 0.5 * face);
        on_defect += 1.0 - far;
        if (middle > 0) landed[static_cast<std::size_t>(2.0 * (middle + 0.5 * face))] += far;
      } else if (middle > 0) {
        for (double x = middle - 0.5 * face; x < middle + 0.5 * face; x += 0.5) {
          landed[static_cast<std::size_t>(2.0 * x)] += 0.5 / face;
        }
      }
    }
    const double peak = *std::max_element(landed.begin(), landed.end()) / places / 0.5;
    const double mm3 = volume_above_mm3(run, tools.residual_um);
    const double film_um = 1e3 * mm3 * peak / (on_defect / places) / std::max(60.0, face);
    EXPECT_NEAR(sanded_flat(run, tools).film_um / film_um, 1.0, 0.02) << stroke;
  }
}

// The height of the run stepped down, load h/h_c of the rigid one below h_c.
TEST(Defect, SoftFaceEqualsASteppedOne) {
  for (const Defect& defect : {run, Defect{DefectKind::drip, 60.0, 8.0, 8.0}}) {
    const LocalTools tools = tools_with("cork block");
    const Block& cork = tools.zone_block.block;
    const double face = 10.0 * std::sqrt(cork.area_cm2);
    const double area = defect.width_mm * defect.length_mm *
                        (defect.kind == DefectKind::drip ? std::numbers::pi / 4.0 : 1.0);
    const double stiffness_n_mm = 2.0 * std::sqrt(area / std::numbers::pi) * cork.modulus_mpa;
    const double load_n = std::log(2.0) * cork.force_n;
    double work = 0;  // volume that the rigid load would have removed
    constexpr int steps = 100000;
    const double step = (defect.height_um - tools.residual_um) / steps;
    double above = volume_above_mm3(defect, defect.height_um);
    for (int i = 0; i < steps; ++i) {
      const double height = defect.height_um - (i + 0.5) * step;
      const double with_slice = volume_above_mm3(defect, height - 0.5 * step);
      work += (with_slice - above) * std::max(1.0, load_n / (stiffness_n_mm * 1e-3 * height));
      above = with_slice;
    }
    const double volume = volume_above_mm3(defect, tools.residual_um);
    EXPECT_GT(work, 1.2 * volume);
    const double share = std::log(2.0) * face / tools.stroke_mm;
    const double film_um =
        1e3 * (0.5 * volume / face + (work - volume) / tools.stroke_mm) / (share * face);
    EXPECT_NEAR(sanded_flat(defect, tools).film_um / film_um, 1.0, 1e-6);
  }
}

TEST(Defect, TravelOfTheSmallBlockIsThatOfArchardsLaw) {
  const LocalTools tools = tools_with("hard block");
  const Block& block = tools.small_block.block;
  const LocalWork work = take_down(run, tools);
  // s = V H / (K eta F), the area nowhere in it.
  const double travel_m =
      1e-9 * work.blocked_mm3 * 150e6 / (0.02 * std::sqrt(0.258) * block.force_n);
  EXPECT_NEAR(work.block_minutes, travel_m / block.speed_m_s / block.duty / 60.0,
              1e-12 * work.block_minutes);
}

TEST(Defect, ATallRunIsShavedAndMasked) {
  for (const char* zone_block : {"hard block", "cork block", "rubber block", "foam pad"}) {
    const LocalTools tools = tools_with(zone_block);
    const LocalWork work = take_down(run, tools);
    EXPECT_TRUE(work.shaved && work.masked);
    EXPECT_NEAR(work.shaved_mm3, 72.0 * std::pow(0.6, 1.5), 1e-12);
    EXPECT_NEAR(work.shaved_mm3 + work.blocked_mm3, volume_above_mm3(run, tools.residual_um),
                1e-12);
    EXPECT_NEAR(work.local.minutes, work.block_minutes + 2.0, 1e-12);
    EXPECT_EQ(work.local.film_um, 0.0);
    EXPECT_TRUE(work.flat_is_worse) << zone_block;
    EXPECT_GT(work.flat.minutes, 1.25 * work.local.minutes) << zone_block;
    EXPECT_GT(work.flat.film_um, 9.0) << zone_block;
    EXPECT_THAT(sentence(work), HasSubstr("shave down to the tape (60 um)"));
    EXPECT_THAT(sentence(work), HasSubstr("slower and costs film"));
  }
}

TEST(Defect, LowerOnesAreOnlyBlocked) {
  const LocalWork sag = take_down({DefectKind::sag, 90.0, 12.0, 60.0}, tools_with("hard block"));
  EXPECT_TRUE(sag.masked && !sag.shaved);
  EXPECT_EQ(sag.shaved_mm3, 0.0);
  EXPECT_THAT(sentence(sag), HasSubstr("quicker but costs film"));
  const LocalWork nib = take_down({DefectKind::nib, 40.0, 2.0, 2.0}, tools_with("hard block"));
  EXPECT_TRUE(!nib.masked && !nib.shaved && !nib.flat_is_worse);
  EXPECT_EQ(nib.local.minutes, nib.block_minutes);
  EXPECT_THAT(sentence(nib), HasSubstr("no hollow that shows"));
}

TEST(Defect, LowerThanWhatMayStayIsNoWork) {
  const LocalWork work = take_down({DefectKind::sag, 0.4, 9.0, 9.0}, tools_with("foam pad"));
  EXPECT_EQ(work.local.minutes, 0.0);
  EXPECT_EQ(work.flat.minutes, 0.0);
  EXPECT_EQ(work.flat.film_um, 0.0);
}

TEST(Defect, EqualOnesTakeEqualTime) {
  const LocalTools tools = tools_with("cork block");
  Defect three = run;
  three.count = 3;
  const LocalWork one = take_down(run, tools), all = take_down(three, tools);
  EXPECT_NEAR(all.local.minutes, 3.0 * one.local.minutes, 1e-11);
  EXPECT_NEAR(all.flat.minutes, 3.0 * one.flat.minutes, 1e-11);
  EXPECT_EQ(all.flat.film_um, one.flat.film_um);
}

TEST(Defect, SofterBlocksCostMoreFilm) {
  double before = 0;
  for (const double modulus_mpa : {1e6, 300.0, 60.0, 15.0, 3.0, 0.5}) {
    LocalTools tools = tools_with("hard block");
    tools.zone_block.block.modulus_mpa = modulus_mpa;
    const double film_um = sanded_flat(run, tools).film_um;
    EXPECT_GE(film_um, before);
    before = film_um;
  }
}

TEST(Defect, ToolsThatCannotBe) {
  const auto with = [](auto change) {
    LocalTools tools = tools_with("hard block");
    change(tools);
    return [tools] { take_down(run, tools); };
  };
  EXPECT_THROW(with([](LocalTools& t) { t.zone_block.rate_um_per_m = 0; })(), OutOfRange);
  EXPECT_THROW(with([](LocalTools& t) { t.small_block.block.force_n = nan; })(), OutOfRange);
  EXPECT_THROW(with([](LocalTools& t) { t.residual_um = 0; })(), OutOfRange);
  EXPECT_THROW(with([](LocalTools& t) { t.shave_above_um = -1; })(), OutOfRange);
  EXPECT_THROW(with([](LocalTools& t) { t.tape_um = 0; })(), OutOfRange);
  EXPECT_THROW(with([](LocalTools& t) { t.shave_minutes = -1; })(), OutOfRange);
  EXPECT_THROW(with([](LocalTools& t) { t.mask_minutes = nan; })(), OutOfRange);
  EXPECT_THROW(with([](LocalTools& t) { t.stroke_mm = 0; })(), OutOfRange);
  EXPECT_THAT(with([](LocalTools& t) { t.zone_block.block.area_cm2 = 1.0; }),
              ThrowsMessage<BadInput>(HasSubstr("too wide for a block of 10 mm")));
}

}  // namespace
}  // namespace defect_test
