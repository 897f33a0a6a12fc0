// What journals teach: Bayes' rule in its known special cases, orders and halves, outliers, and what it does to a job.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

#include "levigate/bench/bench.hpp"
#include "levigate/detail/student.hpp"
#include "levigate/journal/report.hpp"
#include "levigate/journal/slip.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/prior.hpp"
#include "levigate/text/sentences.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace learn_test {
namespace {

using namespace learn_workshop;

const std::vector<std::string> all{"P400", "P600", "P800", "P1000", "P1500"};

/// Steps of a worker who takes so many times the minutes computed, with some scatter.
std::vector<Entry> days(double slower, int journals, double scatter = 0.2) {
  const auto minutes = planned(all);
  std::mt19937_64 engine(5);
  std::vector<Entry> entries;
  for (int i = 0; i < journals; ++i) {
    for (const std::string& sheet : all) {
      const double uniform = static_cast<double>(engine() >> 11) * 0x1p-53;
      entries.push_back(ended(
          sheet, slower * all_zones(minutes.at(sheet)) * std::exp(scatter * (uniform - 0.5))));
      entries.back().zone = "";
    }
  }
  return entries;
}

/// Each journal is of another job: its entries are learned one journal after the other.
Learned learn_days(const Shop& shop, const std::vector<Entry>& entries) {
  Learned learned{shop, {}, {}};
  for (std::size_t i = 0; i < entries.size(); i += all.size()) {
    const auto at = entries.begin() + static_cast<std::ptrdiff_t>(i);
    Learned next = learn(learned.shop, clock_case(), drawer(),
                         {at, at + static_cast<std::ptrdiff_t>(all.size())});
    learned.shop = next.shop;
    learned.shop.jobs.clear();  // as they all have one name
    learned.outliers.insert(learned.outliers.end(), next.outliers.begin(), next.outliers.end());
  }
  return learned;
}

void expect_near(const LearnedFactor& a, const LearnedFactor& b, double share) {
  EXPECT_NEAR(a.factor / b.factor, 1, share);
  EXPECT_NEAR(a.low / b.low, 1, share);
  EXPECT_NEAR(a.high / b.high, 1, share);
  EXPECT_EQ(a.observations, b.observations);
}

void expect_near(const Shop& a, const Shop& b, double share) {
  expect_near(a.person, b.person, share);
  ASSERT_EQ(a.rates.size(), b.rates.size());
  ASSERT_EQ(a.scratches.size(), b.scratches.size());
  for (std::size_t i = 0; i < a.rates.size(); ++i) {
    EXPECT_EQ(a.rates[i].backing, b.rates[i].backing);
    expect_near(a.rates[i].learned, b.rates[i].learned, share);
    for (std::size_t j = 0; j <= i; ++j) {
      EXPECT_NEAR(a.rates[i].correlations[j], b.rates[i].correlations[j], share);
    }
  }
  for (std::size_t i = 0; i < a.scratches.size(); ++i) {
    expect_near(a.scratches[i].learned, b.scratches[i].learned, share);
  }
  EXPECT_NEAR(a.minutes_noise.log_sd, b.minutes_noise.log_sd, share);
  EXPECT_EQ(a.minutes_noise.weight, b.minutes_noise.weight);
  EXPECT_NEAR(a.scratch_noise.log_sd, b.scratch_noise.log_sd, share);
}

// Rounding of a few hundred operations on numbers of order one, through a covariance with condition 1e4.
constexpr double rounding = 1e-10;

TEST(Belief, OneUnknownIsTheTextbookCase) {
  // Prior mean 0 with spread 4, noise 0.5 by 6 observations; then y = 1.
  const Belief after = updated({{0}, {{4}}, 0.5, 6}, {{1}, 1});
  EXPECT_DOUBLE_EQ(after.mean[0], 4.0 / 5.0);
  EXPECT_DOUBLE_EQ(after.spread[0][0], 4.0 / 5.0);
  EXPECT_DOUBLE_EQ(after.df, 7);
  EXPECT_DOUBLE_EQ(after.noise * after.noise, (6 * 0.25 + 1.0 / 5.0) / 7);
}

TEST(Belief, SurpriseIsThatOfLeavingOneOut) {
  const std::vector<Observation> seen{{{1, 0}, 0.3}, {{1, 1}, -0.2}, {{1, -1}, 0.9}, {{0, 1}, 4}};
  const Belief before{{0.1, -0.2}, {{2, 0.5}, {0.5, 1}}, 0.4, 3};
  Belief full = before;
  for (const Observation& one : seen) full = updated(full, one);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    Belief others = before;
    for (std::size_t j = 0; j < seen.size(); ++j) {
      if (j != i) others = updated(others, seen[j]);
    }
    const Sum sum = sum_of(others, seen[i].weights);
    const double scale = std::hypot(sum.scale, others.noise);
    EXPECT_NEAR(surprise(full, seen[i]), (seen[i].y - sum.median) / scale, 1e-12);
  }
}

TEST(Belief, TheWorstIsSetAsideFirstAndTheRestAreJudgedAnew) {
  const Belief before{{0}, {{1}}, 0.1, 1e12};
  constexpr double line = 5;
  const auto given = [](const std::vector<double>& values) {
    std::vector<Observation> seen;
    for (const double y : values) seen.push_back({{1}, y});
    return seen;
  };
  const auto kept = [&](const std::vector<double>& values) {
    const Settled result = settled(before, given(values), line);
    std::vector<double> left;
    for (std::size_t i = 0; i < values.size(); ++i) {
      if (!result.set_aside[i]) left.push_back(values[i]);
    }
    return left;
  };
  const auto all_surprise = [&](const std::vector<double>& values) {
    Belief full = before;
    for (const Observation& one : given(values)) full = updated(full, one);
    for (const Observation& one : given(values)) {
      if (std::abs(surprise(full, one)) <= line) return false;
    }
    return true;
  };
  // Beside the slip all are beyond the line. Without it none is.
  std::vector<double> masked{0.02, 0, -0.02, 4};
  EXPECT_TRUE(all_surprise(masked));
  // 1 is hidden by the 4 until that is gone.
  std::vector<double> hidden{0, 0.01, -0.01, 0.02, -0.02, 1, 4};
  Belief full = before;
  for (const Observation& one : given(hidden)) full = updated(full, one);
  EXPECT_LT(std::abs(surprise(full, given({1})[0])), line);
  for (std::size_t turn = 0; turn < hidden.size(); ++turn) {
    std::rotate(masked.begin(), masked.begin() + 1, masked.end());
    EXPECT_THAT(kept(masked), testing::UnorderedElementsAre(0.02, 0, -0.02)) << turn;
    std::rotate(hidden.begin(), hidden.begin() + 1, hidden.end());
    EXPECT_THAT(kept(hidden), testing::UnorderedElementsAre(0, 0.01, -0.01, 0.02, -0.02)) << turn;
  }
}

TEST(Belief, ARootSquaresToItsMatrixAndAContradictionHasNone) {
  const std::vector<std::vector<double>> matrix{{4, 2, 0.4}, {2, 5, -1}, {0.4, -1, 3}};
  const auto root = detail::root_of(matrix);
  ASSERT_TRUE(root);
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = 0; j < 3; ++j) {
      EXPECT_NEAR(detail::dot((*root)[i], (*root)[j]), matrix[i][j], 1e-14);
    }
  }
  EXPECT_TRUE(detail::root_of({{1, 1}, {1, 1}}));
  EXPECT_FALSE(detail::root_of({{1, 1.01}, {1.01, 1}}));
  EXPECT_FALSE(detail::root_of({{1, 0.9, 0.9}, {0.9, 1, 0}, {0.9, 0, 1}}));
}

TEST(Learn, NothingLearnedIsThePrior) {
  const Learned learned = learn({}, clock_case(), drawer(), {});
  EXPECT_EQ(learned.shop, Shop{});
  EXPECT_EQ(learned.shop.person.factor, 1.0);
  const double reach = detail::student_quantile(0.05, 4) * std::sqrt(duty_variance());
  EXPECT_DOUBLE_EQ(learned.shop.person.high, std::exp(reach));
}

TEST(Learn, ASlowWorkerIsSeenAsSlow) {
  const Learned learned = learn_days({}, days(2.3, 20));
  EXPECT_TRUE(learned.outliers.empty());
  const Shop& shop = learned.shop;
  EXPECT_EQ(shop.person.observations, 100U);
  ASSERT_EQ(shop.rates.size(), 3U);  // of the coating, of film, of latex paper
  EXPECT_EQ(shop.rates[0].backing, "");
  EXPECT_EQ(shop.rates[0].learned.observations, 100U);
  EXPECT_EQ(shop.rates[1].backing, "film");
  EXPECT_EQ(shop.rates[1].learned.observations, 40U);
  for (const std::size_t i : {1U, 2U}) {
    EXPECT_NEAR(1 / (shop.person.factor * shop.rates[i].learned.factor), 2.3, 0.1);
  }
  EXPECT_LT(shop.person.factor, 1);
  EXPECT_LT(shop.rates[0].learned.factor, 1);  // what is common goes to backings not seen yet
  // Scatter of even steps 0.2 wide, and the prior's 0.3 by four; 15 % are three times what 100 of them leave open.
  const double expected = std::sqrt((4 * 0.09 + 100 * 0.04 / 12) / 104);
  EXPECT_NEAR(shop.minutes_noise.log_sd / expected, 1, 0.15);
}

TEST(Learn, FewDataShrinkToTheProfiles) {
  const auto product = [](const Shop& shop) {
    return shop.person.factor * rate_of(shop, "two-part urethane", "latex paper")->learned.factor;
  };
  const auto minutes = planned({"P400"});
  const Entry one = ended("P400", 2.3 * all_zones(minutes.at("P400")));
  const double after_one = product(learn({}, clock_case(), drawer(), {one}).shop);
  const double after_many = product(learn_days({}, days(2.3, 20, 0)).shop);
  EXPECT_LT(after_one, 1.0);
  EXPECT_GT(after_one, 1 / 2.3);
  EXPECT_LT(after_many, after_one);
  EXPECT_NEAR(after_many, 1 / 2.3, 0.01);
  // By one observation of weight one: V / (V + noise^2) of the way, in logarithms.
  const double variance = duty_variance() + coating_variance("two-part urethane") +
                          backing_variance("two-part urethane", "latex paper");
  EXPECT_NEAR(std::log(after_one), -std::log(2.3) * variance / (variance + 0.09), 1e-12);
}

TEST(Learn, TheOrderOfObservationsDoesNotMatter) {
  std::vector<Entry> entries{ended("P400", 200),     ended("P600", 30),      ended("P1000", 60),
                             width_read("P400", 40), width_read("P1000", 9), ra_read("P600", 0.4),
                             width_read("P400", 30)};
  const Shop shop = learn({}, clock_case(), drawer(), entries).shop;
  std::rotate(entries.begin() + 3, entries.begin() + 5, entries.end());
  expect_near(learn({}, clock_case(), drawer(), entries).shop, shop, rounding);

  const std::vector<Entry> forth = days(1.7, 6);
  std::vector<Entry> back;
  for (std::size_t i = 6; i-- > 0;) {
    const auto at = forth.begin() + static_cast<std::ptrdiff_t>(i * all.size());
    back.insert(back.end(), at, at + static_cast<std::ptrdiff_t>(all.size()));
  }
  expect_near(learn_days({}, forth).shop, learn_days({}, back).shop, rounding);
}

TEST(Learn, InTwoHalvesIsAtOnce) {
  // Zone by zone, so that the halves hold sequences of their own, with a pair that only the second half has.
  const std::vector<Entry> first{width_read("P400", 40), ended("P400", 120, "top"),
                                 ended("P600", 20, "top")};
  const std::vector<Entry> second{ended("P400", 90, "door"), ended("P600", 14, "door"),
                                  ended("P1000", 20, "door")};
  std::vector<Entry> both = first;
  both.insert(both.end(), second.begin(), second.end());
  const Learned at_once = learn({}, clock_case(), drawer(), both);
  const Learned half = learn({}, clock_case(), drawer(), first);
  const Learned halves = learn(half.shop, clock_case(), drawer(), both);
  EXPECT_TRUE(at_once.unmatched.empty() && halves.unmatched.empty());
  EXPECT_EQ(at_once.lines_before, 0U);
  EXPECT_EQ(halves.lines_before, 3U);
  EXPECT_EQ(halves.shop.jobs, (std::vector<LearnedJob>{{"clock case", 6}}));
  expect_near(halves.shop, at_once.shop, rounding);
}

TEST(Learn, AJournalLearnedTwiceCountsOnce) {
  std::vector<Entry> entries{film_read("top", {108, 112}), ended("P400", 300),
                             width_read("P400", 50), ended("P320", 9), ended("P600", 20, "top")};
  const Learned once = learn({}, clock_case(), drawer(), entries);
  EXPECT_EQ(once.unmatched.size(), 1U);
  const Learned twice = learn(once.shop, clock_case(), drawer(), entries);
  EXPECT_EQ(twice.shop, once.shop);
  EXPECT_EQ(twice.lines_before, 5U);
  EXPECT_TRUE(twice.unmatched.empty() && twice.outliers.empty());
  const LearnedLine told = report(twice).back();
  EXPECT_EQ(sentence(told), "The shop already knew 5 lines of this journal.");
  EXPECT_EQ(report(once), report(once.shop));

  Entry tray = ended("P400", 1);
  tray.job = "tray";  // between lines of the job
  entries.insert(entries.begin(), tray);
  entries.push_back(ended("P600", 25, "top"));  // goes on with a step that was learned
  entries.push_back(ended("P800", 30, "top"));
  entries.push_back(film_read("top", {90}));
  const Learned more = learn(twice.shop, clock_case(), drawer(), entries);
  EXPECT_EQ(more.shop.person.observations, once.shop.person.observations + 1);
  EXPECT_EQ(more.shop.scratches, once.shop.scratches);
  EXPECT_EQ(more.shop.films, once.shop.films);
  EXPECT_EQ(more.lines_before, 5U);
  EXPECT_EQ(more.shop.jobs, (std::vector<LearnedJob>{{"clock case", 8}}));
  std::vector<std::string> reasons;
  for (const Unmatched& one : more.unmatched) reasons.push_back(sentence(one));
  EXPECT_THAT(reasons, testing::ElementsAre(
                           testing::EndsWith(": The shop already learned a part of this step."),
                           testing::HasSubstr("sanded the zone before")));
  EXPECT_EQ(learn(more.shop, clock_case(), drawer(), {entries[1]}).shop, more.shop);
}

TEST(Learn, MoreReadingsOfAFilmThatWasLearnedAreNot) {
  std::vector<Entry> entries{film_read("top", {108, 112})};
  const Learned once = learn({}, clock_case(), drawer(), entries);
  entries.push_back(film_read("top", {90}));
  const Learned more = learn(once.shop, clock_case(), drawer(), entries);
  EXPECT_EQ(more.shop.films, once.shop.films);
  EXPECT_THAT(sentence(more.unmatched.at(0)),
              testing::EndsWith(": The shop already learned the film of this zone."));
}

TEST(Learn, AReadingThatWasInDoubtTeachesOnceItIsReadAgain) {
  std::vector<Entry> entries{film_read("top", {60, 61, 59})};
  const Learned doubted = learn({}, clock_case(), drawer(), entries);
  EXPECT_TRUE(doubted.shop.films.empty());
  EXPECT_EQ(doubted.unmatched.size(), 1U);
  entries.push_back(film_read("top", {61, 60, 62}));
  const Learned later = learn(doubted.shop, clock_case(), drawer(), entries);
  const Learned at_once = learn({}, clock_case(), drawer(), entries);
  ASSERT_EQ(at_once.shop.films.size(), 1U);
  EXPECT_EQ(later.shop, at_once.shop);
  EXPECT_TRUE(later.unmatched.empty());
}

TEST(Learn, NothingUnderANameThatUnlikeThingsShare) {
  const std::vector<Entry> entries{film_read("top", {108, 112}), ended("P400", 300),
                                   ended("P1000", 30), width_read("P400", 50)};
  for (const std::string name : {"", "own coating"}) {
    Job job = clock_case();
    job.coating.name = name;
    const Learned learned = learn({}, job, drawer(), entries);
    EXPECT_TRUE(learned.shop.rates.empty() && learned.shop.scratches.empty() &&
                learned.shop.films.empty());
    EXPECT_EQ(learned.shop.person, Shop{}.person);
    ASSERT_EQ(learned.unmatched.size(), 4U);
    for (const Unmatched& one : learned.unmatched) {
      EXPECT_THAT(sentence(one),
                  testing::EndsWith(": The coating has no name of its own. Learning needs one."));
    }
  }
  for (const std::string name : {"", "own backing"}) {
    Stack stack = drawer();
    stack.sheets[0].backing.name = name;
    const Learned learned = learn({}, clock_case(), stack, entries);
    EXPECT_EQ(learned.shop.person.observations, 1U);
    ASSERT_EQ(learned.unmatched.size(), 2U);
    for (const Unmatched& one : learned.unmatched) {
      EXPECT_THAT(sentence(one),
                  testing::EndsWith(": The backing has no name of its own. Learning needs one."));
    }
    for (const LearnedPair& rate : learned.shop.rates) EXPECT_NE(rate.backing, "own backing");
    EXPECT_EQ(learned.shop.films.size(), 1U);
  }
}

TEST(Learn, ASlipOfThePenIsSetAside) {
  std::vector<Entry> entries;
  const auto minutes = planned(all);
  for (const std::string zone : {"top", "door"}) {
    for (const std::string& sheet : all) {
      entries.push_back(ended(sheet, 1.5 * minutes.at(sheet).at(zone), zone));
    }
  }
  const Learned clean = learn({}, clock_case(), drawer(), entries);
  EXPECT_TRUE(clean.outliers.empty());
  *entries[6].minutes *= 60;  // hours for minutes
  const Learned learned = learn({}, clock_case(), drawer(), entries);
  ASSERT_EQ(learned.outliers.size(), 1U);
  const Outlier& outlier = learned.outliers[0];
  EXPECT_EQ(outlier.place.entry, 6U);
  EXPECT_GT(outlier.t, outlier_line);
  EXPECT_DOUBLE_EQ(outlier.actual, 90 * outlier.predicted);
  EXPECT_THAT(sentence(outlier), testing::HasSubstr("P600 on door at 2026-03-01T09:30:00Z: "));
  EXPECT_THAT(sentence(outlier), testing::HasSubstr("It stays in the journal"));
  EXPECT_EQ(learned.shop.person.observations, 9U);

  entries.erase(entries.begin() + 6);  // the others are learned as if it were not there
  std::vector<Observation> others, with;
  const Belief before{{0}, {{9}}, 0.3, 4};
  for (int i = 0; i < 8; ++i) others.push_back({{1}, 0.1 * i});
  with = others;
  with.insert(with.begin() + 3, {{1}, 7.0});
  const Settled a = settled(before, with, 5), b = settled(before, others, 5);
  EXPECT_TRUE(a.set_aside[3]);
  EXPECT_DOUBLE_EQ(a.belief.mean[0], b.belief.mean[0]);
  EXPECT_DOUBLE_EQ(a.belief.noise, b.belief.noise);
}

TEST(Learn, WhatAShopKnowsDoesNotMoveWhatJournalsAreComparedWith) {
  const std::vector<Entry> entries = {film_read("top", {108, 112}), ended("P400", 300),
                                      ended("P600", 50), width_read("P400", 50)};
  const Shop shop = learn({}, clock_case(), drawer(), entries).shop;
  const Bench taught(clock_case(), drawer(), shop, entries);
  const Observed bare = observe(Bench(clock_case(), drawer(), {}, entries)), seen = observe(taught);
  ASSERT_EQ(seen.paces.size(), 2U);
  ASSERT_EQ(seen.scratches.size(), 1U);
  ASSERT_EQ(seen.films.size(), 1U);
  for (std::size_t i = 0; i < 2; ++i) {
    EXPECT_EQ(seen.paces[i].predicted_minutes, bare.paces[i].predicted_minutes);
  }
  EXPECT_EQ(seen.scratches[0].predicted_um, bare.scratches[0].predicted_um);
  EXPECT_EQ(seen.films[0].expected_um, 120);
  EXPECT_EQ(learn(taught).shop, shop);  // whose lines it has learned before
}

TEST(Learn, ADeeperScratchIsNotTakenForASlowHand) {
  // The worker keeps the pace of the profiles, but scratches are 1.8 times as deep, so that later steps remove as much more.
  const Factors deep{.sheets = std::vector<SheetFactors>(drawer().sheets.size(), {1, 1.8})};
  const auto minutes = planned(all, deep);
  const Workings laid = workings(clock_case(), drawer(), deep);
  std::vector<Entry> entries;
  for (std::size_t i = 0; i < all.size(); ++i) {
    entries.push_back(ended(all[i], all_zones(minutes.at(all[i]))));
  }
  for (std::size_t i = 0; i < laid.stack.sheets.size(); ++i) {
    for (int times = 0; times < 40; ++times) {
      entries.push_back(ra_read(laid.stack.sheets[i].id, laid.work[i][0].ra_um));
    }
  }
  const Shop shop = learn({}, clock_case(), drawer(), entries).shop;
  for (const LearnedPair& pair : shop.scratches) EXPECT_NEAR(pair.learned.factor, 1.8, 0.03);
  EXPECT_NEAR(shop.person.factor, 1, 0.01);
  for (const LearnedPair& pair : shop.rates) EXPECT_NEAR(pair.learned.factor, 1, 0.01);
  const auto learned = planned(all, factors_of(shop, clock_case(), drawer()));
  for (const std::string& sheet : all) {
    EXPECT_NEAR(all_zones(learned.at(sheet)) / all_zones(minutes.at(sheet)), 1, 0.03);
  }
}

TEST(Learn, FilmFromCoatsIsMovedByWhatGaugesRead) {
  const std::vector<Entry> entries{film_read("top", {108, 112, 110, 106}), film_read("door", {98})};
  const Shop shop = learn({}, clock_case(), drawer(), entries).shop;
  ASSERT_EQ(shop.films.size(), 1U);
  const LearnedFilm& film = shop.films[0];
  EXPECT_EQ(film.observations, 2U);
  // Two readings, -11 um through a variance of 25 + 36/4 and -12 um through 25 + 64, on a prior of film_variance_um2.
  const double a = 1 / 34.0, b = 1 / 89.0, weight = 1 / film_variance_um2() + a + b;
  EXPECT_NEAR(film.offset_um, (-11 * a - 12 * b) / weight, 1e-9);
  EXPECT_NEAR(film.high_um - film.offset_um, 1.6448536269514722 / std::sqrt(weight), 1e-6);
  const Job job = present(Bench(clock_case(), drawer(), shop));
  EXPECT_DOUBLE_EQ(job.zones[0].film->mean_um, 120 + film.offset_um);
  EXPECT_NEAR(job.zones[0].film->mean_se_um, std::hypot(5, 1 / std::sqrt(weight)), 1e-6);
  EXPECT_DOUBLE_EQ(job.zones[2].film->mean_um, 60 + film.offset_um);
  Shop thick = shop;
  thick.films[0].offset_um = thick.films[0].high_um = 9;
  Job left = clock_case();
  left.zones[1].levelled = false;  // it may be an edge that the job does not name as one
  const Job more = present(Bench(left, drawer(), thick));
  EXPECT_EQ(more.zones[0].film->mean_um, 120 + 9);
  EXPECT_EQ(more.zones[1].film->mean_um, 110);
  EXPECT_EQ(more.zones[2].film->mean_um, 60);
}

TEST(FactorsOf, FilmFromReadingsAndWhatIsNoFilmAreLeftAlone) {
  Shop shop;
  shop.films = {{"two-part urethane", -8, -12, -3, 4}};
  Job job = clock_case();
  job.zones[0].film->mean_se_um = 3;
  job.zones[1].film = film_from_readings(std::vector<double>{108, 112, 110});
  job.zones[2].film->mean_um = 5;  // less than what is taken from it
  const Factors factors = factors_of(shop, job, drawer());
  EXPECT_EQ(factors.film_offset_um, -8);
  EXPECT_NEAR(factors.film_se_um, std::hypot(4.5 / 1.6448536269514722, film_noise_um), 1e-12);
  const Job moved = with_films(job, factors);
  EXPECT_EQ(moved.zones[0].film->mean_um, 120 - 8);
  EXPECT_DOUBLE_EQ(moved.zones[0].film->mean_se_um, std::hypot(3, factors.film_se_um));
  EXPECT_EQ(moved.zones[1].film->mean_um, 110);
  EXPECT_EQ(moved.zones[1].film->mean_se_um, job.zones[1].film->mean_se_um);
  EXPECT_EQ(moved.zones[2].film->mean_um, 0);
}

TEST(FactorsOf, AnOffsetIsNotLearnedTwice) {
  const std::vector<Entry> entries{film_read("top", {108, 112, 110, 106}), film_read("door", {98})};
  const Shop shop = learn({}, clock_case(), drawer(), entries).shop;
  Shop nameless = shop;
  nameless.jobs.clear();  // as if these lines were not known
  const Bench bench(clock_case(), drawer(), nameless, entries);
  EXPECT_LT(present(bench).zones[0].film->mean_um, 115);
  EXPECT_EQ(observe(bench).films.at(0).expected_um, 120);
  // The same readings once more, as in FilmFromCoatsIsMovedByWhatGaugesRead: against coats as they are given.
  const double a = 2 / 34.0, b = 2 / 89.0, weight = 1 / film_variance_um2() + a + b;
  const LearnedFilm again = learn(bench).shop.films.at(0);
  EXPECT_EQ(again.observations, 4U);
  EXPECT_NEAR(again.offset_um, (-11 * a - 12 * b) / weight, 1e-9);
}

TEST(FactorsOf, AreMediansAndWhatIsNotKnownIsOne) {
  const Shop shop = learn_days({}, days(2.3, 4)).shop;
  Stack stack = drawer();
  stack.sheets[0].backing = backing_named("cloth");
  const Factors factors = factors_of(shop, clock_case(), stack);
  EXPECT_EQ(factors.duty, shop.person.factor);
  EXPECT_EQ(factors.of(0).rate, shop.rates[0].learned.factor);
  EXPECT_EQ(factors.of(1).rate, shop.rates[2].learned.factor);
  EXPECT_EQ(factors.of(4).rate, shop.rates[1].learned.factor);
  EXPECT_EQ(factors.of(4).scratch, 1);
  Job shellac = clock_case();
  shellac.coating = coating_named("shellac");
  const Factors other = factors_of(shop, shellac, stack);
  EXPECT_EQ(other.duty, shop.person.factor);
  for (const SheetFactors& sheet : other.sheets) EXPECT_EQ(sheet.rate, 1);
  const Factors as_is = factors_of(Shop{}, clock_case(), drawer());
  EXPECT_EQ(as_is.duty, 1);
  ASSERT_EQ(as_is.sheets.size(), drawer().sheets.size());
  for (const SheetFactors& sheet : as_is.sheets) EXPECT_EQ(sheet, SheetFactors{});
  EXPECT_EQ(as_is.film_offset_um, 0);
  EXPECT_EQ(as_is.film_se_um, 0);
}

}  // namespace
}  // namespace learn_test
