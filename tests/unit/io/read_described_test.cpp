// Reading by a description: everything that is wrong with a file, at once and each with its place.
#include "unit/io/json_workshop.hpp"

namespace read_described_test {
namespace {

using namespace json_workshop;
using testing::ElementsAre;
using testing::HasSubstr;

template <typename Read>
std::vector<Fault> faults_of_file(Read read, const std::string& text) {
  try {
    read(text, "spoilt.json");
  } catch (const Error& error) {
    return error.faults();
  }
  return {};
}

std::vector<Fault> faults_in(const std::string& text) {
  return faults_of_file(shop_from_json, text);
}

std::vector<std::string> places(const std::vector<Fault>& faults) {
  std::vector<std::string> result;
  for (const Fault& fault : faults)
    result.push_back(fault.pointer + " " + std::to_string(fault.line));
  return result;
}

constexpr auto spoilt_shop = R"({
  "format": "levigate.shop/1",
  "person": {"duty_factor": 400, "low": 0.1, "high": 1},
  "rates": [
    {"coating": "", "factor": 1, "low": 0.5, "high": 2},
    {"coating": "shellac", "facter": 1, "low": 0.5, "high": 2},
    {"coating": "shellac", "factor": "one", "low": 3, "high": 2, "correlations": [0.5, 2]},
    {"coating": "shellac", "factor": 4, "low": 0.5, "high": 2}
  ],
  "jobs": [{"job": "tray", "lines": 1.5}, 7, {"job": "tray", "lines": -1}],
  "colour": "blue"
})";

TEST(ReadDescribed, TellsEveryFaultOfAFileAtOnce) {
  const std::vector<Fault> faults = faults_in(spoilt_shop);
  EXPECT_THAT(
      places(faults),
      ElementsAre("/colour 11", "/person/duty_factor 3", "/rates/0/coating 5", "/rates/1/facter 6",
                  "/rates/2/factor 7", "/rates/2/correlations 7", "/rates/3/factor 8",
                  "/jobs/0/lines 10", "/jobs/1 10", "/jobs/2/lines 10"));
  EXPECT_EQ(faults[1].code, ErrorCode::out_of_range);
  EXPECT_EQ(faults[1].quantity, "duty_factor");
  EXPECT_EQ(faults[1].value, 400.0);
  EXPECT_EQ(faults[1].high, 100.0);
  EXPECT_THAT(faults[5].message, HasSubstr("correlations[1] = 2 is outside -1 to 1"));
  for (const Fault& fault : faults) {
    EXPECT_THAT(fault.message,
                HasSubstr(", line " + std::to_string(fault.line) + " of spoilt.json"));
  }
}

TEST(ReadDescribed, TellsEveryFaultOfAJobAtOnce) {
  const std::vector<Fault> faults = faults_of_file(job_from_json, R"({
  "format": "levigate.job/1",
  "name": 7,
  "coating": {"kind": "coating", "hardness_mpa": 130, "wear_coefficient": 0.02,
    "refractive_index": 0.5, "cure": {"hard_cure_h": 200, "points": [[24, 60], [48], [0, "x"]]}},
  "zones": [
    {"name": "top", "area_cm2": 0, "block": "soft block",
     "film": {"readings_um": [90], "gauge": "laser"}},
    {"name": "side", "area_cm2": 90, "block": "foam pad", "peel_um": 30,
     "film": {"coats": [{"dry_um": 40, "thinner": 0.1}, {"wet_um": 100}], "recoat_window_h": -1,
       "mean_um": 80},
     "start": {"scratched_by": "800"}},
    {"name": "rim", "area_cm2": 20, "block": "foam pad", "edge_of": "lid", "levelled": true}
  ],
  "target": {"size_um": 8, "grade": "P650"},
  "rules": {"overcut": 0, "max_ratio": 1.1},
  "prefer": "minuets"
})");
  EXPECT_THAT(
      places(faults),
      ElementsAre("/name 3", "/coating/kind 4", "/coating/cure/points/1 5",
                  "/coating/cure/points/2/1 5", "/coating/cure/points/2 5",
                  "/coating/refractive_index 5", "/zones/0/block 7", "/zones/0/film/gauge 8",
                  "/zones/0/area_cm2 7", "/zones/1/film/mean_um 11",
                  "/zones/1/film/coats/0/thinner 10", "/zones/1/film/coats/1 10",
                  "/zones/1/film/recoat_window_h 10", "/zones/1/start/scratched_by 12",
                  "/zones/2/levelled 13", "/target/size_um 15", "/target/grade 15",
                  "/rules/overcut 16", "/rules 16", "/prefer 17", "/zones/2/edge_of 13"));
}

TEST(ReadDescribed, TellsEveryFaultOfAStackAtOnce) {
  const std::vector<Fault> faults = faults_of_file(stack_from_json, R"({
  "format": "levigate.stack/1",
  "bare_number": "FEPA",
  "sheets": [
    {"id": "", "label": "P400", "backing": "birch", "width_mm": 0, "height_mm": 280, "onhand": 2},
    {"id": "bar", "label": "fine", "compound": {"size_um": 2, "worn_um": 3, "wear_share": 0.1}},
    {"id": "pad", "label": "P3000", "size_um": 9, "compound": "fine", "block": "pad",
     "wheel": {"rpm": 900}, "price": -1}
  ]
})");
  std::vector<std::string> where;
  for (const Fault& fault : faults) where.push_back(fault.pointer);
  EXPECT_THAT(where, testing::IsSupersetOf(
                         {"/bare_number", "/sheets/0/id", "/sheets/0/backing", "/sheets/0/width_mm",
                          "/sheets/0/onhand", "/sheets/1/compound", "/sheets/2/size_um",
                          "/sheets/2/block", "/sheets/2/wheel", "/sheets/2/price"}));
}

TEST(ReadDescribed, AMisspeltKeyIsNotTakenForAMissingOneToo) {
  const std::vector<Fault> faults =
      faults_in(R"({"format": "levigate.shop/1", "minutes_noise": {"log_sd": 0.3, "weigth": 4}})");
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_THAT(faults[0].message, HasSubstr("the nearest is \"weight\""));
}

TEST(ReadDescribed, ARuleIsAskedOnlyWhereAllOfItsValueWasRead) {
  const std::vector<Fault> faults = faults_in(
      R"({"format": "levigate.shop/1", "films": [{"coating": "a", "offset_um": 5, "low_um": 9}]})");
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_THAT(faults[0].message, HasSubstr("high_um is missing, in /films/0"));
}

TEST(ReadDescribed, ANameOfControlCharactersEndsNoMessage) {
  const auto text = R"({"format": "levigate.job/1", "name": "\u0000x", "zones": [], "coating":
"two-part urethane", "target": {"size_um": 8}})";
  expect_bad(job_from_json, text, "/zones", 1, {"zones is empty", "'?x'"});
}

TEST(ReadDescribed, OneFaultKeepsItsClass) {
  EXPECT_THROW(shop_from_json(
                   R"({"format": "levigate.shop/1", "minutes_noise": {"log_sd": 0, "weight": 4}})"),
               OutOfRange);
}

TEST(ReadDescribed, EndsWhereNobodyWouldReadOn) {
  std::string many;
  for (int i = 0; i < 500; ++i) many += std::string(i > 0 ? "," : "") + "7";
  EXPECT_EQ(faults_in("{\"format\": \"levigate.shop/1\", \"jobs\": [" + many + "]}").size(), 100U);
}

TEST(ReadDescribed, AnObjectOfAThousandKeysIsNoneOfOurs) {
  std::string many = "{\"format\": \"levigate.shop/1\"";
  for (int i = 0; i < 1000; ++i) many += ",\"" + std::to_string(i) + "\":0";
  expect_bad(shop_from_json, many + "}", "/999", 1, {"an object has more than 1000 keys"});
}

std::string simulation_with(std::string_view from, std::string_view to) {
  Simulation simulation;
  simulation.draws = 10;
  simulation.steps = {
      {.sheet = "a", .minutes = {}, .sheets_used = {}, .paper_short = {}, .zones = {}}};
  return with(to_json(simulation), from, to);
}

TEST(ReadDescribed, WholeNumbersKeepAllTheirDigits) {
  const auto seed = [](const std::string& text) {
    return simulation_from_json(simulation_with("\"seed\": 0", "\"seed\": " + text)).seed;
  };
  EXPECT_EQ(seed("18446744073709551615"), 18446744073709551615U);
  EXPECT_EQ(seed("9007199254740993"), 9007199254740993U);
  EXPECT_EQ(seed("3.0"), 3U);
  EXPECT_THROW(seed("-1"), OutOfRange);
  EXPECT_THROW(seed("3.5"), BadInput);
  EXPECT_THROW(seed("1e300"), BadInput);
  EXPECT_THROW(
      simulation_from_json(simulation_with("\"draws\": 10", "\"draws\": 18446744073709551615")),
      BadInput);
}

TEST(ReadDescribed, NullIsNoneInAResultAndNothingElse) {
  const auto read = [](const std::string& text, const std::string& file) {
    return simulation_from_json(text, file);
  };
  EXPECT_EQ(read(simulation_with("null", "null"), "").steps[0].paper_short, std::nullopt);
  const std::string text = simulation_with("\"draws\": 10", "\"draws\": null");
  expect_bad(read, text, "/draws", line_with(text, "draws"), {"is null", "wanted a number"});
  expect_bad(shop_from_json, "{\"format\": \"levigate.shop/1\", \"rates\": null}", "/rates", 1,
             {"is null", "wanted a list in [ ]"});
}

}  // namespace
}  // namespace read_described_test
