// Jobs that cannot be used: each error names what, where, and what would do.
#include "unit/io/json_workshop.hpp"

namespace bad_job_test {
namespace {

using namespace json_workshop;

void bad_job(const std::string& text, const std::string& pointer, std::string_view at,
             std::initializer_list<std::string> parts) {
  expect_bad(job_from_json, text, pointer, line_with(text, at), parts);
}

void job_out_of_range(const std::string& text, std::string_view at,
                      std::initializer_list<std::string> parts) {
  expect_fails<OutOfRange>(job_from_json, text, line_with(text, at), parts);
}

TEST(BadJob, WrongFormatTag) {
  const std::string text = demo_text("stack.json");
  bad_job(text, "/format", "\"format\"", {"'levigate.stack/1'", "'levigate.job/1'"});
  bad_job(job_with("levigate.job/1", "levigate.job/2"), "/format", "\"format\"",
          {"'levigate.job/2'", "'levigate.job/1'"});
}

TEST(BadJob, NoFormatTag) {
  bad_job("{}", "", "{", {"format is missing", "'levigate.job/1'"});
  bad_job("[1]", "", "[", {"is a list", "'levigate.job/1'"});
  bad_job(job_with("\"levigate.job/1\"", "1"), "", "{", {"format", "'levigate.job/1'"});
}

TEST(BadJob, EveryTruncationIsRefused) {
  const std::string whole = demo_text("job.json");
  const std::size_t end = whole.rfind('}');
  for (std::size_t length = 0; length < end; ++length) {
    EXPECT_THROW(job_from_json(whole.substr(0, length)), BadInput) << length;
  }
}

TEST(BadJob, TruncatedTextNamesLineAndColumn) {
  const std::string text = "{\n  \"format\": \"levigate.job/1\",\n  \"name\": ";
  expect_bad(job_from_json, text, "/name", 3,
             {"the text ends too early: the { of line 1 is not closed", "line 3, column 11"});
}

TEST(BadJob, TextThatIsNoJson) {
  expect_bad(job_from_json, "", "", 1, {"the text is empty"});
  expect_bad(job_from_json, "nonsense", "", 1, {"column"});
  const std::string broken = job_with("mantel", "\xFF\xFE");
  bad_job(broken, "/name", "\"name\"", {"UTF-8"});
}

TEST(BadJob, NotANumberAndOverflow) {
  bad_job(job_with(": 540", ": NaN"), "/zones/0/area_cm2", "NaN", {"NaN is no number"});
  bad_job(job_with(": 540", ": Infinity"), "/zones/0/area_cm2", "Infinity",
          {"Infinity is no number"});
  bad_job(job_with(": 540", ": 1e999"), "/zones/0/area_cm2", "1e999", {"overflow", "1e999"});
}

TEST(BadJob, NumbersOutOfRange) {
  for (const char* size : {"-1", "0", "1e308", "-1e308", "1e-308"}) {
    const std::string value = std::string("\"size_um\": ") + size;
    job_out_of_range(job_with("\"size_um\": 8", value), value,
                     {"size_um = ", "0.01 to 10000 um", "/target"});
  }
  job_out_of_range(job_with(": 540", ": -540"), "-540", {"area_cm2 = -540", "/zones/0", "'top'"});
  job_out_of_range(job_with("\"peel_um\": 30", "\"peel_um\": -30"), "-30", {"peel_um = -30"});
  job_out_of_range(job_with("\"coats\": 3", "\"coats\": 0"), "\"coats\"",
                   {"coats = 0", "1 to 1000"});
  job_out_of_range(job_with("[88, 97,", "[88, -97,"), "-97",
                   {"readings_um[1] = -97", "/zones/0/film"});
}

TEST(BadJob, CoatWithoutFilm) {
  const std::string text =
      job_with("\"film\": {\"mean_um\": 45, \"sd_um\": 6},\n      \"edge_of\": \"top\"",
               "\"levelled\": false");
  expect_bad(job_from_json, text, "/zones/2", line_with(text, "\"edges\"") - 1,
             {"film is missing", "'edges'"});
}

TEST(BadJob, SolidWithFilm) {
  bad_job(job_with("two-part urethane", "acrylic sheet"), "/zones/0/film", "\"film\"",
          {"solid", "'top'"});
}

TEST(BadJob, FilmThinnerThanTheReserve) {
  bad_job(job_with("\"mean_um\": 45", "\"mean_um\": 9"), "/zones/2/film", "\"mean_um\": 9",
          {"mean_um = 9 um", "reserve_um = 10 um", "'edges'"});
}

TEST(BadJob, FilmInTwoForms) {
  bad_job(job_with("{\"mean_um\": 45,", "{\"mean_um\": 45, \"readings_um\": [1, 2],"),
          "/zones/2/film/mean_um", "\"mean_um\"", {"mean_um and sd_um do not go with readings_um"});
  bad_job(job_with("{\"mean_um\": 45,", "{\"mean_um\": 45, \"coats\": 2,"), "/zones/2/film/mean_um",
          "\"mean_um\"", {"mean_um does not go with coats"});
  bad_job(job_with("\"coats\": 3, ", ""), "/zones/1/film", "dry_um_per_coat",
          {"is missing one of mean_um, readings_um and coats"});
}

TEST(BadJob, TooFewReadings) {
  const std::string text = job_with("[88, 97, 92, 84, 95, 90, 101, 87, 91, 85, 96, 93]", "[]");
  bad_job(text, "/zones/0/film/readings_um", "[]", {"readings_um has 0 entries", "at least 2"});
}

TEST(BadJob, CoatsMustBeWhole) {
  bad_job(job_with("\"coats\": 3", "\"coats\": 2.5"), "/zones/1/film/coats", "2.5",
          {"coats = 2.5 is not a whole number"});
}

TEST(BadJob, ZeroZones) {
  const std::string text = demo_text("job.json");
  const std::size_t begin = text.find('[');
  const std::size_t end = text.find("],\n  \"start\"");
  bad_job(text.substr(0, begin + 1) + text.substr(end), "/zones", "\"zones\"", {"zones is empty"});
}

TEST(BadJob, TwoZonesOfOneName) {
  bad_job(job_with("\"edges\"", "\"top\""), "/zones/2/name", "\"top\",\n      \"area_cm2\": 90",
          {"zone 'top' is repeated"});
}

TEST(BadJob, RatiosInTheWrongOrder) {
  for (const char* rules :
       {"{\"min_ratio\": 1.75}", "{\"min_ratio\": 2}", "{\"max_ratio\": 1.1}"}) {
    const std::string value = std::string("\"rules\": ") + rules + ",\n  \"prefer\"";
    const std::string text = job_with("\"prefer\"", value);
    const BadInput error =
        expect_fails<BadInput>(job_from_json, text, line_with(text, "\"rules\""),
                               {"min_ratio = ", "must be below max_ratio = ", "/rules"});
    EXPECT_THAT(error.pointer(), testing::StartsWith("/rules"));
  }
}

TEST(BadJob, UnknownKeyNamesTheNearest) {
  bad_job(job_with("\"area_cm2\": 540", "\"area_cm\": 540"), "/zones/0/area_cm", "\"area_cm\"",
          {"\"area_cm\" is not known", "the nearest is \"area_cm2\"", "it may end with mm2,"});
  bad_job(job_with("\"prefer\"", "\"prefers\""), "/prefers", "\"prefers\"",
          {"the nearest is \"prefer\"", "known are format, name, coating"});
  bad_job(job_with("\"peel_wavelength_mm\": 3", "\"peel_wavelength\": 3"),
          "/zones/0/peel_wavelength", "\"peel_wavelength\"",
          {"the nearest is \"peel_wavelength_mm\"; it may end with um,"});
}

TEST(BadJob, UnknownKeyWithSlashAndTilde) {
  bad_job(job_with("\"prefer\"", "\"a/b~c\""), "/a~1b~0c", "a/b~c", {"\"a/b~c\" is not known"});
}

TEST(BadJob, RepeatedKey) {
  bad_job(job_with("\"edge_of\": \"top\"", "\"edge_of\": \"lid\",\n      \"edge_of\": \"top\""),
          "/zones/2/edge_of", "\"edge_of\": \"top\"", {"is repeated", "/zones/2/edge_of"});
}

TEST(BadJob, PartsOfACoatingThatCannotBe) {
  const auto own = [](const std::string& more) {
    return job_with("\"two-part urethane\"",
                    "{\"kind\": \"coat\", \"hardness_mpa\": 130, \"wear_coefficient\": 0.02,\n"
                    "\"refractive_index\": 1.5,\n" +
                        more + "}");
  };
  const std::string limits =
      "\"limits\": {\"speed_low_m_s\": 9,\n\"speed_high_m_s\": 18, \"effusivity\": 500, ";
  EXPECT_NO_THROW(job_from_json(own(limits + "\"rise_k\": 33}")));
  bad_job(own(limits + "\"rise\": 33}"), "/coating/limits/rise", "\"rise\"",
          {"key \"rise\" is not known", "the nearest is \"rise_k\""});
  bad_job(own("\"limits\": {\"rise_k\": 33}"), "/coating/limits", "\"limits\"",
          {"speed_low_m_s is missing"});
  bad_job(own("\"limits\": 18"), "/coating/limits", "\"limits\"", {"limits is a number"});
  job_out_of_range(own(limits + "\"rise_k\": 0}"), "\"rise_k\"", {"rise_k = 0", "/coating/limits"});
  job_out_of_range(
      own(with(limits, "\"speed_high_m_s\": 18", "\"speed_high_m_s\": 8") + "\"rise_k\": 33}"),
      "\"limits\"", {"speed_low_m_s (up to speed_high_m_s) = 9", "/coating/limits"});
  bad_job(own("\"cure\": {\"shrink\": 0.1}"), "/coating/cure", "\"cure\"",
          {"hard_cure_h is missing"});
  job_out_of_range(own("\"cure\": {\n\"hard_cure_h\": 0}"), "\"hard_cure_h\"",
                   {"hard_cure_h = 0", "/coating/cure"});
  bad_job(own("\"redissolves\": 1"), "/coating/redissolves", "\"redissolves\"",
          {"redissolves is a number", "true or false"});
}

TEST(BadJob, WrongType) {
  bad_job(job_with(": 540", ": \"540\""), "/zones/0/area_cm2", "\"540\"",
          {"area_cm2 is text", "wanted a number"});
  bad_job(job_with("\"Walnut mantel-clock case\"", "null"), "/name", "null",
          {"name is null", "wanted text in double quotes"});
  bad_job(job_with("\"two-part urethane\"", "[]"), "/coating", "\"coating\"",
          {"coating is a list", "the name of a profile, or an object"});
  bad_job(job_with("{\"as\": \"sprayed\"}", "true"), "/start", "\"start\"",
          {"start is true or false", "wanted an object"});
}

TEST(BadJob, UnknownProfileNamesTheNearest) {
  bad_job(job_with("two-part urethane", "two part uretane"), "/coating", "two part",
          {"coating 'two part uretane' is not known", "the nearest is 'two-part urethane'"});
  bad_job(job_with("two-part urethane", "nitro laquer"), "/coating", "nitro",
          {"coating 'nitro laquer' is not known", "the nearest is 'nitrocellulose lacquer'"});
  bad_job(job_with("\"foam pad\"", "\"foam bad\""), "/zones/2/block", "foam bad",
          {"the nearest is 'foam pad'"});
}

TEST(BadJob, ProfileObjectOutOfRange) {
  const std::string block =
      "{\"modulus_mpa\": \"rigid\", \"area_cm2\": 60, \"force_n\": 0,\n\"speed_m_s\": 0.5, "
      "\"duty\": "
      "0.6, \"wrap\": 1}";
  job_out_of_range(job_with("\"foam pad\"", block), "\"force_n\": 0",
                   {"force_n = 0 N", "/zones/2/block"});
  bad_job(job_with("\"foam pad\"", with(block, "rigid", "stiff")), "/zones/2/block/modulus_mpa",
          "stiff", {"a number or \"rigid\""});
  bad_job(job_with("\"foam pad\"", with(block, "\"duty\": 0.6, ", "")), "/zones/2/block", "rigid",
          {"duty is missing"});
}

TEST(BadJob, LabelsOfStartAndTarget) {
  const std::string bare = job_with("{\"size_um\": 8}", "{\"grade\": \"1500\"}");
  expect_fails<AmbiguousLabel>(job_from_json, bare, line_with(bare, "\"grade\""),
                               {"\"1500\"", "P1500", "JIS #1500", "/target/grade"});
  const std::string unknown = job_with("{\"size_um\": 8}", "{\"grade\": \"P650\"}");
  expect_fails<UnknownGrade>(job_from_json, unknown, line_with(unknown, "\"grade\""),
                             {"P650", "P600", "P800", "/target/grade"});
  const std::string start = job_with("{\"as\": \"sprayed\"}", "{\"scratched_by\": \"400\"}");
  expect_fails<AmbiguousLabel>(job_from_json, start, line_with(start, "scratched_by"),
                               {"\"400\"", "/start/scratched_by"});
  bad_job(job_with("{\"size_um\": 8}", "{\"grade\": \"  \"}"), "/target/grade", "\"grade\"",
          {"label is empty"});
}

TEST(BadJob, StartAndTargetTakeOneKey) {
  bad_job(job_with("{\"size_um\": 8}", "{\"size_um\": 8, \"gloss_gu\": 50}"), "/target/gloss_gu",
          "gloss_gu", {"gloss_gu does not go with size_um"});
  bad_job(job_with("{\"size_um\": 8}", "{}"), "/target", "\"target\"",
          {"one is wanted of grade, size_um, gloss_gu and sheen"});
  bad_job(job_with("\"sprayed\"", "\"spraid\""), "/start/as", "spraid",
          {"'spraid'", "the nearest is 'sprayed'"});
}

TEST(BadJob, StartOfAZone) {
  const auto spoilt = [](const std::string& start) {
    return job_with("\"peel_um\": 35,", "\"peel_um\": 35,\n      \"start\": " + start + ",");
  };
  const std::string at = "\"start\": {";
  bad_job(spoilt("{\"as\": \"sprayed\"}"), "/zones/0/start/as", at, {"key \"as\" is not known"});
  bad_job(spoilt("{\"scratch_um\": 1}"), "/zones/0/start", at, {"scratched_by is missing"});
  bad_job(spoilt("\"P800\""), "/zones/0/start", "\"start\": \"P800\"", {"start is text"});
  bad_job(spoilt("{\"scratched_by\": \"P800\", \"scratch\": 1}"), "/zones/0/start/scratch", at,
          {"the nearest is \"scratch_um\""});
  const std::string bare = spoilt("{\"scratched_by\": \"800\"}");
  expect_fails<AmbiguousLabel>(job_from_json, bare, line_with(bare, at),
                               {"\"800\"", "/zones/0/start/scratched_by"});
  for (const std::string key : {"size_um", "scratch_um", "rq_um"}) {
    const std::string low = spoilt("{\"scratched_by\": \"P800\", \"" + key + "\": -1}");
    expect_fails<OutOfRange>(job_from_json, low, line_with(low, at),
                             {key + " = -1 um", "/zones/0/start"});
  }
}

TEST(JobFile, AGlossHasAnAngleAndMayHaveAnUpperEnd) {
  const auto gloss = [](const std::string& keys) {
    return job_with("{\"size_um\": 8}", "{\"gloss_gu\": 30, " + keys + "}");
  };
  const Target steep = job_from_json(gloss("\"angle_deg\": 20")).target;
  EXPECT_EQ(steep.angle_deg, 20);
  const Target band = job_from_json(gloss("\"gloss_high_gu\": 35")).target;
  EXPECT_EQ(band.gloss_high_gu, 35);
  EXPECT_EQ(band.angle_deg, 60);
  bad_job(gloss("\"angle_deg\": 45"), "/target/angle_deg", "\"gloss_gu\"",
          {"angle_deg = 45 deg, expected 20, 60 or 85"});
  bad_job(gloss("\"gloss_high_gu\": 20"), "/target", "\"gloss_gu\"", {"gloss_high_gu needs"});
}

TEST(BadJob, UnknownSheen) {
  const auto sheen = [](const std::string& scheme, const std::string& name) {
    return job_with("{\"size_um\": 8}",
                    "{\"sheen\": {\"scheme\": \"" + scheme + "\", \"name\": \"" + name + "\"}}");
  };
  bad_job(sheen("institute", "satn"), "/target/sheen", "\"sheen\"",
          {"sheen of scheme institute 'satn' is not known", "the nearest is 'satin'"});
  bad_job(sheen("club", "satin"), "/target/sheen/scheme", "\"sheen\"",
          {"scheme 'club' is not known", "institute, trade and EN 13300"});
  bad_job(sheen("EN 13300", "matt"), "/target/sheen", "\"sheen\"", {"no limits at 60 degrees"});
}

std::string job_with_defect(const std::string& defect) {
  return job_with("\"peel_um\": 35,", "\"peel_um\": 35,\n\"defects\": [\n" + defect + "],");
}

TEST(BadJob, ImpossibleDefects) {
  bad_job(
      job_with_defect("{\"kind\": \"run\", \"height_um\": 80, \"width_mm\": 9, \"length_mm\": 4}"),
      "/zones/0/defects/0/width_mm", "\"run\"", {"width_mm = 9 mm is more than length_mm = 4"});
  job_out_of_range(job_with_defect("{\"kind\": \"nib\", \"height_um\": -5, \"width_mm\": 1}"),
                   "\"nib\"", {"height_um = -5", "/zones/0/defects/0"});
  bad_job(job_with_defect("{\"kind\": \"nip\", \"height_um\": 5, \"width_mm\": 1}"),
          "/zones/0/defects/0/kind", "\"nip\"", {"kind 'nip'", "the nearest is 'nib'"});
  bad_job(job_with_defect("{\"kind\": \"nib\", \"width_mm\": 1}"), "/zones/0/defects/0", "\"nib\"",
          {"one is wanted of height_um and readings"});
  bad_job(job_with_defect("{\"kind\": \"nib\", \"readings\": {\"over_um\": 80, \"beside_um\": 85}, "
                          "\"width_mm\": 1}"),
          "/zones/0/defects/0/readings/over_um", "\"nib\"",
          {"over_um = 80 um and beside_um = 85 um", "nothing that stands proud"});
  bad_job(job_with_defect("{\"kind\": \"nib\", \"hight_um\": 5, \"width_mm\": 1}"),
          "/zones/0/defects/0/hight_um", "hight_um", {"the nearest is \"height_um\""});
}

constexpr auto edges_film = "{\"mean_um\": 45, \"sd_um\": 6}";

TEST(BadJob, ReadingsThatContradictTheCoats) {
  const std::string text = job_with(
      edges_film,
      "{\"coats\": [{\"dry_um\": 40}], \"recoat_window_h\": 24,\n\"readings_um\": [91, 95, "
      "93], \"gauge\": {\"fixed_um\": 1, \"share\": 0.01}}");
  bad_job(text, "/zones/2/film/readings_um", "[91, 95",
          {"reads 93.0 um where the coats make 40.0 um", "standard uncertainties"});
}

TEST(BadJob, CoatsThatCannotBe) {
  bad_job(job_with(edges_film,
                   "{\"coats\": [{\"dry_um\": 40, \"thinner\": 0.1}], "
                   "\"recoat_window_h\": 24, \"sd_um\": 5}"),
          "/zones/2/film/coats/0/thinner", "thinner", {"thinner does not go with dry_um"});
  bad_job(job_with(edges_film,
                   "{\"coats\": [{\"dry_um\": 40, \"applied_h\": 9}, {\"dry_um\": 40}], "
                   "\"recoat_window_h\": 24, \"sd_um\": 5}"),
          "/zones/2/film/coats", "applied_h",
          {"coats[1] was applied at 0 h, before the one above"});
  bad_job(job_with(edges_film, "{\"coats\": [], \"recoat_window_h\": 24, \"sd_um\": 5}"),
          "/zones/2/film/coats", "\"coats\": []", {"coats is empty"});
  bad_job(job_with("[88, 97, 92, 84, 95, 90, 101, 87, 91, 85, 96, 93]",
                   "[88, 97], \"gauge\": \"laser\""),
          "/zones/0/film/gauge", "laser", {"gauge 'laser' is not known"});
}

TEST(BadJob, EdgesThatCannotBe) {
  const auto edge = [](const std::string& keys) {
    return job_with("\"film\": {\"mean_um\": 45, \"sd_um\": 6},\n      \"edge_of\": \"top\"", keys);
  };
  bad_job(edge("\"edge_of\": \"lid\", \"radius_mm\": 1"), "/zones/2/edge_of", "\"lid\"",
          {"edge_of 'lid' is no zone that stands before"});
  bad_job(edge("\"edge_of\": \"top\""), "/zones/2", "{\n      \"name\": \"edges\"",
          {"radius_mm is missing"});
  job_out_of_range(edge("\"edge_of\": \"top\", \"radius_mm\": -1"), "edge_of", {"radius_mm = -1"});
  bad_job(edge("\"edge_of\": \"top\", \"radius_mm\": 1,\n\"levelled\": true"), "/zones/2/levelled",
          "\"levelled\": true", {"levelled does not go with edge_of"});
}

TEST(BadJob, AgeAndCure) {
  const auto aged = [](const std::string& keys) {
    return job_with("\"prefer\"", keys + ", \"prefer\"");
  };
  job_out_of_range(aged("\"age_h\": -3"), "age_h", {"age_h = -3 h"});
  bad_job(aged("\"cure\": {\"hard_cure_h\": 200, \"points\": [[24, 60, 1]]}"), "/cure/points/0",
          "\"cure\"", {"a point is a pair"});
  bad_job(aged("\"cure\": {\"hard_cure_h\": 200, \"points\": [[48, 60], [24, 90]]}"),
          "/cure/points", "\"cure\"", {"points[1], 24 h and 90 MPa"});
}

TEST(BadJob, PeelCountsAsSprayedOnly) {
  const std::string not_levelled = "\"edge_of\": \"top\"";
  bad_job(job_with("\"peel_um\": 35", "\"peel_how\": \"profile\""), "/zones/0/peel_how", "profile",
          {"peel_how needs peel_um"});
  EXPECT_NO_THROW(job_from_json(demo_text("job.json")));
  EXPECT_NO_THROW(job_from_json(job_with(not_levelled, "\"levelled\": false")));
  EXPECT_NO_THROW(job_from_json(with(job_with(not_levelled, "\"levelled\": true"),
                                     "{\"as\": \"sprayed\"}", "{\"scratched_by\": \"P320\"}")));
}

}  // namespace
}  // namespace bad_job_test
