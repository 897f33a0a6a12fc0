// Plans simulated: what is drawn and how, that threads do not show, and what is refused.
#include "levigate/risk/simulate.hpp"
#include "levigate/detail/chi_square.hpp"
#include "levigate/detail/student.hpp"
#include "levigate/journal/work/prior.hpp"
#include "levigate/plan/sources.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/risk/philox.hpp"
#include "levigate/risk/work/crew.hpp"
#include "levigate/risk/work/draw.hpp"
#include "levigate/risk/work/spots.hpp"
#include "levigate/surface/meter.hpp"
#include "levigate/surface/model.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/wheel.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>
#include <limits>
#include <numeric>
#include <thread>

#include "unit/workshop.hpp"

namespace simulate_test {
namespace {

using namespace workshop;

constexpr double infinity = std::numeric_limits<double>::infinity();

Job small_top() {
  Job job = top(35);
  job.zones[0].area_cm2 = 40;
  job.zones[0].film = Film{60, 6};
  return job;
}

const Stack few = papers({"P400", "P800", "P1500"});

Plan plan_of(const Job& job) { return evaluate(job, few, {"P400", "P800", "P1500"}); }

Simulation simulated(const Job& job, SimulateOptions options = {.draws = 48}) {
  return simulate(job, few, plan_of(job), options);
}

TEST(Drawn, TheValueIsTheMedianAndEachSideIsEvenInTheLogarithm) {
  const Sourced input{20, 5, 45, {Basis::assumption, "for this test"}};
  EXPECT_DOUBLE_EQ(drawn(input, 0.5), 20);
  EXPECT_DOUBLE_EQ(drawn(input, 0.25), 10);
  EXPECT_DOUBLE_EQ(drawn(input, 0.75), 30);
  EXPECT_NEAR(drawn(input, 1e-15), 5, 1e-12);
  EXPECT_NEAR(drawn(input, 1 - 1e-15), 45, 1e-12);
  EXPECT_TRUE(std::isnan(drawn(input, std::nan(""))));
}

TEST(Drawn, EvenInTheNumberItselfFromZeroOrBelow) {
  const Sourced input{2, 0, 8, {Basis::assumption, "for this test"}};
  EXPECT_DOUBLE_EQ(drawn(input, 0.25), 1);
  EXPECT_DOUBLE_EQ(drawn(input, 0.75), 5);
  EXPECT_DOUBLE_EQ(drawn({0, -4, 4, {}}, 0.25), -2);
}

TEST(Drawn, WhatIsInfiniteStays) {
  EXPECT_EQ(drawn({infinity, infinity, infinity, {}}, 0.3), infinity);
  EXPECT_EQ(drawn({infinity, 3, infinity, {}}, 0.3), infinity);
  EXPECT_EQ(drawn({3, 1, infinity, {}}, 0.8), 3);
  EXPECT_EQ(drawn({3, 3, 3, {}}, 0.8), 3);
}

TEST(Drawn, RulesAreChosenButForTheMinutesOfAChange) {
  const Workings workings = levigate::workings(small_top(), few);
  std::vector<std::string> rules, typed;
  int believed = 0;
  for (const detail::Knob& knob : detail::knobs(workings)) {
    if (knob.kind == Input::typed) typed.push_back(knob.quantity);
    if (knob.kind == Input::chosen || knob.kind == Input::typed) continue;
    ++believed;
    if (knob.subject == "rule") rules.push_back(knob.quantity);
  }
  EXPECT_THAT(rules, testing::ElementsAre("change_minutes"));
  EXPECT_THAT(typed, testing::ElementsAre("film_um", "peel_um"));
  EXPECT_EQ(believed, 3 + 6 + 6 + 1 + 4 + 2 * 3);
}

// All at once: each input stands where its own draw puts it, wherever else the same backing or block was set before.
TEST(Drawn, EveryInputIsSetWhereverItStands) {
  Job job = small_top();
  job.zones.push_back(job.zones[0]);
  job.zones[1].name = "other";
  levigate::Setup setup = levigate::setup(job, few);
  detail::DrawnInputs{setup}(setup, 1, 2);
  const Backing backing = backing_named("latex paper");
  const Block block = block_named("hard block");
  for (const Sheet& sheet : setup.stack.sheets) {
    EXPECT_EQ(sheet.backing, setup.stack.sheets[0].backing);
    EXPECT_NE(sheet.backing.tip_spread, backing.tip_spread);
    EXPECT_NE(sheet.backing.floor, backing.floor);
  }
  for (const Zone& zone : setup.job.zones) {
    EXPECT_EQ(zone.block, setup.job.zones[0].block);
    EXPECT_NE(zone.block.modulus_mpa, block.modulus_mpa);
    EXPECT_NE(zone.block.wrap, block.wrap);
  }
  EXPECT_NE(setup.model.packing, Model{}.packing);
  EXPECT_EQ(setup.job.rules.reserve_um, job.rules.reserve_um);
}

// A compound is one grain: its grade, its buff and the size effect of the draw follow from it. So is the wheel that carries it drawn.
TEST(Drawn, ACompoundAndItsWheelAreDrawn) {
  Sheet cutting = paper("cutting", "cutting");
  Polish polish = polish_named("cutting");
  polish.tool = wheel_named("loose muslin");
  cutting.kind = polish;
  cutting.backing = buff_of(polish);
  const levigate::Setup setup = levigate::setup(small_top(), {std::nullopt, {cutting}});
  const detail::DrawnInputs inputs{setup};
  for (std::uint32_t draw = 0; draw < 16; ++draw) {
    levigate::Setup drawn = setup;
    inputs(drawn, 1, draw);
    const Sheet& one = drawn.stack.sheets[0];
    const Polish& grain = *polish_of(one);
    EXPECT_NE(grain.size_um, polish.size_um);
    EXPECT_NE(grain.wear_share, polish.wear_share);
    EXPECT_LE(grain.worn_um, grain.size_um);
    EXPECT_EQ(drawn.grades[0].median_um, grain.size_um);
    EXPECT_NE(one.backing.modulus_mpa, cutting.backing.modulus_mpa);
    EXPECT_NEAR(one.backing.floor,
                std::pow(grain.worn_um / grain.size_um, drawn.model.size_exponent), 1e-12);
    EXPECT_NE(wheel_of(one)->force_n, wheel_of(cutting)->force_n);
    EXPECT_NE(wheel_of(one)->duty, wheel_of(cutting)->duty);
    EXPECT_EQ(wheel_of(one)->rated_rpm, wheel_of(cutting)->rated_rpm);
  }
}

TEST(Drawn, ThePaperThatScratchedTheWorkIsDrawn) {
  Job job = small_top();
  job.scratched_by = grade("P220");
  levigate::Setup setup = levigate::setup(job, few);
  const Start before = *start_of(setup, 0);
  detail::DrawnInputs{setup}(setup, 1, 2);
  EXPECT_EQ(setup.carried_backing, setup.stack.sheets[0].backing);
  EXPECT_NE(setup.job.zones[0].carries->grade.median_um, job.scratched_by->median_um);
  EXPECT_NE(setup.carried_log_spreads[0], log_spread(*job.scratched_by));
  EXPECT_NE(start_of(setup, 0)->scratch_um, before.scratch_um);
}

TEST(Drawn, ScratchesOfAKnownDepthStayAsTheyAre) {
  Job job = small_top();
  job.zones[0].carries = Carried{grade("P220"), 3.0, 0.4, std::nullopt};
  levigate::Setup setup = levigate::setup(job, few);
  detail::DrawnInputs{setup}(setup, 1, 2);
  EXPECT_EQ(setup.job.zones[0].carries, job.zones[0].carries);
  EXPECT_EQ(start_of(setup, 0)->scratch_um, 3.0);
}

// One person holds the hard block and the pad: a slow hand is slow on both. What is of the block alone is drawn apart.
TEST(Drawn, OneHandHoldsAllBlocks) {
  Job job = small_top();
  job.zones.push_back(job.zones[0]);
  job.zones[1].name = "lip";
  job.zones[1].block = block_named("foam pad");
  const levigate::Setup setup = levigate::setup(job, few);
  const detail::DrawnInputs inputs{setup};
  const auto place = [](double drawn, std::string_view block, std::string_view quantity) {
    const Sourced band = source(block, quantity);
    const double end = drawn > band.value ? band.high : band.low;
    return std::log(drawn / band.value) / std::abs(std::log(end / band.value));
  };
  int apart = 0;
  for (std::uint32_t draw = 0; draw < 8; ++draw) {
    levigate::Setup drawn = setup;
    inputs(drawn, 1, draw);
    const Block &hard = drawn.job.zones[0].block, &pad = drawn.job.zones[1].block;
    const auto same = [&](double Block::*number, std::string_view quantity) {
      EXPECT_NEAR(place(hard.*number, "hard block", quantity),
                  place(pad.*number, "foam pad", quantity), 1e-9)
          << quantity;
    };
    same(&Block::force_n, "force_n");
    same(&Block::speed_m_s, "speed_m_s");
    same(&Block::duty, "duty");
    apart += std::abs(place(hard.modulus_mpa, "hard block", "modulus_mpa") -
                      place(pad.modulus_mpa, "foam pad", "modulus_mpa")) > 0.01;
  }
  EXPECT_GT(apart, 4);
}

/// Whether so many of the draws agree with a chance, as 999 of 1000 tests of a true one would.
void expect_share(int hits, int draws, double chance) {
  EXPECT_NEAR(hits, draws * chance, 3.29 * std::sqrt(draws * chance * (1 - chance)));
}

TEST(DrawnFilm, IsKnownOrDrawn) {
  const Film known = drawn_film({90, 6}, Stream(1, 2, 3));
  EXPECT_EQ(known.mean_um, 90);
  EXPECT_EQ(known.sd_um, 6);
  constexpr int draws = 4000;
  const double df = 0.5 * 4 / (0.25 * 0.25);  // sd^2 / (2 sd_se^2)
  const double median = detail::chi_square_quantile(0.5, df);
  int below = 0, wide = 0, both = 0;
  for (std::uint32_t draw = 0; draw < draws; ++draw) {
    const Film film = drawn_film({90, 2, 3, 0.25}, Stream(1, 2, draw));
    EXPECT_GT(film.sd_um, 0);
    EXPECT_EQ(film.mean_se_um, 0);
    const bool low = film.mean_um<87, much = film.sd_um> 2 * std::sqrt(df / median);
    below += low;
    wide += much;
    both += low && much;
  }
  const double share = detail::normal_tail(1);
  expect_share(below, draws, share);
  expect_share(wide, draws, 0.5);
  expect_share(both, draws, 0.5 * share);  // without readings, mean and spread err independently
}

// The mean of n readings, its error in units of the standard error, has Student's t distribution.
TEST(DrawnFilm, TheMeanOfFewReadingsHasStudentsDistribution) {
  constexpr int draws = 4000;
  for (const int readings : {2, 3, 5, 10}) {
    const double df = readings - 1, sd_um = 6, se_um = sd_um / std::sqrt(readings);
    const Film film{90, sd_um, se_um, sd_um / std::sqrt(2 * df),
                    static_cast<std::size_t>(readings)};
    for (const double tail : {0.25, 0.05, 0.01}) {
      const double out_um = detail::student_quantile(tail, df) * se_um;
      int below = 0;
      for (std::uint32_t draw = 0; draw < draws; ++draw)
        below += drawn_film(film, Stream(1, 2, draw)).mean_um < 90 - out_um;
      expect_share(below, draws, tail);
    }
  }
}

TEST(DrawnPeel, IsLogNormalAboutWhatWasTold) {
  Zone zone = small_top().zones[0];
  constexpr int draws = 4000;
  for (const PeelHow how : choices<PeelHow>) {
    zone.peel_how = how;
    const double factor = peel_factor(how).value;
    int low = 0, high = 0;
    for (std::uint32_t draw = 0; draw < draws; ++draw) {
      const double peel_um = drawn_peel_um(zone, zone.peel_um, Stream(1, 2, draw));
      low += peel_um < 35 / factor;
      high += peel_um > 35 * factor * factor;
    }
    expect_share(low, draws, detail::normal_tail(1));
    expect_share(high, draws, detail::normal_tail(2));
  }
}

TEST(Thinnest, LeavesOutNoSpot) {
  const NormalBounds bounds;
  for (std::uint32_t draw = 0; draw < 60; ++draw) {
    const Stream stream(3, 4, draw);
    const Film film{60, draw % 3 == 0 ? 0.0 : 6.0};
    const double depth_um = draw % 5 == 0 ? 0.0 : 30.0, cv = draw % 7 == 0 ? 0.0 : 0.15;
    double least = infinity;
    for (std::uint32_t spot = 0; spot < 200; ++spot) {
      const auto [film_u, hand_u] = stream.pair(spot);
      const double film_um = film.mean_um - film.sd_um * detail::normal_quantile(film_u);
      least = std::min(least, film_um - depth_um * (1 - cv * detail::normal_quantile(hand_u)));
    }
    EXPECT_DOUBLE_EQ(thinnest_um(film, depth_um, cv, 200, stream, bounds), least);
  }
}

TEST(IntervalOf, IsMadeOfTheValuesThemselves) {
  EXPECT_EQ(interval_of({5}), (Interval{5, 5, 5, 5}));
  std::vector<double> values(10);
  std::iota(values.rbegin(), values.rend(), 1.0);
  EXPECT_EQ(interval_of(values), (Interval{1, 5, 9, 5.5}));
  values.push_back(11);
  EXPECT_EQ(interval_of(values), (Interval{2, 6, 10, 6}));
}

TEST(Simulate, TheSameForAnyNumberOfThreads) {
  const Simulation one = simulated(small_top(), {.draws = 100, .threads = 1});
  for (const unsigned threads : {2U, 3U, 7U, 0U})
    EXPECT_EQ(simulated(small_top(), {.draws = 100, .threads = threads}), one) << threads;
  EXPECT_NE(simulated(small_top(), {.draws = 100, .seed = 2}).minutes, one.minutes);
}

TEST(Simulate, AZoneMoreLeavesTheOthersAsTheyAre) {
  Job job = small_top();
  job.zones[0].film = Film{60, 6, 2, 1};
  const Simulation alone = simulated(job);
  job.zones.insert(job.zones.begin(), job.zones[0]);
  job.zones[0].name = "before";
  const Simulation both = simulated(job);
  EXPECT_EQ(both.zones[1], alone.zones[0]);
  EXPECT_NE(both.zones[0].thinnest_um, alone.zones[0].thinnest_um);
}

TEST(Simulate, WithoutBandsItIsThePlan) {
  Job job = small_top();
  job.scratched_by = grade("P220");  // no peel to level, which would vary
  job.age_h = 60;                    // still soft: both plan for the cured coat
  job.cure = Cure{.hard_cure_h = 200, .shrink = 0, .points = {{24, 60}, {200, 150}}};
  job.zones[0].defects = {{DefectKind::run, 150, 4, 40, 1}};
  const Plan plan = plan_of(job);
  const Simulation simulation = simulated(job, {.draws = 48, .bands = false});
  const double half_ms = 0.5 / 60000;
  EXPECT_NEAR(simulation.minutes.p10, plan.total.minutes, 3 * half_ms);
  EXPECT_EQ(simulation.minutes.p10, simulation.minutes.p90);
  ASSERT_EQ(simulation.steps.size(), plan.steps.size());
  double sheets = 0;
  for (std::size_t i = 0; i < plan.steps.size(); ++i) {
    EXPECT_EQ(simulation.steps[i].sheet, plan.steps[i].sheet);
    EXPECT_DOUBLE_EQ(simulation.steps[i].minutes.p50, plan.steps[i].minutes);
    EXPECT_DOUBLE_EQ(simulation.steps[i].sheets_used.p50, plan.steps[i].sheets_used);
    EXPECT_FALSE(simulation.steps[i].paper_short);
    sheets += plan.steps[i].sheets_used;
  }
  EXPECT_DOUBLE_EQ(simulation.sheets.p50, sheets);
  const SimulatedZone& zone = simulation.zones[0];
  EXPECT_DOUBLE_EQ(zone.film_left_um.p50, *plan.steps.back().zones[0].film_left_um);
  EXPECT_EQ(zone.film_left_um.p10, zone.film_left_um.p90);
  EXPECT_LT(zone.thinnest_um.p10, zone.thinnest_um.p90);
  EXPECT_LT(zone.thinnest_um.p90, zone.film_left_um.p50);
}

TEST(Simulate, WithoutBandsThePeelVariesAndMinutesWithIt) {
  const Job job = small_top();
  const Plan plan = plan_of(job);
  const Simulation simulation = simulated(job, {.draws = 1000, .bands = false});
  EXPECT_EQ(simulation.steps[1].minutes.p10, simulation.steps[1].minutes.p90);
  // A rigid block takes half of the peel: minutes but for the change go with the peel less what may stay.
  const double stays_um = job.rules.residual_peel_um, change = job.rules.change_minutes;
  const auto minutes = [&](double peel_um) {
    return change + (plan.steps[0].minutes - change) * (peel_um - stays_um) / (35 - stays_um);
  };
  const double tenth = std::pow(1.4, detail::normal_quantile(0.1));
  EXPECT_NEAR(simulation.steps[0].minutes.p90 / minutes(35 * tenth), 1, 0.06);
  EXPECT_NEAR(simulation.steps[0].minutes.p10 / minutes(35 / tenth), 1, 0.06);
  EXPECT_NEAR(simulation.steps[0].minutes.p50 / minutes(35), 1, 0.05);
}

// Lay is open even where nothing else is: half of the draws read across the grooves, half along.
TEST(Simulate, WithoutBandsAReadingIsAcrossOrAlongTheLay) {
  Job job = small_top();
  job.scratched_by = grade("P220");
  const Workings workings = levigate::workings(job, few);
  const Simulation simulation = simulated(job, {.draws = 400, .bands = false});
  for (std::size_t i = 0; i < few.sheets.size(); ++i) {
    if (i >= simulation.steps.size()) break;
    const SimulatedReading& zone = simulation.steps[i].zones[0];
    const auto reading = [&](double angle_deg, Lay lay) {
      const std::size_t sheet = sheet_index(few, simulation.steps[i].sheet);
      return meter_reading_gu({job.coating.refractive_index, angle_deg,
                               workings.work[sheet][0].rq_um, Model{}.flank_deg, lay});
    };
    EXPECT_DOUBLE_EQ(zone.reading_60_gu.p10, reading(60, Lay::across));
    EXPECT_DOUBLE_EQ(zone.reading_60_gu.p90, reading(60, Lay::along));
    EXPECT_DOUBLE_EQ(zone.reading_20_gu.p10, reading(20, Lay::across));
    EXPECT_DOUBLE_EQ(zone.reading_85_gu.p90, reading(85, Lay::along));
    const double middle = 0.5 * (zone.reading_60_gu.p10 + zone.reading_60_gu.p90);
    const double half = 0.5 * (zone.reading_60_gu.p90 - zone.reading_60_gu.p10);
    EXPECT_NEAR(zone.reading_60_gu.mean, middle, 3.3 * half / 20);  // of 400 draws
  }
}

TEST(Simulate, ABandOfReadingsIsWiderThanTheLay) {
  const Simulation bare = simulated(small_top(), {.draws = 400, .bands = false});
  const Simulation drawn = simulated(small_top(), {.draws = 400});
  const Interval &alone = bare.steps.back().zones[0].reading_60_gu,
                 &all = drawn.steps.back().zones[0].reading_60_gu;
  EXPECT_LT(all.p10, alone.p10);
  EXPECT_GT(all.p90, alone.p90);
}

// The minutes of levelling are a product: the variance of their logarithm is the sum of that of each band, taken once.
TEST(Simulate, NothingIsCountedTwice) {
  Job job = small_top();
  job.zones[0].peel_how = PeelHow::profile;
  job.rules.change_minutes = 0;
  const Stack one = papers({"P400"});
  const levigate::Setup setup = levigate::setup(job, one);
  constexpr int draws = 4000;
  const detail::DrawnInputs inputs{setup};
  double sum = 0, squares = 0;
  for (std::uint32_t draw = 0; draw < draws; ++draw) {
    levigate::Setup drawn = setup;
    inputs(drawn, 1, draw);
    detail::draw_peels(drawn.job, 1, draw);
    const Workings workings = workings_without_budgets(std::move(drawn));
    const double log = std::log(step_minutes(efforts(workings, {}, 0), workings.job.rules));
    sum += log;
    squares += log * log;
  }
  const double seen = squares / draws - (sum / draws) * (sum / draws);

  const double size_um = setup.grades[0].median_um;
  const Sourced exponent = source("model", "size_exponent");
  const Sourced saturation_um = source("model", "saturation_um");
  const auto over = [](const Sourced& band, auto f) { return detail::band_variance(band, f); };
  const auto plain = [&](std::string_view name, std::string_view quantity) {
    return detail::band_variance(source(name, quantity));
  };
  const double peel =
      std::log(peel_factor(PeelHow::profile).value) * 35.0 / (35.0 - job.rules.residual_peel_um);
  const double expected =
      plain("two-part urethane", "cutting_efficiency") +
      plain("two-part urethane", "hardness_mpa") +
      over(source("model", "flank_deg"), [](double b) { return wear_coefficient(1, b); }) +
      over(exponent, [&](double n) { return size_effect_with(size_um, n, saturation_um.value); }) +
      over(saturation_um, [&](double s) { return size_effect_with(size_um, exponent.value, s); }) +
      plain("hard block", "force_n") + plain("hard block", "speed_m_s") +
      plain("hard block", "duty") + detail::clogging_variance(backing_table[0]) + peel * peel;
  EXPECT_NEAR(seen / expected, 1, 0.06);  // 3.3 standard errors of a variance of so many draws
}

TEST(Simulate, BandsWiden) {
  const Simulation simulation = simulated(small_top());
  EXPECT_EQ(simulation.draws, 48);
  EXPECT_EQ(simulation.seed, 1U);
  for (const Interval& one : {simulation.minutes, simulation.sheets, simulation.steps[0].minutes,
                              simulation.steps[2].sheets_used, simulation.zones[0].film_left_um}) {
    EXPECT_LT(one.p10, one.p50);
    EXPECT_LT(one.p50, one.p90);
    EXPECT_GT(one.mean, one.p10);
    EXPECT_LT(one.mean, one.p90 * 2);
  }
}

TEST(Simulate, PaperAndFilmThatRunOut) {
  Job job = small_top();
  job.zones[0].film = Film{90, 6};
  job.zones[0].peel_how = PeelHow::profile;
  Stack stack = few;
  stack.sheets[0].on_hand = 1e-4;
  stack.sheets[1].on_hand = 1e4;
  const Plan short_of_paper = evaluate(job, stack, {"P400", "P800", "P1500"});
  const Simulation simulation = simulate(job, stack, short_of_paper, {.draws = 32});
  EXPECT_EQ(simulation.steps[0].paper_short->share, 1);
  EXPECT_EQ(simulation.steps[1].paper_short->share, 0);
  EXPECT_FALSE(simulation.steps[2].paper_short);
  EXPECT_EQ(simulation.zones[0].over_budget.share, 0);

  job.zones[0].film = Film{32, 6};
  const SimulatedZone zone = simulated(job).zones[0];
  EXPECT_EQ(zone.over_budget, zone.cut_through);
  EXPECT_EQ(zone.cut_through, exact_share(48, 48));
}

TEST(Simulate, ASolidHasNoFilm) {
  Job job = small_top();
  job.coating = coating_named("acrylic sheet");
  job.zones[0].film.reset();
  const Simulation simulation = simulated(job);
  EXPECT_TRUE(simulation.zones.empty());
  EXPECT_GT(simulation.minutes.p90, simulation.minutes.p10);
}

TEST(Simulate, TellsOfProgressOnTheCallersThread) {
  const auto here = std::this_thread::get_id();
  std::vector<std::int64_t> told;
  const auto progress = [&](std::int64_t done, std::int64_t of) {
    EXPECT_EQ(std::this_thread::get_id(), here);
    EXPECT_EQ(of, 100);
    told.push_back(done);
    return true;
  };
  const Simulation quiet = simulated(small_top(), {.draws = 100});
  EXPECT_EQ(simulated(small_top(), {.draws = 100, .threads = 2, .progress = progress}), quiet);
  EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
  EXPECT_EQ(told.back(), 100);
  EXPECT_EQ(std::count(told.begin(), told.end(), 100), 1);
}

TEST(Simulate, StoppedItIsThatOfTheDrawsDone) {
  const auto stop = [](std::int64_t, std::int64_t) { return false; };
  const Simulation stopped =
      simulated(small_top(), {.draws = 1000, .threads = 3, .progress = stop});
  ASSERT_GE(stopped.draws, 16);
  ASSERT_LT(stopped.draws, 1000);
  EXPECT_EQ(simulated(small_top(), {.draws = stopped.draws}), stopped);
}

TEST(Simulate, AStopWhileTheLastDrawsAreWorkedIsAskedForOnce) {
  // Two threads, one turn of 16 draws each: the other one works on the last until the caller was told of its own and stopped.
  const auto here = std::this_thread::get_id();
  std::atomic<bool> other_at_work = false, stopped = false;
  int asked = 0;
  const auto stop = [&](std::int64_t done, std::int64_t) {
    EXPECT_EQ(done, 16);
    ++asked;
    stopped = true;
    return false;
  };
  const auto work = [&](std::int64_t) {
    if (std::this_thread::get_id() != here) other_at_work = true;
    const std::atomic<bool>& other = std::this_thread::get_id() == here ? other_at_work : stopped;
    while (!other) std::this_thread::yield();
  };
  EXPECT_EQ(detail::for_each_draw(32, 2, stop, work), 32);
  EXPECT_EQ(asked, 1);
}

TEST(Simulate, AnErrorOfProgressComesOut) {
  const auto fail = [](std::int64_t, std::int64_t) -> bool { throw std::runtime_error("enough"); };
  EXPECT_THROW(simulated(small_top(), {.draws = 1000, .threads = 3, .progress = fail}),
               std::runtime_error);
}

TEST(Simulate, TheFirstDrawThatFailsIsTheErrorForAnyNumberOfThreads) {
  for (const unsigned threads : {1U, 2U, 5U}) {
    try {
      detail::for_each_draw(1000, threads, {}, [](std::int64_t draw) {
        if (draw % 50 == 37) throw OutOfRange(std::to_string(draw));
      });
      FAIL();
    } catch (const OutOfRange& error) {
      EXPECT_STREQ(error.what(), "37");
    }
  }
}

TEST(Simulate, WorksThePlansSheetsOnTheBenchGiven) {
  const Plan plan = plan_of(small_top());
  Job wider = small_top();
  wider.zones[0].area_cm2 = 80;
  const Simulation other = simulate(wider, few, plan, {.draws = 48});
  EXPECT_EQ(other, simulated(wider));
  EXPECT_GT(other.minutes.p50, simulated(small_top()).minutes.p50);
}

TEST(Simulate, RefusesASheetThatIsNotThereAndNoPlan) {
  const Job job = small_top();
  const Plan plan = plan_of(job);
  EXPECT_THROW(simulate(job, papers({"P400"}), plan), BadInput);
  EXPECT_THROW(simulate(job, papers({"P400", "P600", "P1500"}), plan), BadInput);
  Job never = job;
  never.target.size_um = 0.1;
  const Plan none = levigate::plan(never, few);
  try {
    simulate(never, few, none);
    FAIL();
  } catch (const BadInput& error) {
    EXPECT_THAT(error.what(),
                testing::HasSubstr("blocked by: " + std::string(to_string(none.why->blocked_by))));
  }
}

TEST(Simulate, RefusesTooMuchAndTooLittle) {
  Job job = small_top();
  EXPECT_THROW(simulated(job, {.draws = 9}), OutOfRange);
  EXPECT_THROW(simulated(job, {.draws = 1'000'001}), OutOfRange);
  job.zones[0].area_cm2 = 200'000;
  try {
    simulated(job, {.draws = 1'000'000});
    FAIL();
  } catch (const OutOfRange& error) {
    EXPECT_THAT(error.what(), testing::HasSubstr("spots (one per cm2) times draws = 2e+11"));
  }
}

}  // namespace
}  // namespace simulate_test
