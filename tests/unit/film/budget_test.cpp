#include "levigate/film/budget.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "levigate/film/cut_through.hpp"

namespace budget_test {
namespace {

using namespace levigate;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr BudgetInput coat{.mean_um = 105.0,
                           .sd_um = 9.0,
                           .removed_cv = 0.15,
                           .reserve_um = 10.0,
                           .spots = 1200.0,
                           .cut_through_limit = 0.01};

double chance_at(const BudgetInput& input, double depth_um) {
  return cut_through({.depth_um = depth_um,
                      .mean_um = input.mean_um,
                      .sd_um = input.sd_um,
                      .removed_cv = input.removed_cv,
                      .reserve_um = input.reserve_um,
                      .spots = input.spots});
}

TEST(Budget, ReturnsTheDepthOfACheckedChance) {
  BudgetInput input = coat;  // the chance at 38 um, see the check value of cut_through
  input.cut_through_limit = 5.26194960783e-5;
  EXPECT_NEAR(depth_budget_um(input), 38.0, 1e-9);
}

TEST(Budget, ChanceAtTheBudgetIsTheLimit) {
  int finite = 0;
  for (const double mean_um : {20.0, 105.0, 400.0}) {
    for (const double sd_um : {0.5, 9.0, 40.0}) {
      for (const double removed_cv : {0.0, 0.15, 0.5, 1.5}) {
        for (const double spots : {1.0, 1200.0, 1e6}) {
          for (const double limit : {1e-90, 1e-12, 1e-4, 0.01, 0.5, 0.9, 0.9999}) {
            const BudgetInput input{mean_um, sd_um, removed_cv, 10.0, spots, limit};
            const double budget_um = depth_budget_um(input);
            if (budget_um == 0.0) {
              EXPECT_GT(chance_at(input, 0.0), limit);
            } else if (budget_um == infinity) {
              EXPECT_LT(chance_at(input, 1e9), limit * (1 + 1e-9));
            } else {
              EXPECT_NEAR(chance_at(input, budget_um) / limit, 1.0, 1e-10)
                  << mean_um << " " << sd_um << " " << removed_cv << " " << spots << " " << limit;
              ++finite;
            }
          }
        }
      }
    }
  }
  EXPECT_GT(finite, 400);  // the rest have no budget, or no end of it
}

TEST(Budget, ShrinksWithEveryRisk) {
  const auto with = [](double BudgetInput::*member, double value) {
    BudgetInput input = coat;
    input.*member = value;
    return depth_budget_um(input);
  };
  const double base = depth_budget_um(coat);
  EXPECT_LT(with(&BudgetInput::sd_um, 9.1), base);
  EXPECT_LT(with(&BudgetInput::removed_cv, 0.16), base);
  EXPECT_LT(with(&BudgetInput::reserve_um, 10.1), base);
  EXPECT_LT(with(&BudgetInput::spots, 1300.0), base);
  EXPECT_GT(with(&BudgetInput::mean_um, 106.0), base);
  EXPECT_GT(with(&BudgetInput::cut_through_limit, 0.011), base);
}

TEST(Budget, WithoutSpreadIsAllButTheReserve) {
  BudgetInput input = coat;
  input.sd_um = input.removed_cv = 0.0;
  EXPECT_EQ(depth_budget_um(input), 95.0);
  EXPECT_EQ(chance_at(input, 95.0), 0.0);
}

TEST(Budget, EvenChanceOfOneSpotIsTheMean) {
  BudgetInput input = coat;
  input.spots = 1.0;
  input.cut_through_limit = 0.5;
  EXPECT_NEAR(depth_budget_um(input), 95.0, 1e-12);
}

TEST(Budget, NoneWhereTheFilmIsTooThinOrTooUneven) {
  BudgetInput input = coat;
  input.sd_um = 30.0;
  EXPECT_EQ(depth_budget_um(input), 0.0);
  input = coat;
  input.mean_um = 10.0;
  EXPECT_EQ(depth_budget_um(input), 0.0);
  input.mean_um = 5.0;
  EXPECT_EQ(depth_budget_um(input), 0.0);
}

TEST(Budget, InfiniteWhereNoDepthReachesTheLimit) {
  BudgetInput input = coat;
  input.cut_through_limit = 1.0;
  EXPECT_EQ(depth_budget_um(input), infinity);
  input.spots = 1.0;
  input.removed_cv = 0.5;  // the chance tends to that of exceeding minus 2 sd, 0.97725
  input.cut_through_limit = 0.9773;
  EXPECT_EQ(depth_budget_um(input), infinity);
  input.cut_through_limit = 0.9772;
  EXPECT_LT(depth_budget_um(input), infinity);
}

constexpr double BudgetInput::*members[] = {
    &BudgetInput::mean_um,    &BudgetInput::sd_um, &BudgetInput::removed_cv,
    &BudgetInput::reserve_um, &BudgetInput::spots, &BudgetInput::cut_through_limit};

TEST(Budget, NanInAndOutOfRange) {
  for (const auto member : members) {
    BudgetInput input = coat;
    input.*member = std::nan("");
    EXPECT_TRUE(std::isnan(depth_budget_um(input)));
    input.*member = -1.0;
    EXPECT_THROW(depth_budget_um(input), OutOfRange);
    input.*member = infinity;
    EXPECT_THROW(depth_budget_um(input), OutOfRange);
  }
}

}  // namespace
}  // namespace budget_test
