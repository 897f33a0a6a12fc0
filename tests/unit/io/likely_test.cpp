// Numbers that are most likely of another unit than their name says: a question, and two ways to answer it in the file.
#include "levigate/io/work/likely.hpp"

#include "unit/io/json_workshop.hpp"

namespace likely_test {
namespace {

using namespace json_workshop;
using testing::HasSubstr;

void asked(const std::string& text, const std::string& pointer, std::string_view at,
           std::initializer_list<std::string> parts) {
  expect_bad(job_from_json, text, pointer, line_with(text, at), parts);
}

constexpr auto area = "\"area_cm2\": 540";
constexpr auto edges_film = "{\"mean_um\": 45, \"sd_um\": 6}";
constexpr auto readings = "[88, 97, 92, 84, 95, 90, 101, 87, 91, 85, 96, 93]";

TEST(Likely, AnAreaInSquareMetresIsAskedAbout) {
  asked(job_with(area, "\"area_cm2\": 0.54"), "/zones/0/area_cm2", "0.54",
        {"area_cm2 = 0.54 cm2 is unlikely", "Is the unit cm2? If not, write", "\"area_m2\": 0.54",
         "If it is, write \"area_square_centimetres\": 0.54"});
  EXPECT_EQ(job_from_json(job_with(area, "\"area_m2\": 0.54")).zones[0].area_cm2, 5400);
}

TEST(Likely, ANumberOutOfItsRangeIsToldTheUnitTooInWhichItIsLikely) {
  const std::string text = job_with(area, "\"area_cm2\": 0.054");
  const OutOfRange error = expect_fails<OutOfRange>(
      job_from_json, text, line_with(text, "0.054"),
      {"area_cm2 = 0.054 cm2 is outside 0.1 to", "If not, write \"area_m2\": 0.054 or"});
  EXPECT_EQ(error.faults().size(), 1U);
}

TEST(Likely, FilmInMilOrMillimetresIsAskedAbout) {
  asked(job_with(edges_film, "{\"mean_um\": 4.5, \"sd_um\": 6}"), "/zones/2/film/mean_um", "4.5",
        {"mean_um = 4.5 um", "\"mean_mil\": 4.5", "\"mean_microns\": 4.5"});
  asked(job_with(edges_film, "{\"mean_um\": 0.1, \"sd_um\": 6}"), "/zones/2/film/mean_um", "0.1",
        {"\"mean_mm\": 0.1"});
  asked(job_with(edges_film, "{\"mean_um\": 45, \"sd_um\": 0.3}"), "/zones/2/film/sd_um", "0.3",
        {"\"sd_mil\": 0.3"});
  asked(job_with(readings, "[0.088, 0.097]"), "/zones/0/film/readings_um", "0.088",
        {"readings_um holds 0.088 um", "\"readings_mm\": [0.088, ...]"});
  asked(job_with(edges_film, R"({"coats": [{"wet_um": 4, "volume_solids": 0.5}],
"recoat_window_h": 24, "sd_um": 5})"),
        "/zones/2/film/coats/0/wet_um", "wet_um", {"\"wet_mil\": 4"});
}

TEST(Likely, PeelAndItsWavesAreAskedAbout) {
  asked(job_with("\"peel_um\": 35", "\"peel_um\": 1.2"), "/zones/0/peel_um", "1.2",
        {"\"peel_mil\": 1.2"});
  asked(job_with("\"peel_wavelength_mm\": 3", "\"peel_wavelength_mm\": 0.12"),
        "/zones/0/peel_wavelength_mm", "0.12", {"\"peel_wavelength_in\": 0.12"});
  EXPECT_NO_THROW(job_from_json(job_with("\"peel_um\": 35", "\"peel_um\": 0"))) << "none is none";
}

TEST(Likely, ASheetInInchesOrCentimetresIsAskedAbout) {
  const std::string text =
      stack_with("\"width_mm\": 230, \"height_mm\": 280", "\"width_mm\": 9, \"height_mm\": 11");
  try {
    stack_from_json(text, "spoilt.json");
    ADD_FAILURE() << "took a sheet of 9 mm";
  } catch (const BadInput& error) {
    ASSERT_EQ(error.faults().size(), 2U);
    EXPECT_THAT(error.faults()[0].message, HasSubstr("\"width_cm\": 9 or \"width_in\": 9"));
    EXPECT_EQ(error.faults()[1].pointer, "/sheets/0/height_mm");
  }
  EXPECT_NO_THROW(stack_from_json(
      with(with(text, "width_mm", "width_millimetres"), "height_mm", "height_millimetres")));
}

/// What is meant as it stands keeps its unit in full in the file that is written, so that this one is not asked about again.
TEST(Likely, WhatIsMeantIsWrittenSoAndReadsBackEqual) {
  std::string text = job_with(area, "\"area_square_centimetres\": 0.54");
  text = with(text, "\"peel_um\": 35", "\"peel_microns\": 1.2");
  text = with(text, edges_film, "{\"mean_microns\": 30, \"sd_microns\": 0.31}");
  const Job job = job_from_json(text);
  EXPECT_EQ(job.zones[0].area_cm2, 0.54);
  const std::string written = to_json(job);
  EXPECT_THAT(written, HasSubstr("\"area_square_centimetres\": 0.54"));
  EXPECT_THAT(written, HasSubstr("\"peel_microns\": 1.2"));
  EXPECT_THAT(written, HasSubstr("\"mean_um\": 30"));
  EXPECT_EQ(job_from_json(written), job);
}

TEST(Likely, ANumberThatNoUnitMakesLikelyIsTakenAsItStands) {
  using detail::likely_film_um, detail::meant_units;
  EXPECT_TRUE(meant_units(likely_film_um, "mean_um", 0).empty());
  EXPECT_TRUE(meant_units(likely_film_um, "mean_um", 90).empty());
  EXPECT_TRUE(meant_units(likely_film_um, "mean_um", likely_film_um.low).empty());
  EXPECT_TRUE(meant_units(likely_film_um, "mean_um", 3000).empty());
  ASSERT_EQ(meant_units(likely_film_um, "mean_um", 4.5).size(), 1U);
  EXPECT_EQ(meant_units(likely_film_um, "mean_um", 4.5)[0]->unit, "mil");
}

/// Each line of the table names a number that its type has, with a unit, and a range around the likely one.
TEST(Likely, TheTableNamesMembersThatThereAre) {
  for (const detail::LikelyMember& one : detail::likely_members()) {
    const Member* member = one.of->find(one.member);
    ASSERT_NE(member, nullptr) << one.of->name << "." << one.member;
    EXPECT_NE(name_in_full(one.member), one.member);
    EXPECT_LT(member->low, one.likely.low);
    EXPECT_GT(member->high, one.likely.high);
    if (member->example.empty()) continue;
    const double usual = std::stod(std::string(member->example.substr(member->example[0] == '[')));
    EXPECT_GE(usual, one.likely.low) << one.member;
    EXPECT_LE(usual, one.likely.high) << one.member;
  }
}

}  // namespace
}  // namespace likely_test
