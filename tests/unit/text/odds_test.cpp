// What a card says of chance: the figures of its simulation, in sentences that are true of them.
#include "levigate/text/work/odds.hpp"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/text/card.hpp"
#include "levigate/text/work/phrases.hpp"
#include "unit/workshop.hpp"

namespace odds_test {
namespace {

using namespace workshop;
using testing::HasSubstr;
using testing::Not;

const Stack drawer = papers({"P400", "P800", "P1500"});

Plan found() { return plan(top(35), drawer); }

/// A simulation that was not made but written down, so that each figure is known.
Simulation written() {
  Simulation simulation;
  simulation.draws = 400;
  simulation.seed = 9;
  simulation.minutes = {61, 122, 183, 130};
  simulation.sheets = {1.11, 2.22, 3.33, 2.4};
  for (const double start : {10.0, 20.0, 30.0}) {
    const SimulatedReading reading{
        "top", {start, start + 1, start + 2, 0}, {30, 40, 55, 0}, {97, 98, 99, 0}};
    simulation.steps.push_back(
        {"", {start, 2 * start, 3 * start, 0}, {0.1, 0.2, 3.3, 0}, {}, {reading}});
  }
  for (std::size_t i = 0; i < 3; ++i) simulation.steps[i].sheet = drawer.sheets[i].id;
  simulation.zones = {
      {"top", {81, 85, 89, 85}, {41, 45, 49, 45}, exact_share(3, 400), exact_share(0, 400)}};
  return simulation;
}

std::string card_with(const Simulation& simulation) { return flowing(card(found(), simulation)); }

TEST(Odds, TimeAndSheets) {
  const std::string text = card_with(written());
  EXPECT_THAT(text, HasSubstr("from 400 simulated runs (seed 9)"));
  EXPECT_THAT(text,
              HasSubstr("Time: 1 h 05 min at usual numbers, as are times of zones and of other "
                        "ways."));
  EXPECT_THAT(text, HasSubstr("3.3 are enough in 9 of 10 runs, 2.2 in 5 of 10."));
  EXPECT_THAT(text, Not(HasSubstr("than you have")));
  const std::size_t figures = text.find("Each step: minutes in all");
  ASSERT_NE(figures, std::string::npos);
  const std::size_t first = text.find(" 1 20 (10 to 30) ", figures);
  const std::size_t last = text.find(" 3 60 (30 to 90) ", figures);
  ASSERT_NE(first, std::string::npos);
  ASSERT_NE(last, std::string::npos);
  EXPECT_LT(first, last);
}

TEST(Odds, AReadingHasItsMedianAndItsBand) {
  const std::string text = card_with(written());
  EXPECT_THAT(text, HasSubstr("GU of a glossmeter (4 of 5 cases): step minutes film 20 degrees 60 "
                              "degrees 85 degrees mirrors"));
  EXPECT_THAT(text, HasSubstr(" % 21 (20 to 22) 40 (30 to 55) 98 (97 to 99) "));
  EXPECT_THAT(text, Not(HasSubstr("by lay and flank")));
}

TEST(Odds, WithoutASimulationAReadingHasEndsByLayAndFlank) {
  const Plan plan = found();
  const Reading& reading = plan.steps.back().zones[0].reading_60;
  const std::string text = flowing(card(plan));
  EXPECT_THAT(text, HasSubstr("GU of a glossmeter (by lay and flank): step"));
  EXPECT_THAT(text, HasSubstr(fmt::format(" {:.0f} ({:.0f} to {:.0f}) ", reading.expected_gu,
                                          reading.low_gu, reading.high_gu)));
}

// Whoever reads how long a plan takes reads the median first, with what it lies between.
TEST(Odds, TheMedianIsTheHeadline) {
  const std::string range = "In 4 of 5 cases it takes 1 h 01 min to 3 h 03 min.";
  const std::string text = card_with(written());
  const std::size_t header = text.find("3 steps, about 2 h 02 min. " + range + " Lay out:");
  EXPECT_LT(header, text.find("Step 1 of 3"));
  const std::string usual = detail::duration_text(found().total.minutes);
  EXPECT_GT(text.find(usual), text.find("How it may turn out"));
}

TEST(Odds, WithoutASimulationMinutesAreAtUsualNumbers) {
  const Plan plan = found();
  const std::string text = flowing(card(plan));
  EXPECT_THAT(text, HasSubstr("3 steps, " + detail::duration_text(plan.total.minutes) +
                              " at usual numbers. Lay out:"));
  EXPECT_THAT(text, HasSubstr("Each step: minutes in all at usual numbers,"));
  for (std::size_t i = 0; i < plan.steps.size(); ++i) {
    EXPECT_THAT(text,
                HasSubstr(fmt::format(" {} {:.0f} {} ", i + 1, plan.steps[i].minutes,
                                      detail::percent_text(*plan.steps[i].zones[0].film_used))));
  }
  EXPECT_THAT(text, Not(HasSubstr("4 of 5")));
}

TEST(Odds, FilmByZone) {
  EXPECT_THAT(card_with(written()), HasSubstr("top 81 to 89 41 to 49 in 3 runs; 0.20 to 1.93 %"));
  EXPECT_THAT(card_with(written()),
              HasSubstr("Cut through counts runs where less than 10 um stayed somewhere, with the "
                        "range of that chance."));
  EXPECT_EQ(detail::share_text(exact_share(1, 400), 400), "in 1 run; 0.01 to 1.18 %");
  EXPECT_EQ(detail::share_text(exact_share(0, 400), 400), "in no run; at most 0.75 %");
  EXPECT_EQ(detail::share_text(exact_share(400, 400), 400), "in 400 runs; 99.25 to 100.00 %");
}

TEST(Odds, PaperIsSpokenOfWhereItMayRunOut) {
  Simulation simulation = written();
  simulation.steps[0].paper_short = exact_share(19, 400);
  simulation.steps[1].paper_short = exact_share(60, 400);
  const std::string text = card_with(simulation);
  EXPECT_THAT(text,
              HasSubstr("15 of 100 runs need more of P800 than you have. 4 are enough in 9 of "
                        "10."));
  EXPECT_THAT(text, Not(HasSubstr("need more of P400")));
}

TEST(Odds, ASolidHasNoFilmToSpeakOf) {
  Job job = top(35);
  job.coating = coating_named("acrylic sheet");
  job.zones[0].film.reset();
  Simulation simulation = written();
  simulation.zones.clear();
  const std::string text = card(plan(job, drawer), simulation);
  EXPECT_THAT(text, HasSubstr("How it may turn out"));
  EXPECT_THAT(text, Not(HasSubstr("thinnest spot")));
}

TEST(Odds, ASimulationOfAnotherPlanIsRefused) {
  Simulation other = written();
  other.steps.pop_back();
  EXPECT_THROW(card(found(), other), BadInput);
  other = written();
  other.steps[1].sheet = "P600";
  EXPECT_THROW(card(found(), other), BadInput);
  other = written();
  other.zones[0].zone = "side";
  EXPECT_THROW(card(found(), other), BadInput);
}

}  // namespace
}  // namespace odds_test
