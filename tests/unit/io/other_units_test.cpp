// Numbers that a file gives in another unit than that of the member, by the end of the key.
#include <nlohmann/json.hpp>

#include "levigate/io/descriptions.hpp"
#include "levigate/io/entry.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/told_unit.hpp"
#include "unit/io/json_workshop.hpp"

namespace other_units_test {
namespace {

using namespace json_workshop;
using testing::HasSubstr;
using testing::Not;

Job told(std::string_view from, std::string_view to) { return job_from_json(job_with(from, to)); }

/// The one fault of a text.
template <typename Read>
Fault fault_in(Read read, const std::string& text) {
  try {
    read(text, "spoilt.json");
  } catch (const Error& error) {
    EXPECT_EQ(error.faults().size(), 1U) << error.what();
    return error.fault();
  }
  ADD_FAILURE() << "nothing was thrown";
  return {};
}

TEST(OtherUnits, OfAJobAreThoseOfItsNumbers) {
  EXPECT_DOUBLE_EQ(told("\"area_cm2\": 540", "\"area_in2\": 84").zones[0].area_cm2, 84 * 6.4516);
  EXPECT_DOUBLE_EQ(told("\"area_cm2\": 540", "\"area_m2\": 0.054").zones[0].area_cm2, 540);
  EXPECT_DOUBLE_EQ(told("\"peel_um\": 35", "\"peel_mil\": 1.4").zones[0].peel_um, 35.56);
  EXPECT_DOUBLE_EQ(
      told("\"peel_wavelength_mm\": 3", "\"peel_wavelength_in\": 0.12").zones[0].peel_wavelength_mm,
      3.048);
  const Film film =
      *told("{\"mean_um\": 45, \"sd_um\": 6}", "{\"mean_mil\": 1.8, \"sd_um\": 6}").zones[2].film;
  EXPECT_DOUBLE_EQ(film.mean_um, 45.72);
  EXPECT_EQ(film.sd_um, 6);
  const Film counted =
      *told("\"dry_um_per_coat\": 28, \"sd_um\": 7", "\"dry_mil_per_coat\": 1.1, \"sd_mil\": 0.3")
           .zones[1]
           .film;
  EXPECT_DOUBLE_EQ(counted.mean_um, 3 * 27.94);
  EXPECT_DOUBLE_EQ(told("\"prefer\"", "\"weight_lb\": 10, \"prefer\"").weight_kg.value(),
                   4.5359237);
  EXPECT_DOUBLE_EQ(told("\"prefer\"", "\"age_days\": 14, \"prefer\"").age_h.value(), 336);
  const std::string list = "[88, 97, 92, 84, 95, 90, 101, 87, 91, 85, 96, 93]";
  const Job mils = told("\"readings_um\": " + list, "\"readings_mil\": [3.5, 3.75, 3.25]");
  EXPECT_DOUBLE_EQ(mils.zones[0].film->mean_um, 88.9);
  EXPECT_EQ(mils.zones[0].film->readings, 3U);
}

TEST(OtherUnits, OfWhatIsOnHandTooAndOfJournalAndShop) {
  const Stack stack = stack_from_json(
      stack_with("\"width_mm\": 230, \"height_mm\": 280", "\"width_in\": 9, \"height_in\": 11"));
  EXPECT_DOUBLE_EQ(stack.sheets[0].width_mm, 228.6);
  EXPECT_DOUBLE_EQ(stack.sheets[0].height_mm, 279.4);
  const Job own = told("\"foam pad\"", R"({"modulus_psi": 100, "area_in2": 9, "force_lbf": 4,
"speed_ft_min": 100, "duty": 0.6, "wrap": 1})");
  EXPECT_DOUBLE_EQ(own.zones[2].block.force_n, 4 * 4.4482216152605);
  EXPECT_DOUBLE_EQ(own.zones[2].block.speed_m_s, 0.508);
  EXPECT_NEAR(own.zones[2].block.modulus_mpa, 0.6894757, 1e-7);
  const Entry entry = entry_from_json(
      R"({"format": "levigate.journal/1", "at": "2026-03-01T09:30:00Z", "kind": "step ended", "job": "a", "sheet": "b", "hours": 1.5})",
      "");
  EXPECT_EQ(entry.minutes, 90);
  const Shop shop = shop_from_json(
      R"({"format": "levigate.shop/1", "films": [{"coating": "a", "offset_mil": 0.1, "low_um": 1, "high_um": 4}]})");
  EXPECT_DOUBLE_EQ(shop.films[0].offset_um, 2.54);
}

TEST(OtherUnits, AreNotWritten) {
  const std::string text = to_json(told("\"area_cm2\": 540", "\"area_in2\": 84"));
  EXPECT_THAT(text, HasSubstr("\"area_cm2\": 541.93"));
  EXPECT_THAT(text, Not(HasSubstr("area_in2")));
}

TEST(OtherUnits, OneNumberIsGivenOnce) {
  const std::string text = job_with("\"area_cm2\": 540", "\"area_cm2\": 540,\n\"area_in2\": 84");
  expect_bad(job_from_json, text, "/zones/0/area_in2", line_with(text, "area_in2"),
             {"area_in2 does not go with area_cm2"});
  EXPECT_THROW(told("\"area_cm2\": 540", "\"area_ft2\": 1, \"area_in2\": 84"), BadInput);
}

TEST(OtherUnits, AnErrorSpeaksInTheUnitOfTheFile) {
  const Fault far = fault_in(job_from_json, job_with("\"area_cm2\": 540", "\"area_in2\": 5e6"));
  EXPECT_THAT(far.message, HasSubstr("area_in2 = 5000000 in2 is outside 0.0155"));
  EXPECT_THAT(far.message, HasSubstr(" in2, in /zones/0 ('top'), line 8 of spoilt.json"));
  EXPECT_EQ(far.pointer, "/zones/0/area_in2");
  EXPECT_EQ(far.quantity, "area_in2");
  EXPECT_EQ(far.value, 5e6);
  EXPECT_EQ(far.unit, "in2");
  EXPECT_DOUBLE_EQ(far.high.value(), 1e6 / 6.4516);
  EXPECT_EQ(far.code, ErrorCode::out_of_range);

  const std::string list = "\"readings_um\": [88, 97,";
  const Fault one = fault_in(job_from_json, job_with(list, "\"readings_um\": [88, -97,"));
  EXPECT_THAT(one.message, HasSubstr("readings_um[1] = -97 um is outside 0 to 20000 um"));
  const Fault other =
      fault_in(job_from_json, with(job_with(list, "\"readings_mil\": [3.5, -3.75,"),
                                   "92, 84, 95, 90, 101, 87, 91, 85, 96, 93", "3.5"));
  EXPECT_THAT(other.message, HasSubstr("readings_mil[1] = -3.75 mil is outside 0 to 787.4 mil"));
  EXPECT_EQ(other.pointer, "/zones/0/film/readings_mil");

  const Fault text = fault_in(job_from_json, job_with("\"area_cm2\": 540", "\"area_in2\": \"84\""));
  EXPECT_THAT(text.message, HasSubstr("area_in2 is text, wanted a number"));
}

/// Two members that only together cannot be: the message has them in our units, and then what the file has.
TEST(OtherUnits, ARuleTellsWhatTheFileHas) {
  const std::string text = job_with("\"peel_um\": 35,", R"("peel_um": 35, "defects": [
{"kind": "run", "height_um": 80, "width_in": 0.4, "length_mm": 4}],)");
  const Fault fault = fault_in(job_from_json, text);
  EXPECT_EQ(fault.pointer, "/zones/0/defects/0/width_in");
  EXPECT_THAT(fault.message, HasSubstr("is more than length_mm = 4"));
  EXPECT_EQ(fault.line, line_with(text, "width_in"));
}

TEST(OtherUnits, AUnitThatIsNotKnownIsToldThoseThatAre) {
  for (const char* key : {"area_acres", "area"}) {
    try {
      told("area_cm2\": 540", std::string(key) + "\": 540");
      ADD_FAILURE() << key;
    } catch (const BadInput& error) {
      ASSERT_EQ(error.faults().size(), 1U) << "is no missing area too";
      EXPECT_THAT(error.what(), HasSubstr("the nearest is \"area_cm2\"; it may end with mm2, "
                                          "square_centimetres, m2, in2 or ft2 in place of cm2"));
      EXPECT_EQ(error.fault().example, "\"area_cm2\": 540");
    }
  }
}

/// Else the end of a key could mean two members.
TEST(OtherUnits, NoTypeHasTwoMembersThatAreOneInAnotherUnit) {
  const auto types = nlohmann::json::parse(descriptions_json())["types"];
  int with_unit = 0;
  for (const auto& [name, type] : types.items()) {
    for (const auto& one : type["members"]) {
      with_unit += one.contains("other_endings") ? 1 : 0;
      for (const auto& other : type["members"]) {
        EXPECT_EQ(unit_told_for(one["name"].get<std::string>(), other["name"].get<std::string>()),
                  nullptr)
            << name << ": " << one["name"] << " and " << other["name"];
      }
    }
  }
  EXPECT_GT(with_unit, 100);
}

}  // namespace
}  // namespace other_units_test
