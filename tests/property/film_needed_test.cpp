// The film that a job without a plan is said to need: there is a plan with it, and none with 1 um less in any zone.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "levigate/film/gauge.hpp"
#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/sunlight.hpp"
#include "levigate/plan/work/why.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/text/sentences.hpp"
#include "property/enumeration.hpp"

namespace film_needed_test {
namespace {

using namespace enumeration;

/// The film as one would type it anew, so told, with this mean.
Film told(const Film& now, double mean_um) {
  Film film = now;
  film.mean_um = mean_um;
  if (now.how == FilmHow::coats_counted) film.mean_se_um = 0.15 * mean_um / std::sqrt(3.0);
  if (now.how == FilmHow::wet_comb) film.mean_se_um = (5 + 0.10 * mean_um) / std::sqrt(3.0);
  return film;
}

Zone& zone_of(Job& job, const std::string& name) {
  return *std::find_if(job.zones.begin(), job.zones.end(),
                       [&](const Zone& zone) { return zone.name == name; });
}

bool has_plan(const Job& job, const Stack& stack) {
  const Workings workings = levigate::workings(job, stack);
  Sun sun(workings);
  return !sequences_of(workings, sun).empty();
}

/// A random job whose films are told in all the ways there are.
Job random_job_with_errors(Random& random) {
  Job job = random_job(random);
  for (Zone& zone : job.zones) {
    if (!zone.film) continue;
    Film film{random.between(12, 70), random.between(1, 6)};
    const std::size_t way = random.below(4);
    film.how = way == 0 ? FilmHow::coats_counted : way == 1 ? FilmHow::wet_comb : FilmHow::stated;
    if (way == 2) film.mean_se_um = random.between(0, 4);
    if (way == 3) {
      film.how = FilmHow::gauge;
      film.readings = 12;
      film.mean_se_um = film.sd_um / std::sqrt(12.0);
      film.sd_se_um = film.sd_um / std::sqrt(22.0);
    }
    zone.film = told(film, film.mean_um);
  }
  return job;
}

TEST(FilmNeeded, IsTheLeastFilmThatAllowsAPlan) {
  Random random(20261);
  int short_of_film = 0, several_zones = 0, tried = 0;
  constexpr int wanted = 500;
  for (int round = 0; short_of_film < wanted && round < 100 * wanted; ++round) {
    Job job = random_job_with_errors(random);
    const Stack stack = random_stack(random, 7);
    const Workings workings = levigate::workings(job, stack);
    Sun sun(workings);
    if (!sequences_of(workings, sun).empty()) continue;
    const Why why = why_no_plan(workings);
    ++tried;
    ASSERT_EQ(why.films.empty(), !why.film_short_um) << round << " " << sentence(why);
    if (why.kind != WhyKind::one_limit || !why.film_short_um) continue;
    for (const FilmNeeded& film : why.films) {
      ASSERT_TRUE(film.needed_um) << round << " " << sentence(why);
      ASSERT_EQ(film.film_um, zone_of(job, film.zone).film->mean_um) << round;
      ASSERT_GT(*film.needed_um, film.film_um) << round;
    }
    ++short_of_film;
    several_zones += why.films.size() > 1 ? 1 : 0;
    Job enough = job;
    for (const FilmNeeded& film : why.films) {
      Zone& zone = zone_of(enough, film.zone);
      zone.film = told(*zone.film, *film.needed_um);
    }
    ASSERT_TRUE(has_plan(enough, stack)) << round << " " << sentence(why);
    for (const FilmNeeded& film : why.films) {
      if (*film.needed_um - 1 <= film.film_um) continue;
      Job thinner = enough;
      Zone& zone = zone_of(thinner, film.zone);
      zone.film = told(*zone.film, *film.needed_um - 1);
      ASSERT_FALSE(has_plan(thinner, stack)) << round << " " << film.zone << " " << sentence(why);
    }
  }
  EXPECT_EQ(short_of_film, wanted) << "of " << tried << " without a plan";
  EXPECT_GT(several_zones, wanted / 10);
}

}  // namespace
}  // namespace film_needed_test
