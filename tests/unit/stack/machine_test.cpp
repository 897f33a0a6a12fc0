// Hand-held machines as tools: how fast the pad is, what is refused, and what they take.
#include "levigate/stack/machine.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include "levigate/stack/machine_table.hpp"
#include "levigate/wheel/compound.hpp"
#include "unit/workshop.hpp"

namespace machine_test {
namespace {

using namespace workshop;
using testing::HasSubstr;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

template <typename F>
std::string refusal(F f) {
  try {
    f();
  } catch (const Error& error) {
    return error.what();
  }
  return "nothing thrown";
}

Sheet on(const Machine& machine) {
  Sheet sheet = paper("disc", "P400");
  sheet.kind = Pad{machine};
  return sheet;
}

Sheet compound_on(const Machine& machine) {
  Sheet sheet = paper("polish", "fine compound");
  Polish polish = polish_named("fine");
  polish.tool = machine;
  sheet.kind = polish;
  return sheet;
}

TEST(PadSpeed, WithoutATurnIsTheOrbitsAtEachPoint) {
  // 3 mm at 9000 a minute: 150 rounds of 9.42 mm a second
  EXPECT_NEAR(pad_speed_m_s(150, 0, 3, 9000), std::numbers::pi * 0.003 * 150, 1e-15);
  EXPECT_EQ(pad_speed_m_s(150, 0, 3, 9000), pad_speed_m_s(90, 0, 3, 9000));
}

TEST(PadSpeed, WithoutAnOrbitIsTwoThirdsOfTheRim) {
  EXPECT_NEAR(pad_speed_m_s(180, 1200, 0, 1), 2.0 / 3.0 * surface_speed_m_s(180, 1200), 1e-14);
}

TEST(PadSpeed, OfBothAlikeIs32Over9Pi) {
  // 60 mm orbit at 100 a minute, and a rim as fast: F(-1/2, -1/2; 2; 1) = 32 / (9 pi), by Gauss
  const double each = surface_speed_m_s(60, 100);
  EXPECT_NEAR(pad_speed_m_s(60, 100, 60, 100), 32.0 / (9.0 * std::numbers::pi) * each,
              1e-11 * each);
  EXPECT_NEAR(pad_speed_m_s(60.0001, 100, 60, 100), pad_speed_m_s(59.9999, 100, 60, 100), 1e-5);
}

TEST(PadSpeed, NanInNanOutAndTheRestIsChecked) {
  EXPECT_TRUE(std::isnan(pad_speed_m_s(nan, 1, 1, 1)));
  EXPECT_TRUE(std::isnan(pad_speed_m_s(150, nan, 1, 1)));
  EXPECT_TRUE(std::isnan(pad_speed_m_s(150, 1, nan, 1)));
  EXPECT_TRUE(std::isnan(pad_speed_m_s(150, 1, 1, nan)));
  EXPECT_THROW(pad_speed_m_s(0.5, 1, 1, 1), OutOfRange);
  EXPECT_THROW(pad_speed_m_s(150, -1, 1, 1), OutOfRange);
  EXPECT_THROW(pad_speed_m_s(150, 1, 1001, 1), OutOfRange);
  EXPECT_THROW(pad_speed_m_s(150, 1, 1, -1), OutOfRange);
}

TEST(Machine, IsABlockOfThePlanner) {
  const Machine sander = machine_named("random-orbit sander");
  const Block face = face_of(sander);
  EXPECT_EQ(face.name, "random-orbit sander");
  EXPECT_NEAR(face.area_cm2, std::numbers::pi / 4 * 15 * 15, 1e-12);
  EXPECT_EQ(face.force_n, sander.force_n);
  EXPECT_EQ(face.speed_m_s, sander.speed_m_s());
  EXPECT_EQ(face.duty, sander.duty);
  EXPECT_EQ(face.wrap, 1.0);
  // The free turn adds a little to an orbit of 1.41 m/s.
  EXPECT_GT(face.speed_m_s, std::numbers::pi * 0.003 * 150);
  EXPECT_LT(face.speed_m_s, sander.top_speed_m_s());
  EXPECT_NEAR(sander.top_speed_m_s(), 1.4137 + 1.5708, 1e-4);
}

TEST(Machine, EveryProfileIsAMachineAndABlock) {
  std::vector<std::string> square, polishers;
  for (const MachineProfile& profile : machine_table) {
    const Machine machine = machine_named(profile.name);
    EXPECT_NO_THROW(validate(machine, profile.name));
    EXPECT_NO_THROW(validate(face_of(machine), profile.name)) << profile.name;
    if (machine.square) square.push_back(machine.name);
    if (machine.polishes()) polishers.push_back(machine.name);
  }
  EXPECT_THAT(square, testing::ElementsAre("finishing sander"));
  EXPECT_THAT(polishers, testing::ElementsAre("rotary polisher", "dual-action polisher"));
  EXPECT_THROW(machine_named("rotery polisher"), BadInput);
}

TEST(Machine, ASquarePadHasItsSideSquared) {
  Machine machine = machine_named("finishing sander");
  machine.pad_mm = 100;
  EXPECT_DOUBLE_EQ(machine.area_cm2(), 100.0);
  EXPECT_DOUBLE_EQ(machine.room_cm2(10), 144.0);
}

TEST(Machine, WhatCannotBeIsRefused) {
  Machine machine = machine_named("dual-action polisher");
  machine.rpm = machine.rated_rpm + 1;
  EXPECT_THAT(refusal([&] { validate(machine, "test"); }), HasSubstr("rated_rpm"));
  machine = machine_named("rotary polisher");
  machine.free_rpm = 100;
  EXPECT_THAT(refusal([&] { validate(machine, "test"); }), HasSubstr("its spindle turns the pad"));
  machine = machine_named("rotary polisher");
  machine.square = true;
  EXPECT_THAT(refusal([&] { validate(machine, "test"); }), HasSubstr("a pad that turns"));
  machine = machine_named("finishing sander");
  machine.friction = 0.4;
  EXPECT_THAT(refusal([&] { validate(machine, "test"); }), HasSubstr("heat_share"));
  machine = machine_named("finishing sander");
  machine.force_n = 0.0011;  // 0.0094 kPa
  machine.pad_mm = 108;
  EXPECT_THAT(refusal([&] { validate(machine, "test"); }), HasSubstr("pressure_kpa"));
  for (double Machine::*member :
       {&Machine::pad_mm, &Machine::orbit_mm, &Machine::rpm, &Machine::free_rpm,
        &Machine::rated_rpm, &Machine::force_n, &Machine::feed_m_s, &Machine::modulus_mpa,
        &Machine::friction, &Machine::heat_share, &Machine::duty, &Machine::keep_off_mm}) {
    machine = machine_named("random-orbit sander");
    machine.*member = nan;
    EXPECT_THROW(validate(machine, "test"), OutOfRange);
    EXPECT_THROW(validate(Pad{machine}, "test"), OutOfRange);
    machine.*member = -1;
    EXPECT_THROW(validate(machine, "test"), OutOfRange);
  }
}

TEST(Machine, ASanderTakesNoCompoundAndARotaryNoPaper) {
  EXPECT_NO_THROW(validate(on(machine_named("random-orbit sander")), "test"));
  EXPECT_NO_THROW(validate(on(machine_named("dual-action polisher")), "test"));
  EXPECT_NO_THROW(validate(compound_on(machine_named("rotary polisher")), "test"));
  EXPECT_THAT(refusal([] { validate(compound_on(machine_named("finishing sander")), "test"); }),
              HasSubstr("machine 'finishing sander' takes no compound"));
  EXPECT_THAT(refusal([] { validate(on(machine_named("rotary polisher")), "test"); }),
              HasSubstr("machine 'rotary polisher' takes no paper"));
}

TEST(Machine, LearnsUnderANameOfItsOwn) {
  const Sheet disc = on(machine_named("random-orbit sander"));
  EXPECT_EQ(learned_name(disc), "latex paper on the random-orbit sander");
  EXPECT_EQ(learned_name(disc, true), "latex paper");
  EXPECT_EQ(learned_name(paper("a", "P400")), "latex paper");
  const std::string name = learned_name(disc);
  const auto [backing, machine] = backing_and_machine(name);
  EXPECT_EQ(backing, "latex paper");
  EXPECT_EQ(machine, "random-orbit sander");
  EXPECT_EQ(backing_and_machine("fine compound on a buff").first, "fine compound on a buff");
}

}  // namespace
}  // namespace machine_test
