// Workers whose pace is known write journals: how fast what is learned of them closes in, and how often the truth lies in the
// intervals.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "levigate/journal/learn.hpp"
#include "levigate/journal/work/learn_pace.hpp"
#include "levigate/journal/work/rows.hpp"
#include "levigate/journal/work/shop_belief.hpp"
#include "levigate/risk/share.hpp"
#include "levigate/risk/work/pace.hpp"
#include "property/simulation.hpp"

namespace learning_simulation_test {
namespace {

using namespace levigate;
using namespace levigate_tests;

constexpr auto coating = "two-part urethane";
const std::vector<std::string> backings{"film", "foam-backed", "latex paper"};

/// A step of a job: its backing, and its minutes as computed.
struct PlannedStep {
  std::size_t backing;
  double minutes;
};

/// What journals are of, and the job that comes after them.
const std::vector<PlannedStep> journal_job{{2, 70}, {2, 14}, {0, 11}, {0, 16}, {1, 13}};
const std::vector<PlannedStep> next_job{{2, 35}, {2, 15}, {0, 20}, {0, 12}, {1, 18}};

/// A worker: logarithms of the pace with each backing (duty and rate together), and the noise of a step's.
struct Worker {
  std::vector<double> log_pace;
  double noise;
};

double minutes_of(const Worker& worker, const PlannedStep& step) {
  return step.minutes * std::exp(-worker.log_pace[step.backing]);
}

std::vector<PaceSeen> journals(const Worker& worker, int count, Random& random) {
  std::vector<PaceSeen> seen;
  for (int i = 0; i < count; ++i) {
    for (const PlannedStep& step : journal_job) {
      const double minutes = minutes_of(worker, step) * std::exp(worker.noise * random.normal());
      seen.push_back({coating, backings[step.backing], "", "", step.minutes, minutes, {}});
    }
  }
  return seen;
}

std::vector<double> weights_of(const Shop& shop, std::size_t backing) {
  std::vector<double> weights(shop.rates.size() + 1, 0.0);
  weights[0] = weights[1 + detail::row_at(shop.rates, coating, backings[backing])] = 1;
  return weights;
}

/// Whether the 90 % interval of the pace with the first step's backing holds the truth.
bool pace_is_held(const Shop& shop, const Worker& worker) {
  const Belief belief = detail::pace_belief(shop);
  const Sum log = sum_of(belief, weights_of(shop, journal_job[0].backing));
  const double t = std::abs(log.median - worker.log_pace[journal_job[0].backing]) / log.scale;
  return detail::student_tail(t, belief.df) >= 0.05;
}

/// Whether the minutes that the next job really takes lie between the 2nd from below and from above of 39 drawn: if these are drawn
/// as the truth is, 90 times in 100.
bool minutes_are_held(const Shop& shop, const Worker& worker, Random& random, std::uint32_t run) {
  double minutes = 0;
  for (const PlannedStep& step : next_job) {
    minutes += minutes_of(worker, step) * std::exp(worker.noise * random.normal());
  }
  const BeliefDraws draws(detail::pace_belief(shop));
  std::vector<std::size_t> rows;
  for (const std::string& backing : backings) {
    rows.push_back(1 + detail::row_at(shop.rates, coating, backing));
  }
  constexpr int drawn = 39, out = 2;
  int below = 0;
  for (std::uint32_t i = 0; i < drawn; ++i) {
    Stream stream(7, run, i);
    const DrawnBelief belief = draws(stream);
    double sum = 0;
    for (const PlannedStep& step : next_job) {
      sum += step.minutes * std::exp(-belief.values[0] - belief.values[rows[step.backing]] +
                                     belief.noise * stream.normal());
    }
    below += sum < minutes ? 1 : 0;
  }
  return below >= out && below <= drawn - out;
}

/// Logarithm of the minutes predicted for the next job over those that the worker takes, scatter aside.
double error_of(const Shop& shop, const Worker& worker) {
  double predicted = 0, minutes = 0;
  for (const PlannedStep& step : next_job) {
    const double rate = rate_of(shop, coating, backings[step.backing])->learned.factor;
    predicted += step.minutes / shop.person.factor / rate;
    minutes += minutes_of(worker, step);
  }
  return std::log(predicted / minutes);
}

struct Tally {
  int runs = 0, pace_held = 0, minutes_held = 0;
  double squares = 0;

  double rms() const { return std::sqrt(squares / runs); }
};

/// Runs of so many journals each, by workers that `worker` makes.
template <typename MakeWorker>
Tally tally(int runs, int count, std::uint64_t seed, MakeWorker worker) {
  Random random(seed);
  Tally result;
  for (int run = 0; run < runs; ++run) {
    const Worker one = worker(random);
    const Shop shop = detail::learn_pace({}, journals(one, count, random)).shop;
    ++result.runs;
    result.pace_held += pace_is_held(shop, one) ? 1 : 0;
    result.minutes_held +=
        minutes_are_held(shop, one, random, static_cast<std::uint32_t>(run)) ? 1 : 0;
    result.squares += std::pow(error_of(shop, one), 2);
  }
  return result;
}

/// A worker drawn from what is believed before any journal, by nothing of the library but the variances of prior.hpp.
Worker prior_worker(Random& random) {
  double chi_square = 0;
  for (int i = 0; i < 4; ++i) chi_square += std::pow(random.normal(), 2);
  Worker worker{{}, prior_minutes_noise * std::sqrt(4 / chi_square)};
  const double size = worker.noise / prior_minutes_noise;
  const double common = std::sqrt(duty_variance()) * random.normal() +
                        std::sqrt(coating_variance(coating)) * random.normal();
  for (const std::string& backing : backings) {
    const double own = std::sqrt(backing_variance(coating, backing)) * random.normal();
    worker.log_pace.push_back(size * (common + own));
  }
  return worker;
}

/// 2.3 times slower than the profiles say, with every backing.
Worker slow_worker(Random&) { return {std::vector<double>(3, -std::log(2.3)), 0.3}; }

/// A share with its exact 99 % interval, held to what is committed.
Share committed_share(const std::string& id, int held, int runs) {
  const Share share = exact_share(held, runs, 0.99);
  expect_committed(id, {share.share, share.low, share.high});
  return share;
}

// Intervals of truths drawn from the prior are exact: 90 % is in the interval of what is found.
TEST(LearningSimulation, IntervalsHoldTruthsOfThePriorAsOftenAsTheySay) {
  const Tally found = tally(1000, 3, 1, prior_worker);
  const Share pace = committed_share("learned_pace_prior", found.pace_held, found.runs);
  EXPECT_LE(pace.low, 0.9);
  EXPECT_GE(pace.high, 0.9);
  const Share minutes = committed_share("learned_minutes_prior", found.minutes_held, found.runs);
  EXPECT_LE(minutes.low, 0.9);
  EXPECT_GE(minutes.high, 0.9);
}

// One worker is not a draw from the prior, but the prior is wide: the intervals hold as often. More journals, all by entries, are
// in bindings/tests/test_learn.py.
TEST(LearningSimulation, IntervalsHoldASlowWorkerAsOftenAsTheySay) {
  const Tally found = tally(1000, 5, 2, slow_worker);
  for (const Share& share :
       {committed_share("learned_pace_5", found.pace_held, found.runs),
        committed_share("learned_minutes_5", found.minutes_held, found.runs)}) {
    EXPECT_LE(share.low, 0.9);
    EXPECT_GE(share.high, 0.9);
  }
  // 99 % of the rms of n errors that are normal: chi-square, by Wilson and Hilferty.
  const auto end = [&](double sigmas) {
    const double c = 2.0 / (9.0 * found.runs);
    return found.rms() / std::pow(1 - c + sigmas * std::sqrt(c), 1.5);
  };
  expect_committed("learned_error_5", {found.rms(), end(2.5758), end(-2.5758)});
}

}  // namespace
}  // namespace learning_simulation_test
