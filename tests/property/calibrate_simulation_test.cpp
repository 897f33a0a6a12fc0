// What a measurement narrows is told before it is taken: held to many hands that take it.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

#include "levigate/journal/learn.hpp"
#include "levigate/journal/observe.hpp"
#include "levigate/risk/calibrate.hpp"
#include "levigate/risk/philox.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace calibrate_simulation_test {
namespace {

using namespace learn_workshop;

// Hands drawn from the bands work the patch, as noisy as a step is; their readings are learned by their entries. The band that is
// told before is the mean of those after.
TEST(CalibrateSimulation, TheBandIsWhatComesOutOfTheReading) {
  const std::vector<std::string> all{"P400", "P600", "P800", "P1000", "P1500"};
  const SimulateOptions options{.draws = 200};
  const Bench bench(clock_case(), drawer());
  const Calibration ranked = calibrate(bench, evaluate(bench, all), options);
  const auto gauged = std::find_if(
      ranked.measurements.begin(), ranked.measurements.end(),
      [](const Measurement& one) { return one.kind == MeasurementKind::patch_gauged; });
  ASSERT_NE(gauged, ranked.measurements.end());
  const Measurement told = *gauged;
  Entry patch = entry(EntryKind::patch_worked, "", told.sheet);
  patch.tool = told.tool;
  patch.area_cm2 = told.area_cm2;
  patch.minutes = told.sanding_minutes;
  patch.before_um.assign(patch_spots, 90);
  patch.after_um.assign(patch_spots, 75);
  const double predicted = observe(clock_case(), drawer(), {patch}).paces.at(0).predicted_minutes;
  constexpr int hands = 24;
  double sum = 0, squares = 0;
  for (std::uint32_t hand = 0; hand < hands; ++hand) {
    Stream stream(3, stream_named("hand"), hand);
    const double prior_sd = 0.65;  // of the bands of rate and hand together
    patch.minutes = predicted * std::exp(prior_sd * stream.normal() + 0.3 * stream.normal());
    const Shop shop = learn(Shop{}, clock_case(), drawer(), {patch}).shop;
    const Bench known(clock_case(), drawer(), shop);
    const Interval minutes = simulate(known, evaluate(known, all), options).minutes;
    const double log_fold = std::log(minutes.p90 / minutes.p10);
    sum += log_fold;
    squares += log_fold * log_fold;
  }
  const double mean = sum / hands;
  const double error = std::sqrt((squares / hands - mean * mean) / hands);
  EXPECT_NEAR(mean, std::log(told.fold_after), 3.3 * error + 0.02);
  EXPECT_LT(mean, std::log(told.fold_before));
}

}  // namespace
}  // namespace calibrate_simulation_test
