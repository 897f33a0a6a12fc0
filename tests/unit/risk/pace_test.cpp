// A pace drawn from what journals taught, and plans simulated with it.
#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "levigate/detail/student.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/risk/philox.hpp"
#include "levigate/risk/simulate.hpp"
#include "levigate/risk/work/pace.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace pace_test {
namespace {

using namespace learn_workshop;

const std::vector<std::string> all{"P400", "P600", "P800", "P1000", "P1500"};

/// Journals of a worker who takes so many times the minutes computed, each step alike but for a scatter of e^(+-0.2).
Shop taught(double slower, int journals) {
  const auto minutes = planned(all);
  Shop shop;
  for (int i = 0; i < journals; ++i) {
    std::vector<Entry> entries;
    for (std::size_t step = 0; step < all.size(); ++step) {
      const double scatter = (static_cast<std::size_t>(i) + step) % 2 == 0 ? 0.2 : -0.2;
      entries.push_back(
          ended(all[step], slower * all_zones(minutes.at(all[step])) * std::exp(scatter)));
    }
    shop = learn(shop, clock_case(), drawer(), entries).shop;
    shop.jobs.clear();  // the next is another job of that name
  }
  return shop;
}

Simulation simulated(const std::optional<Shop>& shop,
                     const SimulateOptions& options = {.draws = 60}) {
  const Bench bench(clock_case(), drawer(), shop);
  return simulate(bench, evaluate(bench, all), options);
}

/// Largest distance between the share of draws below a place and the chance of being below it.
template <typename Below>
double distance(std::vector<double> draws, Below below) {
  std::sort(draws.begin(), draws.end());
  double most = 0;
  for (std::size_t i = 0; i < draws.size(); ++i) {
    const double chance = below(draws[i]), count = static_cast<double>(draws.size());
    most = std::max({most, std::abs(chance - static_cast<double>(i) / count),
                     std::abs(chance - static_cast<double>(i + 1) / count)});
  }
  return most;
}

TEST(BeliefDraws, SumsAreTheStudentTThatTheBeliefStates) {
  const Belief belief{{0.3, -1}, {{2, -1.5}, {-1.5, 2}}, 0.4, 5};
  const BeliefDraws draws(belief);
  constexpr int count = 4000;
  const double allowed = 1.949 / std::sqrt(count);  // Kolmogorov's, one case in 1000
  for (const std::vector<double>& weights :
       std::vector<std::vector<double>>{{1, 0}, {0, 1}, {1, 1}, {1, -1}}) {
    const Sum sum = sum_of(belief, weights);
    std::vector<double> found;
    for (std::uint32_t i = 0; i < count; ++i) {
      Stream stream(3, 1, i);
      found.push_back((detail::dot(draws(stream).values, weights) - sum.median) / sum.scale);
    }
    EXPECT_LT(distance(found,
                       [](double t) {
                         const double tail = detail::student_tail(std::abs(t), 5);
                         return t > 0 ? 1 - tail : tail;
                       }),
              allowed);
  }
}

TEST(BeliefDraws, ChiSquareHasItsMeanAndItsMedian) {
  for (const double df : {2.0, 4.0, 37.5}) {
    constexpr int count = 4000;
    double sum = 0;
    int below = 0;
    for (std::uint32_t i = 0; i < count; ++i) {
      Stream stream(4, 2, i);
      const double value = detail::chi_square(df, stream);
      sum += value;
      if (df == 2.0) below += value < 2 * std::log(2.0) ? 1 : 0;
    }
    // 3.3 standard errors, one case in 1000.
    EXPECT_NEAR(sum / count, df, 3.3 * std::sqrt(2 * df / count)) << df;
    if (df == 2.0) {
      EXPECT_NEAR(below, 0.5 * count, 3.3 * 0.5 * std::sqrt(count));
    }
  }
}

TEST(BeliefDraws, WhatIsNoCovarianceIsRefused) {
  EXPECT_THROW(BeliefDraws({{0, 0}, {{1, 2}, {2, 1}}, 1, 4}), BadInput);
}

/// A shop that knows its pace for certain.
Shop certain() {
  Shop shop;
  shop.person = {0.5, 0.5, 0.5, 9};
  shop.rates = {{"two-part urethane", "film", {2, 2, 2, 9}},
                {"two-part urethane", "latex paper", {0.8, 0.8, 0.8, 9}}};
  shop.minutes_noise = {1e-3, 1e9};
  return shop;
}

TEST(SimulateWithAShop, WhatIsKnownForCertainComesOutAsKnown) {
  const auto minutes = planned(all);
  const Simulation found = simulated(certain(), {.draws = 20, .bands = false});
  for (std::size_t i = 1; i < all.size(); ++i) {  // the first levels a peel that was judged by eye
    const double known = all_zones(minutes.at(all[i])) / 0.5 / (i < 3 ? 0.8 : 2.0);
    EXPECT_NEAR(found.steps[i].minutes.p50 / (known + 2), 1, 4e-3) << all[i];  // changes take 2 min
  }
}

double ratio(const Interval& interval) { return interval.p90 / interval.p10; }

// A pace says how fast film goes, not how much has to go: that is drawn with the peel and the scratches.
TEST(SimulateWithAShop, WhatHasToComeOffIsDrawn) {
  const Simulation given = simulated(certain(), {.draws = 60, .bands = false});
  const Simulation drawn = simulated(certain());
  EXPECT_GT(ratio(given.steps[0].minutes), 1.3);
  for (std::size_t i = 1; i < all.size(); ++i) {
    EXPECT_LT(ratio(given.steps[i].minutes), 1.01) << all[i];
    EXPECT_GT(ratio(drawn.steps[i].minutes), 1.3) << all[i];
  }
}

// The factor of scratches that were read stands for the inputs that they hang on.
TEST(SimulateWithAShop, ReadScratchesNarrowTheMinutesAndTheFilm) {
  Shop shop = certain();
  shop.scratches = {{"two-part urethane", "film", {1.2, 1.2, 1.2, 9}},
                    {"two-part urethane", "latex paper", {1.2, 1.2, 1.2, 9}}};
  const Simulation open = simulated(certain()), read = simulated(shop);
  for (std::size_t i = 1; i < all.size(); ++i) {
    EXPECT_LT(ratio(read.steps[i].minutes) - 1, 0.5 * (ratio(open.steps[i].minutes) - 1)) << all[i];
  }
  const auto width = [](const Simulation& simulation) {
    const Interval& left = simulation.zones[0].film_left_um;
    return left.p90 - left.p10;
  };
  EXPECT_LT(width(read), width(open));
  shop.scratches[0].learned.observations = 0;  // nobody read these
  shop.scratches[1].learned.observations = 0;
  const Simulation unread = simulated(shop);
  for (std::size_t i = 1; i < all.size(); ++i) {
    EXPECT_GT(ratio(unread.steps[i].minutes), 1.3) << all[i];
  }
}

TEST(SimulateWithAShop, MoreJournalsNarrowTheMinutes) {
  const Interval by_bands = simulated(std::nullopt).minutes;
  const Interval untaught = simulated(Shop{}).minutes;
  const Interval few = simulated(taught(2.3, 1)).minutes;
  const Interval many = simulated(taught(2.3, 20)).minutes;
  EXPECT_GT(ratio(untaught), 0.9 * ratio(by_bands));  // a shop that knows nothing is no surer
  EXPECT_LT(ratio(few), ratio(untaught));
  EXPECT_LT(ratio(many), ratio(few));
  Shop read = taught(2.3, 20);
  read.scratches = {{"two-part urethane", "film", {1, 1, 1, 9}},
                    {"two-part urethane", "latex paper", {1, 1, 1, 9}}};
  EXPECT_LT(ratio(simulated(read).minutes),
            1.6);  // what has to come off is known then, but for the peel
  double expected = 2.0 * static_cast<double>(all.size());
  for (const auto& [sheet, zones] : planned(all)) expected += 2.3 * all_zones(zones);
  EXPECT_NEAR(many.p50 / expected, 1, 0.1);
}

TEST(SimulateWithAShop, FactorsOfTheBenchDoNotCountTwice) {
  const Shop shop = taught(2.3, 3);
  Stack sequence = drawer();
  std::erase_if(sequence.sheets, [](const Sheet& sheet) { return sheet.id == "P1200"; });
  const Factors factors = factors_of(shop, clock_case(), sequence);
  ASSERT_LT(factors.duty * factors.of(0).rate, 0.6);
  const DrawnPace bare = PaceDraws(shop, setup(clock_case(), sequence))(1, 7);
  const DrawnPace set = PaceDraws(shop, setup(clock_case(), sequence, factors))(1, 7);
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t zone = 0; zone < bare.minutes_per_um[i].size(); ++zone) {
      EXPECT_NEAR(set.minutes_per_um[i][zone] / bare.minutes_per_um[i][zone], 1, 1e-12);
    }
    EXPECT_EQ(set.rate_factor[i], bare.rate_factor[i]);
  }
}

TEST(SimulateWithAShop, ThePlansOwnMinutesDoNotCount) {
  const Shop shop = taught(2.3, 3);
  const Bench bench(clock_case(), drawer(), shop);
  const Plan learned = evaluate(bench, all), bare = evaluate(clock_case(), drawer(), all);
  EXPECT_GT(learned.total.minutes, 1.5 * bare.total.minutes);
  EXPECT_EQ(simulate(bench, learned, {.draws = 60}), simulate(bench, bare, {.draws = 60}));
}

TEST(SimulateWithAShop, TheSameForAnyNumberOfThreads) {
  const Shop shop = taught(1.5, 2);
  const auto with_threads = [&](unsigned threads) {
    return simulated(shop, {.draws = 64, .threads = threads});
  };
  EXPECT_EQ(with_threads(1), with_threads(3));
}

TEST(SimulateWithAShop, OnlyMinutesAndPaperComeFromThePace) {
  const Simulation with = simulated(taught(2.3, 2)), without = simulated(std::nullopt);
  for (std::size_t i = 0; i < with.zones.size(); ++i) EXPECT_EQ(with.zones[i], without.zones[i]);
}

}  // namespace
}  // namespace pace_test
