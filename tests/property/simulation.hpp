// What the simulations share: random numbers that are the same on every machine, intervals, and the
// results committed in data/reference/simulations.json.
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <numbers>
#include <random>
#include <string>
#include <vector>

namespace levigate_tests {

/// The engine's bits are the standard's; its distributions are not, so they are made here.
class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}

  /// Above 0, below 1.
  double uniform() { return (static_cast<double>(engine_() >> 11) + 0.5) * 0x1p-53; }
  double uniform(double low, double high) { return low + (high - low) * uniform(); }
  double log_uniform(double low, double high) { return low * std::pow(high / low, uniform()); }

  double normal() {  // Box and Muller
    const double radius = std::sqrt(-2.0 * std::log(uniform()));
    return radius * std::cos(2.0 * std::numbers::pi * uniform());
  }

 private:
  std::mt19937_64 engine_;
};

struct Estimate {
  double value, low, high;
};

/// Mean of 12 independent runs with its 99 % interval.
inline Estimate estimate_of(const std::vector<double>& runs) {
  constexpr double student_99_of_12 = 3.1058;
  EXPECT_EQ(runs.size(), 12U);
  const auto count = static_cast<double>(runs.size());
  double mean = 0, squares = 0;
  for (const double run : runs) mean += run / count;
  for (const double run : runs) squares += (run - mean) * (run - mean);
  const double half = student_99_of_12 * std::sqrt(squares / (count - 1.0) / count);
  return {mean, mean - half, mean + half};
}

/// Holds a committed result to a rerun: its value lies in the rerun's interval, and its interval is
/// the rerun's to the digits committed.
inline void expect_committed(const std::string& id, const Estimate& rerun) {
  const auto path = std::filesystem::path(LEVIGATE_DATA_DIR) / "reference" / "simulations.json";
  const auto file = nlohmann::json::parse(std::ifstream(path));
  for (const auto& row : file.at("simulations")) {
    if (row.at("id") != id) continue;
    EXPECT_GE(row.at("value").get<double>(), rerun.low) << id;
    EXPECT_LE(row.at("value").get<double>(), rerun.high) << id;
    const double digits = 1e-3 * rerun.value;
    EXPECT_NEAR(row.at("low").get<double>(), rerun.low, digits) << id;
    EXPECT_NEAR(row.at("high").get<double>(), rerun.high, digits) << id;
    return;
  }
  ADD_FAILURE() << "not committed: " << id << " " << rerun.value << " " << rerun.low << " "
                << rerun.high;
}

}  // namespace levigate_tests
