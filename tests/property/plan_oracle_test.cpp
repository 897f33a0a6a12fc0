// The planner against enumeration on random jobs: best plan of every objective, the whole trade-off, and where there is no
// plan the reason.
#include <gtest/gtest.h>

#include <map>

#include "levigate/grade/sized.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/why.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/text/sentences.hpp"
#include "property/enumeration.hpp"

namespace plan_oracle_test {
namespace {

using namespace enumeration;

/// Where no single limit is to blame, each is told with the other two lifted, if it still stands in the way then.
void expect_each(const Why& why, const std::vector<Way>& ways, const Rules& rules, int round) {
  constexpr double any = std::numeric_limits<double>::infinity();
  const auto free = [&](const Way& w) { return keeps(w, 1, any, false, false, any); };
  const auto ratio = least(
      ways, [&](const Way& w) { return keeps(w, rules.min_ratio, any, false, false, any); },
      [](const Way& w) { return w.longest_ratio; });
  const auto deeper = least(ways, free, [](const Way& w) { return w.too_deep_um; });
  const auto film = least(ways, free, [](const Way& w) { return w.excess_um; });
  const auto paper =
      least(ways, free, [](const Way& w) { return static_cast<double>(w.micro_short) / 1e6; });
  int told = 0;
  ASSERT_EQ(why.smallest_max_ratio.has_value(), ratio && *ratio > rules.max_ratio) << round;
  if (why.smallest_max_ratio) {
    ASSERT_DOUBLE_EQ(*why.smallest_max_ratio, *ratio) << round;
    ++told;
  }
  ASSERT_EQ(why.too_deep_um.has_value(), deeper.value() > 0) << round << " " << sentence(why);
  if (why.too_deep_um) {
    ASSERT_NEAR(*why.too_deep_um, *deeper, 1e-12) << round;
    ++told;
  }
  if (film.value() > 0) {
    ASSERT_NEAR(why.film_short_um.value(), *film, 2e-6) << round << " " << sentence(why);
    ++told;
  }
  double missing = 0;
  for (const PaperShort& p : why.paper) missing += p.needed - p.on_hand;
  ASSERT_NEAR(missing, paper.value(), 1e-5) << round << " " << sentence(why);
  told += why.paper.empty() ? 0 : 1;
  const bool each_way = why.kind == WhyKind::different_limits;
  ASSERT_EQ(told + (why.largest_min_ratio ? 1 : 0) == 0, each_way) << round << " " << sentence(why);
}

void expect_reason(const Why& why, const std::vector<Way>& ways, const Rules& rules, int round) {
  const double low = rules.min_ratio, high = rules.max_ratio;
  constexpr double any = std::numeric_limits<double>::infinity();
  const auto ratio = least(
      ways, [&](const Way& w) { return keeps(w, low, any, true, true); },
      [](const Way& w) { return w.longest_ratio; });
  const auto film = least(
      ways, [&](const Way& w) { return keeps(w, low, high, false, true); },
      [](const Way& w) { return w.excess_um; });
  const auto paper = least(
      ways, [&](const Way& w) { return keeps(w, low, high, true, false); },
      [](const Way& w) { return static_cast<double>(w.micro_short) / 1e6; });
  const auto nearer = least(
      ways, [&](const Way& w) { return keeps(w, 1, high, true, true); },
      [](const Way& w) { return -w.shortest_ratio; });
  const auto deeper = least(
      ways, [&](const Way& w) { return keeps(w, low, high, true, true, any); },
      [](const Way& w) { return w.too_deep_um; });
  if (ratio) {
    ASSERT_EQ(why.blocked_by, Blocker::ratio) << round << " " << sentence(why);
    ASSERT_DOUBLE_EQ(why.smallest_max_ratio.value(), *ratio) << round << " " << sentence(why);
    ASSERT_FALSE(why.gaps.empty()) << round;
    for (const Gap& gap : why.gaps) ASSERT_GT(gap.ratio, high) << round;
  } else if (nearer) {
    ASSERT_EQ(why.blocked_by, Blocker::ratio) << round << " " << sentence(why);
    ASSERT_DOUBLE_EQ(why.largest_min_ratio.value(), -*nearer) << round << " " << sentence(why);
  } else if (deeper) {
    ASSERT_EQ(why.blocked_by, Blocker::scratch) << round << " " << sentence(why);
  } else if (film) {
    ASSERT_EQ(why.blocked_by, Blocker::film) << round << " " << sentence(why);
  } else if (paper) {
    ASSERT_EQ(why.blocked_by, Blocker::paper) << round << " " << sentence(why);
  } else if (ways.empty()) {
    ASSERT_EQ(why.blocked_by, Blocker::target) << round << " " << sentence(why);
    return;
  } else {
    ASSERT_EQ(why.blocked_by, Blocker::several) << round << " " << sentence(why);
    expect_each(why, ways, rules, round);
    return;
  }
  if (deeper) {
    ASSERT_NEAR(why.too_deep_um.value(), *deeper, 1e-12) << round << " " << sentence(why);
  }
  if (film) {
    ASSERT_NEAR(why.film_short_um.value(), *film, 2e-6) << round << " " << sentence(why);
  }
  if (paper) {
    double missing = 0;
    for (const PaperShort& p : why.paper) missing += p.needed - p.on_hand;
    ASSERT_NEAR(missing, *paper, 1e-5) << round << " " << sentence(why);
  }
}

/// What the planner says, without what it says of it: findings and reliances take most of the time.
struct Answer {
  std::optional<Sequence> best;
  std::vector<Sequence> front;
  std::optional<Why> why;
};

Answer answer(const Job& job, const Stack& stack) {
  const Workings workings = levigate::workings(job, stack);
  Sun sun(workings);
  const std::vector<Sequence> found = sequences_of(workings, sun);
  if (found.empty()) return {.best = {}, .front = {}, .why = why_no_plan(workings)};
  return {best(found, job.prefer), tradeoff(found), {}};
}

/// What the whole planner returns is the same.
void expect_same(const Plan& whole, const Answer& given, int round) {
  ASSERT_EQ(whole.found, given.best.has_value()) << round;
  if (!whole.found) {
    ASSERT_EQ(sentence(*whole.why), sentence(*given.why)) << round;
    return;
  }
  ASSERT_EQ(key_of(whole.exact), key_of(*given.best)) << round;
  ASSERT_EQ(whole.tradeoff.size(), given.front.size()) << round;
  for (std::size_t i = 0; i < given.front.size(); ++i) {
    ASSERT_EQ(key_of(whole.tradeoff[i].exact), key_of(given.front[i])) << round;
  }
}

void expect_best(const Answer& given, const std::vector<Way>& kept, Objective prefer, int round) {
  const Way& best = best_of(kept, prefer);
  ASSERT_EQ(key_of(*given.best), best.key) << round;
  ASSERT_EQ(given.best->depth_pm, best.depth_pm) << round;
  std::vector<std::vector<std::int64_t>> front;
  for (const Sequence& point : given.front) front.push_back(key_of(point));
  ASSERT_EQ(front, front_of(kept)) << round;
}

constexpr Blocker limits[] = {Blocker::target, Blocker::ratio, Blocker::scratch,
                              Blocker::film,   Blocker::paper, Blocker::several};

TEST(PlanOracle, EqualsEnumerationOnRandomJobs) {
  Random random(20261125);
  int solved = 0, with_compound = 0;
  std::map<Blocker, int> blocked;
  for (int round = 0; round < 5000; ++round) {
    const Job job = random_job(random);
    const Stack stack = random_stack(random);
    const Enumeration enumeration(job, stack);
    const std::vector<Way> kept = kept_of(enumeration, job.rules);
    const Answer given = answer(job, stack);
    if (round % 20 == 0) expect_same(plan(job, stack), given, round);
    ASSERT_EQ(given.best.has_value(), !kept.empty()) << round;
    if (given.why) {
      ++blocked[given.why->blocked_by];
      ASSERT_NO_FATAL_FAILURE(expect_reason(*given.why, enumeration.ways(), job.rules, round));
      continue;
    }
    ++solved;
    with_compound +=
        std::any_of(kept.begin(), kept.end(), [](const Way& w) { return w.compound; }) ? 1 : 0;
    ASSERT_NO_FATAL_FAILURE(expect_best(given, kept, job.prefer, round));
  }
  EXPECT_GT(solved, 1000);
  EXPECT_GT(with_compound, 500);
  for (const Blocker blocker : limits) {
    EXPECT_GT(blocked[blocker], 20) << to_string(blocker);
    RecordProperty("blocked_by_" + std::string(to_string(blocker)), blocked[blocker]);
  }
}

/// Two zones at least, some with a state of their own.
Job random_mixed_job(Random& random) {
  Job job = random_job(random);
  if (job.zones.size() == 1) {
    job.zones.push_back(job.zones.front());
    job.zones.back().name = "zone 1";
  }
  for (Zone& zone : job.zones) {
    if (random.chance(0.3)) continue;
    // Whole micrometres, so that zones are alike, and of the size of a sheet or of the target.
    zone.carries = Carried{sized_grade("own", std::floor(random.between(5, 45)))};
    if (random.chance(0.4)) zone.carries->scratch_um = random.between(0.1, 3);
    if (random.chance(0.3)) zone.carries->rq_um = random.between(0, 0.2);
    if (random.chance(0.1))
      zone.carries->worn_um = zone.carries->grade.median_um * random.between(0.6, 1);
  }
  return job;
}

bool zones_differ(const Job& job) {
  return std::any_of(job.zones.begin(), job.zones.end(), [&](const Zone& zone) {
    return carried_in(job, zone) != carried_in(job, job.zones.front());
  });
}

TEST(PlanOracle, EqualsEnumerationWhereZonesDifferInWhereTheyStand) {
  Random random(20261126);
  int mixed = 0, solved = 0, taken_up_late = 0, left_standing = 0;
  std::map<Blocker, int> blocked;
  for (int round = 0; mixed < 2000; ++round) {
    const Job job = random_mixed_job(random);
    const Stack stack = random_stack(random, 6);
    if (!zones_differ(job)) continue;
    ++mixed;
    const Enumeration enumeration(job, stack);
    const Answer given = answer(job, stack);
    if (mixed % 20 == 0) expect_same(plan(job, stack), given, round);
    if (given.why) ++blocked[given.why->blocked_by];
    const bool done = given.why && given.why->blocked_by == Blocker::done;
    ASSERT_EQ(done, enumeration.done()) << round;
    if (done) continue;
    const std::vector<Way> kept = kept_of(enumeration, job.rules);
    ASSERT_EQ(given.best.has_value(), !kept.empty()) << round;
    if (given.why) {
      ASSERT_NO_FATAL_FAILURE(expect_reason(*given.why, enumeration.ways(), job.rules, round));
      continue;
    }
    ++solved;
    ASSERT_NO_FATAL_FAILURE(expect_best(given, kept, job.prefer, round));
    const auto taken = std::find_if(kept.begin(), kept.end(),
                                    [&](const Way& way) { return way.key == key_of(*given.best); });
    taken_up_late += taken->passed_before > 0 ? 1 : 0;
    left_standing += taken->stands > 0 ? 1 : 0;
  }
  EXPECT_GT(solved, 300);
  EXPECT_GT(taken_up_late, 80);
  EXPECT_GT(left_standing, 50);
  EXPECT_GT(blocked[Blocker::done], 20);
  for (const Blocker blocker : limits) {
    EXPECT_GT(blocked[blocker], 20) << to_string(blocker);
  }
  RecordProperty("solved", solved);
  RecordProperty("taken_up_late", taken_up_late);
  RecordProperty("left_standing", left_standing);
}

}  // namespace
}  // namespace plan_oracle_test
