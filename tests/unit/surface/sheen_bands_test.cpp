#include "levigate/surface/sheen_bands.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>
#include <string>
#include <vector>

namespace sheen_bands_test {
namespace {

using namespace levigate;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::ThrowsMessage;

std::vector<std::string> names(const std::vector<SheenBand>& bands) {
  std::vector<std::string> result;
  for (const SheenBand& band : bands) {
    result.push_back(std::string(band.scheme) + ": " + std::string(band.name));
  }
  return result;
}

// Typed a second time: name, limits at 60 and 85 degrees, -1 where none is printed.
TEST(SheenBands, AsPrinted) {
  struct Row {
    const char *scheme, *name;
    double low, high, low_85, high_85;
  };
  constexpr Row rows[] = {
      {"institute", "matte / flat", 0, 5, 0, 10},  {"institute", "velvet", 0, 10, 10, 35},
      {"institute", "eggshell", 10, 25, 10, 35},   {"institute", "satin", 20, 35, 35, -1},
      {"institute", "semi-gloss", 35, 70, -1, -1}, {"institute", "gloss", 70, 85, -1, -1},
      {"institute", "high gloss", 85, -1, -1, -1}, {"trade", "matt", 1, 8, -1, -1},
      {"trade", "semi-matt", 9, 40, -1, -1},       {"trade", "semi-gloss", 41, 70, -1, -1},
      {"trade", "gloss", 71, 90, -1, -1},          {"trade", "high gloss", 91, 97, -1, -1},
      {"EN 13300", "dead matt", -1, -1, 0, 5},     {"EN 13300", "matt", -1, -1, 5, 10},
      {"EN 13300", "mid sheen", 0, 60, 10, -1},    {"EN 13300", "gloss", 60, -1, -1, -1},
  };
  ASSERT_EQ(std::size(rows), std::size(sheen_band_table));
  for (const Row& row : rows) {
    const SheenBand& band = band_named(row.scheme, row.name);
    EXPECT_EQ(band.low_gu.value_or(-1), row.low) << row.name;
    EXPECT_EQ(band.high_gu.value_or(-1), row.high) << row.name;
    EXPECT_EQ(band.low_85_gu.value_or(-1), row.low_85) << row.name;
    EXPECT_EQ(band.high_85_gu.value_or(-1), row.high_85) << row.name;
    EXPECT_FALSE(band.source.citation.empty());
  }
}

TEST(SheenBands, NamesOfAGloss) {
  EXPECT_THAT(names(bands_of(22.0)), ElementsAre("institute: eggshell", "institute: satin",
                                                 "trade: semi-matt", "EN 13300: mid sheen"));
  EXPECT_THAT(names(bands_of(98.0)), ElementsAre("institute: high gloss", "EN 13300: gloss"));
}

TEST(SheenBands, TheGlossAt85DegreesDecidesWhereItIsKnown) {
  EXPECT_THAT(names(bands_of(22.0, 50.0)),
              ElementsAre("institute: satin", "trade: semi-matt", "EN 13300: mid sheen"));
  EXPECT_THAT(names(bands_of(3.0, 3.0)),
              ElementsAre("institute: matte / flat", "trade: matt", "EN 13300: dead matt"));
}

TEST(SheenBands, ReadingsAreTakenToWholeUnits) {
  EXPECT_TRUE(holds(band_named("trade", "matt"), 8.4));
  EXPECT_TRUE(holds(band_named("trade", "semi-matt"), 8.5));
  EXPECT_FALSE(holds(band_named("trade", "matt"), 8.5));
  EXPECT_TRUE(holds(band_named("institute", "gloss"), 85.0));
  EXPECT_TRUE(holds(band_named("institute", "high gloss"), 85.0));
}

TEST(SheenBands, ABandAt85DegreesAloneHoldsNothingWithoutIt) {
  const SheenBand& band = band_named("EN 13300", "dead matt");
  EXPECT_FALSE(holds(band, 3.0));
  EXPECT_TRUE(holds(band, 3.0, 5.0));
  EXPECT_FALSE(holds(band, 3.0, 6.0));
}

TEST(SheenBands, UnknownNamesAndGloss) {
  EXPECT_THAT([] { band_named("trad", "gloss"); },
              ThrowsMessage<BadInput>(HasSubstr("the nearest is 'trade'")));
  EXPECT_THAT([] { band_named("institute", "satan"); },
              ThrowsMessage<BadInput>(HasSubstr("the nearest is 'satin'")));
  EXPECT_THROW(band_named("trade", "eggshell"), BadInput);
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(bands_of(-1.0), OutOfRange);
  EXPECT_THROW(bands_of(nan), OutOfRange);
  EXPECT_THROW(bands_of(50.0, 201.0), OutOfRange);
  EXPECT_THROW(holds(sheen_band_table[0], nan), OutOfRange);
}

}  // namespace
}  // namespace sheen_bands_test
