#include "levigate/film/film.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <vector>

namespace film_test {
namespace {

using namespace levigate;

TEST(Film, FromReadings) {
  // Deviations 0, 4, -4, 8, -8: squares sum to 160, over n - 1 = 4 makes 40.
  const std::array readings_um{100.0, 104.0, 96.0, 108.0, 92.0};
  const Film film = film_from_readings(readings_um);
  EXPECT_DOUBLE_EQ(film.mean_um, 100.0);
  EXPECT_DOUBLE_EQ(film.sd_um, std::sqrt(40.0));
  EXPECT_DOUBLE_EQ(film.mean_se_um, std::sqrt(8.0));
  EXPECT_DOUBLE_EQ(film.sd_se_um, std::sqrt(5.0));
  EXPECT_EQ(film.readings, 5u);
  EXPECT_DOUBLE_EQ(spot_sd_um(film), std::sqrt(40.0 + 8.0 + 5.0));
}

TEST(Film, ReadingsThatAgreeHaveNoSpread) {
  const std::vector<double> readings_um(7, 83.3);
  EXPECT_NEAR(film_from_readings(readings_um).sd_um, 0.0, 1e-13);
}

TEST(Film, FromCoats) {
  const Film film = film_from_coats(3, 35.0, 9.0);
  EXPECT_DOUBLE_EQ(film.mean_um, 105.0);
  EXPECT_EQ(film.sd_um, 9.0);
  // A half-width of 15 % of the film, and of 5 um and 10 % where each coat was combed.
  EXPECT_DOUBLE_EQ(film.mean_se_um, 0.15 * 105.0 / std::sqrt(3.0));
  EXPECT_EQ(film.sd_se_um, 0.0);
  EXPECT_EQ(film.readings, 0u);
  EXPECT_EQ(film.how, FilmHow::coats_counted);
  const Film combed = film_from_coats(3, 35.0, 9.0, FilmHow::wet_comb);
  EXPECT_DOUBLE_EQ(combed.mean_se_um, (5.0 + 10.5) / std::sqrt(3.0));
  EXPECT_EQ(combed.how, FilmHow::wet_comb);
  EXPECT_THROW(film_from_coats(3, 35.0, 9.0, FilmHow::stated), BadInput);
}

TEST(Film, ManyReadingsPredictASpotAsWellAsAKnownFilm) {
  std::vector<double> readings_um;
  for (int i = 0; i < 10000; ++i) readings_um.push_back(i % 2 == 0 ? 90.0 : 110.0);
  EXPECT_NEAR(spot_sd_um(film_from_readings(readings_um)), 10.0, 2e-3);
}

struct DryRow {
  double wet, volume_solids, thinner, dry, tolerance;
};

// Notes of the coating industry on wet and dry film print 161 um at 62 % as 100 um, and 1.5 mil dry
// at 42 % as 3.57 mil wet (any unit of length); the thinned row is arithmetic, 100 x 0.30 / 1.25.
constexpr DryRow dry_rows[] = {
    {161.0, 0.62, 0.0, 99.82, 1e-12},
    {3.57, 0.42, 0.0, 1.5, 1e-3},
    {100.0, 0.30, 0.25, 24.0, 1e-12},
};

TEST(Film, DryAndWetFilm) {
  for (const auto& row : dry_rows) {
    EXPECT_NEAR(dry_film_um(row.wet, row.volume_solids, row.thinner), row.dry, row.tolerance);
    EXPECT_NEAR(wet_film_um(row.dry, row.volume_solids, row.thinner), row.wet,
                row.tolerance / row.volume_solids * (1 + row.thinner));
  }
}

TEST(Film, NanIn) {
  const double nan = std::nan("");
  EXPECT_TRUE(std::isnan(dry_film_um(nan, 0.5)));
  EXPECT_TRUE(std::isnan(dry_film_um(100.0, nan)));
  EXPECT_TRUE(std::isnan(dry_film_um(100.0, 0.5, nan)));
  EXPECT_TRUE(std::isnan(wet_film_um(nan, 0.5)));
  EXPECT_TRUE(std::isnan(wet_film_um(100.0, nan)));
  EXPECT_TRUE(std::isnan(wet_film_um(100.0, 0.5, nan)));
  EXPECT_TRUE(std::isnan(spot_sd_um({.mean_um = 100.0, .sd_um = nan})));
}

TEST(Film, RejectsWhatIsNoFilm) {
  EXPECT_THROW(film_from_readings({}), BadInput);
  EXPECT_THROW(film_from_readings(std::array{100.0}), BadInput);
  EXPECT_THROW(film_from_readings(std::array{100.0, -1.0}), OutOfRange);
  EXPECT_THROW(film_from_readings(std::array{100.0, std::nan("")}), OutOfRange);
  EXPECT_THROW(film_from_readings(std::array{100.0, std::numeric_limits<double>::infinity()}),
               OutOfRange);
  EXPECT_THROW(film_from_coats(0, 35.0, 9.0), OutOfRange);
  EXPECT_THROW(film_from_coats(3, -35.0, 9.0), OutOfRange);
  EXPECT_THROW(film_from_coats(3, std::nan(""), 9.0), OutOfRange);
  EXPECT_THROW(film_from_coats(3, 35.0, -9.0), OutOfRange);
  EXPECT_THROW(dry_film_um(-1.0, 0.5), OutOfRange);
  EXPECT_THROW(dry_film_um(100.0, 1.1), OutOfRange);
  EXPECT_THROW(dry_film_um(100.0, 0.5, -0.1), OutOfRange);
  EXPECT_THROW(wet_film_um(-1.0, 0.5), OutOfRange);
  EXPECT_THROW(wet_film_um(100.0, 0.0), OutOfRange);
  EXPECT_THROW(wet_film_um(100.0, 0.5, -0.1), OutOfRange);
}

TEST(Film, MessageNamesTheReading) {
  try {
    film_from_readings(std::array{100.0, 99.0, -3.0});
    FAIL();
  } catch (const OutOfRange& error) {
    EXPECT_STREQ(error.what(),
                 "readings_um[2] = -3 um is outside 0 to 20000 um, in film_from_readings");
  }
}

}  // namespace
}  // namespace film_test
