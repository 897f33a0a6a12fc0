// Any number by name, with where it comes from.
#include "levigate/plan/sources.hpp"
#include "levigate/film/edge.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/surface/model.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/limits.hpp"
#include "levigate/wheel/sources.hpp"
#include "levigate/wheel/wheel.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>
#include <utility>

#include "levigate/film/edge.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/risk/calibration.hpp"
#include "levigate/risk/sources.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/limits.hpp"
#include "levigate/wheel/sources.hpp"
#include "levigate/wheel/wheel.hpp"
#include "unit/workshop.hpp"

namespace sources_test {
namespace {

using namespace workshop;
using ::testing::HasSubstr;

template <typename Call>
std::string complaint(Call call) {
  try {
    call();
  } catch (const BadInput& error) {
    return error.what();
  }
  return "nothing thrown";
}

TEST(Sources, ANumberIsTheOneInUse) {
  const Sourced hardness = source("two-part urethane", "hardness_mpa");
  EXPECT_EQ(hardness.value, coating_named("two-part urethane").hardness_mpa);
  EXPECT_EQ(hardness.source.basis, Basis::from_memory);
  EXPECT_EQ(source("two-part urethane", "hard_cure_h").value,
            cure_named("two-part urethane").hard_cure_h);
  EXPECT_EQ(source("latex paper", "life_m").value, backing_named("latex paper").life_m);
  EXPECT_EQ(source("hard block", "force_n").value, block_named("hard block").force_n);
  EXPECT_EQ(source("rule", "max_ratio").value, Rules{}.max_ratio);
  EXPECT_EQ(source("rule", "short_share").value, Rules{}.short_share);
  EXPECT_EQ(source("model", "flank_deg").value, Model{}.flank_deg);
  EXPECT_EQ(source("edge", "sharp_share").value, edge_share(0));
  EXPECT_EQ(source("ultrasonic", "fixed_um").value, gauge_named("ultrasonic").fixed_um);
}

TEST(Sources, WheelsCompoundsAndSurfaces) {
  const std::vector<NamedNumber> all = wheel_numbers();
  EXPECT_EQ(number_named(all, "felt", "diameter_mm").value, wheel_named("felt").diameter_mm);
  EXPECT_EQ(number_named(all, "metal", "rise_k").value, wheel_limits_named("metal").rise_k);
  EXPECT_EQ(source("two-part urethane", "rise_k").value,
            wheel_limits_named("two-part urethane").rise_k);
  EXPECT_EQ(number_named(all, "fine", "size_um").value, compound_table[2].size_um.value);
}

TEST(Sources, WhatIsBelievedBeforeAJournalAndAPatch) {
  const std::vector<NamedNumber> all = learning_numbers();
  EXPECT_EQ(number_named(all, "prior", "film_noise_um").value, film_noise_um);
  EXPECT_EQ(number_named(all, "patch", "spots").value, patch_spots);
  EXPECT_EQ(source("search", "equal_percent").value, 3.0);
}

TEST(Sources, EveryNumberHasOneNameABandAndASource) {
  std::set<std::pair<std::string_view, std::string_view>> seen;
  std::vector<NamedNumber> all = named_numbers();
  for (const NamedNumber& one : wheel_numbers()) all.push_back(one);
  for (const NamedNumber& one : learning_numbers()) all.push_back(one);
  for (const NamedNumber& one : all) {
    EXPECT_TRUE(seen.insert({one.name, one.quantity}).second) << one.name << one.quantity;
    EXPECT_LE(one.number.low, one.number.value) << one.name << one.quantity;
    EXPECT_GE(one.number.high, one.number.value) << one.name << one.quantity;
    EXPECT_FALSE(one.number.source.citation.empty()) << one.name << one.quantity;
  }
}

TEST(Sources, AFormulaByItsFunction) {
  std::set<std::string_view> seen;
  for (const Formula& formula : formulas) {
    EXPECT_TRUE(seen.insert(formula.function).second) << formula.function;
    EXPECT_EQ(source(formula.function).formula, formula.formula);
    EXPECT_FALSE(formula.source.citation.empty()) << formula.function;
  }
}

TEST(Sources, TheNearestNameIsTold) {
  EXPECT_THAT(complaint([] { source("gloss_gl"); }), HasSubstr("the nearest is 'gloss_gu'"));
  EXPECT_THAT(complaint([] { source("latex papr", "life_m"); }),
              HasSubstr("the nearest is 'latex paper'"));
  EXPECT_THAT(complaint([] { source("rule", "max_ration"); }),
              HasSubstr("quantity of rule 'max_ration' is not known; the nearest is 'max_ratio'"));
}

}  // namespace
}  // namespace sources_test
