#include "levigate/film/edge.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace edge_test {
namespace {

using namespace levigate;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

TEST(Edge, ShareByRadius) {
  EXPECT_EQ(edge_share(0.0), 0.5);
  EXPECT_NEAR(edge_share(2.0), 0.8, 1e-15);
  EXPECT_NEAR(edge_share(4.0 / 3.0), 0.75, 1e-15);  // r0 = 2 mm / (0.5 / 0.2 - 1)
  EXPECT_EQ(edge_share(infinity), 1.0);
  double before = 0;
  for (double radius_mm = 0; radius_mm < 100; radius_mm += 0.3) {
    EXPECT_GT(edge_share(radius_mm), before);
    before = edge_share(radius_mm);
  }
  EXPECT_TRUE(std::isnan(edge_share(nan)));
  EXPECT_THROW(edge_share(-0.1), OutOfRange);
}

TEST(Edge, FilmOnASharpEdge) {
  const Film flat{105.0, 9.0, 3.0, 2.0, 10};
  const Film edge = edge_film(flat, 0.0);
  EXPECT_EQ(edge.mean_um, 52.5);
  EXPECT_EQ(edge.sd_um, 9.0);
  EXPECT_EQ(edge.mean_se_um, 1.5);
  EXPECT_EQ(edge.sd_se_um, 2.0);
  EXPECT_EQ(edge.readings, 10u);
  EXPECT_TRUE(std::isnan(edge_film(flat, nan).mean_um));
  EXPECT_THROW(edge_film(flat, -1.0), OutOfRange);
}

TEST(Edge, StrokesOfAPad) {
  // 80 mm of pad, 0.5 um a metre: 0.04 um a stroke, 25 and a bit in 1.01 um.
  EXPECT_EQ(strokes_within(1.01, 0.5, 150.0, 80.0), 25.0);
  EXPECT_EQ(strokes_within(1.01, 0.5, 40.0, 80.0), 50.0);  // a short stroke slides less
  EXPECT_EQ(strokes_within(0.03, 0.5, 150.0, 80.0), 0.0);
  EXPECT_EQ(strokes_within(0.0, 0.5, 150.0, 80.0), 0.0);
  EXPECT_EQ(strokes_within(infinity, 0.5, 150.0, 80.0), infinity);
  EXPECT_TRUE(std::isnan(strokes_within(1.0, nan, 150.0, 80.0)));
  EXPECT_THROW(strokes_within(-1.0, 0.5, 150.0, 80.0), OutOfRange);
  EXPECT_THROW(strokes_within(1.0, 0.0, 150.0, 80.0), OutOfRange);
  EXPECT_THROW(strokes_within(1.0, 0.5, 0.0, 80.0), OutOfRange);
  EXPECT_THROW(strokes_within(1.0, 0.5, 150.0, 2e4), OutOfRange);
}

}  // namespace
}  // namespace edge_test
