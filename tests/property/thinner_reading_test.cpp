// No plan is ever more generous after a thinner gauge reading: random jobs, random steps, and readings below what was computed.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "levigate/bench/bench.hpp"
#include "levigate/plan/work/budget_of.hpp"
#include "property/random.hpp"
#include "unit/workshop.hpp"

namespace thinner_reading_test {
namespace {

using namespace workshop;
using random_numbers::Random;

const std::vector<std::string> grits{"P400", "P600", "P1000", "P1500"};

Job random_job(Random& random) {
  Job job = top(random.between(5, 40));
  job.name = "case";
  Zone& zone = job.zones[0];
  zone.area_cm2 = random.between(50, 2000);
  zone.peel_how = choices<PeelHow>[random.below(3)];
  zone.below_um = random.chance(0.3) ? random.between(20, 60) : 0.0;
  Film film{random.between(90, 200), random.between(2, 15)};
  film.mean_se_um = random.chance(0.5) ? random.between(0.5, 20) : 0.0;
  if (random.chance(0.5)) {
    film.readings = 3 + random.below(20);
    film.sd_se_um = film.sd_um / std::sqrt(2.0 * static_cast<double>(film.readings - 1));
    film.mean_se_um =
        std::hypot(film.mean_se_um, film.sd_um / std::sqrt(static_cast<double>(film.readings)));
  }
  zone.film = film;
  return job;
}

Entry line(EntryKind kind) {
  Entry entry;
  entry.kind = kind;
  entry.at = "2026-03-01T09:30:00Z";
  entry.job = "case";
  return entry;
}

std::vector<Entry> steps(std::size_t count) {
  std::vector<Entry> journal;
  for (std::size_t i = 0; i < count; ++i) {
    Entry& step = journal.emplace_back(line(EntryKind::step_ended));
    step.sheet = grits[i];
    step.minutes = 10;
  }
  return journal;
}

/// What may go down by plan and by going back [um]; 0 where nothing may.
struct Affords {
  double plan_um = 0;
  double back_um = 0;
};

Affords affords(const Job& job, const std::vector<Entry>& journal) {
  const Bench bench(job, papers(grits), {}, journal);
  Affords result;
  try {
    result.plan_um = budget_of(present(bench), present(bench).zones[0]);
  } catch (const BadInput&) {  // the film is not above the reserve
  }
  if (bench.done().empty()) return result;
  Mark haze;
  haze.kind = MarkKind::haze;
  haze.zone = job.zones[0].name;
  result.back_um = *go_back(bench, haze).film_um;
  return result;
}

// Budgets are solved to 1e-6 um and better.
constexpr double solved_um = 1e-5;

TEST(ThinnerReading, NoPlanAndNoWayBackIsMoreGenerousAfterIt) {
  Random random(20261126);
  int least = 0, before_first = 0;
  for (int i = 0; i < 200; ++i) {
    const Job job = random_job(random);
    const std::size_t before = random.below(3), later = random.below(2);
    std::vector<Entry> journal = steps(before);
    const Bench unread(job, papers(grits), {}, journal);
    const double computed_um = present(unread).zones[0].film->mean_um + job.zones[0].below_um;
    Entry read = line(EntryKind::film_read);
    read.zone = job.zones[0].name;
    const double thinner_um = computed_um - random.between(0, 0.7) * random.between(0, computed_um);
    const std::size_t spots = 1 + random.below(8);
    double mean_um = 0;
    for (std::size_t spot = 0; spot < spots; ++spot) {
      read.readings_um.push_back(random.between(0, 6));
      mean_um += read.readings_um.back() / static_cast<double>(spots);
    }
    for (double& spot_um : read.readings_um)
      spot_um = std::max(0.0, spot_um - mean_um + thinner_um - 1e-9);
    std::vector<Entry> after = steps(before + later), first = after;
    first.insert(first.begin() + static_cast<std::ptrdiff_t>(before), read);
    const Affords without = affords(job, after), once = affords(job, first);
    const std::string what = "job " + std::to_string(i);
    EXPECT_LE(once.plan_um, without.plan_um + solved_um) << what;
    EXPECT_LE(once.back_um, without.back_um + solved_um) << what;
    const double shift_um = random.between(0, 30);
    std::vector<Entry> lower = first;
    bool whole = true;
    for (double& spot_um : lower[before].readings_um) {
      whole = whole && spot_um >= shift_um;
      spot_um -= shift_um;
    }
    if (whole) {
      const Affords less = affords(job, lower);
      EXPECT_LE(less.plan_um, once.plan_um + solved_um) << what;
      EXPECT_LE(less.back_um, once.back_um + solved_um) << what;
    }
    least += once.plan_um > 0;
    before_first += before == 0;
  }
  EXPECT_GT(least, 50) << "some afford work";
  EXPECT_GT(before_first, 30);
}

}  // namespace
}  // namespace thinner_reading_test
