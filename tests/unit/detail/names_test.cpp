// Names that people use, and the profile that they mean.
#include "levigate/detail/names.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/surface/coating.hpp"
#include "levigate/surface/cure.hpp"

namespace names_test {
namespace {

using namespace levigate;
using detail::same_name;

TEST(Names, CaseAndSpacesDoNotMatter) {
  EXPECT_TRUE(same_name("Two part  urethane", "two-part urethane"));
  EXPECT_TRUE(same_name("wet/dry_paper.", "Wet dry paper"));
  EXPECT_FALSE(same_name("2K urethane", "2K"));
  EXPECT_FALSE(same_name("", ""));
  EXPECT_FALSE(same_name(" - ", ""));
}

TEST(Names, EveryOtherNameMeansItsProfile) {
  std::size_t others = 0;
  for (const CoatingProfile& row : coating_table) {
    for (const std::string_view other : row.also) {
      EXPECT_EQ(coating_named(other).name, row.name) << other;
      ++others;
    }
  }
  EXPECT_GT(others, 20U);
  EXPECT_EQ(cure_named("NITRO"), cure_named("nitrocellulose lacquer"));
}

}  // namespace
}  // namespace names_test
