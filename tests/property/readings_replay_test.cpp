// Days on films that were typed wrong: how often they end cut through, with honest readings taken into account and without.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/detail/normal.hpp"
#include "property/random.hpp"
#include "unit/workshop.hpp"

namespace readings_replay_test {
namespace {

using namespace workshop;
using random_numbers::Random;

constexpr double typed_um = 90, typed_sd_um = 5, typed_se_um = 8;

Stack drawer() { return papers({"P400", "P800", "P1500"}); }

Job panel() {
  Job job = top(30, typed_um);
  job.name = "panel";
  job.zones[0].area_cm2 = 300;
  job.zones[0].film = Film{typed_um, typed_sd_um, typed_se_um};
  return job;
}

double normal(Random& random, double mean, double sd) {
  return mean + sd * detail::normal_quantile(random.between(1e-9, 1 - 1e-9));
}

/// A day as it really is: film and hand at each cm2, and a gauge as good as it says.
struct Day {
  std::vector<double> film_um, uneven;
  double gauge_share = 0, gauge_um = 0;

  explicit Day(Random& random) {
    const double mean_um = normal(random, typed_um, 3 * typed_se_um);
    for (int spot = 0; spot < 300; ++spot) {
      film_um.push_back(normal(random, mean_um, typed_sd_um));
      uneven.push_back(normal(random, 1, panel().rules.removed_cv));
    }
    gauge_share = random.between(-0.03, 0.03);
    gauge_um = random.between(-2, 2);
  }

  Entry reading(Random& random, double removed_um) const {
    Entry entry;
    entry.kind = EntryKind::film_read;
    entry.at = "2026-03-01T09:30:00Z";
    entry.job = "panel";
    entry.zone = "top";
    for (int i = 0; i < 5; ++i) {
      const std::size_t spot = random.below(film_um.size());
      const double left_um = film_um[spot] - removed_um * uneven[spot];
      entry.readings_um.push_back(std::max(0.0, left_um * (1 + gauge_share) + gauge_um));
    }
    return entry;
  }

  bool cut_through(double depth_um) const {
    for (std::size_t spot = 0; spot < film_um.size(); ++spot) {
      if (film_um[spot] - depth_um * uneven[spot] < panel().rules.reserve_um) return true;
    }
    return false;
  }
};

std::optional<Plan> planned(const std::vector<Entry>& journal) {
  try {
    Plan found = plan(Bench(panel(), drawer(), {}, journal));
    if (found.found) return found;
  } catch (const BadInput&) {  // no film above the reserve
  }
  return std::nullopt;
}

/// Depth that a day goes to which reads twice before the first step and once after it; none where it does not begin.
std::optional<double> depth_with_readings(const Day& day, Random& random) {
  std::vector<Entry> journal{day.reading(random, 0), day.reading(random, 0)};
  const std::optional<Plan> whole = planned(journal);
  if (!whole) return std::nullopt;
  const ZoneStep& first = whole->steps.front().zones[0];
  Entry ended;
  ended.kind = EntryKind::step_ended;
  ended.at = journal[0].at;
  ended.job = "panel";
  ended.sheet = whole->steps.front().sheet;
  ended.minutes = 30;
  journal.push_back(ended);
  journal.push_back(day.reading(random, first.removal_um));
  const std::optional<Plan> rest = planned(journal);
  return first.removal_um + (rest ? rest->steps.back().zones[0].depth_um : first.scratch_um);
}

// 1000 days that this seed draws, and what was counted on them.
constexpr int days = 1000, cut_without = 23, cut_with = 0, not_begun = 200;

TEST(ReadingsReplay, AWrongTypedFilmIsCutThroughLessOftenWithReadings) {
  Random random(20261126);
  const double blind_um = planned({})->steps.back().zones[0].depth_um;
  int without = 0, with = 0, none = 0;
  for (int i = 0; i < days; ++i) {
    const Day day(random);
    without += day.cut_through(blind_um);
    const std::optional<double> depth_um = depth_with_readings(day, random);
    with += depth_um && day.cut_through(*depth_um);
    none += !depth_um;
  }
  EXPECT_LT(with, without / 5);
  EXPECT_EQ(without, cut_without);
  EXPECT_EQ(with, cut_with);
  EXPECT_EQ(none, not_begun);
}

}  // namespace
}  // namespace readings_replay_test
