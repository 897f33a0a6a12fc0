// A patch that was worked: what came off it, how sure that is, and what its minutes teach.
#include "levigate/journal/work/patch.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "levigate/journal/learn.hpp"
#include "levigate/text/sentences.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace patch_test {
namespace {

using namespace learn_workshop;
using testing::HasSubstr;

Entry patch(double minutes = 5) {
  Entry result = entry(EntryKind::patch_worked, "", "P400");
  result.tool = "hard block";
  result.area_cm2 = 100;
  result.minutes = minutes;
  return result;
}

Entry gauged(double minutes, double off_um, std::size_t spots = 10) {
  Entry result = patch(minutes);
  result.before_um.assign(spots, 90);
  result.after_um.assign(spots, 90 - off_um);
  return result;
}

Observed seen(const std::vector<Entry>& entries) {
  return observe(clock_case(), drawer(), entries);
}

TEST(Patch, TheErrorOfWhatCameOffIsThatOfItsReadings) {
  const std::vector<double> before(10, 90.0), after(10, 75.0);
  const PatchRemoval by_gauge = gauged_removal(before, after, 0.15);
  EXPECT_DOUBLE_EQ(by_gauge.removal_um, 15);
  EXPECT_NEAR(by_gauge.log_sd * by_gauge.log_sd,
              2 * 4 / (10 * 225.0) + 0.03 * 0.03 + 0.15 * 0.15 / 10, 1e-12);
  const PatchRemoval by_weight = weighed_removal(812.31, 812.13, 100);  // 0.18 g are 15 um
  EXPECT_NEAR(by_weight.removal_um, 15, 1e-9);
  EXPECT_NEAR(by_weight.log_sd * by_weight.log_sd, 2e-4 / (0.18 * 0.18) + 0.06 * 0.06, 1e-9);
  Zone zone = clock_case().zones[0];
  const Block block = block_named("hard block");
  const PatchRemoval by_peel = levelled_removal(zone, block, 0.5);
  zone.peel_um *= 1.4;
  EXPECT_NEAR(std::exp(by_peel.log_sd),
              levelled_removal(zone, block, 0.5).removal_um / by_peel.removal_um, 1e-12);
}

TEST(Patch, ItsMinutesStandBesideThoseOfWhatCameOff) {
  const Observed observed = seen({gauged(6, 15)});
  ASSERT_EQ(observed.paces.size(), 1U);
  const PaceSeen& pace = observed.paces[0];
  EXPECT_EQ(pace.backing, "latex paper");
  EXPECT_EQ(pace.actual_minutes, 6);
  // As the step levels the top, whose minutes are known: by area and by depth.
  const double whole = planned({"P400", "P600", "P800", "P1000", "P1500"}).at("P400").at("top");
  const Zone top = clock_case().zones[0];
  const double depth_um =
      levelled_removal(top, top.block, clock_case().rules.residual_peel_um).removal_um;
  EXPECT_NEAR(pace.predicted_minutes, whole * (100 / top.area_cm2) * (15 / depth_um), 1e-5);
  EXPECT_GT(pace.log_sd, 0.05);
  Entry shiny = patch(6);
  shiny.zone = "top";
  EXPECT_NEAR(seen({shiny}).paces.at(0).predicted_minutes, whole * (100 / top.area_cm2), 1e-5);
}

TEST(Patch, TeachesThePaceByItsError) {
  const auto spread = [](const std::vector<Entry>& entries) {
    const Shop shop = learn(Shop{}, clock_case(), drawer(), entries).shop;
    const LearnedFactor& rate = shop.rates.at(1).learned;
    return std::log(rate.high / rate.low) / shop.minutes_noise.log_sd;
  };
  EXPECT_LT(spread({gauged(6, 15)}), spread({gauged(6, 15, 1)}));
  EXPECT_LT(spread({gauged(6, 15), gauged(6, 15)}), spread({gauged(6, 15)}));
  const double predicted = seen({gauged(6, 15)}).paces[0].predicted_minutes;
  const Shop slow = learn(Shop{}, clock_case(), drawer(), {gauged(3 * predicted, 15)}).shop;
  EXPECT_LT(slow.person.factor * slow.rates[1].learned.factor, 0.6);
  EXPECT_GT(slow.person.factor * slow.rates[1].learned.factor, 1.0 / 3);
}

TEST(Patch, ChangesNoZone) {
  const std::vector<Entry> steps{ended("P400", 60), ended("P600", 20)};
  std::vector<Entry> with = steps;
  with.insert(with.begin() + 1, gauged(6, 15));
  const Observed plain = seen(steps), both = seen(with);
  ASSERT_EQ(both.paces.size(), 3U);
  EXPECT_EQ(both.paces[1].predicted_minutes, plain.paces[0].predicted_minutes);
  EXPECT_EQ(both.paces[2].predicted_minutes, plain.paces[1].predicted_minutes);
}

TEST(Patch, WhatTeachesNothingIsTold) {
  Entry unknown = gauged(6, 15);
  unknown.tool = "shoe";
  const Observed observed = seen({unknown, gauged(6, 0.5), gauged(6, -3), gauged(0, 15)});
  ASSERT_EQ(observed.unmatched.size(), 4U);
  EXPECT_THAT(sentence(observed.unmatched[0]), HasSubstr("has a block 'shoe'"));
  EXPECT_THAT(sentence(observed.unmatched[1]), HasSubstr("Too little came off the patch"));
  EXPECT_THAT(sentence(observed.unmatched[2]), HasSubstr("Too little came off the patch"));
  EXPECT_THAT(sentence(observed.unmatched[3]), HasSubstr("not above 0"));
  EXPECT_TRUE(observed.paces.empty());
}

}  // namespace
}  // namespace patch_test
