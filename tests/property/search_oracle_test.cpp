// The search against plain enumeration of all subsets, on ladders of small integers where ties are common.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "levigate/plan/work/search.hpp"

namespace search_oracle_test {
namespace {

using namespace levigate;

using Random = std::mt19937;

std::int64_t below(Random& random, int end) {
  return static_cast<std::int64_t>(random() % static_cast<unsigned>(end));
}

bool one_in(Random& random, int n) { return below(random, n) == 0; }

StepCost random_step(Random& random, std::size_t zones) {
  StepCost step{below(random, 3), below(random, 2), {}};
  for (std::size_t zone = 0; zone < zones; ++zone) step.removal_pm.push_back(below(random, 3));
  return step;
}

/// A ladder with values so small that equal sums are the rule.
Ladder random_ladder(Random& random) {
  const auto sheets = static_cast<std::size_t>(1 + below(random, 9));
  const auto zones = static_cast<std::size_t>(1 + below(random, 3));
  Ladder ladder;
  for (std::size_t sheet = 0; sheet < sheets; ++sheet) ladder.coarse_to_fine.push_back(sheet);
  std::shuffle(ladder.coarse_to_fine.begin(), ladder.coarse_to_fine.end(), random);
  ladder.first.resize(sheets);
  for (std::size_t sheet = 0; sheet < sheets; ++sheet) {
    for (std::vector<Rung>* rungs : {&ladder.as_first, &ladder.later}) {
      std::vector<std::int64_t>& scratch = rungs->emplace_back().scratch_pm;
      for (std::size_t zone = 0; zone < zones; ++zone) scratch.push_back(1 + below(random, 3));
    }
    ladder.meets_target.push_back(one_in(random, 3));
    if (!one_in(random, 3)) ladder.first[sheet] = random_step(random, zones);
  }
  for (std::size_t i = 0; i < sheets; ++i) {
    for (std::size_t j = i + 1; j < sheets; ++j) {
      for (std::vector<Rung>* rungs : {&ladder.as_first, &ladder.later}) {
        if (one_in(random, 3)) continue;
        (*rungs)[ladder.coarse_to_fine[i]].next.push_back(
            {ladder.coarse_to_fine[j], random_step(random, zones)});
      }
    }
  }
  for (std::size_t zone = 0; zone < zones; ++zone) {
    ladder.budget_pm.push_back(one_in(random, 4) ? std::nullopt
                                                 : std::optional(1 + below(random, 20)));
  }
  return ladder;
}

struct Sums {
  Sequence sequence;
  bool kept = false;  ///< keeps the rules
};

const Rung& rung_of(const Ladder& ladder, const std::vector<std::size_t>& sheets, std::size_t i) {
  return (i == 0 ? ladder.as_first : ladder.later)[sheets[i]];
}

/// A subset of sheets in working order, added up step by step.
Sums add_up(const Ladder& ladder, std::vector<std::size_t> sheets) {
  Sums sums;
  sums.sequence.sheets = sheets;
  std::vector<std::int64_t> removed(ladder.budget_pm.size(), 0);
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    std::optional<StepCost> step = ladder.first[sheets[0]];
    if (i > 0) {
      step.reset();
      for (const LadderStep& next : rung_of(ladder, sheets, i - 1).next) {
        if (next.to == sheets[i]) step = next.cost;
      }
    }
    const bool last = i + 1 == sheets.size();
    if (!step || ladder.meets_target[sheets[i]] != last) return sums;
    sums.sequence.milliseconds += step->milliseconds;
    sums.sequence.cost += step->cost;
    sums.sequence.depth_pm = rung_of(ladder, sheets, i).scratch_pm;
    for (std::size_t zone = 0; zone < removed.size(); ++zone) {
      removed[zone] += step->removal_pm[zone];
      sums.sequence.depth_pm[zone] += removed[zone];
      if (ladder.budget_pm[zone] && sums.sequence.depth_pm[zone] > *ladder.budget_pm[zone])
        return sums;
    }
  }
  sums.kept = true;
  return sums;
}

/// depth/budget of the worst zone over a denominator that all budgets here divide: 1 to 20, and the millimetre
/// of a zone without a budget. No depth of a sequence that keeps the rules exceeds its budget, so nothing overflows.
std::int64_t film_in_common(const Ladder& ladder, const Sequence& sequence) {
  constexpr std::int64_t common = 232'792'560'000'000'000;
  std::int64_t worst = 0;
  for (std::size_t zone = 0; zone < sequence.depth_pm.size(); ++zone) {
    const std::int64_t budget = ladder.budget_pm[zone].value_or(1'000'000'000);
    worst = std::max(worst, sequence.depth_pm[zone] * (common / budget));
  }
  return worst;
}

using Key = std::vector<std::int64_t>;  // minutes, film, cost, steps, sheets...

Key key_of(const Ladder& ladder, const Sequence& s) {
  Key key{s.milliseconds, film_in_common(ladder, s), s.cost, static_cast<std::int64_t>(s.steps())};
  for (const std::size_t sheet : s.sheets) key.push_back(static_cast<std::int64_t>(sheet));
  return key;
}

std::vector<Key> keys_of(const Ladder& ladder, const std::vector<Sequence>& sequences) {
  std::vector<Key> keys;
  for (const Sequence& s : sequences) keys.push_back(key_of(ladder, s));
  return keys;
}

/// All sequences that keep the rules, by trying every subset.
std::vector<Key> enumerated(const Ladder& ladder) {
  std::vector<Key> all;
  for (unsigned subset = 1; subset < 1U << ladder.first.size(); ++subset) {
    std::vector<std::size_t> sheets;
    for (const std::size_t sheet : ladder.coarse_to_fine) {
      if (subset >> sheet & 1U) sheets.push_back(sheet);
    }
    const Sums sums = add_up(ladder, sheets);
    if (sums.kept) all.push_back(key_of(ladder, sums.sequence));
  }
  std::sort(all.begin(), all.end());
  return all;
}

/// Of `all` in ascending order, those that no other equals or beats in the first `sums` entries.
std::vector<Key> unbeaten(const std::vector<Key>& all, std::size_t sums) {
  std::vector<Key> kept;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const bool beaten = std::any_of(all.begin(), all.end(), [&](const Key& other) {
      bool no_worse = true, equal = true;
      for (std::size_t k = 0; k < sums; ++k) {
        no_worse = no_worse && other[k] <= all[i][k];
        equal = equal && other[k] == all[i][k];
      }
      return no_worse && (!equal || other < all[i]);
    });
    if (!beaten) kept.push_back(all[i]);
  }
  return kept;
}

/// The best by one sum, then by the order of the keys.
Key best_by(std::vector<Key> all, std::size_t sum) {
  return *std::min_element(all.begin(), all.end(), [&](const Key& a, const Key& b) {
    return std::pair(a[sum], a) < std::pair(b[sum], b);
  });
}

TEST(SearchOracle, EqualsEnumerationOnLaddersFullOfTies) {
  Random random(20261125);
  int solved = 0, empty = 0, ties = 0;
  for (int round = 0; round < 12000; ++round) {
    const Ladder ladder = random_ladder(random);
    const std::vector<Key> all = enumerated(ladder);
    const std::vector<Sequence> found = search(ladder);
    if (all.empty()) {
      ASSERT_TRUE(found.empty()) << "round " << round;
      ++empty;
      continue;
    }
    ++solved;
    ASSERT_EQ(keys_of(ladder, found), unbeaten(all, 4)) << "round " << round;
    ASSERT_EQ(keys_of(ladder, tradeoff(found)), unbeaten(all, 3)) << "round " << round;
    ASSERT_EQ(key_of(ladder, best(found, Objective::minutes)), best_by(all, 0))
        << "round " << round;
    ASSERT_EQ(key_of(ladder, best(found, Objective::film)), best_by(all, 1)) << "round " << round;
    ASSERT_EQ(key_of(ladder, best(found, Objective::cost)), best_by(all, 2)) << "round " << round;
    ASSERT_EQ(key_of(ladder, best(found, Objective::steps)), best_by(all, 3)) << "round " << round;
    for (std::size_t i = 0; i + 1 < all.size(); ++i) {
      ties += std::equal(all[i].begin(), all[i].begin() + 3, all[i + 1].begin()) ? 1 : 0;
    }
  }
  EXPECT_GT(solved, 2000);
  EXPECT_GT(empty, 500);
  EXPECT_GT(ties, 1000);
}

TEST(FilmShare, ComparesExactlyWhereDoublesCannot) {
  constexpr std::int64_t big = 1'000'000'000'000'000'000;
  EXPECT_LT((FilmShare{big - 1, big}), (FilmShare{big, big + 1}));
  EXPECT_EQ((FilmShare{2, 6}), (FilmShare{3, 9}));
  EXPECT_GT((FilmShare{7, 3}), (FilmShare{2, 1}));
  EXPECT_LT((FilmShare{0, 5}), (FilmShare{1, big}));
  Random random(7);
  for (int i = 0; i < 20000; ++i) {
    const FilmShare a{below(random, 1000), 1 + below(random, 1000)};
    const FilmShare b{below(random, 1000), 1 + below(random, 1000)};
    const std::int64_t left = a.depth_pm * b.budget_pm, right = b.depth_pm * a.budget_pm;
    ASSERT_EQ(a <=> b, left <=> right)
        << a.depth_pm << "/" << a.budget_pm << " " << b.depth_pm << "/" << b.budget_pm;
  }
}

}  // namespace
}  // namespace search_oracle_test
