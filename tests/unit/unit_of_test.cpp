// Units by the ends of names.
#include "levigate/unit_of.hpp"

#include <gtest/gtest.h>

#include <cstddef>
#include <stdexcept>
#include <type_traits>

namespace unit_of_test {
namespace {

using namespace levigate;

TEST(UnitOf, TakesTheEndOfTheName) {
  EXPECT_EQ(unit_of("rate_um_per_m"), "um/m");
  EXPECT_EQ(unit_of("surface_speed_m_s"), "m/s");
  EXPECT_EQ(unit_of("minutes"), "min");
  EXPECT_EQ(unit_of("film"), "");
  EXPECT_EQ(unit_of("um"), "um");
  EXPECT_EQ(unit_of("gain_per_hour"), "1/h");
  EXPECT_EQ(unit_of("dry_um_per_coat"), "um/coat");
  EXPECT_EQ(unit_of("film_per_pass_um"), "um");
  EXPECT_EQ(unit_of("minutes_low"), "") << "not at its end";
  EXPECT_EQ(unit_of("stem"), "") << "not a word of it";
}

template <const char* name>
concept told = requires {
  std::integral_constant<std::size_t, unit_of(name).size()>{};
};

constexpr char speed[] = "speed_m_s", stiffness[] = "stiffness_n_mm", tail[] = "load_n_per_mm2",
               number[] = "count_per";

TEST(UnitOf, IsToldWholeOrNotAtAll) {
  static_assert(told<speed>);
  static_assert(!told<stiffness>, "neither mm nor N");
  static_assert(!told<tail>, "nor 1/mm2");
  static_assert(!told<number>);
  EXPECT_THROW(unit_of(stiffness), std::logic_error);
}

}  // namespace
}  // namespace unit_of_test
