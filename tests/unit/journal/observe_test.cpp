// What entries of a journal show, and why some show nothing.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/plan/work/workings.hpp"
#include "levigate/text/sentences.hpp"

#include "unit/journal/learn_workshop.hpp"

namespace observe_test {
namespace {

using namespace learn_workshop;
using testing::HasSubstr;

Observed seen(const std::vector<Entry>& entries) {
  return observe(clock_case(), drawer(), entries);
}

TEST(Observe, AStepInAllZonesIsComparedWithItsSum) {
  const auto minutes = planned({"P400", "P600", "P1000"});
  const Observed observed = seen({ended("P400", 100), ended("P600", 20), ended("P1000", 30)});
  EXPECT_TRUE(observed.unmatched.empty());
  ASSERT_EQ(observed.paces.size(), 3U);
  const std::vector<std::string> sheets{"P400", "P600", "P1000"};
  const std::vector<std::string> backings{"latex paper", "latex paper", "film"};
  for (std::size_t i = 0; i < 3; ++i) {
    const PaceSeen& pace = observed.paces[i];
    EXPECT_EQ(pace.sheet, sheets[i]);
    EXPECT_EQ(pace.backing, backings[i]);
    EXPECT_EQ(pace.coating, "two-part urethane");
    EXPECT_EQ(pace.zone, "");
    EXPECT_DOUBLE_EQ(pace.predicted_minutes, all_zones(minutes.at(sheets[i])));
    EXPECT_EQ(pace.place, (Place{i, "2026-03-01T09:30:00Z"}));
  }
  EXPECT_EQ(observed.paces[1].actual_minutes, 20);
}

TEST(Observe, EachZoneHasASequenceOfItsOwn) {
  const auto skipped = planned({"P400", "P1000"});
  const auto full = planned({"P400", "P600", "P1000"});
  const Observed observed = seen({ended("P400", 100), ended("P600", 15, "top"),
                                  ended("P1000", 12, "top"), ended("P1000", 30, "door")});
  ASSERT_EQ(observed.paces.size(), 4U);
  EXPECT_DOUBLE_EQ(observed.paces[1].predicted_minutes, full.at("P600").at("top"));
  EXPECT_DOUBLE_EQ(observed.paces[2].predicted_minutes, full.at("P1000").at("top"));
  EXPECT_DOUBLE_EQ(observed.paces[3].predicted_minutes, skipped.at("P1000").at("door"));
  EXPECT_EQ(observed.paces[3].zone, "door");
}

TEST(Observe, ZoneByZoneIsTheSameAsStepByStep) {
  const std::vector<Entry> by_zone{ended("P400", 60, "top"), ended("P600", 15, "top"),
                                   ended("P400", 30, "door"), ended("P600", 9, "door")};
  const std::vector<Entry> by_step{by_zone[0], by_zone[2], by_zone[1], by_zone[3]};
  const Observed a = seen(by_zone), b = seen(by_step);
  ASSERT_EQ(a.paces.size(), 4U);
  for (const std::size_t i : {0U, 3U}) {
    EXPECT_EQ(a.paces[i].predicted_minutes, b.paces[i].predicted_minutes);
  }
  EXPECT_EQ(a.paces[1].predicted_minutes, b.paces[2].predicted_minutes);
}

TEST(Observe, AStepInSeveralEntriesAddsUp) {
  const auto minutes = planned({"P400"});
  const Observed pauses = seen({ended("P400", 30, "top"), ended("P400", 25, "top")});
  ASSERT_EQ(pauses.paces.size(), 1U);
  EXPECT_EQ(pauses.paces[0].actual_minutes, 55);
  EXPECT_DOUBLE_EQ(pauses.paces[0].predicted_minutes, minutes.at("P400").at("top"));
  EXPECT_EQ(pauses.paces[0].place.entry, 1U);

  const Observed joined =
      seen({ended("P400", 30, "top"), ended("P400", 25, "door"), ended("P400", 45)});
  ASSERT_EQ(joined.paces.size(), 1U);
  EXPECT_EQ(joined.paces[0].actual_minutes, 100);
  EXPECT_DOUBLE_EQ(joined.paces[0].predicted_minutes, all_zones(minutes.at("P400")));
  EXPECT_EQ(joined.paces[0].zone, "");
}

TEST(Observe, AStepBackIsNotCompared) {
  const Observed observed = seen({ended("P400", 100), ended("P600", 20), ended("P800", 20),
                                  ended("P600", 8, "top"), ended("P800", 16, "top")});
  ASSERT_EQ(observed.unmatched.size(), 1U);
  EXPECT_EQ(observed.unmatched[0].place.entry, 3U);
  EXPECT_THAT(sentence(observed.unmatched[0]), HasSubstr("goes back from P800 to P600"));
  ASSERT_EQ(observed.paces.size(), 4U);
  EXPECT_DOUBLE_EQ(observed.paces[3].predicted_minutes,
                   planned({"P400", "P600", "P800"}).at("P800").at("top"));
}

TEST(Observe, WhatAnEntrySaysWasTakenOffIsWhatIsCompared) {
  const double asked_um =
      evaluate(clock_case(), drawer(), {"P400", "P600"}).steps[1].zones[0].removal_um;
  const double minutes = planned({"P400", "P600"}).at("P600").at("top");
  Entry more = ended("P600", 30, "top");
  more.removal_um = 3 * asked_um;
  const Observed stated = seen({ended("P400", 100), more});
  EXPECT_NEAR(stated.paces.at(1).predicted_minutes, 3 * minutes, 1e-12 * minutes);
  const Observed back = seen({ended("P400", 100), ended("P800", 20), more});
  EXPECT_TRUE(back.unmatched.empty());
  EXPECT_NEAR(back.paces.at(2).predicted_minutes, 3 * minutes, 1e-12 * minutes);
  Entry longer = ended("P600", 30, "top");
  longer.overcut = 3 * overcut_of(clock_case().rules);
  EXPECT_NEAR(seen({ended("P400", 100), longer}).paces.at(1).predicted_minutes, 3 * minutes,
              1e-12 * minutes);
  Entry everywhere = ended("P400", 100);
  everywhere.removal_um = 5;
  std::vector<Entry> told{ended("P400", 70, "top"), ended("P400", 30, "door")};
  for (Entry& one : told) one.removal_um = 5;
  const Observed parts = seen(told);
  EXPECT_NEAR(seen({everywhere}).paces.at(0).predicted_minutes,  // the rim is passed by
              parts.paces.at(0).predicted_minutes + parts.paces.at(1).predicted_minutes, 1e-9);
  const Observed again = seen({ended("P400", 100), ended("P600", 10, "top"), more});
  ASSERT_EQ(again.paces.size(), 2U);
  EXPECT_NEAR(again.paces[1].predicted_minutes, 4 * minutes, 1e-12 * minutes);
  EXPECT_EQ(again.paces[1].actual_minutes, 40);
}

TEST(Observe, ScratchesAreDepthsAndRoughness) {
  const Workings laid = workings(clock_case(), drawer());
  const Observed observed = seen({width_read("P800", 9), ra_read("P1000", 0.12, "door")});
  ASSERT_EQ(observed.scratches.size(), 2U);
  EXPECT_EQ(observed.scratches[0].predicted_um, laid.work[2][0].scratch_um);
  EXPECT_DOUBLE_EQ(observed.scratches[0].seen_um, 4.5 * std::tan(11 * std::numbers::pi / 180));
  EXPECT_EQ(observed.scratches[1].predicted_um, laid.work[3][1].ra_um);
  EXPECT_EQ(observed.scratches[1].seen_um, 0.12);
  EXPECT_EQ(observed.scratches[1].backing, "film");
}

TEST(Observe, FilmIsReadBeforeTheFirstStep) {
  Job job = clock_case();
  job.zones[0].below_um = 40;
  job.zones[1].film->readings = 5;
  const std::vector<Entry> entries{film_read("top", {150, 156}), film_read("top", {153}),
                                   film_read("door", {100}),     film_read("rim", {50}),
                                   ended("P400", 50, "top"),     film_read("top", {120})};
  const Observed observed = observe(job, drawer(), entries);
  ASSERT_EQ(observed.films.size(), 1U);
  EXPECT_EQ(observed.films[0].expected_um, 160);
  EXPECT_EQ(observed.films[0].readings_um, (std::vector<double>{150, 156, 153}));
  EXPECT_EQ(observed.films[0].place.entry, 1U);
  std::vector<std::string> reasons;
  for (const Unmatched& one : observed.unmatched) reasons.push_back(sentence(one));
  EXPECT_THAT(reasons, testing::ElementsAre(HasSubstr("from readings"), HasSubstr("edge"),
                                            HasSubstr("sanded the zone before")));
}

// A plan takes no film on the word of one reading that contradicts, and nor does the shop.
TEST(Observe, AReadingInDoubtTeachesNothingUntilItIsReadAgain) {
  std::vector<Entry> entries{film_read("top", {60, 61, 59}), film_read("door", {108, 112})};
  const Observed once = observe(clock_case(), drawer(), entries);
  ASSERT_EQ(once.films.size(), 1U);
  EXPECT_EQ(once.films[0].zone, "door");
  ASSERT_EQ(once.unmatched.size(), 1U);
  EXPECT_THAT(sentence(once.unmatched[0]), HasSubstr("contradicts"));
  entries.push_back(film_read("top", {61, 60, 62}));
  const Observed twice = observe(clock_case(), drawer(), entries);
  ASSERT_EQ(twice.films.size(), 2U);
  EXPECT_EQ(twice.films[0].readings_um, (std::vector<double>{60, 61, 59, 61, 60, 62}));
  EXPECT_TRUE(twice.unmatched.empty());
  // One that two others contradict is told, and the two teach.
  entries.push_back(film_read("door", {60, 61}));
  entries.push_back(film_read("door", {110, 111}));
  const Observed thrice = observe(clock_case(), drawer(), entries);
  ASSERT_EQ(thrice.films.size(), 2U);
  EXPECT_EQ(thrice.films[1].readings_um, (std::vector<double>{108, 112, 110, 111}));
  ASSERT_EQ(thrice.unmatched.size(), 1U);
  EXPECT_EQ(thrice.unmatched[0].place.entry, 3U);
}

TEST(Observe, AYoungCoatIsReadAsItWasLaid) {
  Job job = clock_case();
  job.cure = Cure{.hard_cure_h = 200, .shrink = 0.1, .points = {}};
  job.age_h = 24;
  const Observed observed = observe(job, drawer(), {film_read("top", {119, 121})});
  ASSERT_EQ(observed.films.size(), 1U);
  EXPECT_EQ(observed.films[0].expected_um, 120);
}

TEST(Observe, WhatTeachesNothingSaysWhy) {
  Entry other = ended("P400", 9);
  other.job = "tray";
  Entry silent = ended("P400", 9);
  silent.minutes.reset();
  const std::vector<std::pair<Entry, std::string>> cases{
      {other, "another job, 'tray'"},
      {ended("P320", 9), "no sheet 'P320'"},
      {ended("P400", 9, "lid"), "no zone 'lid'"},
      {silent, "no minutes"},
      {ended("P400", 0), "minutes are not above 0"},
      {ended("P400", 9, "rim"), "nothing had to come off"},
      {entry(EntryKind::step_begun, "", "P400"), "began and did not end"},
      {entry(EntryKind::scratch_read, "top", "P400"), "no width and no roughness"},
      {width_read("P400", 9, ""), "names no zone"},
      {film_read("", {90}), "names no zone"},
      {film_read("top", {}), "no readings"},
      {film_read("top", {100, std::nan("")}), "not a number"},
      {ended("P400", std::nan("")), "minutes are not above 0"},
      {width_read("P400", std::nan("")), "no width"},
  };
  for (const auto& [one, reason] : cases) {
    const Observed observed = seen({one});
    ASSERT_EQ(observed.unmatched.size(), 1U) << reason;
    EXPECT_THAT(sentence(observed.unmatched[0]), HasSubstr(reason));
    EXPECT_EQ(observed.paces.size() + observed.scratches.size() + observed.films.size(), 0U);
  }
  EXPECT_TRUE(seen({entry(EntryKind::note, "", ""), entry(EntryKind::cleaned, "", "P400"),
                    entry(EntryKind::step_begun, "top", "P400"), ended("P400", 50, "top")})
                  .unmatched.empty());
  Job solid = clock_case();
  solid.coating = coating_named("acrylic sheet");
  for (Zone& zone : solid.zones) zone.film.reset();
  EXPECT_THAT(sentence(observe(solid, drawer(), {film_read("top", {90})}).unmatched.at(0)),
              HasSubstr("solid"));
}

}  // namespace
}  // namespace observe_test
