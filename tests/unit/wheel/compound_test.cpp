#include "levigate/wheel/compound.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/surface/contact.hpp"
#include "levigate/surface/scratch.hpp"
#include "levigate/surface/sheen.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/work/instruction_text.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/finding.hpp"
#include "levigate/wheel/wheel.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

namespace compound_test {
namespace {

using namespace levigate;
using testing::HasSubstr;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
const Coating urethane = coating_named("two-part urethane");

Contact by_hand(const char* label, const Coating& coating) {
  const Backing paper = backing_named("latex paper");
  return contact({.size_um = grade(label).median_um,
                  .log_spread = log_spread(grade(label)),
                  .tip_spread = paper.tip_spread,
                  .modulus_mpa = paper.modulus_mpa,
                  .pressure_kpa = block_named("hard block").pressure_kpa(),
                  .hardness_mpa = coating.hardness_mpa});
}

Contact on_wheel(const Compound& compound, const Wheel& wheel, const Coating& coating) {
  const Backing buff = compound_backing(compound);
  return contact({.size_um = compound.size_um,
                  .log_spread = 0.2,
                  .tip_spread = buff.tip_spread,
                  .modulus_mpa = buff.modulus_mpa,
                  .pressure_kpa = wheel.pressure_kpa(),
                  .hardness_mpa = coating.hardness_mpa});
}

// Generic sizes of the trade: cutting 5 to 12, medium 3 to 5, fine 1 to 3, ultra-fine at most 1 um.
TEST(Compound, SizesLieInTheBandsOfTheTrade) {
  const std::vector<std::vector<double>> bands{{5, 12}, {3, 5}, {1, 3}, {0, 1}};
  const char* names[] = {"cutting", "medium", "fine", "ultra-fine"};
  for (std::size_t i = 0; i < 4; ++i) {
    const Compound compound = compound_named(names[i], urethane);
    EXPECT_GE(compound.size_um, bands[i][0]);
    EXPECT_LE(compound.size_um, bands[i][1]);
    EXPECT_LT(compound.worn_um, compound.size_um);
    EXPECT_NO_THROW(validate(compound, "test"));
    EXPECT_NO_THROW(validate(compound_backing(compound), "test"));
  }
  EXPECT_THROW(compound_named("cuting", urethane), BadInput);
  Coating none = urethane;
  none.hardness_mpa = 0;
  EXPECT_THROW(compound_named("cutting", none), OutOfRange);
  EXPECT_THROW(compound_named("cutting", Coating{}), BadInput);  // of which no number is set
}

// P1500 to P2000 come before a cutting compound, on any coat; P1000 must not.
TEST(Compound, CuttingFollowsThePapersOfPractice) {
  for (const CoatingProfile& profile : coating_table) {
    const Coating coating = coating_named(profile.name);
    const double reach = compound_named("cutting", coating).coarsest_scratch_um;
    EXPECT_GT(reach, by_hand("P1500", coating).depth_um(0.99)) << profile.name;
    EXPECT_LT(reach, by_hand("P1000", coating).depth_um(0.99)) << profile.name;
    const double medium = compound_named("medium", coating).coarsest_scratch_um;
    EXPECT_GT(medium, by_hand("P2000", coating).depth_um(0.99)) << profile.name;
    EXPECT_LT(medium, by_hand("P1500", coating).depth_um(0.99)) << profile.name;
    const double fine = compound_named("fine", coating).coarsest_scratch_um;
    EXPECT_LT(fine, by_hand("P2500", coating).depth_um(0.99)) << profile.name;
  }
}

// Each compound takes out what the one before it leaves; the last one does not follow the first.
TEST(Compound, TheyFollowEachOther) {
  for (const CoatingProfile& profile : coating_table) {
    const Coating coating = coating_named(profile.name);
    const auto reach = [&](const char* name) {
      return compound_named(name, coating).coarsest_scratch_um;
    };
    const auto leaves = [&](const char* name, const char* wheel) {
      return on_wheel(compound_named(name, coating), wheel_named(wheel), coating).depth_um(0.99);
    };
    EXPECT_LT(leaves("cutting", "sewn"), reach("medium")) << profile.name;
    EXPECT_LT(leaves("medium", "loose muslin"), reach("fine")) << profile.name;
    EXPECT_LT(leaves("fine", "loose flannel"), reach("ultra-fine")) << profile.name;
    EXPECT_GT(leaves("cutting", "sewn"), reach("ultra-fine")) << profile.name;
  }
}

// Practice: above 85 GU at 60 degrees after a fine compound.
TEST(Compound, FineEndsInHighGloss) {
  const Contact fine =
      on_wheel(compound_named("fine", urethane), wheel_named("loose flannel"), urethane);
  EXPECT_GT(gloss_gu(urethane.refractive_index, 60.0, rq_um(fine)), 85.0);
  const Contact cutting =
      on_wheel(compound_named("cutting", urethane), wheel_named("sewn"), urethane);
  EXPECT_LT(gloss_gu(urethane.refractive_index, 60.0, rq_um(cutting)),
            gloss_gu(urethane.refractive_index, 60.0, rq_um(fine)));
}

TEST(Compound, PaperScratchIsThatOfTheContact) {
  EXPECT_DOUBLE_EQ(paper_scratch_um(grade("P2500").median_um, urethane.hardness_mpa),
                   by_hand("P2500", urethane).depth_um(0.99));
  EXPECT_THROW(paper_scratch_um(0.0, 150), OutOfRange);
  EXPECT_THROW(paper_scratch_um(10.0, 0.0), OutOfRange);
}

// Grain worn from 8 to 4 um cuts sqrt(4 / 8) as fast.
TEST(Compound, FloorIsTheRateOfTheWornGrain) {
  const Compound compound{"shop mix", 8.0, 4.0, 0.6, 0.1};
  const Backing buff = compound_backing(compound);
  EXPECT_NEAR(buff.floor, std::sqrt(0.5), 1e-15);
  EXPECT_THAT(buff.name, HasSubstr("shop mix"));
  const Compound stable{"shop mix", 8.0, 8.0, 0.6, 0.1};
  EXPECT_EQ(compound_backing(stable).floor, 1.0);
}

TEST(Compound, BackingIsThatOfItsProfile) {
  for (const CompoundProfile& profile : compound_table) {
    const Backing buff = compound_backing(compound_named(profile.name, urethane));
    EXPECT_EQ(buff.tip_spread, profile.tip_spread.value);
    EXPECT_EQ(buff.modulus_mpa, profile.modulus_mpa.value);
    EXPECT_EQ(buff.life_m, profile.life_m.value);
    EXPECT_EQ(buff.clean_every_m, profile.clean_every_m.value);
    EXPECT_EQ(buff.fade_m, profile.fade_m.value);
  }
}

// K = 2 / pi x 0.3 x tan 11 degrees = 0.03712391; 0.1 K sqrt(4 / 100) x 6 kPa / 150 MPa = 0.02969913 um/m fresh; x = 400 / 800, floor sqrt(1/2):
// share 0.707107 + 0.292893 x (1 - e^-0.5) / 0.5 = 0.9375958.
TEST(Compound, RateCheckValue) {
  EXPECT_NEAR(compound_rate_um_per_m(compound_named("medium", urethane), urethane, 6.0),
              0.02969913 * 0.9375958, 1e-8);
}

TEST(Compound, RateIsProportionalToThePressure) {
  const Compound medium = compound_named("medium", urethane);
  EXPECT_NEAR(compound_rate_um_per_m(medium, urethane, 12.0) /
                  compound_rate_um_per_m(medium, urethane, 6.0),
              2.0, 1e-14);
  EXPECT_THROW(compound_rate_um_per_m(medium, urethane, 0.0), OutOfRange);
}

TEST(Compound, EveryMemberIsChecked) {
  struct Bad {
    double Compound::*member;
    std::vector<double> values;
  };
  const Bad all[] = {{&Compound::size_um, {0.0, 101, nan}},
                     {&Compound::worn_um, {0.0, 8.1, nan}},
                     {&Compound::coarsest_scratch_um, {0.0, 101, nan}},
                     {&Compound::wear_share, {0.0, 1.1, nan}}};
  for (const Bad& bad : all) {
    for (const double value : bad.values) {
      Compound compound{"shop mix", 8.0, 4.0, 0.6, 0.1};
      compound.*bad.member = value;
      EXPECT_THROW(validate(compound, "test"), OutOfRange) << value;
      EXPECT_THROW(compound_backing(compound), OutOfRange) << value;
      EXPECT_THROW(compound_findings(compound, 10.3, 0.5), OutOfRange) << value;
    }
  }
}

TEST(CompoundFinding, CoarserThanTheLastPaper) {
  const Compound compound{"shop mix", 8.0, 4.0, 0.6, 0.1};
  EXPECT_TRUE(compound_findings(compound, 10.3, 0.6).empty());
  const auto same = compound_findings(compound, 8.0, 0.5);
  ASSERT_EQ(same.size(), 1u);
  EXPECT_EQ(same[0].kind, WheelFindingKind::compound_too_coarse);
  EXPECT_EQ(same[0].severity, Severity::error);
  EXPECT_THAT(sentence(same[0]), HasSubstr("8.0 um"));
  const auto deep = compound_findings(compound, 18.3, 0.9);
  ASSERT_EQ(deep.size(), 1u);
  EXPECT_EQ(deep[0].kind, WheelFindingKind::scratch_too_deep);
  EXPECT_THAT(sentence(deep[0]),
              HasSubstr("to 0.60 um. The step before leaves scratches of 0.90 um"));
  EXPECT_EQ(compound_findings(compound, 7.0, 0.9).size(), 2u);
  for (const double bad : {0.0, 1e5, nan}) {
    EXPECT_THROW(compound_findings(compound, bad, 0.5), OutOfRange);
  }
  for (const double bad : {-0.1, 1e5, nan}) {
    EXPECT_THROW(compound_findings(compound, 10.0, bad), OutOfRange);
  }
}

}  // namespace
}  // namespace compound_test
