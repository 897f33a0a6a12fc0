// Results of random jobs read back from JSON equal, and are written again the same to the byte.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "levigate/grade/label.hpp"
#include "levigate/io/json.hpp"
#include "levigate/recover/go_back.hpp"
#include "levigate/risk/simulate.hpp"
#include "property/random.hpp"

namespace results_read_back_test {
namespace {

using namespace levigate;

using random_numbers::Random;

std::string demo(const std::string& name) { return LEVIGATE_DATA_DIR "/demo/" + name; }

/// The demo's job with other numbers: as sprayed or scratched, a coat or a solid, edges or none.
Job random_job(Random& random) {
  Job job = load_job(demo("job.json"));
  const bool solid = random.chance(0.1);
  if (solid) job.coating = coating_named("acrylic sheet");
  job.zones.resize(1 + random.below(job.zones.size()));
  for (Zone& zone : job.zones) {
    zone.area_cm2 = random.between(50, 900);
    zone.peel_um = random.between(0, 40);
    zone.peel_wavelength_mm = random.between(1, 8);
    zone.levelled = !random.chance(0.25);
    zone.film.reset();
    if (!solid) zone.film = Film{random.between(40, 140), random.between(1, 9)};
  }
  if (random.chance(0.5)) job.scratched_by = grade(random.chance(0.5) ? "P320" : "CAMI 400");
  job.target = {};
  if (random.chance(0.25)) {
    job.target.gloss_gu = random.between(1, 80);
  } else {
    job.target.size_um = random.between(4, 16);
  }
  job.rules.max_ratio = random.between(1.5, 2.6);
  job.rules.min_ratio = random.between(1.0, 1.25);
  job.prefer = random.chance(0.5) ? Objective::minutes : Objective::film;
  return job;
}

/// Some sheets of the demo's drawers, compounds on wheels among them.
Stack random_stack(Random& random) {
  Stack stack;
  for (const char* name : {"stack.json", "day_stack.json"}) {
    for (Sheet& sheet : load_stack(demo(name)).sheets) {
      if (random.chance(0.4)) continue;
      sheet.id = std::to_string(stack.sheets.size()) + " " + sheet.id;
      sheet.on_hand.reset();
      if (random.chance(0.2)) sheet.on_hand = random.between(0, 6);
      stack.sheets.push_back(sheet);
    }
  }
  if (stack.sheets.empty()) return random_stack(random);
  return stack;
}

template <typename Result>
void expect_reads_back(const Result& result, Result (*read)(std::string_view, std::string_view),
                       int round) {
  const std::string text = to_json(result);
  const Result back = read(text, "result.json");
  ASSERT_EQ(back, result) << round << "\n" << text;
  ASSERT_EQ(to_json(back), text) << round;
}

Mark random_mark(Random& random, const std::string& zone) {
  Mark mark{.kind = all_mark_kinds[random.below(all_mark_kinds.size())],
            .zone = zone,
            .seen = all_ways_seen[random.below(all_ways_seen.size())],
            .width_um = {},
            .direction_deg = {},
            .count = {},
            .height_um = {}};
  const bool wave = mark.kind == MarkKind::wave;
  const bool measured = mark.seen == Seen::loupe || mark.seen == Seen::comparison;
  if (measured && !wave && mark.kind != MarkKind::witness_line)
    mark.width_um = random.between(0.5, 40);
  if (mark.kind == MarkKind::cluster && random.chance(0.5))
    mark.count = 2 + static_cast<int>(random.below(10));
  if (wave && random.chance(0.5)) mark.height_um = random.between(0.5, 30);
  if (random.chance(0.5)) mark.direction_deg = random.between(0, 180);
  return mark;
}

/// What seldom happens by chance: defects, and a block that does not give.
void add_rare_things(Random& random, Job& job) {
  Zone& zone = job.zones.front();
  if (random.chance(0.3)) {
    zone.defects.push_back({DefectKind::run, random.between(20, 200), random.between(2, 8),
                            random.between(10, 40), 1 + static_cast<int>(random.below(4))});
  }
  if (random.chance(0.1)) zone.block.modulus_mpa = std::numeric_limits<double>::infinity();
}

TEST(ReadBack, PlansAreEqual) {
  Random random(20261201);
  int found = 0, none = 0, with_defects = 0, rigid = 0;
  for (int round = 0; round < 200; ++round) {
    Job job = random_job(random);
    add_rare_things(random, job);
    const Plan result = plan(job, random_stack(random));
    ++(result.found ? found : none);
    with_defects += result.before.empty() ? 0 : 1;
    for (const Reliance& one : result.relies_on) rigid += std::isinf(one.value) ? 1 : 0;
    ASSERT_NO_FATAL_FAILURE(expect_reads_back(result, plan_from_json, round));
  }
  EXPECT_GT(found, 50);
  EXPECT_GT(none, 20);
  EXPECT_GT(with_defects, 10);
  EXPECT_GT(rigid, 0);
}

TEST(ReadBack, SimulationsAreEqual) {
  Random random(20261202);
  SimulateOptions options;
  options.draws = 10;
  options.threads = 1;
  int simulated = 0;
  for (int round = 0; simulated < 200; ++round) {
    Job job = random_job(random);
    for (Zone& zone : job.zones) zone.area_cm2 = 50;  // spots take the time
    const Stack stack = random_stack(random);
    const Plan found = plan(job, stack);
    if (!found.found) continue;
    ++simulated;
    options.seed = random.chance(0.5) ? std::numeric_limits<std::uint64_t>::max() - random.below(9)
                                      : random.below(1000);
    ASSERT_NO_FATAL_FAILURE(
        expect_reads_back(simulate(job, stack, found, options), simulation_from_json, round));
  }
}

TEST(ReadBack, WaysBackAreEqual) {
  Random random(20261203);
  int found = 0, none = 0, asked = 0;
  for (int round = 0; asked < 200; ++round) {
    Job job = random_job(random);
    add_rare_things(random, job);
    const Stack stack = random_stack(random);
    const Plan made = plan(job, stack);
    if (!made.found) continue;
    std::vector<DoneStep> done;
    for (const Step& step : made.steps) done.push_back({step.sheet});
    std::string zone;  // one that a step worked
    for (const ZoneStep& one : made.steps.back().zones) {
      if (one.worked && (zone.empty() || random.chance(0.5))) zone = one.zone;
    }
    if (zone.empty()) continue;
    const WayBack way = go_back(job, stack, done, random_mark(random, zone));
    ++asked;
    ++(way.found ? found : none);
    ASSERT_NO_FATAL_FAILURE(expect_reads_back(way, way_back_from_json, round));
  }
  EXPECT_GT(found, 50);
  EXPECT_GT(none, 20);
}

}  // namespace
}  // namespace results_read_back_test
