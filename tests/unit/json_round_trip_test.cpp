// What is written reads back equal.
#include "json_workshop.hpp"

namespace {

using namespace json_workshop;

void expect_same(const Film& a, const Film& b) {
  EXPECT_EQ(a.mean_um, b.mean_um);
  EXPECT_EQ(a.sd_um, b.sd_um);
  EXPECT_EQ(a.mean_se_um, b.mean_se_um);
  EXPECT_EQ(a.sd_se_um, b.sd_se_um);
  EXPECT_EQ(a.readings, b.readings);
}

void expect_same(const Job& a, const Job& b) {
  EXPECT_EQ(a.name, b.name);
  EXPECT_EQ(a.coating, b.coating);
  EXPECT_EQ(a.scratched_by, b.scratched_by);
  EXPECT_EQ(a.target.size_um, b.target.size_um);
  EXPECT_EQ(a.target.gloss_gu, b.target.gloss_gu);
  EXPECT_EQ(a.target.label, b.target.label);
  EXPECT_EQ(a.prefer, b.prefer);
  EXPECT_EQ(detail::json_of(a.rules), detail::json_of(b.rules));
  ASSERT_EQ(a.zones.size(), b.zones.size());
  for (std::size_t i = 0; i < a.zones.size(); ++i) {
    EXPECT_EQ(a.zones[i].name, b.zones[i].name);
    EXPECT_EQ(a.zones[i].area_cm2, b.zones[i].area_cm2);
    EXPECT_EQ(a.zones[i].block, b.zones[i].block);
    EXPECT_EQ(a.zones[i].peel_um, b.zones[i].peel_um);
    EXPECT_EQ(a.zones[i].peel_wavelength_mm, b.zones[i].peel_wavelength_mm);
    EXPECT_EQ(a.zones[i].levelled, b.zones[i].levelled);
    ASSERT_EQ(a.zones[i].film.has_value(), b.zones[i].film.has_value());
    if (a.zones[i].film) expect_same(*a.zones[i].film, *b.zones[i].film);
  }
}

Job demo_job() { return job_from_json(demo_text("job.json")); }

TEST(RoundTrip, DemoJob) {
  const Job job = demo_job();
  expect_same(job, job_from_json(to_json(job)));
}

TEST(RoundTrip, JobWithEverythingOwn) {
  Job job = demo_job();
  job.name = "clock \"case\"\nof w\u00e4lnut / \\";
  job.coating = {"my coat", CoatingKind::coat, 133.3, 0.0123, 1.51, true};
  job.zones[0].block = {"glass", std::numeric_limits<double>::infinity(), 30, 7, 0.3, 0.5, 1.2};
  job.zones[1].block.area_cm2 = 1.0 / 3.0;  // keeps the name of a profile with other numbers
  job.zones[1].block.force_n = 0.1;
  job.scratched_by = grade("CAMI 320");
  job.target = {.size_um = grade("P2000").median_um, .gloss_gu = {}, .label = "P2000"};
  job.rules = {{1.1, 2.0}, 1.5, 0.95, 0.3, 1.0, 12.0, 0.2, 1e-3};
  job.prefer = Objective::film;
  expect_same(job, job_from_json(to_json(job)));
}

TEST(RoundTrip, SolidWithGlossTarget) {
  Job job = demo_job();
  job.coating = coating_named("acrylic sheet");
  for (Zone& zone : job.zones) zone.film.reset();
  job.target = {.size_um = {}, .gloss_gu = 55.5, .label = ""};
  expect_same(job, job_from_json(to_json(job)));
  job.coating = {"slate", CoatingKind::solid, 900, 0.02, 1.6, {}};
  expect_same(job, job_from_json(to_json(job)));
}

TEST(RoundTrip, AStartWithItsOwnSizeHasNoPlaceInTheFormat) {
  Job job = demo_job();
  job.scratched_by = sized_grade("P400", 33);
  EXPECT_THROW(to_json(job), BadInput);
}

TEST(RoundTrip, FilmFormsGiveTheFilmOfTheirNumbers) {
  const Job job = demo_job();
  const double readings_um[] = {88, 97, 92, 84, 95, 90, 101, 87, 91, 85, 96, 93};
  expect_same(*job.zones[0].film, film_from_readings(readings_um));
  expect_same(*job.zones[1].film, film_from_coats(3, 28, 7));
  expect_same(*job.zones[2].film, Film{45, 6});
}

TEST(RoundTrip, Stack) {
  Stack stack = stack_from_json(demo_text("stack.json"));
  Sheet& sheet = stack.sheets.front();
  sheet.size_um = 41.7;
  sheet.system = System::fepa_f_tube;
  sheet.backing = {"own", 0.11, 17, 150, 5, 20, 0.35};
  sheet.block = block_named("small hard block");
  stack.bare_number = System::jis;
  const Stack back = stack_from_json(to_json(stack));
  EXPECT_EQ(back.bare_number, stack.bare_number);
  ASSERT_EQ(back.sheets.size(), stack.sheets.size());
  for (std::size_t i = 0; i < stack.sheets.size(); ++i) {
    const Sheet& a = stack.sheets[i];
    const Sheet& b = back.sheets[i];
    EXPECT_EQ(std::tie(a.id, a.maker, a.label, a.system, a.size_um, a.backing, a.block),
              std::tie(b.id, b.maker, b.label, b.system, b.size_um, b.backing, b.block));
    EXPECT_EQ(std::tie(a.width_mm, a.height_mm, a.on_hand, a.price),
              std::tie(b.width_mm, b.height_mm, b.on_hand, b.price));
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
  EXPECT_EQ(detail::json_of(job.rules), detail::json_of(wanted));
}

}  // namespace
