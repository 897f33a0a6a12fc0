#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include "levigate/stack/sheet.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/wheel/caution.hpp"
#include "levigate/wheel/edge.hpp"
#include "levigate/wheel/finding.hpp"
#include "levigate/wheel/limit_table.hpp"
#include "levigate/wheel/limits.hpp"
#include "levigate/wheel/pass.hpp"
#include "levigate/wheel/wheel.hpp"
#include "levigate/wheel/wheel_table.hpp"

namespace wheel_test {
namespace {

using namespace levigate;
using testing::HasSubstr;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

/// 305 mm at 800 rpm, 10 kPa on 50 x 40 mm.
Wheel bench_wheel() {
  return {.name = "bench",
          .diameter_mm = 305,
          .rpm = 800,
          .rated_rpm = 1200,
          .width_mm = 50,
          .contact_mm = 40,
          .force_n = 20,
          .feed_m_s = 0.1,
          .modulus_mpa = 0.1,
          .friction = 0.4,
          .heat_share = 0.5,
          .duty = 0.5};
}

WheelLimits bench_limits() { return {11.0, 17.0, 600, 40}; }

template <typename F>
std::string refusal(F f) {
  try {
    f();
  } catch (const OutOfRange& error) {
    return error.what();
  }
  return "nothing thrown";
}

TEST(Wheel, IsABlockOfThePlanner) {
  const Block block = face_of(bench_wheel());
  EXPECT_DOUBLE_EQ(block.area_cm2, 20.0);
  EXPECT_DOUBLE_EQ(block.pressure_kpa(), 10.0);
  EXPECT_NEAR(block.speed_m_s, 12.7758, 5e-5);
  EXPECT_EQ(block.modulus_mpa, 0.1);
  EXPECT_EQ(block.duty, 0.5);
  EXPECT_EQ(block.wrap, 0.0);
  EXPECT_EQ(block.name, "bench");
  EXPECT_NO_THROW(validate(block, "test"));
}

TEST(Wheel, EveryProfileIsAWheelAndABlock) {
  for (const WheelProfile& profile : wheel_table) {
    const Wheel wheel = wheel_named(profile.name);
    EXPECT_EQ(wheel.name, profile.name);
    EXPECT_NO_THROW(validate(face_of(wheel), profile.name)) << profile.name;
  }
  EXPECT_THROW(wheel_named("loose flanel"), BadInput);
}

TEST(Wheel, AboveItsRatingIsRefusedNamingBoth) {
  Wheel wheel = bench_wheel();
  wheel.rpm = 1200;
  EXPECT_NO_THROW(validate(wheel, "test"));
  wheel.rpm = 1201;
  const std::string message = refusal([&] { validate(wheel, "test"); });
  EXPECT_THAT(message, HasSubstr("rpm = 1201"));
  EXPECT_THAT(message, HasSubstr("rated_rpm = 1200"));
}

TEST(Wheel, ContactLongerThanTheWheelIsRefused) {
  Wheel wheel = bench_wheel();
  wheel.contact_mm = 306;
  EXPECT_THAT(refusal([&] { validate(wheel, "test"); }), HasSubstr("contact_mm"));
}

TEST(Wheel, EveryMemberIsChecked) {
  struct Bad {
    double Wheel::*member;
    std::vector<double> values;
  };
  const Bad all[] = {
      {&Wheel::diameter_mm, {9.9, 2001, nan}}, {&Wheel::rpm, {0.9, nan}},
      {&Wheel::rated_rpm, {0.5, 100001, nan}}, {&Wheel::width_mm, {0.4, 1001, nan}},
      {&Wheel::contact_mm, {0.05, nan}},       {&Wheel::force_n, {0.0, 10001, nan}},
      {&Wheel::feed_m_s, {0.0, 10.1, nan}},    {&Wheel::modulus_mpa, {0.0, 1e6, nan}},
      {&Wheel::friction, {0.0, 10.1, nan}},    {&Wheel::heat_share, {0.0, 1.1, nan}},
      {&Wheel::duty, {0.0, 1.1, nan}}};
  for (const Bad& bad : all) {
    for (const double value : bad.values) {
      Wheel wheel = bench_wheel();
      wheel.*bad.member = value;
      EXPECT_THROW(validate(wheel, "test"), OutOfRange) << value;
      EXPECT_THROW(validate(Pad{wheel}, "test"), OutOfRange) << value;
      EXPECT_THROW(speed_finding(wheel, bench_limits()), OutOfRange) << value;
      EXPECT_THROW(wheel_pass(wheel, bench_limits(), 0.1, 1.0), OutOfRange) << value;
      EXPECT_THROW(edge_load(wheel, 1.0), OutOfRange) << value;
      EXPECT_THROW(with_diameter(wheel, 400.0), OutOfRange) << value;
    }
  }
  Wheel wheel = bench_wheel();
  wheel.force_n = 3000;  // 1.5 MPa
  EXPECT_THAT(refusal([&] { validate(wheel, "test"); }), HasSubstr("pressure_kpa"));
  wheel = bench_wheel();
  wheel.rpm = wheel.rated_rpm = 7000;  // 112 m/s
  EXPECT_THAT(refusal([&] { validate(wheel, "test"); }), HasSubstr("surface speed"));
}

TEST(WheelLimits, EveryMemberIsChecked) {
  struct Bad {
    double WheelLimits::*member;
    std::vector<double> values;
  };
  const Bad all[] = {{&WheelLimits::speed_low_m_s, {0.0, 17.1, nan}},
                     {&WheelLimits::speed_high_m_s, {10.9, 101, nan}},
                     {&WheelLimits::effusivity, {0.9, 100001, nan}},
                     {&WheelLimits::rise_k, {0.0, 2001, nan}}};
  for (const Bad& bad : all) {
    for (const double value : bad.values) {
      WheelLimits limits = bench_limits();
      limits.*bad.member = value;
      EXPECT_THROW(validate(limits, "test"), OutOfRange) << value;
      EXPECT_THROW(speed_finding(bench_wheel(), limits), OutOfRange) << value;
      EXPECT_THROW(wheel_pass(bench_wheel(), limits, 0.1, 1.0), OutOfRange) << value;
      EXPECT_THROW(wheel_findings(bench_wheel(), limits, "bench coat"), OutOfRange) << value;
    }
  }
  for (const LimitProfile& profile : limit_table) {
    EXPECT_NO_THROW(validate(wheel_limits_named(profile.name), profile.name));
  }
  for (const CoatingProfile& profile : coating_table) {
    EXPECT_NO_THROW(validate(wheel_limits_named(profile.name), profile.name));
  }
  EXPECT_THROW(wheel_limits_named("lacker"), BadInput);
}

// Bands as the trade states them: 12 to 16 in at 700 to 800 rpm; 1200 to 4000, 3000 to 4500 ft/min.
TEST(WheelLimits, BandsHoldWhatTheTradeStates) {
  const WheelLimits lacquer = wheel_limits_named("nitrocellulose lacquer");
  for (const double inch : {12.0, 14.0, 16.0}) {
    for (const double rpm : {700.0, 800.0}) {
      Wheel wheel = wheel_named("loose muslin");
      wheel.diameter_mm = mm_from_inch(inch);
      wheel.rpm = rpm;
      EXPECT_EQ(speed_finding(wheel, lacquer).verdict, SpeedVerdict::ok) << inch << " " << rpm;
    }
  }
  const WheelLimits sheet = wheel_limits_named("acrylic sheet");
  EXPECT_NEAR(sheet.speed_low_m_s, m_s_from_ft_min(1200), 0.02);
  EXPECT_NEAR(sheet.speed_high_m_s, m_s_from_ft_min(4000), 0.02);
  const WheelLimits edges = wheel_limits_named("acrylic sheet edges");
  EXPECT_NEAR(edges.speed_low_m_s, m_s_from_ft_min(3000), 0.02);
  EXPECT_NEAR(edges.speed_high_m_s, m_s_from_ft_min(4500), 0.02);
}

TEST(WheelSpeedFinding, SaysWhatWouldBeRight) {
  Wheel wheel = bench_wheel();
  EXPECT_EQ(speed_finding(wheel, bench_limits()).verdict, SpeedVerdict::ok);
  EXPECT_EQ(speed_finding(wheel, bench_limits()).rpm, 800);

  wheel.rpm = 1100;  // 17.57 m/s
  const SpeedFinding fast = speed_finding(wheel, bench_limits());
  EXPECT_EQ(fast.verdict, SpeedVerdict::too_fast);
  EXPECT_NEAR(surface_speed_m_s(wheel.diameter_mm, fast.rpm), 17.0, 1e-12);
  EXPECT_NEAR(surface_speed_m_s(fast.diameter_mm, wheel.rpm), 17.0, 1e-12);
  EXPECT_TRUE(fast.rpm_is_rated);

  wheel.rpm = 400;
  const SpeedFinding slow = speed_finding(wheel, bench_limits());
  EXPECT_EQ(slow.verdict, SpeedVerdict::too_slow);
  EXPECT_NEAR(surface_speed_m_s(wheel.diameter_mm, slow.rpm), 11.0, 1e-12);
  EXPECT_TRUE(slow.rpm_is_rated);
  wheel.rated_rpm = 600;  // 11 m/s takes 689
  EXPECT_FALSE(speed_finding(wheel, bench_limits()).rpm_is_rated);
}

TEST(WheelSpeedFinding, EndsOfTheBandAreInIt) {
  WheelLimits limits = bench_limits();
  const double speed = bench_wheel().surface_speed_m_s();
  limits.speed_low_m_s = limits.speed_high_m_s = speed;
  EXPECT_EQ(speed_finding(bench_wheel(), limits).verdict, SpeedVerdict::ok);
}

// dwell 40 mm / 0.1 m/s; q = 0.5 x 0.4 x 10 000 Pa x 12.7758 m/s.
TEST(WheelPass, CheckValues) {
  const WheelPass pass = wheel_pass(bench_wheel(), bench_limits(), 0.02, 0.5);
  EXPECT_NEAR(pass.dwell_s, 0.4, 1e-15);
  EXPECT_NEAR(pass.rise_k, 2.0 * 25551.6 * std::sqrt(0.4 / std::numbers::pi) / 600.0, 1e-3);
  EXPECT_NEAR(pass.dwell_limit_s, 0.692909, 2e-6);  // 0.692887 at 12.776 m/s
  EXPECT_NEAR(pass.least_feed_m_s, 0.04 / 0.692909, 1e-6);
  EXPECT_NEAR(pass.turns, 800.0 / 60.0 * 0.4, 1e-12);
  EXPECT_NEAR(pass.film_per_pass_um, 0.02 * 12.7758 * 0.4, 1e-6);  // 0.1022
  EXPECT_EQ(pass.passes, 5.0);
  EXPECT_FALSE(pass.too_long());
  EXPECT_EQ(wheel_pass(bench_wheel(), bench_limits(), 0.02, 0.0).passes, 0.0);
}

TEST(WheelPass, AtTheLeastFeedTheRiseIsWhatTheSurfaceStands) {
  Wheel wheel = bench_wheel();
  wheel.feed_m_s = wheel_pass(wheel, bench_limits(), 0.02, 0.5).least_feed_m_s;
  EXPECT_NEAR(wheel_pass(wheel, bench_limits(), 0.02, 0.5).rise_k, 40.0, 1e-12);
  wheel.feed_m_s *= 0.999;
  EXPECT_TRUE(wheel_pass(wheel, bench_limits(), 0.02, 0.5).too_long());
}

// A block that works the same area takes as long as the planner says: travel = (R / rate) A / a.
TEST(WheelPass, FilmAgreesWithTheTravelOfABlock) {
  const Wheel wheel = bench_wheel();
  const WheelPass pass = wheel_pass(wheel, bench_limits(), 0.02, 0.5);
  const double seconds_of_a_spot = 0.5 / 0.02 / face_of(wheel).speed_m_s;
  EXPECT_NEAR(0.5 / pass.film_per_pass_um * pass.dwell_s, seconds_of_a_spot, 1e-12);
}

TEST(WheelPass, RefusesWhatIsNoRateOrRemoval) {
  for (const double rate : {0.0, -1.0, 1e7, nan}) {
    EXPECT_THROW(wheel_pass(bench_wheel(), bench_limits(), rate, 1.0), OutOfRange) << rate;
  }
  for (const double removal : {-1.0, 1e5, nan}) {
    EXPECT_THROW(wheel_pass(bench_wheel(), bench_limits(), 0.1, removal), OutOfRange) << removal;
  }
}

// Speed and film per pass grow as the diameter, the rise of temperature as its power 3/4.
TEST(WheelSize, LargerWheelAtTheSameRpm) {
  const Wheel wheel = bench_wheel();
  for (const double times : {0.5, 1.0, 1.3, 2.0}) {
    const Wheel other = with_diameter(wheel, 305.0 * times);
    EXPECT_EQ(other.rpm, wheel.rpm);
    EXPECT_EQ(other.force_n, wheel.force_n);
    const double ratio = other.surface_speed_m_s() / wheel.surface_speed_m_s();
    EXPECT_NEAR(ratio, times, 1e-14);
    const auto pass = [](const Wheel& w) {
      const double rate = 0.002 * w.pressure_kpa();  // proportional to pressure, as Archard's law
      return wheel_pass(w, bench_limits(), rate, 0.0);
    };
    EXPECT_NEAR(pass(other).film_per_pass_um / pass(wheel).film_per_pass_um, times, 1e-13);
    EXPECT_NEAR(pass(other).rise_k / pass(wheel).rise_k, std::pow(times, 0.75), 1e-13);
  }
  for (const double diameter_mm : {9.0, 3000.0, nan}) {
    EXPECT_THROW(with_diameter(wheel, diameter_mm), OutOfRange) << diameter_mm;
  }
}

TEST(WheelEdge, CheckValues) {
  const Wheel wheel = bench_wheel();  // 20 N, 0.1 MPa, contact 40 mm, 10 kPa on the flat
  EXPECT_NEAR(edge_load(wheel, 0.0).pressure_kpa, 50.0, 1e-12);  // a wedge: E / 2
  EXPECT_NEAR(edge_load(wheel, 0.0).factor, 5.0, 1e-12);
  EXPECT_TRUE(edge_load(wheel, 0.0).caution);
  // sqrt(pi 20 N 0.1 MPa / (16 x 10 mm x 40 mm)) = 0.0313329 MPa
  EXPECT_NEAR(edge_load(wheel, 10.0).pressure_kpa, 31.3329, 5e-5);
  EXPECT_NEAR(edge_load(wheel, 10.0).factor, 3.13329, 5e-6);
  EXPECT_EQ(edge_load(wheel, 1000.0).factor, 1.0);
  EXPECT_FALSE(edge_load(wheel, 1000.0).caution);
  // Twice the pressure of the flat at r = pi F E / (16 contact p^2) = 24.5437 mm.
  EXPECT_TRUE(edge_load(wheel, 24.54).caution);
  EXPECT_FALSE(edge_load(wheel, 24.55).caution);
}

// Hertz's line contact put together from half-width b = sqrt(4 F R / (pi L E)) and mean p = F / (2 b L).
TEST(WheelEdge, RoundEdgeIsHertzsContact) {
  const Wheel felt = wheel_named("felt");
  for (const double radius : {0.5, 2.0, 5.0}) {
    const double half_mm = std::sqrt(4.0 * felt.force_n * radius /
                                     (std::numbers::pi * felt.contact_mm * felt.modulus_mpa));
    const double mean_mpa = felt.force_n / (2.0 * half_mm * felt.contact_mm);
    EXPECT_NEAR(edge_load(felt, radius).pressure_kpa, 1e3 * mean_mpa, 1e-9 * mean_mpa * 1e3);
  }
}

TEST(WheelEdge, AHardWheelCutsThroughEdgesSooner) {
  const double flannel = edge_load(wheel_named("loose flannel"), 1.0).factor;
  const double sewn = edge_load(wheel_named("sewn"), 1.0).factor;
  const double felt = edge_load(wheel_named("felt"), 1.0).factor;
  EXPECT_LT(flannel, sewn);
  EXPECT_LT(sewn, felt);
  double before = std::numeric_limits<double>::infinity();
  for (const double radius : {0.0, 0.5, 1.0, 2.0, 5.0, 20.0, 100.0}) {
    const double factor = edge_load(wheel_named("felt"), radius).factor;
    EXPECT_LE(factor, before);
    EXPECT_GE(factor, 1.0);
    before = factor;
  }
  for (const double radius : {-0.1, 1001.0, nan}) {
    EXPECT_THROW(edge_load(bench_wheel(), radius), OutOfRange) << radius;
    EXPECT_THROW(edge_findings(bench_wheel(), radius), OutOfRange) << radius;
  }
}

TEST(WheelFinding, NothingAgainstAWheelThatSuits) {
  EXPECT_TRUE(wheel_findings(bench_wheel(), bench_limits(), "bench coat").empty());
}

TEST(WheelFinding, TooFastAndTooLongAreErrorsWithNumbers) {
  Wheel wheel = bench_wheel();
  wheel.rpm = 1100;
  wheel.feed_m_s = 0.02;
  const auto findings = wheel_findings(wheel, bench_limits(), "bench coat");
  ASSERT_EQ(findings.size(), 2u);
  EXPECT_EQ(findings[0].kind, WheelFindingKind::wheel_too_fast);
  EXPECT_EQ(findings[0].severity, Severity::error);
  EXPECT_THAT(sentence(findings[0]), HasSubstr("runs at 17.6 m/s"));
  EXPECT_THAT(sentence(findings[0]), HasSubstr("11.0 to 17.0 m/s"));
  EXPECT_THAT(sentence(findings[0]), HasSubstr("at most 1064 rpm"));  // 17 m/s is 1064.5
  EXPECT_THAT(sentence(findings[0]), HasSubstr("at most 295 mm"));    // 295.2
  EXPECT_EQ(findings[1].kind, WheelFindingKind::dwell_too_long);
  EXPECT_EQ(findings[1].severity, Severity::error);
  EXPECT_THAT(sentence(findings[1]), HasSubstr("2.00 s"));
}

// What the message asks for is enough, and little less is not.
TEST(WheelFinding, TheFeedItAsksForIsEnough) {
  Wheel wheel = bench_wheel();
  wheel.feed_m_s = 0.02;
  const auto findings = wheel_findings(wheel, bench_limits(), "bench coat");
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_THAT(sentence(findings[0]), HasSubstr("at least 58 mm/s"));  // 40 mm / 0.692909 s
  wheel.feed_m_s = 0.058;
  EXPECT_TRUE(wheel_findings(wheel, bench_limits(), "bench coat").empty());
  wheel.feed_m_s = 0.057;
  EXPECT_FALSE(wheel_findings(wheel, bench_limits(), "bench coat").empty());
}

TEST(WheelFinding, TooSlowIsANoteAndNeverSendsTheWheelAboveItsRating) {
  Wheel wheel = bench_wheel();
  wheel.rpm = 400;
  const auto findings = wheel_findings(wheel, bench_limits(), "bench coat");
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].kind, WheelFindingKind::wheel_too_slow);
  EXPECT_EQ(findings[0].severity, Severity::note);
  EXPECT_THAT(sentence(findings[0]), HasSubstr("at least 689 rpm"));  // 688.8
  EXPECT_THAT(sentence(findings[0]), HasSubstr("at least 526 mm"));   // 525.2
  wheel.rated_rpm = 600;
  const auto rated = wheel_findings(wheel, bench_limits(), "bench coat");
  ASSERT_EQ(rated.size(), 1u);
  EXPECT_THAT(sentence(rated[0]), testing::Not(HasSubstr("with this wheel")));
}

TEST(WheelFinding, EdgesThatTakeMuchMoreAreAWarning) {
  ASSERT_EQ(edge_findings(bench_wheel(), 0.0).size(), 1u);
  EXPECT_EQ(edge_findings(bench_wheel(), 0.0)[0].severity, Severity::warning);
  EXPECT_THAT(sentence(edge_findings(bench_wheel(), 0.0)[0]), HasSubstr("5.0 times"));
  EXPECT_TRUE(edge_findings(bench_wheel(), 100.0).empty());
}

// What must be said beside a wheel, word by word of its sense.
TEST(WheelCaution, SaysWhatCanHurt) {
  std::string all;
  for (const WheelCaution& caution : wheel_cautions) {
    EXPECT_FALSE(caution.topic.empty());
    all += std::string(caution.text) + "\n";
  }
  for (const char* words :
       {"faster than the rpm printed", "below the centre line", "lower front quadrant",
        "Keep edges trailing", "firmly with both hands", "no gloves near the spindle",
        "eye and face protection", "dust mask", "one labelled wheel for each compound",
        "touched metal", "pressure and a dry rim", "manual, the data sheet and local rules"}) {
    EXPECT_THAT(all, HasSubstr(words));
  }
  EXPECT_EQ(wheel_caution_source.basis, Basis::common_practice);
}

}  // namespace
}  // namespace wheel_test
