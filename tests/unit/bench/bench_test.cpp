// The bench: which entries of a journal count, what a shop does to a job on it, and what is asked of it when its journal
// cannot be followed.
#include "levigate/bench/bench.hpp"
#include "levigate/text/sentences.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "levigate/film/gauge.hpp"
#include "levigate/recover/diagnose.hpp"
#include "levigate/recover/present.hpp"
#include "unit/journal/learn_workshop.hpp"

namespace bench_test {
namespace {

using namespace learn_workshop;
using testing::ElementsAre;
using testing::HasSubstr;

const std::vector<std::string> all{"P400", "P600", "P800", "P1000", "P1500"};

Bench after(std::vector<Entry> journal, std::optional<Shop> shop = {}) {
  return Bench(clock_case(), drawer(), std::move(shop), std::move(journal));
}

Mark mark(MarkKind kind, const std::string& zone) {
  Mark result;
  result.kind = kind;
  result.zone = zone;
  return result;
}

Entry found(MarkKind kind, const std::string& zone) {
  Entry result = entry(EntryKind::mark_found, "", "");
  result.mark = mark(kind, zone);
  return result;
}

const Film& film_now(const Bench& bench, std::size_t zone = 0) {
  return *present(bench).zones[zone].film;
}

/// A shop that knows all there is to know of the job: pace, a rate, a scratch, and a film that is thinner.
Shop taught() {
  Shop shop;
  shop.person = {0.5, 0.4, 0.6, 9};
  shop.rates = {{"two-part urethane", "film", {2, 1.5, 2.5, 9}},
                {"two-part urethane", "latex paper", {0.8, 0.7, 0.9, 9}}};
  shop.scratches = {{"two-part urethane", "latex paper", {1.5, 1.2, 1.8, 9}}};
  shop.films = {{"two-part urethane", -8, -12, -4, 4}};
  return shop;
}

TEST(Bench, WithoutAJournalItIsTheJobAndTheStack) {
  const Bench bench(clock_case(), drawer());
  EXPECT_EQ(bench.job().name, "clock case");
  EXPECT_EQ(bench.stack().sheets.size(), 6U);
  EXPECT_FALSE(bench.shop());
  EXPECT_TRUE(bench.journal().empty() && bench.done().empty());
  EXPECT_FALSE(bench.open_mark());
  ASSERT_EQ(bench.grades().size(), 6U);
  EXPECT_EQ(bench.grades()[3], grade("P1000"));
  EXPECT_EQ(film_now(bench).mean_um, 120);
  const Plan best = plan(bench), direct = plan(clock_case(), drawer());
  ASSERT_TRUE(best.found);
  EXPECT_EQ(ids(best), ids(direct));
  EXPECT_EQ(best.total.minutes, direct.total.minutes);
  EXPECT_EQ(evaluate(bench, all).total.minutes,
            evaluate(clock_case(), drawer(), all).total.minutes);
}

TEST(Bench, ASoftCoatStandsAsItIsGiven) {
  Job job = clock_case();
  job.age_h = 60;
  job.cure = Cure{.hard_cure_h = 200, .shrink = 0, .points = {{24, 60}, {200, 150}}};
  const Bench bench(job, drawer());
  EXPECT_EQ(present(bench).coating, job.coating);
  const Bench begun(job, drawer(), {}, {ended("P400", 60)});
  EXPECT_EQ(present(begun).coating, job.coating);
  EXPECT_EQ(plan(bench).total.minutes, plan(present(bench), drawer()).total.minutes);
  EXPECT_EQ(plan(begun).total.minutes, plan(present(begun), drawer()).total.minutes);
}

TEST(Bench, CopiesShareWhatIsLaidOut) {
  const Bench bench = after({ended("P400", 60)});
  const Bench copy = bench;
  EXPECT_EQ(&copy.laid(), &bench.laid());
  EXPECT_EQ(&present(copy), &present(bench));
}

TEST(Bench, WhatCannotBeUsedIsRefusedAtOnce) {
  Job job = clock_case();
  job.zones[0].area_cm2 = -1;
  EXPECT_THROW(Bench(job, drawer()), OutOfRange);
  Stack stack = drawer();
  stack.sheets[0].label = "400";
  EXPECT_THROW(Bench(clock_case(), stack), AmbiguousLabel);
  Shop shop;
  shop.person = {1e3, 1, 1e4, 1};
  EXPECT_THROW(Bench(clock_case(), drawer(), shop), OutOfRange);
}

TEST(Bench, EntriesOfOtherJobsAreLeftAside) {
  Entry other = ended("P400", 60), film = film_read("top", {80, 80}),
        haze = found(MarkKind::haze, "top");
  other.job = film.job = haze.job = "tray";
  const Bench bench = after({other, film, ended("P600", 60), film, haze});
  ASSERT_EQ(bench.journal().size(), 1U);
  EXPECT_EQ(bench.done(), (std::vector<DoneStep>{{"P600"}}));
  EXPECT_FALSE(bench.open_mark());
  EXPECT_EQ(film_now(bench).readings, 0U);
  EXPECT_EQ(observe(bench).paces.size(), 1U);
}

TEST(Bench, TheJobAsItStandsIsThatOfPresent) {
  const Bench bench =
      after({ended("P400", 60), ended("P600", 20), film_read("top", {110, 114, 112})});
  const Job now = present(
      clock_case(), drawer(), {{"P400"}, {"P600"}},
      {{"top", film_from_gauge(std::vector<double>{110, 114, 112}, gauge_named("ultrasonic"))}});
  for (std::size_t i = 0; i < now.zones.size(); ++i) {
    EXPECT_EQ(film_now(bench, i).mean_um, now.zones[i].film->mean_um);
    EXPECT_EQ(film_now(bench, i).sd_um, now.zones[i].film->sd_um);
    EXPECT_EQ(present(bench).zones[i].carries, now.zones[i].carries);
  }
  const Plan rest = plan(bench), direct = plan(now, drawer());
  ASSERT_TRUE(rest.found) << sentence(*rest.why);
  EXPECT_EQ(ids(rest), ids(direct));
  EXPECT_EQ(rest.total.minutes, direct.total.minutes);
  EXPECT_EQ(evaluate(bench, {"P1000", "P1500"}).total.minutes,
            evaluate(now, drawer(), {"P1000", "P1500"}).total.minutes);
}

TEST(Bench, OneReadingHasTheSpreadThatTheJobSays) {
  const Film stated = *clock_case().zones[0].film;
  const Film one = film_now(after({ended("P400", 60), film_read("top", {80})}));
  EXPECT_EQ(one.mean_um, 80);
  EXPECT_EQ(one.readings, 1U);
  // 120 um less the 80 um came off by hand; an ultrasonic gauge is sure to 2 um + 3 %.
  const double sd_um = std::hypot(stated.sd_um, clock_case().rules.removed_cv * 40);
  EXPECT_DOUBLE_EQ(one.sd_um, sd_um);
  EXPECT_DOUBLE_EQ(one.mean_se_um, std::hypot(sd_um, (2 + 0.03 * 80) / std::sqrt(3.0)));
  EXPECT_EQ(one.sd_se_um, stated.sd_se_um);
  // More than was there: nothing came off by this reading, and no spread comes of it.
  EXPECT_EQ(film_now(after({ended("P400", 60), film_read("top", {130})})).sd_um, stated.sd_um);
  // What a shop has learned of the film is in what came off.
  EXPECT_DOUBLE_EQ(film_now(after({ended("P400", 60), film_read("top", {80})}, taught())).sd_um,
                   std::hypot(stated.sd_um, clock_case().rules.removed_cv * 32));

  const Bench two = after({ended("P400", 60), film_read("top", {80}), film_read("top", {84})});
  EXPECT_EQ(film_now(two).mean_um, 82);
  EXPECT_EQ(film_now(two).readings, 2U);
  EXPECT_EQ(film_now(after({ended("P400", 60), film_read("top", {80}), ended("P600", 9),
                            film_read("top", {78})}))
                .readings,
            1U)
      << "one before a step and one after it are not two";
}

TEST(Bench, ReadingsAreAsSureAsTheirGauge) {
  const std::vector<double> spots{112, 116, 114};
  const Film read = film_now(after({ended("P400", 60), film_read("top", spots)}));
  EXPECT_EQ(read, film_from_gauge(spots, gauge_named("ultrasonic")));
  EXPECT_GT(read.mean_se_um, film_from_readings(spots).mean_se_um);
}

TEST(Bench, AReadingCountsAlikeForAPlanAndForGoingBack) {
  const Mark haze = mark(MarkKind::haze, "top");
  const std::vector<Entry> steps{ended("P400", 60), ended("P600", 20)};
  const auto with = [&](std::vector<double> readings_um) {
    std::vector<Entry> journal = steps;
    journal.push_back(film_read("top", std::move(readings_um)));
    return after(std::move(journal));
  };
  const double unread_um = *go_back(after(steps), haze).film_um;
  for (const std::vector<double>& readings_um :
       std::vector<std::vector<double>>{{70}, {70, 74, 68, 72, 71, 69, 73, 67, 72, 71}}) {
    const Bench bench = with(readings_um);
    const Job& now = present(bench);
    const double left_um = budget_of(now, now.zones[0]) - *now.zones[0].carries->scratch_um;
    EXPECT_DOUBLE_EQ(*go_back(bench, haze).film_um, std::max(0.0, left_um));
    EXPECT_LT(left_um, unread_um);
  }
  EXPECT_EQ(go_back(with({5}), haze).film_um, 0.0) << "less than the reserve";
  EXPECT_THROW(plan(with({5})), BadInput);
  EXPECT_EQ(observe(with({70})).unmatched.size(), 1U) << "learning tells that it takes none of it";
  EXPECT_EQ(observe(with({70})).unmatched[0].kind, UnmatchedKind::sanded_before);
}

TEST(Bench, AMarkIsOpenUntilItsZoneIsWorked) {
  const Entry begun = entry(EntryKind::step_begun, "top", "P600");
  const Entry haze = found(MarkKind::haze, "top"), swirl = found(MarkKind::swirl, "door");
  const auto open = [](std::vector<Entry> journal) -> std::string {
    const Bench bench = after(std::move(journal));
    return bench.open_mark() ? std::string(to_string(bench.open_mark()->kind)) : "none";
  };
  EXPECT_EQ(open({}), "none");
  EXPECT_EQ(open({haze}), "haze");
  EXPECT_EQ(open({haze, swirl}), "swirl");
  EXPECT_EQ(open({haze, ended("P600", 9)}), "none");
  EXPECT_EQ(open({haze, ended("P600", 9, "top")}), "none");
  EXPECT_EQ(open({haze, ended("P600", 9, "door")}), "haze");
  EXPECT_EQ(open({haze, begun, film_read("top", {80, 80})}), "haze");
  EXPECT_EQ(open({haze, ended("P600", 9, "top"), haze}), "haze");
  // The last one counts. Once it is gone, an earlier one whose zone was not worked is still there.
  EXPECT_EQ(open({haze, swirl, ended("P600", 9, "door")}), "haze");
  EXPECT_EQ(open({haze, swirl, ended("P600", 9)}), "none");
}

TEST(Bench, GoesBackForTheMarkThatIsOpen) {
  const Mark haze = mark(MarkKind::haze, "top");
  std::vector<Entry> journal;
  for (const std::string& sheet : all) journal.push_back(ended(sheet, 60));
  const std::vector<DoneStep> done{{"P400"}, {"P600"}, {"P800"}, {"P1000"}, {"P1500"}};
  const Bench none = after(journal);
  EXPECT_THAT([&] { go_back(none); },
              testing::ThrowsMessage<BadInput>(
                  testing::AllOf(HasSubstr("no mark is open"), HasSubstr("'clock case'"))));
  const WayBack asked = go_back(none, haze), direct = go_back(clock_case(), drawer(), done, haze);
  EXPECT_EQ(asked.expected_minutes, direct.expected_minutes);
  EXPECT_EQ(asked.tries.size(), direct.tries.size());
  ASSERT_FALSE(asked.diagnosis.causes.empty());
  EXPECT_EQ(diagnose(none, haze).causes[0].probability,
            diagnose(clock_case(), drawer(), done, haze).causes[0].probability);
  journal.push_back(found(MarkKind::haze, "top"));
  EXPECT_EQ(go_back(after(journal)).expected_minutes, asked.expected_minutes);
}

TEST(Bench, AJournalThatCannotBeFollowedIsToldByWhatAsksForTheJobAsItStands) {
  // A coarser sheet after a finer one, and nothing tells what it took off.
  const Bench bench = after(
      {ended("P600", 60), ended("P400", 30), width_read("P400", 50), found(MarkKind::haze, "top")});
  EXPECT_EQ(bench.done().size(), 2U);
  EXPECT_EQ(bench.grades().size(), 6U);
  EXPECT_EQ(bench.open_mark()->kind, MarkKind::haze);
  EXPECT_EQ(bench.job().zones[0].film->mean_um, 120);
  EXPECT_EQ(observe(bench).paces.size(), 1U);
  EXPECT_EQ(learn(bench).shop.jobs, (std::vector<LearnedJob>{{"clock case", 4}}));
  const auto told = testing::ThrowsMessage<BadInput>(HasSubstr("P400"));
  EXPECT_THAT([&] { present(bench); }, told);
  EXPECT_THAT([&] { plan(bench); }, told);
  EXPECT_THAT([&] { evaluate(bench, all); }, told);
  EXPECT_THAT([&] { go_back(bench); }, told);
  EXPECT_THAT([&] { present(bench); }, told) << "as often as it is asked";

  const Bench missing = after({ended("P80", 60)});
  EXPECT_THROW(plan(missing), BadInput);
  EXPECT_EQ(observe(missing).unmatched.size(), 1U);
}

// A learned pace has its own band and stands for what acts on the rate; the rest moves what has to come off.
TEST(Bench, InfluencesUseWhatWasLearned) {
  const Plan learned = evaluate(after({}, taught()), all);
  const auto relied = [&](const std::string& subject, const std::string& quantity) {
    const auto at = std::find_if(
        learned.relies_on.begin(), learned.relies_on.end(),
        [&](const Reliance& one) { return one.subject == subject && one.quantity == quantity; });
    return at == learned.relies_on.end() ? std::optional<Reliance>() : std::optional(*at);
  };
  const auto pace = relied("backing latex paper", "learned_pace");
  ASSERT_TRUE(pace);
  EXPECT_DOUBLE_EQ(pace->value, 0.5 * 0.8);
  double paper = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    for (const ZoneStep& zone : learned.steps[i].zones) paper += zone.minutes;
  }
  EXPECT_NEAR(pace->minutes_low, paper * (pace->value / pace->low - 1), 0.001);
  EXPECT_NEAR(pace->minutes_high, paper * (pace->value / pace->high - 1), 0.001);
  EXPECT_EQ(pace->film_low, 0);
  // Person and rate are independent here: the logarithms' ranges add up as squares.
  const double reach = std::hypot(std::log(0.6 / 0.4), std::log(0.9 / 0.7));
  EXPECT_NEAR(std::log(pace->high / pace->low), reach, 1e-9);
  for (const char* rate : {"duty", "speed_m_s"}) {
    EXPECT_EQ(relied("block hard block", rate)->minutes_low, 0) << rate;
  }
  EXPECT_EQ(relied("coating two-part urethane", "cutting_efficiency")->minutes_low, 0);
  EXPECT_EQ(relied("model", "size_exponent")->minutes_high, 0);
  EXPECT_LT(relied("zone top", "peel_um")->minutes_low, -1);
  EXPECT_NE(relied("coating two-part urethane", "hardness_mpa")->minutes_low, 0);  // depths
  const auto scratch = relied("backing latex paper", "learned_scratch");
  ASSERT_TRUE(scratch);
  EXPECT_DOUBLE_EQ(scratch->high, 1.8);
  EXPECT_GT(scratch->minutes_high, 1);
  EXPECT_FALSE(relied("backing latex paper", "tip_spread"));
  EXPECT_TRUE(relied("backing film", "tip_spread"));
  EXPECT_FALSE(relied("backing film", "learned_scratch"));
}

TEST(Bench, WhatAShopKnowsActsAsFactorsByHandDo) {
  const Bench bench = after({}, taught());
  const Factors by_hand{.duty = 0.5,
                        .sheets = {{0.8, 1.5}, {0.8, 1.5}, {0.8, 1.5}, {2, 1}, {2, 1}, {2, 1}},
                        .film_offset_um = -8,
                        .film_se_um = factors_of(taught(), clock_case(), drawer()).film_se_um};
  const Plan learned = evaluate(bench, all);
  const Plan expected = evaluate(workings(clock_case(), drawer(), by_hand), all);
  const Plan bare = evaluate(clock_case(), drawer(), all);
  ASSERT_EQ(learned.steps.size(), expected.steps.size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    const ZoneStep &one = learned.steps[i].zones[0], &other = expected.steps[i].zones[0],
                   &plain = bare.steps[i].zones[0];
    EXPECT_EQ(one.minutes, other.minutes);
    EXPECT_EQ(one.travel_m, other.travel_m);
    EXPECT_EQ(one.scratch_um, other.scratch_um);
    EXPECT_EQ(one.film_left_um, other.film_left_um);
    const bool paper = i < 3;
    EXPECT_DOUBLE_EQ(one.scratch_um / plain.scratch_um, paper ? 1.5 : 1.0);
    EXPECT_DOUBLE_EQ(one.minutes / one.removal_um * plain.removal_um / plain.minutes,
                     paper ? 2.5 : 1.0);
  }
  EXPECT_EQ(learned.total.minutes, expected.total.minutes);
  EXPECT_LT(*learned.steps[0].zones[0].film_left_um, *bare.steps[0].zones[0].film_left_um - 8);
  EXPECT_EQ(ids(plan(bench)), ids(plan(workings(clock_case(), drawer(), by_hand))));
}

TEST(Bench, AShopMovesAFilmOnceWhateverIsAsked) {
  const Bench fresh = after({}, taught());
  EXPECT_EQ(film_now(fresh).mean_um, 112);
  EXPECT_EQ(fresh.job().zones[0].film->mean_um, 120) << "the job stays as it was given";
  // What is left after a step is computed from the moved film, and the plan of what is left does not move it again.
  const Bench begun = after({ended("P400", 60)}, taught());
  const double removed_um = evaluate(fresh, {"P400"}).steps[0].zones[0].removal_um;
  EXPECT_DOUBLE_EQ(film_now(begun).mean_um, 112 - removed_um);
  EXPECT_EQ(film_now(begun).mean_se_um, film_now(fresh).mean_se_um);
  EXPECT_EQ(present(begun).zones[0].levelled_peel_um, fresh.job().zones[0].peel_um);
  const ZoneStep next = evaluate(begun, {"P600"}).steps[0].zones[0];
  EXPECT_DOUBLE_EQ(*next.film_left_um, 112 - removed_um - next.depth_um);
  const ZoneStep whole = evaluate(fresh, {"P400", "P600"}).steps[1].zones[0];
  EXPECT_NEAR(*next.film_left_um, *whole.film_left_um, 1e-9);
  // A gauge stands above what was learned; zones that were not read keep it.
  const Bench read = after({ended("P400", 60), film_read("top", {80, 84})}, taught());
  EXPECT_EQ(film_now(read).mean_um, 82);
  EXPECT_EQ(film_now(read, 1).mean_um, film_now(begun, 1).mean_um);
}

TEST(Bench, LearnsOnFromItsShop) {
  const std::vector<Entry> journal{ended("P400", 300), ended("P600", 50)};
  const Shop once = learn({}, clock_case(), drawer(), journal).shop;
  EXPECT_EQ(learn(after(journal)).shop, once);
  EXPECT_EQ(learn(after(journal, once)).shop, once);
  EXPECT_EQ(learn(after(journal, taught())).shop,
            learn(taught(), clock_case(), drawer(), journal).shop);
}

}  // namespace
}  // namespace bench_test
