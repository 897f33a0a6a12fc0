// Grades as values: order, labels, what is marked as extrapolated, spreads and tails.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "levigate/grade/extrapolate.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/spread.hpp"

namespace tables_test {
namespace {

using namespace levigate;

TEST(GradeTables, FallStrictlyFromCoarseToFine) {
  for (const System system : all_systems) {
    const std::vector<Grade> all = grades(system);
    ASSERT_FALSE(all.empty()) << to_string(system);
    for (std::size_t i = 0; i < all.size(); ++i) {
      EXPECT_EQ(all[i].system, system);
      EXPECT_GT(all[i].median_um, 0) << all[i].label;
      if (i == 0) continue;
      EXPECT_LT(all[i].median_um, all[i - 1].median_um) << all[i].label;
      if (all[i].number) {
        EXPECT_GT(*all[i].number, *all[i - 1].number) << all[i].label;
      }
    }
  }
}

TEST(GradeTables, EveryNumberHasACitation) {
  for (const System system : all_systems) {
    for (const Grade& grade : grades(system)) {
      EXPECT_FALSE(grade.median_source.citation.empty()) << grade.label;
      EXPECT_NE(grade.basis(), Basis::user) << grade.label;
      EXPECT_EQ(grade.tolerance_um.has_value(), !grade.tolerance_source.citation.empty());
      EXPECT_EQ(grade.coarse_limit_um || grade.fine_limit_um,
                !grade.limits_source.citation.empty());
      EXPECT_EQ(grade.fine_limit_um.has_value(), grade.fine_percent.has_value()) << grade.label;
      EXPECT_FALSE(grade.edition.empty()) << grade.label;
      EXPECT_FALSE(grade.method.empty()) << grade.label;
    }
  }
}

TEST(GradeTables, LimitsEncloseTheMedian) {
  for (const System system : all_systems) {
    for (const Grade& grade : grades(system)) {
      if (grade.coarse_limit_um) {
        EXPECT_GT(*grade.coarse_limit_um, grade.median_um) << grade.label;
      }
      if (grade.fine_limit_um) {
        EXPECT_LT(*grade.fine_limit_um, grade.median_um) << grade.label;
      }
      if (grade.tolerance_um) {
        EXPECT_LT(*grade.tolerance_um, grade.median_um / 3) << grade.label;
      }
    }
  }
}

TEST(GradeTables, TrapsAreStatedInTheRows) {
  EXPECT_NE(grade("P1500").note.find("2021 edition"), std::string::npos);
  EXPECT_EQ(grade("P1200").note.find("2021 edition"), std::string::npos);
  EXPECT_NE(grade("CAMI 800").note.find("ends at 600"), std::string::npos);
  EXPECT_NE(grade("CAMI 80").note.find("190 um"), std::string::npos);
  EXPECT_EQ(grade("JIS #8000").fine_percent, 75);
  EXPECT_EQ(grade("JIS #6000").fine_percent, 94);
  EXPECT_EQ(grade("P1000").fine_percent, 95);
  EXPECT_NE(grade("F1000").note.find("80 %"), std::string::npos);
}

TEST(GradeTables, GradesWithoutAPrintedSizeAreMarked) {
  std::vector<std::string> extrapolated;
  for (const System system : all_systems) {
    for (const Grade& grade : grades(system)) {
      if (grade.basis() != Basis::extrapolated) continue;
      extrapolated.push_back(grade.label);
      EXPECT_FALSE(grade.tolerance_um || grade.coarse_limit_um || grade.fine_limit_um);
      EXPECT_NE(grade.note.find("size extrapolated"), std::string::npos);
    }
  }
  EXPECT_EQ(extrapolated, (std::vector<std::string>{"P3000", "P4000", "P5000", "CAMI 1200"}));
}

TEST(GradeExtrapolation, MeetsTheFinestGradeAndFollowsThePowerLaw) {
  const Extrapolation anchor = extrapolated_size(System::fepa_p, 2500);
  EXPECT_DOUBLE_EQ(anchor.median_um, 8.4);
  EXPECT_DOUBLE_EQ(anchor.low_um, 7.9);
  EXPECT_DOUBLE_EQ(anchor.high_um, 8.9);
  // Equal ratios of numbers give equal ratios of sizes.
  const double at_3000 = extrapolated_size(System::fepa_p, 3000).median_um;
  const double at_3600 = extrapolated_size(System::fepa_p, 3600).median_um;
  EXPECT_NEAR(at_3600 / at_3000, at_3000 / 8.4, 1e-14);
}

TEST(GradeExtrapolation, IntervalHoldsThePredictionAndTheTradesP4000) {
  const Extrapolation p4000 = extrapolated_size(System::fepa_p, 4000);
  EXPECT_LT(p4000.low_um, p4000.median_um);
  EXPECT_GT(p4000.high_um, p4000.median_um);
  EXPECT_LT(p4000.low_um, 5.0);  // a trade page: P4000 near 5 um
}

TEST(GradeExtrapolation, RefusesWhatItCannotKnow) {
  EXPECT_THROW(extrapolated_size(System::fepa_p, 5001), OutOfRange);
  EXPECT_THROW(extrapolated_size(System::fepa_p, 2499), OutOfRange);
  EXPECT_THROW(extrapolated_size(System::jis, std::nan("")), OutOfRange);
  EXPECT_THROW(extrapolated_size(System::micron, 5), BadInput);
}

TEST(GradeSpread, P1000FollowsFromItsLimits) {
  // 33.7 / 18.3 / 12.4 um at 95 %: the two sides by the formula of log_spread, by hand.
  EXPECT_NEAR(log_spread(grade("P1000")), 0.280634, 5e-7);
  EXPECT_EQ(spread(grade("P1000")).source.basis, Basis::computed);
}

TEST(GradeSpread, RecoversTheSpreadOfAnExactLogNormal) {
  // Limits made from the 3, 95, 94 and 75 % points of a distribution of spread 0.3.
  const std::pair<double, double> points[] = {{95, 1.644854}, {94, 1.554774}, {75, 0.674490}};
  for (const auto& [percent, z] : points) {
    Grade made = grade("P1000");
    made.coarse_limit_um = made.median_um * std::exp(0.3 * 1.880794);
    made.fine_limit_um = made.median_um * std::exp(-0.3 * z);
    made.fine_percent = percent;
    EXPECT_NEAR(log_spread(made), 0.3, 5e-7) << percent;
    made.coarse_limit_um.reset();
    EXPECT_NEAR(log_spread(made), 0.3, 5e-7) << percent << " alone";
  }
}

TEST(GradeSpread, AssumptionsWhereThereAreNoLimits) {
  const auto expect = [](const char* label, double value) {
    const Spread found = spread(grade(label));
    EXPECT_EQ(found.log_spread, value) << label;
    EXPECT_EQ(found.source.basis, Basis::assumption) << label;
  };
  expect("P12", 0.15);
  expect("P220", 0.15);
  expect("CAMI 220", 0.15);
  expect("CAMI 240", 0.30);
  expect("CAMI 1200", 0.30);
  expect("F220", 0.15);
  expect("9 um", 0.20);
  expect("7 um", 0.20);
  expect("P4000", log_spread(grade("P2500")));
}

TEST(GradeSpread, CoarseTailIsTheLimitOrFollowsFromTheSpread) {
  EXPECT_EQ(coarse_tail_um(grade("P1000")), 33.7);
  EXPECT_NEAR(coarse_tail_um(grade("9 um")), 9 * std::exp(0.2 * 1.880794), 1e-5);
  EXPECT_GT(coarse_tail_um(grade("CAMI 600")), coarse_tail_um(grade("9 um")));
}

TEST(GradeSpread, RefusesLimitsThatContradictTheMedian) {
  Grade made = grade("P1000");
  made.coarse_limit_um = 10.0;
  EXPECT_THROW(log_spread(made), OutOfRange);
  made = grade("P1000");
  made.fine_limit_um = 20.0;
  EXPECT_THROW(log_spread(made), OutOfRange);
  made = grade("P1000");
  made.fine_percent = 90;
  EXPECT_THROW(log_spread(made), BadInput);
  made = grade("P1000");
  made.median_um = std::nan("");
  EXPECT_THROW(log_spread(made), OutOfRange);
  made = grade("9 um");
  made.median_um = std::numeric_limits<double>::infinity();
  EXPECT_THROW(coarse_tail_um(made), OutOfRange);
}

}  // namespace
}  // namespace tables_test
