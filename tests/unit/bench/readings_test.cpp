// Gauge readings in a journal: the last one of a zone anchors its film, and no plan is more generous after a thinner one.
#include "levigate/bench/bench.hpp"
#include "levigate/text/card.hpp"
#include "levigate/text/sentences.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "levigate/film/edge.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/plan/work/budget_of.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace readings_test {
namespace {

using namespace learn_workshop;
using testing::HasSubstr;

Bench after(std::vector<Entry> journal) {
  return Bench(clock_case(), drawer(), {}, std::move(journal));
}

const Film& film_now(const Bench& bench, std::size_t zone = 0) {
  return *present(bench).zones[zone].film;
}

double mean_now(std::vector<Entry> journal) { return film_now(after(std::move(journal))).mean_um; }

/// What may go down in the zone, by plan [um].
double may_go_down_um(const Bench& bench) {
  return budget_of(present(bench), present(bench).zones[0]);
}

Mark haze() {
  Mark mark;
  mark.kind = MarkKind::haze;
  mark.zone = "top";
  return mark;
}

std::vector<Finding> doubts(const Bench& bench) {
  std::vector<Finding> result;
  for (const Finding& finding : bench.findings())
    if (finding.kind == FindingKind::reading_contradicts) result.push_back(finding);
  return result;
}

// A reading of 25 um, one more step, and the film was the one computed from the job again.
TEST(Readings, AReadingIsNotForgottenAfterAnotherStep) {
  const std::vector<Entry> read{ended("P400", 60), film_read("top", {90, 89, 91})};
  std::vector<Entry> more = read;
  more.push_back(ended("P600", 20));
  const double step_um =
      mean_now({ended("P400", 60)}) - mean_now({ended("P400", 60), ended("P600", 20)});
  EXPECT_NEAR(mean_now(read), 90, 1e-9);
  EXPECT_NEAR(mean_now(more), 90 - step_um, 1e-9);
  EXPECT_GT(step_um, 0.5);
  EXPECT_LE(may_go_down_um(after(more)), may_go_down_um(after(read)));
  EXPECT_LT(*go_back(after(more), haze()).film_um, *go_back(after(read), haze()).film_um);
  // Below the reserve it stays refused, as it was right after the reading.
  more[1].readings_um = {11};
  EXPECT_FALSE(plan(after({more[0], more[1]})).found);
  EXPECT_THAT([&] { plan(after(more)); },
              testing::ThrowsMessage<BadInput>(HasSubstr("that were read")));
  EXPECT_EQ(*go_back(after(more), haze()).film_um, 0.0);
}

TEST(Readings, AReadingBeforeTheFirstStepCounts) {
  const Bench bench = after({film_read("top", {45, 44, 46})});
  EXPECT_NEAR(film_now(bench).mean_um, 45, 1e-9);
  EXPECT_EQ(present(bench).zones[0].peel_um, clock_case().zones[0].peel_um);
  EXPECT_LT(may_go_down_um(bench), may_go_down_um(after({})));
  EXPECT_NEAR(*plan(bench).zones[0].film_um, 45, 1e-9);
  const double step_um = 120 - mean_now({ended("P400", 60)});
  const Bench worked = after({film_read("top", {45, 44, 46}), ended("P400", 60)});
  EXPECT_NEAR(film_now(worked).mean_um, 45 - step_um, 1e-9);
  EXPECT_EQ(present(worked).zones[0].levelled_peel_um, clock_case().zones[0].peel_um)
      << "nobody has read since the peel was levelled";
  EXPECT_EQ(*go_back(worked, haze()).film_um, 0.0);
  EXPECT_GT(*go_back(after({ended("P400", 60)}), haze()).film_um, 30.0);
}

TEST(Readings, TheLastReadingOfAZoneAnchorsItsFilm) {
  const std::vector<double> low{80, 82}, high{118, 122};
  const double step_um = 120 - mean_now({ended("P400", 60)});
  EXPECT_EQ(mean_now({film_read("top", high)}), 120);
  EXPECT_EQ(mean_now({film_read("top", low)}), 81);
  EXPECT_NEAR(mean_now({film_read("top", low), ended("P400", 60)}), 81 - step_um, 1e-9);
  EXPECT_EQ(mean_now({ended("P400", 60), film_read("top", low)}), 81);
  EXPECT_NEAR(mean_now({ended("P400", 60), film_read("door", low)}), 120 - step_um, 1e-9);
  EXPECT_EQ(mean_now({ended("P400", 60), film_read("top", low), ended("P600", 9, "door")}), 81)
      << "the step was of another zone";
  EXPECT_NEAR(mean_now({ended("P400", 60), film_read("top", low), ended("P600", 9, "top"),
                        film_read("top", {79, 80})}),
              79.5, 1e-9);
  EXPECT_NEAR(
      mean_now({ended("P400", 60), film_read("top", low), ended("P400", 9), ended("P600", 9)}),
      mean_now({ended("P400", 60), film_read("top", low), ended("P600", 9)}) - step_um, 1e-9)
      << "a step that goes on after the reading may do all its work after it";
}

// A top of 120 um read at 60 um, twice, and its edges were still planned at the film of a top of 120 um.
TEST(Readings, AThinFlatHasThinEdges) {
  Job job = clock_case();
  job.zones[1].edge = Edge{"top", 3.0};
  job.zones[1].levelled = false;
  job.zones[1].film = Film{100, 5};
  const auto edge_um = [&](std::vector<Entry> journal) {
    return film_now(Bench(job, drawer(), {}, std::move(journal)), 1).mean_um;
  };
  const Entry half = film_read("top", {60, 61, 59}), whole = film_read("top", {130, 131, 129});
  EXPECT_NEAR(edge_um({half, half}), 50, 1e-9);
  EXPECT_NEAR(edge_um({half}), 50, 1e-9) << "the thinner value counts until it is read again";
  EXPECT_NEAR(edge_um({whole, whole}), 100, 1e-9) << "a thicker flat is no reading of an edge";
  EXPECT_NEAR(edge_um({half, half, film_read("door", {80, 81, 79}), film_read("door", {80})}), 80,
              0.5)
      << "read itself";
  const std::vector<Entry> worked{ended("P400", 60, "top"), half, half};
  EXPECT_NEAR(edge_um(worked), 100 * (60 + 120 - mean_now({ended("P400", 60, "top")})) / 120, 1e-9)
      << "what came off the flat was there before";
  job.zones[1].film->how = FilmHow::gauge;
  EXPECT_NEAR(edge_um({half, half}), 100, 1e-9) << "a gauge has read the edge";
  // The film of the flat was read, and that of the edge worked out from it: nobody read the edge.
  job.zones[0].film->how = FilmHow::gauge;
  job.zones[1].film = edge_film(*job.zones[0].film, 3.0);
  const double whole_um = edge_um({});
  EXPECT_NEAR(edge_um({half, half}), whole_um / 2, 1e-9);
}

TEST(Readings, AReadingThatContradictsIsSaidOnTopUntilItIsReadAgain) {
  const std::vector<Entry> thin{ended("P400", 60), film_read("top", {45, 44, 46})};
  const Bench once = after(thin);
  ASSERT_EQ(doubts(once).size(), 1U);
  EXPECT_EQ(doubts(once)[0].zone, "top");
  EXPECT_EQ(figure(doubts(once)[0].numbers, "counts_um"), 45.0);
  const std::string told = card(plan(once));
  EXPECT_LT(told.find("The gauge read 45 um in zone top"), told.find("may go down"));
  EXPECT_EQ(go_back(once, haze()).findings.size(), 1U);
  std::vector<Entry> twice = thin;
  twice.push_back(film_read("top", {46, 45, 47}));
  EXPECT_TRUE(doubts(after(twice)).empty());
  EXPECT_EQ(film_now(after(twice)), film_from_gauge(std::vector<double>{45, 44, 46, 46, 45, 47},
                                                    gauge_named("ultrasonic")));
  // One that agrees is no finding.
  EXPECT_TRUE(doubts(after({ended("P400", 60), film_read("top", {106, 110, 104})})).empty());
}

TEST(Readings, AThickerReadingThatContradictsDoesNotCountUntilItIsReadAgain) {
  const double computed_um = mean_now({ended("P400", 60)});
  const std::vector<Entry> thick{ended("P400", 60), film_read("top", {180, 182, 184})};
  const Bench once = after(thick);
  EXPECT_EQ(film_now(once).mean_um, computed_um);
  ASSERT_EQ(doubts(once).size(), 1U);
  EXPECT_EQ(figure(doubts(once)[0].numbers, "counts_um"), computed_um);
  std::vector<Entry> twice = thick;
  twice.push_back(film_read("top", {181, 183, 182}));
  EXPECT_NEAR(film_now(after(twice)).mean_um, 182, 1e-9);
  EXPECT_TRUE(doubts(after(twice)).empty());
}

TEST(Readings, OfTwoThatContradictEachOtherTheThinnerCounts) {
  const Entry low = film_read("top", {45, 44, 46}), high = film_read("top", {106, 105, 107});
  for (const auto& [first, second] : {std::pair{low, high}, std::pair{high, low}}) {
    const Bench bench = after({ended("P400", 60), first, second});
    EXPECT_NEAR(film_now(bench).mean_um, 45, 1e-9);
    EXPECT_EQ(doubts(bench).size(), 1U);
  }
  const Bench settled = after({ended("P400", 60), low, high, high});
  EXPECT_NEAR(film_now(settled).mean_um, 106, 1e-9);
  EXPECT_TRUE(doubts(settled).empty());
}

// Two readings of one spot each tell no spread, so they must not win what a spread of nothing would.
TEST(Readings, SingleReadingsTellNoSpread) {
  const Film film =
      film_now(after({ended("P400", 60), film_read("top", {80}), film_read("top", {80})}));
  EXPECT_GE(film.sd_um, clock_case().zones[0].film->sd_um);
  EXPECT_EQ(film.readings, 2U);
}

/// The uncertainty of a doubt, after a step that levelled the peel and a reading that contradicts.
double doubt_um(const Job& job, const Entry& read) {
  const auto found = doubts(Bench(job, drawer(), {}, {ended("P400", 60), read}));
  return found.empty() ? 0.0 : figure(found[0].numbers, "uncertainty_um").value_or(0.0);
}

// Where all that is levelled comes back, twice as much is levelled: both errors of that are twice as large.
TEST(Readings, WhatShrinksBackIsAsUncertainAsThePeelItCameFrom) {
  const Entry read = film_read("top", {12, 13, 14});
  Job job = clock_case();
  const double read_um = film_from_gauge(read.readings_um, gauge_named("ultrasonic")).mean_se_um;
  const double once_um = doubt_um(job, read);
  job.coating.shrink_back = ShrinkBack{.comes_back = 1, .rest_h = 1};
  const double twice_um = doubt_um(job, read);
  EXPECT_GT(once_um, read_um + 1);
  EXPECT_NEAR(std::pow(twice_um, 2) - std::pow(read_um, 2),
              4 * (std::pow(once_um, 2) - std::pow(read_um, 2)), 1e-9);
}

TEST(Readings, OfRoundsThatMeltTogetherAreOfOneFilm) {
  Job job = clock_case();
  job.coating = coating_named("nitrocellulose lacquer");
  job.zones[0].film = Film{80, 5};
  job.zones[0].below_um = 40;
  const Bench melted(job, drawer(), {}, {film_read("top", {118, 120, 122})});
  EXPECT_TRUE(doubts(melted).empty());
  EXPECT_NEAR(film_now(melted).mean_um, 120, 1e-9);
  job.coating.redissolves = false;
  const Bench apart(job, drawer(), {}, {film_read("top", {118, 120, 122})});
  EXPECT_TRUE(doubts(apart).empty());
  EXPECT_NEAR(film_now(apart).mean_um, 80, 1e-9);
}

// A gauge reads a young coat before the cure takes its share. What may come off is of what is left then.
TEST(Readings, OfAYoungCoatLoseWhatTheCureTakes) {
  const Entry read = film_read("top", {100, 99, 101});
  const std::vector<Entry> journal{ended("P400", 60), read, read};
  Job job = clock_case();
  job.cure = Cure{.hard_cure_h = 200, .shrink = 0.1, .points = {}};
  job.age_h = 300;
  const Bench hard(job, drawer(), {}, journal);
  job.age_h = 24;
  const Bench young(job, drawer(), {}, journal);
  EXPECT_NEAR(film_now(young).mean_um, 100, 1e-9);
  EXPECT_NEAR(film_now(hard).mean_um, 100, 1e-9);
  EXPECT_LT(*go_back(young, haze()).film_um, *go_back(hard, haze()).film_um - 5);
  EXPECT_NEAR(*plan(young).zones[0].film_um, 90, 1e-9);
}

}  // namespace
}  // namespace readings_test
