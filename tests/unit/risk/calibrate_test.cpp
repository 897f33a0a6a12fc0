// What to measure: that the ranked narrowing is what comes out when the reading is learned.
#include "levigate/risk/calibrate.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "levigate/io/write_calibration.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace calibrate_test {
namespace {

using namespace learn_workshop;

const std::vector<std::string> all{"P400", "P600", "P800", "P1000", "P1500"};
const SimulateOptions options{.draws = 200};

Calibration ranked(const Bench& bench) { return calibrate(bench, evaluate(bench, all), options); }

const Measurement& of(const Calibration& calibration, MeasurementKind kind) {
  for (const Measurement& one : calibration.measurements) {
    if (one.kind == kind) return one;
  }
  throw std::runtime_error(std::string(to_string(kind)));
}

TEST(Calibrate, RanksByTheGainForTheTime) {
  const Bench bench(clock_case(), drawer());
  const Calibration found = ranked(bench);
  EXPECT_EQ(found.job, "clock case");
  EXPECT_EQ(found.minutes, simulate(bench, evaluate(bench, all), options).minutes);
  ASSERT_EQ(found.measurements.size(), 5U);
  for (std::size_t i = 0; i < found.measurements.size(); ++i) {
    const Measurement& one = found.measurements[i];
    EXPECT_NEAR(one.gain_per_hour, std::log(one.fold_before / one.fold_after) / (one.minutes / 60),
                1e-12);
    if (i > 0) {
      EXPECT_LE(one.gain_per_hour, found.measurements[i - 1].gain_per_hour);
    }
    EXPECT_GT(one.gain_per_hour, 0) << to_string(one.kind);
    EXPECT_EQ(one.fold_before, one.minutes_before.p90 / one.minutes_before.p10);
    EXPECT_EQ(one.fold_after, one.minutes_after.p90 / one.minutes_after.p10);
    if (one.kind != MeasurementKind::first_step) EXPECT_EQ(one.minutes_before, found.minutes);
  }
  const Measurement& gauged = of(found, MeasurementKind::patch_gauged);
  EXPECT_EQ(gauged.tool, "hard block");
  EXPECT_EQ(gauged.area_cm2, 100);
  EXPECT_EQ(gauged.sanding_minutes, 5);
  EXPECT_EQ(found.cautions, evaluate(bench, all).cautions);
}

TEST(Calibrate, ASolidHasNothingToGaugeAndAScratchedOneNothingToLevel) {
  Job job = clock_case();
  job.scratched_by = grade("P220");
  for (const Measurement& one : ranked(Bench(job, drawer())).measurements) {
    EXPECT_NE(one.kind, MeasurementKind::patch_levelled);
  }
}

// What learn() refuses to take narrows nothing.
TEST(Calibrate, PromisesNothingUnderANameThatUnlikeThingsShare) {
  Job job = clock_case();
  job.coating.name = nameless_coating;
  EXPECT_TRUE(ranked(Bench(job, drawer())).measurements.empty());
  Stack stack = drawer();
  for (std::size_t i = 0; i < 3; ++i) stack.sheets[i].backing.name = nameless_backing;
  for (const Measurement& one : ranked(Bench(clock_case(), stack)).measurements) {
    EXPECT_EQ(one.sheet, "P1000") << to_string(one.kind);
  }
}

TEST(Calibrate, TheFirstStepIsRecordedWithItsOvercut) {
  Job job = clock_case();
  job.scratched_by = grade("P220");
  const Bench bench(job, drawer());
  Plan plan = evaluate(bench, all);
  ASSERT_TRUE(plan.steps.front().overcut);
  plan.steps.front().overcut = plan.overcut;
  EXPECT_FALSE(of(calibrate(bench, plan, options), MeasurementKind::first_step).overcut);
  plan.steps.front().overcut = 1.5 * plan.overcut;
  EXPECT_EQ(of(calibrate(bench, plan, options), MeasurementKind::first_step).overcut,
            1.5 * plan.overcut);
}

TEST(Calibrate, ReadsBackEqualFromJson) {
  Calibration found = ranked(Bench(clock_case(), drawer()));
  found.measurements.back().overcut = 1.5;
  const std::string text = to_json(found);
  EXPECT_EQ(calibration_from_json(text), found);
  EXPECT_EQ(to_json(calibration_from_json(text)), text);
}

TEST(Calibrate, AScratchReadWithoutAPaceLeavesTheBandsOfThePace) {
  Shop shop;
  shop.scratches = {{"two-part urethane", "latex paper", {1, 0.9, 1.1, 3}}};
  const Bench read(clock_case(), drawer(), shop), bare(clock_case(), drawer());
  const Interval with = simulate(read, evaluate(read, all), options).minutes;
  const Interval without = simulate(bare, evaluate(bare, all), options).minutes;
  EXPECT_LT(with.p90 / with.p10, without.p90 / without.p10);
  EXPECT_EQ(simulate(Bench(clock_case(), drawer(), Shop{}), evaluate(bare, all), options),
            simulate(bare, evaluate(bare, all), options));
}

}  // namespace
}  // namespace calibrate_test
