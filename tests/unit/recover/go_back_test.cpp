// A mark after the last step: which step made it, where to go back to, and when there is no way back.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <utility>

#include "levigate/bench/bench.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/diagnose.hpp"
#include "levigate/recover/go_back.hpp"
#include "levigate/recover/hollow.hpp"
#include "levigate/recover/work/layer.hpp"
#include "levigate/recover/work/poisson.hpp"
#include "levigate/recover/work/sources_of_marks.hpp"
#include "levigate/recover/work/spot.hpp"
#include "levigate/recover/work/visible.hpp"
#include "levigate/surface/inspection_table.hpp"
#include "levigate/surface/scratch_width.hpp"
#include "levigate/surface/work/stray.hpp"
#include "levigate/text/sentences.hpp"
#include "levigate/text/way_back.hpp"
#include "unit/workshop.hpp"

namespace go_back_test {
namespace {

using namespace levigate;
using testing::HasSubstr;

/// P400, P800, P1500 and a foam-backed P3000, turned by 90 degrees each time.
struct Shop {
  Job job = workshop::top(25);
  Stack stack = workshop::papers({"P400", "P800", "P1500"});
  std::vector<DoneStep> done{
      {"P400", {}, 0.0}, {"P800", {}, 90.0}, {"P1500", {}, 0.0}, {"pad", {}, 90.0}};

  Shop() { stack.sheets.push_back(workshop::pad("pad", "P3000")); }
  Diagnosis diagnose(const Mark& mark) const { return levigate::diagnose(job, stack, done, mark); }
  WayBack go_back(const Mark& mark) const { return levigate::go_back(job, stack, done, mark); }
};

std::vector<std::string> sentences(const std::vector<Evidence>& evidence) {
  std::vector<std::string> result;
  for (const Evidence& one : evidence) result.push_back(sentence(one));
  return result;
}

Mark seen(MarkKind kind, std::optional<double> direction_deg = {}) {
  return {.kind = kind,
          .zone = "top",
          .seen = Seen::sunlight,
          .width_um = {},
          .direction_deg = direction_deg,
          .count = {},
          .height_um = {}};
}

Mark measured(MarkKind kind, double width_um, std::optional<double> direction_deg = {}) {
  Mark mark = seen(kind, direction_deg);
  mark.seen = Seen::loupe;
  mark.width_um = width_um;
  return mark;
}

double chance(const Diagnosis& diagnosis, const std::string& sheet, bool stray = false) {
  for (const Cause& cause : diagnosis.causes) {
    if (cause.sheet == sheet && cause.stray == stray) return cause.probability;
  }
  return std::nan("");
}

double stray_chance(const Diagnosis& diagnosis) {
  double sum = 0;
  for (const Cause& cause : diagnosis.causes) sum += cause.stray ? cause.probability : 0.0;
  return sum;
}

TEST(Mark, IsRefusedWhereItContradictsItself) {
  const auto text_of = [](const Mark& mark) -> std::string {
    try {
      validate(mark, "mark");
    } catch (const Error& error) {
      return error.what();
    }
    return "";
  };
  EXPECT_EQ(text_of(seen(MarkKind::haze)), "");
  EXPECT_EQ(text_of(measured(MarkKind::cluster, 4, 30)), "");
  Mark mark = seen(MarkKind::scratch);
  mark.width_um = 4;
  EXPECT_THAT(text_of(mark), HasSubstr("but sunlight measures no width"));
  mark = measured(MarkKind::scratch, 4);
  mark.width_um.reset();
  EXPECT_THAT(text_of(mark), HasSubstr("width_um is missing"));
  mark = measured(MarkKind::scratch, 4000);
  EXPECT_THAT(text_of(mark), HasSubstr("width_um = 4000 um"));
  mark = seen(MarkKind::scratch, 200);
  EXPECT_THAT(text_of(mark), HasSubstr("direction_deg = 200 deg"));
  mark = seen(MarkKind::scratch);
  mark.count = 3;
  EXPECT_THAT(text_of(mark), HasSubstr("not a cluster"));
  mark = seen(MarkKind::scratch);
  mark.height_um = 3;
  EXPECT_THAT(text_of(mark), HasSubstr("not a wave"));
  mark = seen(MarkKind::scratch);
  mark.zone = "";
  EXPECT_THAT(text_of(mark), HasSubstr("zone is empty"));
  EXPECT_THAT(text_of(seen(MarkKind::scratch, std::nan(""))), HasSubstr("direction_deg"));
}

TEST(Visible, WidthAndDepthAreInverse) {
  // The flank of 20 degrees: a scratch is 5.5 times as wide as deep.
  EXPECT_NEAR(width_of_depth_um(1, 20), 5.494954838909, 1e-11);  // 2 / tan 20
  for (const double width_um : {0.1, 2.0, 70.0})
    EXPECT_NEAR(width_of_depth_um(depth_of_width_um(width_um, 20), 20), width_um, 1e-14 * width_um);
  EXPECT_TRUE(std::isnan(depth_of_width_um(std::nan(""), 20)));
  EXPECT_THROW(depth_of_width_um(1, 0), OutOfRange);
}

TEST(Visible, DirectionsAreLines) {
  EXPECT_EQ(angle_between_deg(10, 170), 20);
  EXPECT_EQ(angle_between_deg(0, 180), 0);
  EXPECT_EQ(angle_between_deg(90, 0), 90);
  // A density over 180 degrees: it adds up to 1, whichever way the step ran.
  for (const double step_deg : {0.0, 37.0, 90.0}) {
    double sum = 0;
    for (int i = 0; i < 1800; ++i) sum += 0.1 * direction_likelihood(0.1 * i + 0.05, step_deg);
    EXPECT_NEAR(sum, 1.0, 1e-8) << step_deg;
  }
  EXPECT_EQ(direction_likelihood(std::nullopt, 3.0), 1.0 / 180.0);
}

TEST(Stray, DepthSolvesTheSpring) {
  // Take a grain of r d, let it sink in by its own balance, and ask for the share that goes deeper.
  const StrayInput input{.size_um = 18.3,
                         .plane_height_um = 6.0,
                         .modulus_mpa = 20,
                         .hardness_mpa = 150,
                         .flank_deg = 20,
                         .force_n = 15};
  const double cone_mpa =
      std::acos(-1.0) * 150 / (2 * std::pow(std::tan(20 * std::acos(-1.0) / 180), 2));
  for (const double r : {1.5, 2.0, 4.0, 9.0}) {
    const double gap_um = (r - 1) * 18.3 - 6.0;
    double low = 0;
    double high = gap_um;
    for (int i = 0; i < 200; ++i) {
      const double depth = 0.5 * (low + high);
      (depth + cone_mpa * depth * depth / (r * 18.3 * 20) < gap_um ? low : high) = depth;
    }
    EXPECT_NEAR(stray_exceedance(input, low), 1 - std::log(r) / std::log(10.0), 1e-9) << r;
  }
  EXPECT_EQ(stray_exceedance(input, 0), 1 - std::log(1 + 6.0 / 18.3) / std::log(10.0));
  EXPECT_EQ(stray_exceedance(input, 1e4), 0);
  StrayInput rigid = input;
  rigid.modulus_mpa = std::numeric_limits<double>::infinity();
  // Rigid: as deep as it stands out, up to where it bears the whole force.
  EXPECT_NEAR(stray_exceedance(rigid, 2 * 18.3 - 18.3 - 6.0), 1 - std::log(2.0) / std::log(10.0),
              1e-12);
  EXPECT_EQ(stray_exceedance(rigid, 1.001e3 * std::sqrt(15 / cone_mpa)), 0);
  EXPECT_TRUE(std::isnan(stray_exceedance(input, std::nan(""))));
}

TEST(Layers, AreWhatThePlanSays) {
  const Shop shop;
  const Workings b = workings(shop.job, shop.stack);
  const std::vector<Layer> all = layers(b, shop.done, 0);
  const Plan plan = evaluate(shop.job, shop.stack, {"P400", "P800", "P1500", "pad"});
  ASSERT_EQ(all.size(), 4u);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_EQ(all[i].removal_um, plan.steps[i].zones[0].removal_um);
    EXPECT_EQ(all[i].scratch_um, plan.steps[i].zones[0].scratch_um);
  }
  std::vector<DoneStep> done = shop.done;
  done[1].zones = {"elsewhere"};
  EXPECT_THROW(layers(b, done, 0), BadInput);
  done[1].zones = {"top"};
  done[1].removal_um = 2.5;
  EXPECT_EQ(layers(b, done, 0)[1].removal_um, 2.5);
  done[1].sheet = "P80";
  EXPECT_THROW(layers(b, done, 0), BadInput);
  done[1] = {"P800", {}, 200.0};
  EXPECT_THROW(layers(b, done, 0), OutOfRange);
}

TEST(Sources, CountWhatStepsLeave) {
  // With nothing taken off since, the scratches of a step deeper than y are per_um times the integral of the share deeper.
  const Shop shop;
  const Workings b = workings(shop.job, shop.stack);
  const std::vector<Layer> all = layers(b, shop.done, 0);
  const std::vector<MarkSource> sources = mark_sources(b, all, 0);
  ASSERT_EQ(sources.size(), 8u);
  const MarkSource& p800 = sources[2];
  const Contact& touch = all[1].contact;
  for (const double y : {0.05, 0.3, 0.8}) {
    EXPECT_NEAR(p800.share_deeper(y), touch.exceedance(y), 1e-3 * touch.exceedance(y));
    // Each metre of sliding brings active tips times a metre across a millimetre.
    const double per_um = 10.0 * touch.active_per_mm2() * 1e3 / all[1].rate_um_per_m;
    EXPECT_NEAR(p800.density(y, 0.2, 1.0),
                per_um * (touch.exceedance(y + 0.2) - touch.exceedance(y + 1.2)),
                2e-3 * per_um * touch.exceedance(y + 0.2));
  }
  // Strays: so many a square metre in the whole step.
  EXPECT_NEAR(sources[3].per_um * all[1].removal_um, 1e-4 * inspection_table[0].stray_per_m2.value,
              1e-18);
}

TEST(Diagnose, ChancesAddUpToOne) {
  const Shop shop;
  for (const Mark& mark :
       {seen(MarkKind::scratch), seen(MarkKind::haze), measured(MarkKind::cluster, 6, 90),
        seen(MarkKind::swirl), measured(MarkKind::scratch, 30, 45)}) {
    const Diagnosis diagnosis = shop.diagnose(mark);
    double causes = 0;
    for (const Cause& cause : diagnosis.causes) causes += cause.probability;
    double needs = 0;
    for (const Need& need : diagnosis.needs) needs += need.probability;
    EXPECT_NEAR(causes, 1, 1e-12);
    EXPECT_NEAR(needs, 1, 1e-12);
    EXPECT_FALSE(diagnosis.signs.empty());
  }
}

TEST(Diagnose, TheWayItRunsTells) {
  const Shop shop;
  const double none = chance(shop.diagnose(measured(MarkKind::cluster, 12)), "P800");
  const double along = chance(shop.diagnose(measured(MarkKind::cluster, 12, 90)), "P800");
  const double across = chance(shop.diagnose(measured(MarkKind::cluster, 12, 0)), "P800");
  EXPECT_GT(along, none + 0.1);
  EXPECT_LT(across, none - 0.1);
}

TEST(Diagnose, DeeperThanAnyStepIsAStray) {
  const Shop shop;
  EXPECT_GT(stray_chance(shop.diagnose(measured(MarkKind::scratch, 15))), 0.99);
  EXPECT_LT(stray_chance(shop.diagnose(measured(MarkKind::scratch, 3))), 0.05);
  const Diagnosis diagnosis = shop.diagnose(measured(MarkKind::scratch, 15));
  EXPECT_THAT(sentences(diagnosis.signs), testing::Contains(HasSubstr("a fresh")));
}

TEST(Diagnose, AClusterFromEarlyOnNeedsAMissedSpot) {
  const Shop shop;
  const Diagnosis diagnosis = shop.diagnose(measured(MarkKind::cluster, 12, 90));
  ASSERT_EQ(diagnosis.causes.front().sheet, "P800");
  EXPECT_GT(diagnosis.causes.front().missed[2], 0.9);  // P1500
  EXPECT_THAT(sentences(diagnosis.signs), testing::Contains(HasSubstr("P1500 missed the spot")));
}

TEST(Diagnose, MoreTakenOffSinceMakesEarlierStepsLessLikely) {
  Shop shop;
  const Mark mark = measured(MarkKind::scratch, 4);
  const double before = chance(shop.diagnose(mark), "P1500");
  shop.done.back().removal_um = 1.3;  // twice what the pad was to take
  EXPECT_LT(chance(shop.diagnose(mark), "P1500"), before);
}

TEST(Diagnose, WhatNoStepLeavesIsSaid) {
  const Shop shop;
  const WayBack way = shop.go_back(measured(MarkKind::scratch, 900));
  EXPECT_TRUE(way.diagnosis.causes.empty());
  EXPECT_FALSE(way.found);
  EXPECT_EQ(way.no_way, NoWay::unexplained);
  EXPECT_THAT(sentence(way), HasSubstr("not known"));
  EXPECT_THAT(sentences(way.diagnosis.signs), testing::Contains(HasSubstr("from something else")));
  EXPECT_THROW(levigate::diagnose(shop.job, shop.stack, {}, seen(MarkKind::haze)), BadInput);
}

TEST(GoBack, HazeIsTriedWithTheFinestFirst) {
  const WayBack way = Shop().go_back(seen(MarkKind::haze));
  ASSERT_TRUE(way.found);
  EXPECT_EQ(way.tries.front().steps.front().sheet, "pad");
  EXPECT_GT(way.tries.size(), 1u);  // seen again: on
  EXPECT_LT(way.expected_minutes, way.reentries.front().climb.fixed_minutes);
}

TEST(GoBack, ADeepScratchAsksForCoarserPaper) {
  const WayBack way = Shop().go_back(measured(MarkKind::scratch, 60));
  ASSERT_TRUE(way.found);
  EXPECT_EQ(way.tries.front().steps.front().sheet, "P400");
  std::vector<std::string> sheets;
  double removal_um = 0;
  for (const TryStep& step : way.tries.front().steps) {
    sheets.push_back(step.sheet);
    removal_um += step.removal_um;
  }
  EXPECT_EQ(sheets, (std::vector<std::string>{"P400", "P800", "P1500", "pad"}));
  EXPECT_NEAR(removal_um, way.tries.front().removal_um, 1e-9);
}

TEST(GoBack, MinutesAreThoseOfTheSteps) {
  const Shop shop;
  const WayBack way = shop.go_back(measured(MarkKind::scratch, 60));
  for (const Try& one : way.tries) {
    double minutes = inspection_table[0].look_minutes.value;
    for (const TryStep& step : one.steps) minutes += step.minutes + shop.job.rules.change_minutes;
    EXPECT_NEAR(one.minutes, minutes, 1e-9);
  }
}

TEST(GoBack, IsRefusedWhereTheFilmIsGone) {
  Shop shop;
  shop.job.zones[0].film = Film{40, 3};
  const WayBack way = shop.go_back(measured(MarkKind::scratch, 60));
  EXPECT_FALSE(way.found);
  EXPECT_LT(*way.film_um, way.diagnosis.needs.front().need_um);
  EXPECT_EQ(way.no_way, NoWay::film_short);
  EXPECT_THAT(sentence(way), HasSubstr("That is not enough"));
  ASSERT_EQ(way.remedies.size(), 2u);
  EXPECT_THAT(sentence(way.remedies[0]), HasSubstr("Spot repair"));
  EXPECT_THAT(sentence(way.remedies[1]), HasSubstr("round"));
  EXPECT_FALSE(way.cautions.empty());
  // On a solid there is no film to run out of.
  shop.job.coating = coating_named("acrylic sheet");
  shop.job.zones[0].film.reset();
  const WayBack solid = shop.go_back(measured(MarkKind::scratch, 60));
  EXPECT_TRUE(solid.found);
  EXPECT_FALSE(solid.film_um);
}

TEST(GoBack, AWitnessLineHasNoWayBack) {
  const WayBack way = Shop().go_back(seen(MarkKind::witness_line));
  EXPECT_FALSE(way.found);
  EXPECT_EQ(way.no_way, NoWay::witness_line);
  EXPECT_THAT(sentence(way), HasSubstr("sanded through"));
  EXPECT_FALSE(way.remedies.empty());
}

// No line shows between rounds that are one film. A ring is where the bottom shows, and what may come off is of all rounds.
TEST(GoBack, WhereRoundsMeltTogetherTheLastOneIsNoLimit) {
  for (const char* name : {"nitrocellulose lacquer", "acrylic lacquer", "shellac"}) {
    Shop shop;
    shop.job.coating = coating_named(name);
    shop.job.zones[0].film = Film{80, 5};
    shop.job.zones[0].below_um = 40;
    const WayBack ring = shop.go_back(seen(MarkKind::witness_line));
    EXPECT_FALSE(ring.found);
    EXPECT_EQ(ring.no_way, NoWay::bottom_shows) << name;
    EXPECT_EQ(ring.diagnosis.signs.front().kind, EvidenceKind::bottom_shows);
    for (const std::string& text : {sentence(ring), sentence(ring.diagnosis.signs.front())}) {
      EXPECT_THAT(text, HasSubstr("ll of the film is sanded through"));
      EXPECT_THAT(text, testing::Not(HasSubstr("last round")));
      EXPECT_THAT(text, testing::Not(HasSubstr("witness")));
    }
    const double melted_um = *shop.go_back(seen(MarkKind::haze)).film_um;
    shop.job.coating.redissolves = false;
    EXPECT_GT(melted_um, *shop.go_back(seen(MarkKind::haze)).film_um + 20) << name;
    EXPECT_EQ(shop.go_back(seen(MarkKind::witness_line)).no_way, NoWay::witness_line);
  }
}

TEST(GoBack, OfAWaveThatShrinksBackAsMuchMoreComesOff) {
  Shop shop;
  const std::vector<Need> once = shop.diagnose(seen(MarkKind::wave)).needs;
  shop.job.coating.shrink_back = ShrinkBack{.comes_back = std::exp(0.2) - 1, .rest_h = 1};
  const std::vector<Need> more =
      shop.diagnose(seen(MarkKind::wave)).needs;  // two points of the grid
  ASSERT_EQ(more.size(), once.size());
  for (std::size_t i = 0; i < once.size(); ++i) {
    EXPECT_NEAR(more[i].need_um, std::exp(0.2) * once[i].need_um, 1e-9 * more[i].need_um);
    EXPECT_NEAR(more[i].probability, once[i].probability, 1e-9);
  }
}

TEST(GoBack, AWaveGoesBackToWhatLevels) {
  Shop shop;
  Mark mark = seen(MarkKind::wave);
  mark.height_um = 12;
  const WayBack way = shop.go_back(mark);
  ASSERT_TRUE(way.found);
  EXPECT_EQ(way.diagnosis.causes.front().sheet, "P400");
  EXPECT_NE(way.tries.front().steps.front().sheet, "pad");  // a pad follows the wave
  shop.job.zones[0].peel_um = 0;
  EXPECT_FALSE(levigate::go_back(shop.job, shop.stack, {{"P800"}, {"P1500"}, {"pad"}}, mark).found);
}

TEST(GoBack, ASmallWaveGoesBackToPaper) {
  Mark mark = seen(MarkKind::wave);
  mark.seen = Seen::loupe;
  mark.height_um = 0.8;
  const WayBack way = Shop().go_back(mark);
  ASSERT_TRUE(way.found);
  EXPECT_EQ(way.tries.back().steps.front().sheet, "P1500");
  EXPECT_EQ(way.tries.back().steps.front().removal_um, 0.0);  // the pad after it takes enough
  mark.height_um = 0.1;
  const WayBack none = Shop().go_back(mark);
  EXPECT_FALSE(none.found);
  EXPECT_THAT(sentences(none.diagnosis.signs), testing::Contains(HasSubstr("of orange peel stay")));
}

TEST(GoBack, WhatTheRoomShowsIsNotLeftToTheFinest) {
  // What only the sun shows goes with the finest, which leaves nothing to polish out again.
  Shop shop;
  shop.stack = workshop::papers({"P800", "P1500", "9 um", "3 um"});
  shop.stack.sheets[2].backing = shop.stack.sheets[3].backing = backing_named("film");
  shop.done = {{"P800"}, {"P1500"}, {"9 um"}, {"3 um"}};
  EXPECT_EQ(shop.go_back(seen(MarkKind::scratch)).tries.front().steps.front().sheet, "3 um");
  Mark plain = seen(MarkKind::scratch);
  plain.seen = Seen::lamp;
  const WayBack way = shop.go_back(plain);
  ASSERT_TRUE(way.found);
  std::vector<std::string> first;
  for (const Try& one : way.tries) first.push_back(one.steps.front().sheet);
  EXPECT_NE(first.front(), "3 um");
  EXPECT_THAT(first, testing::Contains("9 um"));
  EXPECT_EQ(shop.go_back(seen(MarkKind::haze)).tries.front().steps.front().sheet, "3 um");
}

TEST(GoBack, TriesInVainLeaveLessFilmAndTheSameRound) {
  Shop shop;
  const Mark mark = seen(MarkKind::haze);
  const WayBack first = shop.go_back(mark);
  for (const TryStep& step : first.tries.front().steps)
    shop.done.push_back({step.sheet, {"top"}, {}, step.removal_um});
  const WayBack second = shop.go_back(mark);
  ASSERT_TRUE(second.found);
  EXPECT_NEAR(*first.film_um - *second.film_um, first.tries.front().removal_um, 1e-9);
  EXPECT_EQ(second.round_minutes, first.round_minutes);
  EXPECT_EQ(second.reentries.size(), first.reentries.size());
  EXPECT_EQ(second.diagnosis.causes.front().missed.size(), shop.done.size());
}

/// What a share was of the marks that were still there.
double of_those_left(double gone_before, double gone) {
  return (gone - gone_before) / (1 - gone_before);
}

std::vector<Mark> many_marks() {
  Mark lamp = seen(MarkKind::scratch);
  lamp.seen = Seen::lamp;
  return {seen(MarkKind::scratch),
          lamp,
          measured(MarkKind::scratch, 15),
          measured(MarkKind::scratch, 30),
          measured(MarkKind::scratch, 60),
          measured(MarkKind::cluster, 12, 90),
          seen(MarkKind::haze),
          seen(MarkKind::wave)};
}

/// The fault: the first of 18 tries took out 1 mark of 100.
TEST(GoBack, NoFirstLookFindsOneOfAHundredGoneAndFewLegsDo) {
  const InspectionProfile& eye = inspection_table[0];
  int legs = 0, long_tries = 0;
  for (const auto& [area_cm2, film_um] : {std::pair{90.0, 47.0}, {40'000.0, 90.0}}) {
    Shop shop;
    shop.job.zones[0].area_cm2 = area_cm2;
    shop.job.zones[0].film = Film{film_um, 4};
    for (const Mark& mark : many_marks()) {
      const WayBack way = shop.go_back(mark);
      long_tries += way.tries.size() > 8;
      EXPECT_EQ(way.found, !way.legs.empty());
      EXPECT_LE(way.legs.size(), eye.legs_most.value);
      double gone = 0, off_um = 0;
      for (const Leg& leg : way.legs) {
        ++legs;
        EXPECT_LE(leg.looks.size(), eye.looks_most.value);
        EXPECT_GE(of_those_left(gone, leg.looks.front().gone_chance),
                  eye.worth_look_share.value - 1e-9);
        const double step_um = leg.looks.front().removal_um - off_um;
        for (const Look& look : leg.looks) {
          EXPECT_GE(look.gone_chance, gone);
          EXPECT_NEAR(look.removal_um - off_um, step_um, 1e-9);
          gone = look.gone_chance;
          off_um = look.removal_um;
        }
        EXPECT_NEAR(leg.every_minutes * static_cast<double>(leg.looks.size()),
                    leg.looks.back().sanded_minutes, 1e-9);
      }
      EXPECT_LE(off_um, way.film_um.value_or(std::numeric_limits<double>::infinity()));
    }
  }
  EXPECT_GT(legs, 10);
  EXPECT_GT(long_tries, 2);  // as tries, they go on and on
}

// The way of a mark was used where steps tell theirs, and left aside without a word where none does.
TEST(Diagnose, TheWayOfAMarkThatMeetsNoStrokesIsNotIgnoredInSilence) {
  const auto says = [](const Shop& shop) {
    const std::vector<std::string> all =
        sentences(shop.diagnose(seen(MarkKind::scratch, 30)).signs);
    return std::count(all.begin(), all.end(),
                      "The way of the mark tells nothing yet: no step has the way of its strokes.");
  };
  Shop shop;
  EXPECT_EQ(says(shop), 0);
  for (DoneStep& step : shop.done) step.direction_deg.reset();
  EXPECT_EQ(says(shop), 1);
}

TEST(GoBack, ASpotOfALargeZoneTakesAPatchAndSmallOnesTheZone) {
  Shop shop;
  shop.job.zones[0].area_cm2 = 9000;
  const WayBack large = shop.go_back(measured(MarkKind::scratch, 3));
  ASSERT_TRUE(large.patch_minutes && large.found);
  EXPECT_LT(*large.patch_minutes, large.zone_minutes);
  const Leg& leg = large.legs.front();
  ASSERT_EQ(leg.sheet, "pad");
  const Look& look = leg.looks.front();
  // The pad wears a patch twice its face wide: the volume of the feathered hollow, not of the zone.
  const Block& hard = shop.job.zones[0].block;
  const double face_cm2 = std::max(hard.area_cm2, block_named("foam pad").area_cm2);
  EXPECT_NEAR(*look.patch_mm, 20 * std::sqrt(face_cm2), 1e-9);
  EXPECT_NEAR(look.sanded_minutes,
              large.reentries.back().climb.minutes_per_um * look.removal_um *
                  hollow_area_cm2(*look.patch_mm) / 9000,
              1e-9);
  EXPECT_NEAR(
      look.minutes,
      look.sanded_minutes + shop.job.rules.change_minutes + inspection_table[0].look_minutes.value,
      1e-9);
  shop.job.zones[0].area_cm2 = 50;
  const WayBack small = shop.go_back(measured(MarkKind::scratch, 3));
  EXPECT_FALSE(small.patch_minutes);
  EXPECT_FALSE(small.legs.front().looks.front().patch_mm);
  shop.job.zones[0].area_cm2 = 9000;
  EXPECT_FALSE(shop.go_back(seen(MarkKind::haze)).patch_minutes);  // it lies all over
}

// A look is taken after the last sheet, so that it is at hand: within a leg, and where the next leg begins with it.
TEST(GoBack, ALookAgainWithTheLastSheetNeedsNoChange) {
  Shop shop;
  int within = 0, between = 0;
  for (const double area_cm2 : {60.0, 500.0, 9000.0}) {
    shop.job.zones[0].area_cm2 = area_cm2;
    for (const Mark& mark : many_marks()) {
      bool first = true, told = false, over = false;
      const WayBack way = shop.go_back(mark);
      for (const Leg& leg : way.legs) {
        Look before;
        told = told || (!first && !over && leg.sheet == "pad");
        over = over || leg.looks.back().gone_chance > 0.995;
        for (const Look& look : leg.looks) {
          if (leg.sheet == "pad") {
            EXPECT_NEAR(look.minutes - before.minutes,
                        look.sanded_minutes - before.sanded_minutes +
                            inspection_table[0].look_minutes.value +
                            (first ? shop.job.rules.change_minutes : 0.0),
                        1e-9);
            within += before.minutes > 0;
            between += !first && before.minutes == 0;
          }
          before = look;
          first = false;
        }
      }
      const std::string card = workshop::flowing(way_back_card(way));
      EXPECT_EQ(card.find("If it still shows: go on with pad") != std::string::npos, told);
      EXPECT_THAT(card, testing::Not(HasSubstr("First: go on")));
    }
  }
  EXPECT_GT(within, 0);
  EXPECT_GT(between, 0);
}

TEST(Hollow, IsNowhereSteeperThanTheEyeAllows) {
  const auto depth = [](double deep_um, double width_mm, double r_mm) {
    return 0.5 * deep_um * (1 + std::cos(2 * std::acos(-1.0) * r_mm / width_mm));
  };
  for (const double deep_um : {0.5, 5.0, 40.0}) {
    const double width_mm = patch_width_mm(deep_um, 0.15, 20);
    double steepest = 0, volume = 0;
    constexpr int steps = 20'000;
    const double dr = 0.5 * width_mm / steps;
    for (int i = 0; i < steps; ++i) {
      const double r = (i + 0.5) * dr;
      steepest = std::max(
          steepest,
          (depth(deep_um, width_mm, r - 0.5 * dr) - depth(deep_um, width_mm, r + 0.5 * dr)) / dr);
      volume += 2 * std::acos(-1.0) * r * depth(deep_um, width_mm, r) * dr;
    }
    EXPECT_NEAR(volume / (100 * deep_um), hollow_area_cm2(width_mm), 1e-6 * volume);
    EXPECT_LE(steepest, 0.15 + 1e-6);
    EXPECT_GE(steepest, width_mm > 40 ? 0.15 - 1e-6 : 0);
    EXPECT_GE(width_mm, 40);
  }
  EXPECT_TRUE(std::isnan(patch_width_mm(std::nan(""), 0.15, 20)));
  EXPECT_TRUE(std::isnan(hollow_area_cm2(std::nan(""))));
  EXPECT_THROW(patch_width_mm(1, 0, 20), OutOfRange);
  EXPECT_THROW(hollow_area_cm2(-1), OutOfRange);
}

TEST(GoBack, WithoutAWayAnotherRoundIsWhatItTakes) {
  const WayBack way = Shop().go_back(seen(MarkKind::witness_line));
  EXPECT_GT(way.round_minutes, inspection_table[0].round_minutes.value);
  EXPECT_EQ(way.expected_minutes, way.round_minutes);
}

TEST(Layers, APauseIsOneStep) {
  Shop shop;
  const Workings b = workings(shop.job, shop.stack);
  const std::size_t count = layers(b, shop.done, 0).size();
  shop.done.insert(shop.done.begin() + 1, shop.done.front());
  EXPECT_EQ(layers(b, shop.done, 0).size(), count);
}

TEST(Layers, AStepWithNothingToTakeOffStillScratches) {
  // An edge that the levelling step kept off: the next step finds nothing to remove there, and lays its scratches.
  Shop shop;
  shop.job.zones[0].levelled = false;
  shop.job.zones[0].peel_um = 0;
  const Workings b = workings(shop.job, shop.stack);
  const std::vector<Layer> all = layers(b, shop.done, 0);
  ASSERT_EQ(all.size(), 3u);
  EXPECT_EQ(shop.stack.sheets[all[0].sheet].id, "P800");
  EXPECT_EQ(all[0].removal_um, all[0].scratch_um);
}

TEST(Spots, WeightsAddUpToOne) {
  for (const double cv : {0.0, 0.15, 0.5, 1.0}) {
    for (const std::size_t layers : {1u, 4u, 60u}) {
      double total = 0;
      for (const detail::SpotNode& spot : detail::spot_nodes(layers, cv)) {
        EXPECT_GE(spot.weight, 0.0);
        total += spot.weight;
      }
      EXPECT_NEAR(total, 1.0, 1e-12) << cv << ' ' << layers;
    }
  }
}

TEST(Poisson, IsGoodAtBothEnds) {
  EXPECT_NEAR(detail::poisson_at_least(3, 1e-5) / 1.6666541667e-16, 1.0,
              1e-9);  // m^3/6 (1 - 3m/4 + ..)
  EXPECT_NEAR(detail::poisson_at_least(1, 0.3), -std::expm1(-0.3), 1e-15);
  EXPECT_NEAR(detail::poisson_at_least(2, 5.0), 1 - 6 * std::exp(-5.0), 1e-14);
  EXPECT_NEAR(detail::poisson_at_least(10, 0.05) / 2.571580351600075e-20, 1.0, 1e-12);
  EXPECT_LT(detail::poisson_at_least(1000, 800), 1e-10);
  EXPECT_GT(detail::poisson_at_least(1000, 1200), 1 - 1e-8);
  EXPECT_EQ(detail::poisson_at_least(3, 0), 0);
  EXPECT_EQ(detail::poisson_at_least(0, 0), 1);
}

}  // namespace
}  // namespace go_back_test
