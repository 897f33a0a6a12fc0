// Conversion between systems: nearest grade, overlap, tolerance, continuous number, arrays.
#include "levigate/grade/convert.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/work/nearest.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>
#include <string>

#include "levigate/grade/label.hpp"
#include "levigate/grade/sized.hpp"
#include "levigate/text/sentences.hpp"

namespace convert_test {
namespace {

using namespace levigate;

/// Area under the lower of two normal densities, by the trapezoid rule.
double integrated_overlap(double mean_1, double spread_1, double mean_2, double spread_2) {
  const double wide = std::max(spread_1, spread_2);
  const double low = std::min(mean_1, mean_2) - 10 * wide;
  const double high = std::max(mean_1, mean_2) + 10 * wide;
  constexpr int steps = 200000;
  const double width = (high - low) / steps;
  const auto density = [](double x, double mean, double spread) {
    const double t = (x - mean) / spread;
    return std::exp(-0.5 * t * t) / (spread * std::sqrt(2 * std::acos(-1.0)));
  };
  double sum = 0;
  for (int i = 0; i <= steps; ++i) {
    const double x = low + i * width;
    sum += std::min(density(x, mean_1, spread_1), density(x, mean_2, spread_2));
  }
  return sum * width;
}

TEST(GradeOverlap, AgreesWithNumericalIntegration) {
  std::mt19937_64 random(7);
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
  };
  for (int i = 0; i < 40; ++i) {
    const double spread_1 = uniform(0.1, 0.8);
    const double spread_2 = i % 4 == 0 ? spread_1 : uniform(0.1, 0.8);
    const double median_1 = uniform(1, 60);
    const double median_2 = i % 5 == 0 ? median_1 : uniform(1, 60);
    EXPECT_NEAR(size_overlap(median_1, spread_1, median_2, spread_2),
                integrated_overlap(std::log(median_1), spread_1, std::log(median_2), spread_2),
                1e-6)
        << median_1 << ' ' << spread_1 << ' ' << median_2 << ' ' << spread_2;
  }
}

TEST(GradeOverlap, IsSymmetricScaleFreeAndContinuousAtEqualSpreads) {
  EXPECT_EQ(size_overlap(20, 0.3, 20, 0.3), 1.0);
  // 2 Phi(-1/2) for medians one spread apart, from tables of the normal distribution.
  EXPECT_NEAR(size_overlap(20, 0.3, 20 * std::exp(0.3), 0.3), 0.617075, 5e-7);
  const double value = size_overlap(20, 0.3, 14, 0.2);
  EXPECT_DOUBLE_EQ(size_overlap(14, 0.2, 20, 0.3), value);
  EXPECT_NEAR(size_overlap(40, 0.3, 28, 0.2), value, 1e-14);
  const double equal = size_overlap(20, 0.3, 14, 0.3);
  for (const double step : {1e-15, 1e-12, 1e-9}) {
    EXPECT_NEAR(size_overlap(20, 0.3, 14, 0.3 * (1 + step)), equal, 2 * step + 1e-14) << step;
    EXPECT_NEAR(size_overlap(20, 0.3, 20, 0.3 * (1 + step)), 1.0, step + 1e-14) << step;
  }
}

TEST(GradeOverlap, StaysWithinZeroAndOneAtTheEdges) {
  for (const double spread : {1e-6, 1e-3, 1.0, 10.0}) {
    for (const double median : {1e-3, 1.0, 1e6}) {
      const double value = size_overlap(1.0, 0.3, median, spread);
      EXPECT_GE(value, 0.0);
      EXPECT_LE(value, 1.0);
    }
  }
  EXPECT_TRUE(std::isnan(size_overlap(std::nan(""), 0.3, 1.0, 0.3)));
  EXPECT_THROW(size_overlap(1.0, 0.0, 1.0, 0.3), OutOfRange);
  EXPECT_THROW(size_overlap(-1.0, 0.3, 1.0, 0.3), OutOfRange);
}

TEST(GradeConvert, AGradeStandsForItselfInItsOwnSystem) {
  for (const System system : all_systems) {
    const std::vector<Grade> all = grades(system);
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Equivalent same = convert(all[i], system);
      EXPECT_EQ(same.grade, all[i]);
      EXPECT_EQ(same.size_ratio, 1.0);
      EXPECT_EQ(same.overlap, 1.0);
      EXPECT_EQ(same.number, all[i].number);
      EXPECT_EQ(same.coarser.has_value(), i > 0);
      EXPECT_EQ(same.finer.has_value(), i + 1 < all.size());
      if (same.coarser) {
        EXPECT_EQ(*same.coarser, all[i - 1]);
      }
      if (same.finer) {
        EXPECT_EQ(*same.finer, all[i + 1]);
      }
      EXPECT_EQ(same.within_tolerance.has_value(), all[i].tolerance_um.has_value());
    }
  }
}

TEST(GradeConvert, TheNearestIsNearestByLogSize) {
  for (const System from : all_systems) {
    for (const Grade& given : grades(from)) {
      for (const System to : all_systems) {
        const Equivalent found = convert(given, to);
        const double distance = std::abs(std::log(found.size_ratio));
        for (const Grade& other : grades(to)) {
          EXPECT_LE(distance, std::abs(std::log(other.median_um / given.median_um)) + 1e-14);
        }
        // There and back lands no farther from the middle stop than the way out did.
        const double back = std::log(convert(found.grade, from).size_ratio);
        EXPECT_LE(std::abs(back), distance + 1e-14) << given.label << " " << to_string(to);
      }
    }
  }
}

TEST(GradeConvert, TiesGoToTheCoarser) {
  // 4 um is the geometric middle of 8 and 2, and so on, exactly in doubles.
  std::vector<Grade> ladder;
  for (const double size : {32.0, 8.0, 2.0}) ladder.push_back(sized_grade("step", size));
  EXPECT_EQ(detail::nearest_index(ladder, 16.0), 0u);
  EXPECT_EQ(detail::nearest_index(ladder, 4.0), 1u);
  EXPECT_EQ(detail::nearest_index(ladder, std::nextafter(4.0, 0.0)), 2u);
  EXPECT_EQ(detail::nearest_index(ladder, 8.0), 1u);
  EXPECT_EQ(detail::nearest_index(ladder, 1e4), 0u);
  EXPECT_EQ(detail::nearest_index(ladder, 0.01), 2u);
}

TEST(GradeConvert, TolerancesThatAreKnownAddUp) {
  EXPECT_EQ(convert(grade("CAMI 600"), System::fepa_p).within_tolerance, true);   // 0.7 <= 1.0
  EXPECT_EQ(convert(grade("CAMI 400"), System::fepa_p).within_tolerance, false);  // 1.8 > 1.0
  EXPECT_EQ(convert(grade("P800"), System::jis).within_tolerance, true);          // 1.8 <= 2.5
  EXPECT_EQ(convert(grade("CAMI 600"), System::micron).within_tolerance, std::nullopt);
  // Ties in the printed decimals that binary arithmetic would decide the other way.
  EXPECT_TRUE(detail::within(1.5, 1.2, 0.0, 0.3));
  EXPECT_TRUE(detail::within(19.7, 21.0, 0.0, 1.3));
  EXPECT_FALSE(detail::within(19.7, 21.001, 0.0, 1.3));
}

TEST(GradeConvert, TheContinuousNumberRunsThroughTheGrades) {
  const std::vector<Grade> all = grades(System::fepa_p);
  double last = *all.front().number;
  for (double size = 1800; size > 4.8; size *= 0.97) {
    const auto number = convert(sized_grade("step", size), System::fepa_p).number;
    ASSERT_TRUE(number) << size;
    EXPECT_GT(*number, last) << size;
    last = *number;
  }
  for (const Grade& known : all) {
    for (const double away : {1 - 1e-12, 1 + 1e-12}) {
      const auto number =
          convert(sized_grade("step", known.median_um * away), System::fepa_p).number;
      const bool outside = known == all.front() ? away > 1 : known == all.back() && away < 1;
      ASSERT_EQ(number.has_value(), !outside) << known.label;
      if (number) {
        EXPECT_NEAR(*number / *known.number, 1.0, 1e-10) << known.label;
      }
    }
  }
  // Half way in log size between P800 and P1000 is half way in log number.
  const Grade middle = sized_grade("step", std::sqrt(21.8 * 18.3));
  EXPECT_NEAR(*convert(middle, System::fepa_p).number, std::sqrt(800.0 * 1000.0), 1e-9);
}

TEST(GradeConvert, NoNumberOutsideTheRangeOrForMicron) {
  EXPECT_FALSE(convert(sized_grade("step", 1816), System::fepa_p).number);
  EXPECT_FALSE(convert(sized_grade("step", 1), System::fepa_p).number);
  EXPECT_FALSE(convert(grade("P800"), System::micron).number);
  EXPECT_TRUE(convert(sized_grade("step", 1815), System::fepa_p).number);
}

TEST(GradeConvert, TheVerdictSaysItInWords) {
  const auto verdict = [](const char* label, System system) {
    return sentence(convert(grade(label), system));
  };
  EXPECT_EQ(verdict("CAMI 600", System::fepa_p),
            "P1200 is the nearest to CAMI 600: 4 % finer, within the tolerance of the medians; "
            "94 % of the grain in common");
  EXPECT_NE(verdict("CAMI 400", System::fepa_p).find("beyond the tolerance"), std::string::npos);
  EXPECT_NE(verdict("9 um", System::cami).find("not known"), std::string::npos);
  EXPECT_NE(verdict("5 um", System::fepa_p).find("its size is extrapolated"), std::string::npos);
  EXPECT_NE(verdict("P800", System::fepa_p).find("the same median"), std::string::npos);
}

TEST(GradeConvert, RefusesASizeThatIsNone) {
  Grade broken = grade("P800");
  for (const double size : {0.0, -1.0, 1e308, std::nan("")}) {
    broken.median_um = size;
    EXPECT_THROW(convert(broken, System::cami), OutOfRange);
  }
}

TEST(GradeNearest, ArraysAgreeWithConvert) {
  std::vector<double> sizes;
  for (double size = 0.01; size < 1e4; size *= 1.07) sizes.push_back(size);
  for (const System system : all_systems) {
    const std::vector<Grade> all = grades(system);
    const std::vector<std::size_t> indices = nearest(sizes, system);
    ASSERT_EQ(indices.size(), sizes.size());
    for (std::size_t i = 0; i < sizes.size(); ++i) {
      EXPECT_EQ(all[indices[i]], convert(sized_grade("step", sizes[i]), system).grade);
    }
  }
  EXPECT_TRUE(nearest({}, System::cami).empty());
}

TEST(GradeNearest, ABadSizeIsNamedByItsIndex) {
  for (const double bad :
       {std::nan(""), 0.0, -3.0, 1e308, std::numeric_limits<double>::infinity()}) {
    try {
      nearest(std::vector<double>{20.0, 10.0, bad, 5.0}, System::fepa_p);
      ADD_FAILURE() << bad;
    } catch (const OutOfRange& error) {
      EXPECT_NE(std::string(error.what()).find("sizes_um[2]"), std::string::npos) << error.what();
    }
  }
}

}  // namespace
}  // namespace convert_test
