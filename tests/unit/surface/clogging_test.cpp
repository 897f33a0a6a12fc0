#include "levigate/surface/clogging.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace clogging_test {
namespace {

using namespace levigate;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
const Backing paper = backing_named("latex paper");  // fade 30 m, floor 0.4, life 200 m

TEST(Cleaning, CheckValues) {
  const Cleaning at_fade = cleaning(paper, 30.0);
  EXPECT_NEAR(at_fade.rate_share, 0.779272, 5e-7);
  EXPECT_NEAR(at_fade.minutes_factor, 1.0 / 0.779272, 1e-6);
  EXPECT_NEAR(at_fade.clogged_after_m, 20.7944, 5e-5);  // 30 ln 2
  EXPECT_NEAR(at_fade.clogged_share, 1.0 - std::log(2.0), 1e-15);
}

TEST(Cleaning, AlwaysCleanAndNeverCleaned) {
  const Cleaning always = cleaning(paper, 0.0);
  EXPECT_EQ(always.minutes_factor, 1.0);
  EXPECT_EQ(always.clogged_share, 0.0);
  EXPECT_EQ(cleaning(paper, paper.clean_every_m).clogged_share, 0.0);  // as the profile has it
  const Cleaning never = cleaning(paper, 1e9);
  EXPECT_NEAR(never.minutes_factor, 1.0 / 0.4, 1e-6);
  EXPECT_NEAR(never.clogged_share, 1.0, 1e-6);
}

// At the mark the rate has lost half of what it can lose.
TEST(Cleaning, TheMarkIsHalfOfWhatFades) {
  const double s = cleaning(paper, 1.0).clogged_after_m;
  const double rate = paper.floor + (1.0 - paper.floor) * std::exp(-s / paper.fade_m);
  EXPECT_NEAR(rate, 0.5 * (1.0 + paper.floor), 1e-15);
}

TEST(Cleaning, LongerIntervalsCostMinutesAndClog) {
  double minutes = 1.0;
  double clogged = 0.0;
  for (const double every_m : {5.0, 10.0, 20.0, 40.0, 80.0, 200.0}) {
    const Cleaning c = cleaning(paper, every_m);
    EXPECT_GT(c.minutes_factor, minutes);
    EXPECT_GE(c.clogged_share, clogged);
    minutes = c.minutes_factor;
    clogged = c.clogged_share;
  }
}

// 200 m at 0.45 m/s and a duty of 0.6: 12.3 min.
TEST(Pieces, CheckValues) {
  const Block block = block_named("hard block");
  EXPECT_EQ(pieces(paper, block, 0.0).needed, 0.0);
  EXPECT_EQ(pieces(paper, block, 200.0).needed, 1.0);
  EXPECT_EQ(pieces(paper, block, 201.0).needed, 2.0);
  EXPECT_NEAR(pieces(paper, block, 1.0).minutes_each, 200.0 / 0.45 / 0.6 / 60.0, 1e-13);
}

TEST(Clogging, RefusesWhatIsOutOfRange) {
  const Block block = block_named("hard block");
  for (const double bad : {-1.0, 1e13, nan}) {
    EXPECT_THROW(cleaning(paper, bad), OutOfRange) << bad;
    EXPECT_THROW(pieces(paper, block, bad), OutOfRange) << bad;
  }
  Backing none = paper;
  none.fade_m = 0.0;
  EXPECT_THROW(cleaning(none, 10.0), OutOfRange);
  EXPECT_THROW(pieces(none, block, 10.0), OutOfRange);
  Block still = block;
  still.speed_m_s = 0.0;
  EXPECT_THROW(pieces(paper, still, 10.0), OutOfRange);
  EXPECT_THROW(pieces(paper, Block{}, 10.0), BadInput);  // of which no number is set
}

TEST(Clogging, NoDepthIsClaimedWithoutASource) {
  EXPECT_EQ(clogged_sheet_source.basis, Basis::common_practice);
  EXPECT_EQ(clogged_sheet_text.find_first_of("0123456789"), std::string_view::npos);
}

}  // namespace
}  // namespace clogging_test
