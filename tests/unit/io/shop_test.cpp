// A shop's file: it reads back equal, may be edited, and is refused with the place where its numbers contradict each other.
#include "levigate/journal/learn.hpp"
#include "levigate/journal/report.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/rows.hpp"
#include "levigate/journal/work/shop_belief.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/text/sentences.hpp"
#include "unit/io/json_workshop.hpp"

namespace shop_test {
namespace {

using namespace json_workshop;

LearnedFactor between(double factor, double low, double high, std::size_t observations) {
  return {factor, low, high, observations};
}

Shop full_shop() {
  Shop shop;
  shop.person = between(1 / 2.3, 0.2, 1.0 / 3.0, 35);
  shop.person.high = 0.9;
  shop.rates = {{"shellac", "", between(1.1, 0.7, 1.9, 35), {-0.75}},
                {"shellac", "film", between(0.9, 0.6, 1.4, 35), {-0.5, 1.0 / 3.0}}};
  shop.scratches = {{"shellac", "film", between(1.3, 1.1, 1.5, 6), {}}};
  shop.films = {{"shellac", -4.2, -7, -1.4, 3}};
  shop.jobs = {{"clock case", 12}, {"tray", 0}};
  shop.minutes_noise = {0.31, 39};
  return shop;
}

Shop read(const std::string& text, const std::string& file = "") {
  return shop_from_json(text, file);
}

std::string shop_with(std::string_view from, std::string_view to) {
  return with(to_json(full_shop()), from, to);
}

TEST(ShopFile, ReadsBackEqual) {
  EXPECT_EQ(read(to_json(full_shop())), full_shop());
  EXPECT_EQ(read(to_json(Shop{})), Shop{});
  EXPECT_EQ(read("{\"format\": \"levigate.shop/1\"}"), Shop{});
}

TEST(ShopFile, IsWrittenAsAWholeAndReadBack) {
  const auto path = std::filesystem::path(testing::TempDir()) / "levigate_shop_test.json";
  save_shop(path, full_shop());
  EXPECT_EQ(load_shop(path), full_shop());
  Shop wrong = full_shop();
  wrong.person.low = 2;
  EXPECT_THROW(save_shop(path, wrong), BadInput);
  EXPECT_EQ(load_shop(path), full_shop());
  std::filesystem::remove(path);
}

TEST(ShopFile, AFactorByHandMovesTheMedianAndItsEndsTheSpread) {
  const Belief before = detail::pace_belief(full_shop());
  const Belief moved = detail::pace_belief(read(shop_with("\"factor\": 1.1,", "\"factor\": 1.5,")));
  EXPECT_DOUBLE_EQ(moved.mean[1], std::log(1.5));
  EXPECT_EQ(moved.spread, before.spread);
  EXPECT_EQ(moved.mean[0], before.mean[0]);
  const Belief surer = detail::pace_belief(read(shop_with("\"low\": 0.7", "\"low\": 1.1")));
  const double share = std::log(1.9 / 1.1) / std::log(1.9 / 0.7);
  EXPECT_NEAR(surer.spread[1][1] / before.spread[1][1], share * share, 1e-14);
  EXPECT_NEAR(surer.spread[1][0] / before.spread[1][0], share, 1e-14);
  EXPECT_EQ(surer.mean, before.mean);
}

TEST(ShopFile, WhatItSaysIsLearnedOnFrom) {
  // A shop written by hand, without correlations, is taken as it stands by the next journal's prior.
  const Shop shop = read(
      "{\"format\": \"levigate.shop/1\", \"person\": {\"duty_factor\": 0.5, \"low\": 0.4, "
      "\"high\": "
      "0.625}, \"rates\": [{\"coating\": \"shellac\", \"backing\": \"film\", \"factor\": 2, "
      "\"low\": 1, \"high\": 4}]}");
  const Belief belief = detail::pace_belief(shop);
  EXPECT_EQ(belief.spread[0][1], 0);
  const Shop more = detail::with_rates(shop, {{"shellac", "cloth"}});
  ASSERT_EQ(more.rates.size(), 3U);
  EXPECT_EQ(more.rates[2].backing, "film");
  EXPECT_NEAR(more.rates[2].learned.factor, 2, 1e-14);
  EXPECT_NEAR(more.rates[2].learned.low, 1, 1e-14);
  EXPECT_EQ(more.rates[1].learned.factor, 1);
  EXPECT_NEAR(more.person.high, 0.625, 1e-14);
}

TEST(ShopFile, ContradictionsAreRefusedWithTheirPlace) {
  const auto line = [](const std::string& text, std::string_view part) {
    return line_with(text, part);
  };
  std::string text = shop_with("\"factor\": 1.1,", "\"factor\": 2.1,");
  expect_bad(read, text, "/rates/0/factor", line(text, "\"factor\": 2.1"),
             {"factor = 2.1 is not between low = 0.7 and high = 1.9", "in /rates/0"});
  text = shop_with("0.3333333333333333\n", "0.99\n");
  expect_bad(read, text, "/rates/1/correlations", line(text, "-0.5") - 1,
             {"correlations contradict those before them"});
  text = shop_with("-0.75\n", "-0.75, 0.1\n");
  expect_bad(read, text, "/rates/0/correlations", line(text, "correlations"),
             {"correlations has 2 entries, expected 1"});
  text = shop_with("\"backing\": \"film\",\n      \"factor\": 1.3", "\"factor\": 1.3");
  expect_bad(read, text, "/scratches/0", line(text, "\"scratches\"") + 1, {"backing is empty"});
  text = shop_with("\"offset_um\": -4.2", "\"offset_um\": 4.2");
  expect_bad(read, text, "/films/0/offset_um", line(text, "\"offset_um\""),
             {"offset_um = 4.2 um is not between low_um = -7 um and high_um = -1.4 um"});
  text = shop_with("\"log_sd\": 0.31", "\"log_sd\": 0.31, \"weigth\": 1");
  expect_bad(read, text, "/minutes_noise/weigth", line(text, "weigth"),
             {"the nearest is \"weight\""});
  text = shop_with("\"duty_factor\": 0.4", "\"duty_factor\": 400.4");
  expect_fails<OutOfRange>(read, text, line(text, "duty_factor"), {"duty_factor = 400.4"});
  text = shop_with("\"job\": \"tray\"", "\"job\": \"clock case\"");
  expect_bad(read, text, "/jobs/1", line(text, "\"lines\": 0") - 2, {"job is repeated"});
  text = shop_with("\"lines\": 12", "\"lines\": -1");
  expect_fails<OutOfRange>(read, text, line(text, "\"lines\": -1"), {"lines = -1"});
  text = shop_with("\"job\": \"tray\"", "\"job\": \"\"");
  expect_bad(read, text, "/jobs/1/job", line(text, "\"job\": \"\""), {"job is empty"});
  Shop twice = full_shop();
  twice.rates.push_back(twice.rates.back());
  twice.rates.back().correlations.clear();
  EXPECT_THROW(validate(twice), BadInput);
}

TEST(ShopReport, SaysHowMuchSlowerFromHowManySteps) {
  Shop shop;
  shop.person = between(1 / 2.3, 1 / 2.8, 1 / 1.9, 35);
  shop.rates = {{"shellac", "film", between(2.3, 2.2, 2.4, 35), {-0.5}}};
  shop.scratches = full_shop().scratches;
  shop.films = full_shop().films;
  const std::vector<LearnedLine> lines = report(shop);
  ASSERT_EQ(lines.size(), 4U);
  EXPECT_EQ(sentence(lines[0]),
            "Over all papers you are 2.3 times slower than the profiles say. The range is 1.9 to "
            "2.8, from 35 steps.");
  EXPECT_NEAR(lines[0].low, std::exp(std::log(2.3) - 0.5 * std::log(2.8 / 1.9)), 1e-12);
  EXPECT_NEAR(lines[1].value, 1, 1e-12);
  EXPECT_LT(lines[1].low, 1);
  EXPECT_THAT(sentence(lines[1]), testing::StartsWith("With film on shellac you are 1.0 times"));
  EXPECT_EQ(sentence(lines[2]),
            "Scratches of film on shellac are 1.3 times as deep as computed. The range is 1.1 to "
            "1.5, from 6 readings.");
  EXPECT_EQ(sentence(lines[3]),
            "Films of shellac differ by -4.2 um from what their coats say. The range is -7.0 to "
            "-1.4, from 3 films.");
  shop.person = between(2, 1.6, 2.5, 1);
  EXPECT_EQ(sentence(report(shop)[0]),
            "Over all papers you are 2.0 times quicker than the profiles say. The range is 1.6 to "
            "2.5, from 1 step.");
}

}  // namespace
}  // namespace shop_test
