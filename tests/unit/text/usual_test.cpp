// What a card says of numbers that nobody told.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "levigate/io/json.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/text/bench_sheet.hpp"
#include "levigate/text/card.hpp"

namespace usual_test {
namespace {

using namespace levigate;
using testing::HasSubstr;
using testing::Not;

Plan planned(const std::string& spread, const std::string& peel) {
  const Job job = job_from_json(R"({"format": "levigate.job/1", "name": "case", "coating": "2K",
    "zones": [{"name": "top", "area_cm2": 500, "block": "block",
    "film": {"coats": 3, "dry_um_per_coat": 45)" +
                                spread + "}" + peel + R"(}], "target": {"size_um": 30}})");
  const Stack stack = stack_from_json(R"({"format": "levigate.stack/1", "sheets": [
    {"id": "a", "label": "P600", "backing": "wet and dry", "width_mm": 230, "height_mm": 280}]})");
  return plan(job, stack);
}

bool relies_on_spread(const Plan& plan) {
  return std::any_of(plan.relies_on.begin(), plan.relies_on.end(),
                     [](const Reliance& one) { return one.quantity == "film_sd_um"; });
}

TEST(Usual, TheCardSaysWhatNobodyTold) {
  const Plan usual = planned("", "");
  ASSERT_TRUE(usual.found);
  EXPECT_TRUE(relies_on_spread(usual));
  EXPECT_EQ(usual.zones[0].usual_wavelength_mm, 3.0);
  std::string text = card(usual);
  std::replace(text.begin(), text.end(), '\n', ' ');
  text.erase(
      std::unique(text.begin(), text.end(), [](char a, char b) { return a == ' ' && b == ' '; }),
      text.end());
  EXPECT_THAT(text, HasSubstr("The spread of the film from spot to spot is taken as usual: top."));
  EXPECT_THAT(text, HasSubstr("top counted coats 11.7 20 usual 1.7"));
  EXPECT_THAT(text, HasSubstr("The crests of the peel are taken to be 3 mm apart, as usual: top."));
}

TEST(Usual, TheBenchSheetSaysItToo) {
  const std::string text = sheet_text(bench_sheet(planned("", "")));
  EXPECT_THAT(text, HasSubstr("Nobody told, so taken as usual: spread of the film, height of the"));
}

TEST(Usual, WhatSomebodyToldIsNotCalledUsual) {
  const Plan told = planned(R"(, "sd_um": 6)", R"(, "peel_um": 20, "peel_wavelength_mm": 3)");
  ASSERT_TRUE(told.found);
  EXPECT_FALSE(relies_on_spread(told));
  EXPECT_THAT(card(told), Not(HasSubstr("usual.")));
  EXPECT_THAT(sheet_text(bench_sheet(told)), Not(HasSubstr("as usual")));
  const Plan usual = planned("", "");
  EXPECT_LT(*usual.zones[0].budget_um, *told.zones[0].budget_um);
}

}  // namespace
}  // namespace usual_test
