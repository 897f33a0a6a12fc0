// What a card says of chance: the figures of its simulation, in sentences that are true of them.
#include "levigate/text/work/odds.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "levigate/text/card.hpp"
#include "unit/workshop.hpp"

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
    simulation.steps.push_back({"", {start, 2 * start, 3 * start, 0}, {0.1, 0.2, 3.3, 0}, {}});
  }
  for (std::size_t i = 0; i < 3; ++i) simulation.steps[i].sheet = drawer.sheets[i].id;
  simulation.zones = {
      {"top", {81, 85, 89, 85}, {41, 45, 49, 45}, exact_share(3, 400), exact_share(0, 400)}};
  return simulation;
}

std::string card_with(const Simulation& simulation) { return flowing(card(found(), simulation)); }

TEST(Odds, TimeAndSheets) {
  const std::string text = card_with(written());
  EXPECT_THAT(text, HasSubstr("Worked through 400 times (seed 9)"));
  EXPECT_THAT(text, HasSubstr("nine times in ten it takes less than 3 h 03 min, half of the time "
                              "less than 2 h 02 min, one time in ten less than 1 h 01 min. The 1 h "
                              "44 min above is with every number at its usual value."));
  EXPECT_THAT(text, HasSubstr("nine times in ten 3.3 in all are enough, half of the time 2.2."));
  EXPECT_THAT(text, Not(HasSubstr("too little")));
  const std::size_t first = text.find("Four times in five that takes 10 min to 30 min.");
  const std::size_t last = text.find("Four times in five that takes 30 min to 1 h 30 min.");
  EXPECT_LT(text.find("Step 1 of 3"), first);
  EXPECT_LT(first, text.find("Step 2 of 3"));
  EXPECT_LT(text.find("Step 3 of 3"), last);
  EXPECT_LT(last, text.find("In all:"));
}

TEST(Odds, FilmByZone) {
  EXPECT_THAT(card_with(written()), HasSubstr("top 81 to 89 41 to 49 3 times; 0.20 to 1.93 %"));
  EXPECT_THAT(card_with(written()), HasSubstr("how often less than 10 um stayed somewhere, and "
                                              "between what the chance of it lies, as far as 400 "
                                              "trials tell."));
  EXPECT_EQ(detail::share_text(exact_share(1, 400), 400), "1 time; 0.01 to 1.18 %");
  EXPECT_EQ(detail::share_text(exact_share(0, 400), 400), "never; at most 0.75 %");
  EXPECT_EQ(detail::share_text(exact_share(400, 400), 400), "400 times; 99.25 to 100.00 %");
}

TEST(Odds, PaperIsSpokenOfWhereItMayRunOut) {
  Simulation simulation = written();
  simulation.steps[0].paper_short = exact_share(19, 400);
  simulation.steps[1].paper_short = exact_share(60, 400);
  const std::string text = card_with(simulation);
  EXPECT_THAT(text, HasSubstr("15 times in a hundred there is too little of P800. With 4 sheets "
                              "there is enough nine times in ten."));
  EXPECT_THAT(text, Not(HasSubstr("too little of P400")));
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
