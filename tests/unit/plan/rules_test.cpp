// The rules of a plan that follow from others.
#include "levigate/plan/rules.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "levigate/error.hpp"

namespace rules_test {
namespace {

using namespace levigate;

TEST(Overcut, LeavesTheStatedShareOfSpotsShort) {
  Rules rules;
  for (const double share : {0.5, 0.1, 0.01, 0.001}) {
    for (const double cv : {0.05, 0.15, 0.3}) {
      rules.short_share = share;
      rules.removed_cv = cv;
      const double overcut = overcut_of(rules);
      // A spot takes off overcut (1 + cv N) scratch depths; it is short below one.
      const double z = (1.0 - overcut) / (cv * overcut);
      EXPECT_NEAR(0.5 * std::erfc(-z / std::sqrt(2.0)), share, 1e-12) << share << " " << cv;
    }
  }
}

TEST(Overcut, ASearchChoosesFromThreeUnlessOneIsStated) {
  Rules rules;
  const double least = overcut_of(rules);
  EXPECT_EQ(overcuts_of(rules), (std::vector{least, 1.5 * least, 2 * least}));
  rules.overcut = 1.25;
  EXPECT_EQ(overcuts_of(rules), std::vector{1.25});
}

TEST(Overcut, OfADefaultHandIsNearlyTwo) { EXPECT_NEAR(overcut_of(Rules{}), 1.864, 5e-4); }

TEST(Overcut, AsStatedIsKept) {
  Rules rules;
  rules.overcut = 1.25;
  EXPECT_EQ(overcut_of(rules), 1.25);
}

TEST(Overcut, OfAHandTooUnevenIsRefusedWithWhatToDo) {
  Rules rules;
  rules.removed_cv = 0.32;
  try {
    overcut_of(rules);
    FAIL();
  } catch (const BadInput& error) {
    EXPECT_NE(std::string(error.what()).find("state overcut"), std::string::npos);
  }
}

}  // namespace
}  // namespace rules_test
