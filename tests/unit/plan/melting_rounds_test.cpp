// Coatings that redissolve: rounds are one film, and what is levelled shrinks back.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "levigate/film/gauge.hpp"
#include "levigate/io/json.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/present.hpp"
#include "levigate/text/card.hpp"
#include "levigate/text/sentences.hpp"
#include "unit/workshop.hpp"

namespace melting_rounds_test {
namespace {

using namespace workshop;
using testing::HasSubstr;
using testing::Not;

const std::vector<std::string> drawer{"P400", "P600", "P800", "P1000", "P1200", "P1500", "P2000"};

/// A top of 60 um in its last round, above 40 um.
Job two_rounds(std::string_view coating) {
  Job job = top(0);
  job.coating = coating_named(coating);
  job.zones[0].film = Film{60, 3};
  job.zones[0].below_um = 40;
  job.zones[0].peel_um = 10;
  return job;
}

TEST(RoundsThatMeltTogether, AreOneFilm) {
  const auto lacquer = setup(two_rounds("nitrocellulose lacquer"), papers(drawer));
  const Film& film = *lacquer.job.zones[0].film;
  EXPECT_EQ(film.mean_um, 100);
  EXPECT_EQ(lacquer.job.zones[0].below_um, 0);
  EXPECT_DOUBLE_EQ(film.sd_um, 5);  // 3 of 60 is 5 of 100
  EXPECT_DOUBLE_EQ(film.mean_se_um, uncertainty_um(gauge_named("wet comb"), 40));
  const auto shellac = setup(two_rounds("shellac"), papers(drawer));
  EXPECT_EQ(shellac.job.zones[0].film->mean_um, 100);
}

TEST(RoundsThatMeltTogether, KeepApartWhereTheyDoNot) {
  for (const char* name : {"oil varnish", "water-borne", "two-part urethane"}) {
    const auto apart = setup(two_rounds(name), papers(drawer));
    EXPECT_EQ(apart.job.zones[0].film->mean_um, 60) << name;
    EXPECT_EQ(apart.job.zones[0].below_um, 40) << name;
    EXPECT_FALSE(plan(two_rounds(name), papers(drawer)).one_round) << name;
  }
  Job unknown = two_rounds("nitrocellulose lacquer");
  unknown.coating.redissolves.reset();  // nobody knows: the last round alone counts
  EXPECT_EQ(setup(unknown, papers(drawer)).job.zones[0].film->mean_um, 60);
}

TEST(RoundsThatMeltTogether, AffordMoreAndShowNoWitnessLine) {
  Job job = two_rounds("nitrocellulose lacquer");
  const Plan melted = plan(job, papers(drawer));
  ASSERT_TRUE(melted.found) << sentence(*melted.why);
  EXPECT_TRUE(melted.one_round);
  EXPECT_EQ(melted.zones[0].film_um, 100);
  job.coating.redissolves = false;
  const Plan apart = plan(job, papers(drawer));
  ASSERT_TRUE(apart.found) << sentence(*apart.why);
  EXPECT_GT(*melted.zones[0].budget_um, *apart.zones[0].budget_um + 20);
  EXPECT_LE(*melted.steps.back().zones[0].cut_through, *apart.steps.back().zones[0].cut_through);
  EXPECT_THAT(flowing(card(melted)), HasSubstr("Rounds of this coating melt together."));
  EXPECT_THAT(flowing(card(apart)), Not(HasSubstr("melt together")));
}

TEST(RoundsThatMeltTogether, EndAtTheBottom) {
  Job job = two_rounds("nitrocellulose lacquer");
  job.zones[0].peel_um = 250;  // half of it and more comes off
  const Plan deep = evaluate(job, papers(drawer), {"P600", "P1000"});
  const Finding* entered = find(deep.findings, FindingKind::round_entered);
  ASSERT_NE(entered, nullptr);
  EXPECT_THAT(sentence(*entered), HasSubstr("all 100.0 um of film"));
  EXPECT_THAT(sentence(*entered), Not(HasSubstr("witness")));
}

TEST(RoundsThatMeltTogether, MayEndWithAThinRound) {
  Job job = two_rounds("shellac");
  job.zones[0].film = Film{8, 1};
  job.zones[0].below_um = 92;
  EXPECT_NO_THROW(plan(job, papers(drawer)));
  job.coating.redissolves = false;
  EXPECT_THROW(plan(job, papers(drawer)), BadInput);
}

TEST(RoundsThatMeltTogether, AreReadThroughByAGauge) {
  const Job job = two_rounds("nitrocellulose lacquer");
  const Job now = present(job, papers(drawer), {{"P600", {}, 0}}, {{"top", Film{85, 4}}});
  EXPECT_EQ(setup(now, papers(drawer)).job.zones[0].film->mean_um, 85);
}

TEST(ShrinkBack, IsFilmOfTheLevellingStepAndAWait) {
  Job job = two_rounds("nitrocellulose lacquer");
  job.coating.shrink_back = ShrinkBack{.comes_back = 0.1, .rest_h = 72};
  const Plan back = evaluate(job, papers(drawer), {"P600", "P1000", "P1500"});
  job.coating.shrink_back.reset();
  const Plan none = evaluate(job, papers(drawer), {"P600", "P1000", "P1500"});
  const ZoneStep& with = back.steps[0].zones[0];
  const ZoneStep& without = none.steps[0].zones[0];
  // A tenth of what is levelled comes back, and is taken off once more.
  EXPECT_NEAR(with.removal_um, 1.1 * without.removal_um, 1e-9);
  EXPECT_NEAR(*with.comes_back_um, 0.1 * without.removal_um, 1e-9);
  EXPECT_EQ(back.steps[0].rest_h, 72);
  EXPECT_NEAR(with.minutes, 1.1 * without.minutes, 1e-9 * with.minutes);
  EXPECT_NEAR(*without.film_left_um - *with.film_left_um, 0.1 * without.removal_um, 1e-9);
  EXPECT_GT(*with.cut_through, *without.cut_through);
  EXPECT_FALSE(none.steps[0].rest_h || without.comes_back_um);
  EXPECT_FALSE(back.steps[1].rest_h || back.steps[1].zones[0].comes_back_um);
  EXPECT_EQ(back.steps[1].zones[0].removal_um, none.steps[1].zones[0].removal_um);
  const std::string text = flowing(card(back));
  EXPECT_THAT(text, HasSubstr("Wait 72 h after step 1 beside that."));
  EXPECT_THAT(text, HasSubstr("Then wait 72 h. The coat shrinks back"));
  EXPECT_THAT(flowing(card(none)), Not(HasSubstr("shrinks back and")));
}

TEST(ShrinkBack, IsInTheProfilesOfWhatRedissolves) {
  for (const CoatingProfile& row : coating_table) {
    const Coating coating = coating_named(row.name);
    EXPECT_EQ(coating.shrink_back.has_value(), coating.redissolves.value_or(false)) << row.name;
  }
  EXPECT_EQ(coating_named("nitrocellulose lacquer").shrink_back,
            (ShrinkBack{.comes_back = 0.05, .rest_h = 72}));
  EXPECT_EQ(coating_named("shellac").shrink_back, (ShrinkBack{.comes_back = 0.05, .rest_h = 48}));
}

}  // namespace
}  // namespace melting_rounds_test
