// The search against plain enumeration of all subsets, on ladders of small integers where ties are common.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <tuple>

#include "levigate/plan/work/search.hpp"

namespace search_oracle_test {
namespace {

using namespace levigate;

using Random = std::mt19937;

std::int64_t below(Random& random, int end) {
  return static_cast<std::int64_t>(random() % static_cast<unsigned>(end));
}

bool one_in(Random& random, int n) { return below(random, n) == 0; }

LadderStep random_step(Random& random, std::size_t to, std::size_t zones) {
  LadderStep step{to, {below(random, 3), below(random, 2), {}, {}, one_in(random, 4) ? 1 : 0}, 1};
  for (std::size_t zone = 0; zone < zones; ++zone) {
    step.cost.removal_pm.push_back(below(random, 3));
    step.cost.zone_milliseconds.push_back(below(random, 5));
  }
  return step;
}

/// A step once, or twice with another overcut that takes off more.
std::vector<LadderStep> random_steps(Random& random, std::size_t to, std::size_t zones) {
  std::vector<LadderStep> steps{random_step(random, to, zones)};
  if (one_in(random, 3)) {
    steps.push_back(random_step(random, to, zones));
    steps.back().overcut = 2;
  }
  return steps;
}

/// Chances that fall with what came off since, in steps, down to one that stays.
Sunlight random_sun(Random& random) {
  const auto salt = static_cast<std::size_t>(random());
  const auto mixed = [salt](std::initializer_list<std::size_t> of) {
    std::size_t mix = salt;
    for (const std::size_t one : of) mix = (mix ^ (one + 1)) * 2654435761U % 1000003U;
    return mix;
  };
  constexpr std::int64_t healed_pm = 3;
  const auto chance = [mixed](std::optional<OnRung> before, const LadderStep& step,
                              std::size_t zone, std::size_t last, std::int64_t since_pm) {
    const std::size_t from = before ? 2 * before->sheet + (before->first ? 1 : 0) + 1 : 0;
    const std::size_t mix =
        mixed({from, step.to, static_cast<std::size_t>(step.overcut), zone, last});
    const auto stays = static_cast<std::int64_t>(mix % 3 * 1000);
    const std::int64_t left = std::max<std::int64_t>(0, healed_pm - since_pm);
    return stays + left * static_cast<std::int64_t>(mix / 3 % 4 * 500);
  };
  return {chance, [](OnRung, std::size_t, std::size_t) { return healed_pm; }, below(random, 3)};
}

/// A ladder with values so small that equal sums are the rule.
Ladder random_ladder(Random& random) {
  const auto sheets = static_cast<std::size_t>(1 + below(random, 7));
  const auto zones = static_cast<std::size_t>(1 + below(random, 3));
  Ladder ladder;
  for (std::size_t sheet = 0; sheet < sheets; ++sheet) ladder.coarse_to_fine.push_back(sheet);
  std::shuffle(ladder.coarse_to_fine.begin(), ladder.coarse_to_fine.end(), random);
  for (std::size_t sheet = 0; sheet < sheets; ++sheet) {
    for (std::vector<Rung>* rungs : {&ladder.as_first, &ladder.later}) {
      std::vector<std::int64_t>& scratch = rungs->emplace_back().scratch_pm;
      for (std::size_t zone = 0; zone < zones; ++zone) scratch.push_back(1 + below(random, 3));
      rungs->back().ends = one_in(random, 3);
    }
    if (one_in(random, 3)) continue;
    for (const LadderStep& step : random_steps(random, sheet, zones)) ladder.first.push_back(step);
  }
  for (std::size_t i = 0; i < sheets; ++i) {
    for (std::size_t j = i + 1; j < sheets; ++j) {
      for (std::vector<Rung>* rungs : {&ladder.as_first, &ladder.later}) {
        if (one_in(random, 3)) continue;
        for (const LadderStep& step : random_steps(random, ladder.coarse_to_fine[j], zones))
          (*rungs)[ladder.coarse_to_fine[i]].next.push_back(step);
      }
    }
  }
  for (std::size_t zone = 0; zone < zones; ++zone) {
    ladder.budget_pm.push_back(one_in(random, 4) ? std::nullopt
                                                 : std::optional(1 + below(random, 20)));
  }
  if (!one_in(random, 4)) ladder.sun = random_sun(random);
  return ladder;
}

/// The rung that a step of a way leads to.
OnRung reached(const std::vector<LadderStep>& way, std::size_t i) { return {way[i].to, i == 0}; }

/// Expected milliseconds of going back, zone by zone: with each first step that fails, all from there on is done again.
std::int64_t going_back(const Ladder& ladder, const std::vector<LadderStep>& way) {
  if (!ladder.sun) return 0;
  std::int64_t sum = 0;
  for (std::size_t zone = 0; zone < ladder.budget_pm.size(); ++zone) {
    std::int64_t since_pm = 0, climb = ladder.sun->look_milliseconds, back = 0;
    for (std::size_t i = way.size(); i-- > 0;) {
      const std::optional<OnRung> before =
          i > 0 ? std::optional(reached(way, i - 1)) : std::nullopt;
      const std::int64_t chance =
          ladder.sun->mark_chance(before, way[i], zone, way.back().to, since_pm);
      climb += way[i].cost.zone_milliseconds[zone];
      back += (climb - back) * chance / chance_unit;
      since_pm += way[i].cost.removal_pm[zone];
    }
    sum += back;
  }
  return sum;
}

/// A whole way added up; none where it is deeper than a budget.
std::optional<Sequence> add_up(const Ladder& ladder, const std::vector<LadderStep>& way) {
  Sequence sums;
  const OnRung last = reached(way, way.size() - 1);
  sums.depth_pm = (last.first ? ladder.as_first : ladder.later)[last.sheet].scratch_pm;
  for (const LadderStep& step : way) {
    sums.sheets.push_back(step.to);
    sums.overcuts.push_back(step.overcut);
    sums.milliseconds += step.cost.milliseconds;
    sums.cost += step.cost.cost;
    sums.fragile += step.cost.fragile;
    for (std::size_t zone = 0; zone < sums.depth_pm.size(); ++zone)
      sums.depth_pm[zone] += step.cost.removal_pm[zone];
  }
  for (std::size_t zone = 0; zone < sums.depth_pm.size(); ++zone) {
    if (ladder.budget_pm[zone] && sums.depth_pm[zone] > *ladder.budget_pm[zone])
      return std::nullopt;
  }
  sums.back_milliseconds = going_back(ladder, way);
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

using Key = std::vector<std::int64_t>;  // minutes, film, cost, fragile, steps, sheets, overcuts

Key key_of(const Ladder& ladder, const Sequence& s) {
  Key key{s.expected_milliseconds(), film_in_common(ladder, s), s.cost, s.fragile,
          static_cast<std::int64_t>(s.steps())};
  for (const std::size_t sheet : s.sheets) key.push_back(static_cast<std::int64_t>(sheet));
  for (const double overcut : s.overcuts) key.push_back(static_cast<std::int64_t>(overcut));
  return key;
}

std::vector<Key> keys_of(const Ladder& ladder, const std::vector<Sequence>& sequences) {
  std::vector<Key> keys;
  for (const Sequence& s : sequences) keys.push_back(key_of(ladder, s));
  return keys;
}

/// Follows every way on to a sheet that meets the target.
void follow(const Ladder& ladder, std::vector<LadderStep>& way, std::vector<Key>& all) {
  const OnRung at = reached(way, way.size() - 1);
  const Rung& rung = (at.first ? ladder.as_first : ladder.later)[at.sheet];
  if (rung.ends) {
    if (const auto sums = add_up(ladder, way)) all.push_back(key_of(ladder, *sums));
  }
  for (const LadderStep& step : rung.next) {
    way.push_back(step);
    follow(ladder, way, all);
    way.pop_back();
  }
}

/// All sequences that keep the rules, by trying every way.
std::vector<Key> enumerated(const Ladder& ladder) {
  std::vector<Key> all;
  for (const LadderStep& step : ladder.first) {
    std::vector<LadderStep> way{step};
    follow(ladder, way, all);
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
Key best_by(const std::vector<Key>& all, std::size_t sum) {
  return *std::min_element(all.begin(), all.end(), [&](const Key& a, const Key& b) {
    return std::pair(a[sum], a) < std::pair(b[sum], b);
  });
}

/// The best in minutes: of those near the least, by fragile steps, then film.
Key best_near(const std::vector<Key>& all) {
  const std::int64_t least = all.front()[0];
  std::vector<Key> near;
  for (const Key& key : all) {
    if (key[0] <= least + 3 * (least / 100)) near.push_back(key);
  }
  return *std::min_element(near.begin(), near.end(), [](const Key& a, const Key& b) {
    return std::tuple(a[3], a[1], a) < std::tuple(b[3], b[1], b);
  });
}

TEST(SearchOracle, EqualsEnumerationOnLaddersFullOfTies) {
  Random random(20261125);
  int solved = 0, empty = 0, ties = 0, near = 0;
  for (int round = 0; round < 12000; ++round) {
    Ladder ladder = random_ladder(random);
    // Minutes of a hundred and more, so that there are others near the least.
    for (LadderStep& step : ladder.first) step.cost.milliseconds += 30 * below(random, 2) * 10;
    const std::vector<Key> all = enumerated(ladder);
    const std::vector<Sequence> found = search(ladder);
    if (all.empty()) {
      ASSERT_TRUE(found.empty()) << "round " << round;
      ++empty;
      continue;
    }
    ++solved;
    ASSERT_EQ(keys_of(ladder, found), unbeaten(all, 5)) << "round " << round;
    ASSERT_EQ(keys_of(ladder, tradeoff(found)), unbeaten(all, 4)) << "round " << round;
    const Key quick = key_of(ladder, best(found, Objective::minutes));
    ASSERT_EQ(quick, best_near(all)) << "round " << round;
    ASSERT_EQ(key_of(ladder, best(found, Objective::film)), best_by(all, 1)) << "round " << round;
    ASSERT_EQ(key_of(ladder, best(found, Objective::cost)), best_by(all, 2)) << "round " << round;
    ASSERT_EQ(key_of(ladder, best(found, Objective::steps)), best_by(all, 4)) << "round " << round;
    near += quick == best_by(all, 0) ? 0 : 1;
    for (std::size_t i = 0; i + 1 < all.size(); ++i) {
      ties += std::equal(all[i].begin(), all[i].begin() + 4, all[i + 1].begin()) ? 1 : 0;
    }
  }
  EXPECT_GT(solved, 2000);
  EXPECT_GT(empty, 500);
  EXPECT_GT(ties, 1000);
  EXPECT_GT(near, 100);
}

/// A way with the paper that it uses of each sheet.
struct WithPaper {
  Key key;
  std::vector<std::int64_t> micro_sheets;
};

/// Follows every way on, and notes its paper.
void follow_paper(const Ladder& ladder, std::vector<LadderStep>& way, std::vector<WithPaper>& all) {
  const OnRung at = reached(way, way.size() - 1);
  const Rung& rung = (at.first ? ladder.as_first : ladder.later)[at.sheet];
  const auto sums = rung.ends ? add_up(ladder, way) : std::nullopt;
  if (sums) {
    WithPaper& one = all.emplace_back(WithPaper{key_of(ladder, *sums), {}});
    one.micro_sheets.assign(ladder.later.size(), 0);
    for (const LadderStep& step : way) one.micro_sheets[step.to] += step.cost.micro_sheets;
  }
  for (const LadderStep& step : rung.next) {
    way.push_back(step);
    follow_paper(ladder, way, all);
    way.pop_back();
  }
}

/// Gives every step some paper: little of it, so that equal use is common.
void give_paper(Random& random, Ladder& ladder) {
  const auto give = [&](std::vector<LadderStep>& steps) {
    for (LadderStep& step : steps) step.cost.micro_sheets = below(random, 4);
  };
  give(ladder.first);
  for (std::vector<Rung>* rungs : {&ladder.as_first, &ladder.later}) {
    for (Rung& rung : *rungs) give(rung.next);
  }
}

TEST(SearchOracle, KeepsTheBestWayForAnyPaperLeftOfSharedSheets) {
  Random random(20261128);
  int limited = 0, scarce = 0, solved = 0;
  for (int round = 0; round < 4000; ++round) {
    Ladder ladder = random_ladder(random);
    give_paper(random, ladder);
    std::vector<std::int64_t> left;
    for (std::size_t sheet = 0; sheet < ladder.later.size(); ++sheet) {
      left.push_back(below(random, 4));
      if (!one_in(random, 3)) ladder.shared.push_back(sheet);
    }
    std::vector<WithPaper> all;
    for (const LadderStep& step : ladder.first) {
      std::vector<LadderStep> way{step};
      follow_paper(ladder, way, all);
    }
    std::sort(all.begin(), all.end(),
              [](const WithPaper& a, const WithPaper& b) { return a.key < b.key; });
    std::vector<Key> kept;
    for (const Sequence& sequence : worth_comparing(ladder))
      kept.push_back(key_of(ladder, sequence));
    // The best way that the paper allows is among those kept: by minutes first, and by cost first.
    for (const std::size_t lead : {std::size_t{0}, std::size_t{2}}) {
      const WithPaper* best = nullptr;
      for (const WithPaper& one : all) {
        const bool does =
            std::all_of(ladder.shared.begin(), ladder.shared.end(),
                        [&](std::size_t sheet) { return one.micro_sheets[sheet] <= left[sheet]; });
        if (!does) {
          ++scarce;
          continue;
        }
        if (!best || std::tie(one.key[lead], one.key) < std::tie(best->key[lead], best->key))
          best = &one;
      }
      if (!best) continue;
      ++solved;
      limited += best->key == all.front().key ? 0 : 1;
      ASSERT_NE(std::find(kept.begin(), kept.end(), best->key), kept.end()) << "round " << round;
    }
  }
  EXPECT_GT(solved, 2000);
  EXPECT_GT(limited, 500);
  EXPECT_GT(scarce, 2000);
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
