// Descriptions: what follows from one list of a type's members.
#include "levigate/describe.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "levigate/faults.hpp"

namespace levigate {

enum class Shade { light, dark };

constexpr std::string_view to_string(Shade shade) {
  return shade == Shade::light ? "light" : "dark";
}

template <>
inline constexpr auto choices<Shade> = std::to_array({Shade::light, Shade::dark});

struct Slat {
  std::string name;
  double width_mm = 1;
  std::optional<double> price{};
  std::vector<Slat> pieces{};
};

struct Frame {
  double height_mm = 10;
};

struct Blind : Frame {
  std::vector<Slat> slats;
  std::vector<double> gaps_mm;
  double low_mm = 1, high_mm = 2;
  Shade shade = Shade::dark;
  bool closed = false;
  std::uint64_t seed = 0;
};

inline void ends_in_order(const Blind& blind, std::string_view where) {
  if (blind.low_mm > blind.high_mm)
    throw BadInput("low_mm is above high_mm, in " + std::string(where));
}

template <std::same_as<Slat> Value>
inline constexpr auto described<Value> =
    describe<Value>("Slat", "One slat.", member<&Value::name>("name", "its name").not_empty(),
                    member<&Value::width_mm>("width_mm", Within{0.1, 100}, "across"),
                    member<&Value::price>("price", Within{0, 10}, "of one"),
                    member<&Value::pieces>("pieces", "it is made of").optional());

template <std::same_as<Blind> Value>
inline constexpr auto described<Value> =
    describe<Value>("Blind", "Slats in a frame.",
                    member<&Value::height_mm>("height_mm", Within{1, 1000}, "of the frame"),
                    member<&Value::slats>("slats", "from the top").not_empty(),
                    member<&Value::gaps_mm>("gaps_mm", Within{0, 5}, "between slats"),
                    member<&Value::low_mm>("low_mm", "lower end"),
                    member<&Value::high_mm>("high_mm", "upper end"),
                    member<&Value::shade>("shade", "of the cloth"),
                    member<&Value::closed>("closed", "whether it is"),
                    member<&Value::seed>("seed", "of its wear"))
        .rule(rule_by<&ends_in_order>);

namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

Blind sound() {
  Blind blind;
  blind.slats = {{.name = "first", .width_mm = 2}, {.name = "second", .width_mm = 3}};
  return blind;
}

std::vector<std::string> pointers(const std::vector<Fault>& faults) {
  std::vector<std::string> result;
  for (const Fault& fault : faults) result.push_back(fault.pointer);
  return result;
}

std::vector<Fault> faults(const Blind& blind) {
  return faults_of(description_of<Blind>(), &blind, "");
}

TEST(Describe, TakesUnitsFromSuffixes) {
  const Description& blind = description_of<Blind>();
  EXPECT_EQ(blind.find("height_mm")->unit, "mm");
  EXPECT_EQ(blind.find("width_mm"), nullptr);
}

TEST(Describe, ReachesMembersOfABase) {
  Blind blind;
  const Member& height = *description_of<Blind>().find("height_mm");
  height.kind->set_number(height.in_mutable(&blind), 7.0);
  EXPECT_EQ(blind.height_mm, 7.0);
}

TEST(Describe, SetsChoicesListsAndWholeNumbers) {
  Blind blind = sound();
  const Description& of = description_of<Blind>();
  const Member& shade = *of.find("shade");
  EXPECT_EQ(shade.kind->choice(1), "dark");
  shade.kind->set_whole(shade.in_mutable(&blind), 0);
  EXPECT_EQ(blind.shade, Shade::light);
  const Member& seed = *of.find("seed");
  seed.kind->set_whole(seed.in_mutable(&blind), -1);
  EXPECT_EQ(blind.seed, std::numeric_limits<std::uint64_t>::max());
  EXPECT_TRUE(seed.kind->natural);
  const Member& slats = *of.find("slats");
  static_cast<Slat*>(slats.kind->add(slats.in_mutable(&blind)))->name = "third";
  EXPECT_EQ(blind.slats.back().name, "third");
  slats.kind->clear(slats.in_mutable(&blind));
  EXPECT_THAT(blind.slats, IsEmpty());
}

TEST(Faults, AreNoneOfASoundValue) {
  EXPECT_THAT(faults(sound()), IsEmpty());
  EXPECT_NO_THROW(validate(sound()));
}

TEST(Faults, AreAllToldAtOnceWithTheirPlaces) {
  Blind blind = sound();
  blind.height_mm = 0;
  blind.slats[1].width_mm = std::nan("");
  blind.slats[0].pieces = {{.name = "", .width_mm = 2, .price = 11}};
  blind.gaps_mm = {1, -1};
  blind.low_mm = 3;
  const std::vector<Fault> all = faults(blind);
  EXPECT_THAT(pointers(all),
              ElementsAre("/height_mm", "/slats/0/pieces/0/name", "/slats/0/pieces/0/price",
                          "/slats/1/width_mm", "/gaps_mm", ""));
  EXPECT_EQ(all[0].quantity, "height_mm");
  EXPECT_EQ(all[0].value, 0.0);
  EXPECT_EQ(all[0].unit, "mm");
  EXPECT_EQ(all[0].low, 1.0);
  EXPECT_EQ(all[0].high, 1000.0);
  EXPECT_EQ(all[0].code, ErrorCode::out_of_range);
  EXPECT_THAT(all[3].message, HasSubstr("in /slats/1 ('second')"));
  EXPECT_EQ(all[5].code, ErrorCode::bad_input);
  try {
    validate(blind);
    FAIL() << "nothing was thrown";
  } catch (const BadInput& error) {
    EXPECT_EQ(error.faults().size(), all.size());
    EXPECT_EQ(error.code(), ErrorCode::bad_input);
    EXPECT_EQ(error.quantity(), "height_mm");
    EXPECT_THAT(error.what(), HasSubstr("low_mm is above high_mm"));
  }
}

TEST(Faults, OfOneIsItsOwnClass) {
  Blind blind = sound();
  blind.slats.clear();
  EXPECT_THROW(validate(blind), BadInput);
  blind = sound();
  blind.height_mm = std::numeric_limits<double>::infinity();
  try {
    validate(blind, "a blind");
    FAIL() << "nothing was thrown";
  } catch (const OutOfRange& error) {
    EXPECT_EQ(error.pointer(), "");  // "a blind" is no place in a file
    EXPECT_THAT(error.what(), HasSubstr("in a blind"));
  }
}

TEST(Same, LooksAtEveryMember) {
  const Kind& kind = detail::kind<Blind>;
  const Blind one = sound();
  Blind other = sound();
  EXPECT_TRUE(same(kind, &one, &other));
  other.slats[1].price = 1;
  EXPECT_FALSE(same(kind, &one, &other));
  other = sound();
  other.shade = Shade::light;
  EXPECT_FALSE(same(kind, &one, &other));
  other = sound();
  other.gaps_mm = {1};
  EXPECT_FALSE(same(kind, &one, &other));
}

}  // namespace

}  // namespace levigate
