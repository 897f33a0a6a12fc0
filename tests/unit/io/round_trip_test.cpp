// What is written reads back equal.
#include <nlohmann/json.hpp>

#include "levigate/grade/label.hpp"
#include "levigate/grade/sized.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/locate.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/wheel.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/wheel.hpp"
#include "unit/io/json_workshop.hpp"

namespace round_trip_test {
namespace {

using namespace json_workshop;

Job demo_job() { return job_from_json(demo_text("job.json")); }

TEST(RoundTrip, DemoJob) {
  const Job job = demo_job();
  EXPECT_EQ(job, job_from_json(to_json(job)));
}

TEST(RoundTrip, JobWithEverythingOwn) {
  Job job = demo_job();
  job.name = "clock \"case\"\nof w\u00e4lnut / \\";
  job.coating = {"my coat", CoatingKind::coat, 133.3, 0.45, 0.0123, 1.51, true};
  job.zones[0].block = {"glass", std::numeric_limits<double>::infinity(), 30, 7, 0.3, 0.5, 1.2};
  job.zones[1].block.area_cm2 = 1.0 / 3.0;  // keeps the name of a profile with other numbers
  job.zones[1].block.force_n = 0.1;
  job.scratched_by = grade("CAMI 320");
  job.target = {.size_um = grade("P2000").median_um, .gloss_gu = {}, .label = "P2000"};
  job.rules = {{1.1, 2.0}, 1.5, 0.002, 0.95, 0.3, 1.0, 12.0, 0.2, 1e-3};
  job.prefer = Objective::film;
  job.age_h = 30.5;
  job.cure = Cure{240, 0.04, {{24, 60}, {96.5, 120}, {240, 150}}};
  job.zones[0].below_um = 41.5;
  job.zones[0].defects = {{DefectKind::run, 150, 6, 35, 3}, {DefectKind::nib, 22.5, 0.75, 0.75, 1}};
  EXPECT_EQ(job, job_from_json(to_json(job)));
}

TEST(RoundTrip, EveryCoatingIsWrittenAsItsName) {
  for (const CoatingProfile& profile : coating_table) {
    const std::string name(profile.name);
    const Coating coating = coating_named(name);
    Job job = demo_job();
    job.coating = coating;
    if (coating.kind == CoatingKind::solid) {
      for (Zone& zone : job.zones) zone.film.reset();
    }
    EXPECT_THAT(to_json(job), testing::HasSubstr("\"coating\": \"" + name + "\""));
    EXPECT_EQ(job, job_from_json(to_json(job)));
    job.coating.name = "the same, by another name";
    const std::string text = to_json(job);
    EXPECT_EQ(job, job_from_json(text));
    EXPECT_THAT(text, testing::HasSubstr("\"limits\""));
  }
}

TEST(RoundTrip, WhatIsKnownOfACoatingAndWhatIsNot) {
  Job job = demo_job();
  for (const char* name : {"my coat", "shellac", "acrylic sheet"}) {
    job.coating = coating_named("shellac");
    job.coating.name = name;
    job.coating.hardness_mpa = 133.3;
    EXPECT_EQ(job, job_from_json(to_json(job)));
    job.coating.cure = Cure{240, 0.04, {{24, 60}, {96.5, 120}, {240, 150}}};
    job.coating.limits = WheelLimits{10.0 / 3.0, 17.03, 451.5, 22.25};
    job.coating.redissolves = false;
    EXPECT_EQ(job, job_from_json(to_json(job)));
    job.coating.redissolves.reset();
    EXPECT_EQ(job, job_from_json(to_json(job)));
    job.coating.limits.reset();
    EXPECT_EQ(job, job_from_json(to_json(job)));
    job.coating.cure.reset();
    EXPECT_EQ(job, job_from_json(to_json(job)));
  }
}

constexpr auto own_numbers =
    "\"kind\": \"coat\", \"hardness_mpa\": 130, \"wear_coefficient\": 0.02, "
    "\"refractive_index\": 1.5";

Coating read_coating(const std::string& more) {
  return job_from_json(
             job_with("\"two-part urethane\"", "{" + std::string(own_numbers) + more + "}"))
      .coating;
}

TEST(RoundTrip, AnObjectLeavesOutWhatTheProfileOfItsNameSays) {
  const Coating shellac = coating_named("shellac");
  const Coating named = read_coating(", \"name\": \"shellac\"");
  EXPECT_EQ(named.hardness_mpa, 130.0);
  EXPECT_EQ(named.two_part, std::nullopt);
  EXPECT_EQ(named.cure, shellac.cure);
  EXPECT_EQ(named.limits, shellac.limits);
  EXPECT_EQ(named.redissolves, true);
  const Coating unknown = read_coating(
      ", \"name\": \"shellac\", \"cure\": null, \"limits\": null, \"redissolves\": null");
  EXPECT_FALSE(unknown.cure || unknown.limits || unknown.redissolves);
  const Coating nameless = read_coating("");
  EXPECT_EQ(nameless.name, nameless_coating);
  EXPECT_FALSE(nameless.cure || nameless.limits || nameless.redissolves);
  const Coating told = read_coating(
      ", \"limits\": {\"speed_low_m_s\": 9, \"speed_high_m_s\": 18, \"effusivity\": 500, "
      "\"rise_k\": 33}, \"cure\": {\"hard_cure_h\": 100}, \"redissolves\": false");
  EXPECT_EQ(told.limits, (WheelLimits{9, 18, 500, 33}));
  EXPECT_EQ(told.cure, (Cure{100, 0, {}}));
  EXPECT_EQ(told.redissolves, false);
}

TEST(RoundTrip, SolidWithGlossTarget) {
  Job job = demo_job();
  job.coating = coating_named("acrylic sheet");
  for (Zone& zone : job.zones) zone.film.reset();
  job.target = {.size_um = {}, .gloss_gu = 55.5, .label = ""};
  EXPECT_EQ(job, job_from_json(to_json(job)));
  job.coating = {"slate", CoatingKind::solid, 900, 0.3, 0.02, 1.6, {}};
  EXPECT_EQ(job, job_from_json(to_json(job)));
}

TEST(RoundTrip, ASheen) {
  const Job job = job_from_json(job_with(
      "{\"size_um\": 8}", "{\"sheen\": {\"scheme\": \"institute\", \"name\": \"satin\"}}"));
  EXPECT_EQ(job.target.gloss_gu, 20.0);
  EXPECT_EQ(job.target.gloss_high_gu, 35.0);
  EXPECT_EQ(job.target.label, "satin (institute)");
  EXPECT_EQ(job, job_from_json(to_json(job)));
  Job unknown = job;
  unknown.target.label = "silky";
  EXPECT_THROW(to_json(unknown), BadInput);
}

TEST(RoundTrip, AStartWithItsOwnSizeHasNoPlaceInTheFormat) {
  Job job = demo_job();
  job.scratched_by = sized_grade("P400", 33);
  EXPECT_THROW(to_json(job), BadInput);
}

TEST(RoundTrip, WhatAZoneCarries) {
  Job job = demo_job();
  ASSERT_EQ(job.zones.size(), 3U);
  job.zones[0].carries = Carried{grade("P1000"), 1.25, 0.0625};
  job.zones[1].carries = Carried{sized_grade("P400", 33.5)};
  for (const char* label : {"CAMI 600", "9 um", "4.5 um"}) {
    job.zones[2].carries = Carried{grade(label), {}, 0.03};
    EXPECT_EQ(job, job_from_json(to_json(job)));
  }
  job.zones[2].carries = Carried{sized_grade("fine compound", 1.5), 0.2, 0.01, 0.75};
  EXPECT_EQ(job, job_from_json(to_json(job)));
}

TEST(RoundTrip, AZoneThatCarriesAGradeNeedsNoPeel) {
  const std::string peel = "\"peel_um\": 35,";
  const Job job = job_from_json(job_with(peel, "\"start\": {\"scratched_by\": \"P800\"},"));
  EXPECT_EQ(job.zones[0].carries, Carried{grade("P800")});
}

TEST(RoundTrip, WhatNobodyToldIsTakenAsUsualAndStaysMarkedSo) {
  const auto read = [](const std::string& old, const std::string& now) {
    const Job job = job_from_json(job_with(old, now));
    EXPECT_EQ(job, job_from_json(to_json(job)));
    return job;
  };
  const Zone peelless = read("\"peel_um\": 35,", "").zones[0];
  EXPECT_EQ(peelless.peel_um, 20.0);
  EXPECT_EQ(peelless.peel_how, PeelHow::usual);
  EXPECT_FALSE(peelless.usual_wavelength);
  const Zone waveless = read(",\n      \"peel_wavelength_mm\": 3", "").zones[0];
  EXPECT_EQ(waveless.peel_wavelength_mm, 3.0);
  EXPECT_TRUE(waveless.usual_wavelength);
  EXPECT_EQ(waveless.peel_how, PeelHow::by_eye);
  const Film coats = *read(", \"sd_um\": 7", "").zones[1].film;
  EXPECT_DOUBLE_EQ(coats.sd_um, 8.4);
  EXPECT_TRUE(coats.usual_spread);
  const Film mean = *read(", \"sd_um\": 6", "").zones[2].film;
  EXPECT_DOUBLE_EQ(mean.sd_um, 4.5);
  EXPECT_TRUE(mean.usual_spread);
  const Film once =
      *read("[88, 97, 92, 84, 95, 90, 101, 87, 91, 85, 96, 93]", "[90]").zones[0].film;
  EXPECT_EQ(once.how, FilmHow::gauge);
  EXPECT_EQ(once.readings, 1U);
  EXPECT_DOUBLE_EQ(once.sd_um, 9.0);
  EXPECT_DOUBLE_EQ(once.mean_se_um, 9.0);
  EXPECT_TRUE(once.usual_spread);
  EXPECT_FALSE(demo_job().zones[0].film->usual_spread);
}

TEST(RoundTrip, NamesThatPeopleUseStandForTheProfile) {
  const Job job = job_from_json(
      with(job_with("\"two-part urethane\"", "\"2K Urethane\""), "\"foam pad\"", "\"Soft Pad\""));
  EXPECT_EQ(job, demo_job());
  EXPECT_EQ(job.coating.name, "two-part urethane");
}

TEST(RoundTrip, FilmFormsGiveTheFilmOfTheirNumbers) {
  const Job job = demo_job();
  const double readings_um[] = {88, 97, 92, 84, 95, 90, 101, 87, 91, 85, 96, 93};
  EXPECT_EQ(*job.zones[0].film, film_from_readings(readings_um));
  EXPECT_EQ(*job.zones[1].film, film_from_coats(3, 28, 7));
  const double counted_um = 0.15 * 45 / std::sqrt(3.0);
  EXPECT_EQ(job.zones[2].film->mean_se_um, uncertainty_um(gauge_named("coats counted"), 45));
  EXPECT_DOUBLE_EQ(job.zones[2].film->mean_se_um, counted_um);
  EXPECT_EQ(job.zones[2].film->how, FilmHow::coats_counted);
}

TEST(RoundTrip, TheWayThatAFilmWasGotTellsItsError) {
  const std::string plain = "{\"mean_um\": 45, \"sd_um\": 6}";
  const auto film = [&](const std::string& more) {
    const Job job = job_from_json(job_with(plain, "{\"mean_um\": 45, \"sd_um\": 6, " + more + "}"));
    EXPECT_EQ(job, job_from_json(to_json(job))) << more;
    return *job.zones[2].film;
  };
  EXPECT_DOUBLE_EQ(film("\"how\": \"wet comb\"").mean_se_um, 9.5 / std::sqrt(3.0));
  EXPECT_EQ(film("\"mean_se_um\": 2"), (Film{45, 6, 2}));
  EXPECT_EQ(film("\"mean_se_um\": 0"), (Film{45, 6})) << "stated as exact";
  EXPECT_EQ(film("\"mean_se_um\": 2, \"how\": \"coats counted\"").mean_se_um, 2);
  EXPECT_EQ(film("\"mean_se_um\": 2, \"how\": \"gauge\"").how, FilmHow::gauge);
  for (const char* way : {"stated", "gauge", "guessed"}) {
    EXPECT_THROW(film("\"how\": \"" + std::string(way) + "\""), BadInput) << way;
  }
  const std::string coats = "\"coats\": 3, \"dry_um_per_coat\": 28, \"sd_um\": 7";
  const Job combed = job_from_json(job_with(coats, coats + ", \"how\": \"wet comb\""));
  EXPECT_EQ(*combed.zones[1].film, film_from_coats(3, 28, 7, FilmHow::wet_comb));
  const Job known = job_from_json(job_with(coats, coats + ", \"mean_se_um\": 1.5"));
  EXPECT_EQ(*known.zones[1].film,
            (Film{.mean_um = 84, .sd_um = 7, .mean_se_um = 1.5, .dry_um_per_coat = 28}));
  EXPECT_EQ(known, job_from_json(to_json(known)));
}

TEST(RoundTrip, OrangePeelIsToldByEyeUnlessAnotherWayIsNamed) {
  const std::string peel = "\"peel_um\": 35,";
  EXPECT_EQ(demo_job().zones[0].peel_how, PeelHow::by_eye);
  const Job job = job_from_json(job_with(peel, peel + " \"peel_how\": \"comparison plate\","));
  EXPECT_EQ(job.zones[0].peel_how, PeelHow::comparison_plate);
  EXPECT_EQ(job, job_from_json(to_json(job)));
  EXPECT_THROW(job_from_json(job_with(peel, peel + " \"peel_how\": \"by hand\",")), BadInput);
}

constexpr auto edges_film =
    "\"film\": {\"mean_um\": 45, \"sd_um\": 6},\n      \"edge_of\": \"top\"";

TEST(RoundTrip, AnEdgeHasAShareOfItsZonesFilm) {
  const Job job = job_from_json(job_with(edges_film, "\"edge_of\": \"top\", \"radius_mm\": 0"));
  EXPECT_FALSE(is_levelled(job.zones[2]));
  EXPECT_EQ(job.zones[2].film->mean_um, 0.5 * job.zones[0].film->mean_um);
  EXPECT_EQ(job, job_from_json(to_json(job)));
}

TEST(RoundTrip, CoatsMakeRoundsAndReadingsStandAboveThem) {
  const std::string coats =
      "{\"coats\": [{\"dry_um\": 30}, {\"wet_um\": 100, \"volume_solids\": 0.48, \"thinner\": 0.2, "
      "\"applied_h\": 72}, {\"dry_um\": 40, \"shrink\": 0.05, \"applied_h\": 80}], "
      "\"recoat_window_h\": 24, ";
  const std::string plain = "{\"mean_um\": 45, \"sd_um\": 6}";
  const Job told = job_from_json(job_with(plain, coats + "\"sd_um\": 6}"));
  EXPECT_DOUBLE_EQ(told.zones[2].film->mean_um, 40.0 + 38.0);
  EXPECT_EQ(told.zones[2].film->sd_um, 6.0);
  // One of the two coats of the round is told dry: nobody combed it.
  EXPECT_DOUBLE_EQ(told.zones[2].film->mean_se_um, 0.15 * 78.0 / std::sqrt(3.0));
  EXPECT_EQ(told.zones[2].film->how, FilmHow::coats_counted);
  EXPECT_EQ(told.zones[2].below_um, 30.0);
  EXPECT_EQ(told, job_from_json(to_json(told)));

  const Job read = job_from_json(
      job_with(plain, coats + "\"readings_um\": [100, 104, 108], \"gauge\": \"ultrasonic\"}"));
  EXPECT_DOUBLE_EQ(read.zones[2].film->mean_um, 104.0 - 30.0);
  EXPECT_DOUBLE_EQ(read.zones[2].film->sd_um, 4.0);
  EXPECT_DOUBLE_EQ(read.zones[2].film->mean_se_um,
                   std::sqrt(16.0 / 3.0 + std::pow(2.0 + 0.03 * 104.0, 2) / 3.0 +
                             std::pow(5.0 + 0.1 * 30.0, 2) / 3.0));
}

TEST(RoundTrip, TwoReadingsGiveAHeight) {
  const Job job = job_from_json(job_with(
      "\"peel_um\": 35,",
      "\"peel_um\": 35, \"defects\": [{\"kind\": \"run\", \"readings\": {\"over_um\": 230, "
      "\"beside_um\": 80, \"gauge\": \"ultrasonic\"}, \"width_mm\": 6, \"length_mm\": 30, "
      "\"count\": 3}],"));
  EXPECT_EQ(job.zones[0].defects, (std::vector<Defect>{{DefectKind::run, 150, 6, 30, 3}}));
  EXPECT_EQ(job, job_from_json(to_json(job)));
}

TEST(RoundTrip, Stack) {
  Stack stack = stack_from_json(demo_text("stack.json"));
  Sheet& sheet = stack.sheets.front();
  sheet.size_um = 41.7;
  sheet.system = System::fepa_f_tube;
  sheet.backing = {"own", 0.11, 17, 150, 5, 20, 0.35};
  stack.sheets.back().backing.floor = 1.0 / 3.0;  // keeps the name of a profile with other numbers
  sheet.kind = Pad{block_named("small hard block")};
  stack.bare_number = System::jis;
  EXPECT_EQ(stack_from_json(to_json(stack)), stack);
}

TEST(RoundTrip, CompoundsOnWheels) {
  const Stack stack = stack_from_json(
      "{\"format\": \"levigate.stack/1\", \"sheets\": ["
      "{\"id\": \"fine\", \"label\": \"fine bar\", \"compound\": \"fine\", \"wheel\": \"loose "
      "muslin\"},"
      "{\"id\": \"own\", \"label\": \"no. 2\", \"compound\": {\"size_um\": 3, \"worn_um\": 1.5, "
      "\"coarsest_scratch_um\": 0.6, \"wear_share\": 0.2}, \"block\": \"foam pad\"}]}");
  const Sheet& sheet = stack.sheets[0];
  const Polish& fine = *polish_of(sheet);
  EXPECT_EQ(fine.size_um, 2.0);
  EXPECT_EQ(fine.worn_um, 1.0);
  EXPECT_EQ(fine.reach, (std::variant<ScratchReach, PaperReach>(PaperReach{7.2})));
  EXPECT_EQ(sheet.backing,
            compound_backing(compound_named("fine", coating_named("two-part urethane"))));
  EXPECT_EQ(*wheel_of(sheet), wheel_named("loose muslin"));
  EXPECT_EQ(polish_of(stack.sheets[1])->reach,
            (std::variant<ScratchReach, PaperReach>(ScratchReach{0.6})));
  const std::string text = to_json(stack);
  EXPECT_EQ(stack_from_json(text), stack);
  EXPECT_THAT(text, testing::HasSubstr("\"compound\": \"fine\""));
  EXPECT_THAT(text, testing::HasSubstr("\"wheel\": \"loose muslin\""));

  Stack faster = stack;
  std::get<Wheel>(*std::get<Polish>(faster.sheets[0].kind).tool).rpm = 500;
  EXPECT_EQ(stack_from_json(to_json(faster)), faster);
}

// What a shop has learned stays in its own file.
TEST(RoundTrip, LearnedFactorsAreNoKeysOfAJobOrAStack) {
  using OrderedJson = nlohmann::ordered_json;
  const auto expect_unknown = [](auto read, const OrderedJson& document, const char* key) {
    EXPECT_THAT([&] { read(document.dump(), ""); },
                testing::ThrowsMessage<BadInput>(testing::HasSubstr(key)));
  };
  const OrderedJson job = OrderedJson::parse(to_json(demo_job()));
  OrderedJson faster = job, moved = job;
  faster["duty_factor"] = 1;
  expect_unknown(job_from_json, faster, "duty_factor");
  moved["zones"][0]["film"]["moved_um"] = 0;
  expect_unknown(job_from_json, moved, "moved_um");

  const OrderedJson stack = OrderedJson::parse(to_json(stack_from_json(demo_text("stack.json"))));
  for (const char* key : {"rate_factor", "scratch_factor"}) {
    OrderedJson own = stack;
    own["sheets"][0]["backing"] = {{"name", "own"}, {"tip_spread", 0.1},   {"modulus_mpa", 20},
                                   {"life_m", 200}, {"clean_every_m", 10}, {"fade_m", 30},
                                   {"floor", 0.4}};
    EXPECT_NO_THROW(stack_from_json(own.dump()));
    own["sheets"][0]["backing"][key] = 1;
    expect_unknown(stack_from_json, own, key);
  }
}

TEST(RoundTrip, AStackIsWrittenTheSameTwice) {
  const Stack stack = stack_from_json(demo_text("stack.json"));
  EXPECT_EQ(to_json(stack), to_json(stack_from_json(to_json(stack))));
}

TEST(RoundTrip, RulesStartFromTheDefaults) {
  const Job job =
      job_from_json(job_with("\"prefer\"", "\"rules\": {\"overcut\": 1.25},\n  \"prefer\""));
  Rules wanted;
  wanted.overcut = 1.25;
  EXPECT_EQ(job.rules, wanted);
}

}  // namespace
}  // namespace round_trip_test
