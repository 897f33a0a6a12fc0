// What descriptions say of a plan's inputs is what the inputs do.
#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "levigate/journal/work/prior.hpp"
#include "levigate/plan/work/effort.hpp"
#include "levigate/plan/work/knobs.hpp"
#include "unit/workshop.hpp"

namespace hall {

using namespace levigate;

struct Lamp {
  double light_lm = 0;
  double height_mm = 0;
};

struct LampProfile {
  Sourced light_lm, height_mm, power_w;
};

constexpr TableField<LampProfile> light[] = {{"light_lm", &LampProfile::light_lm}};
constexpr TableField<LampProfile> all[] = {{"light_lm", &LampProfile::light_lm},
                                           {"power_w", &LampProfile::power_w},
                                           {"height_mm", &LampProfile::height_mm}};

}  // namespace hall

template <std::same_as<hall::Lamp> Value>
inline constexpr auto levigate::described<Value> = levigate::describe<Value>(
    "Lamp", "A lamp.",
    levigate::member<&Value::light_lm>("light_lm", "light").is(levigate::Input::pace),
    levigate::member<&Value::height_mm>("height_mm", "over the bench"));

namespace inputs_test {
namespace {

using namespace workshop;
using detail::Knob;

static_assert(detail::says_inputs<hall::Lamp>(hall::light));
static_assert(!detail::says_inputs<hall::Lamp>(hall::all), "height_mm says nothing");

/// All that a plan takes from its inputs but the pace.
std::vector<double> apart_from_pace(const Workings& w) {
  const SheetInZone& work = w.work[0][0];
  const Effort one_um = effort(1, work, w.job.zones[0], w.stack.sheets[0], 1);
  return {work.scratch_um,
          work.ra_um,
          work.rq_um,
          work.reading_gu,
          work.tool.modulus_mpa,
          work.tool.area_cm2,
          work.tool.pressure_kpa(),
          static_cast<float>(one_um.sheets_used / one_um.travel_m),  // of two that round alike
          *w.budget_um[0],
          w.grades[0].median_um,
          w.log_spreads[0]};
}

double minutes_a_um(const Workings& w) {
  return effort(1, w.work[0][0], w.job.zones[0], w.stack.sheets[0], 1).minutes;
}

TEST(Inputs, ThoseOfThePaceAreThoseThatActOnItAlone) {
  const levigate::Setup given = setup(top(35), papers({"P400"}));
  const Workings before = workings(given);
  for (const Knob& knob : detail::knobs(given)) {
    levigate::Setup changed = given;
    knob.set(changed, knob.input.low != knob.input.value ? knob.input.low : knob.input.high);
    const Workings after = workings(changed);
    const bool alone = minutes_a_um(after) != minutes_a_um(before) &&
                       apart_from_pace(after) == apart_from_pace(before);
    EXPECT_EQ(knob.kind == Input::pace, alone) << knob.subject << ", " << knob.quantity;
  }
}

/// Mean square of ln(minutes) over the bands of the inputs of a subject, each over its own: see duty_variance().
double variance_of_minutes(const levigate::Setup& given, const std::string& subject) {
  const auto spread = [&](const Knob& knob, double end) {
    levigate::Setup changed = given;
    knob.set(changed, end);
    const double log_ratio =
        std::log(minutes_a_um(workings(changed)) / minutes_a_um(workings(given)));
    return log_ratio * log_ratio;
  };
  double sum = 0;
  for (const Knob& knob : detail::knobs(given)) {
    if (knob.subject == subject)
      sum += (spread(knob, knob.input.low) + spread(knob, knob.input.high)) / 6;
  }
  return sum;
}

TEST(Inputs, TheVarianceOfABackingIsThatOfEveryInputOfIt) {
  const levigate::Setup given = setup(top(35), papers({"P400"}));
  EXPECT_NEAR(backing_variance("two-part urethane", "latex paper"),
              (1 - common_wear_share) * detail::wear_variance("two-part urethane") +
                  variance_of_minutes(given, "backing latex paper"),
              1e-12);
}

TEST(Inputs, TheVarianceOfAPersonIsThatOfEveryInputOfTheBlocks) {
  double sum = 0;
  for (const BlockProfile& block : block_table) {
    Job job = top(35);
    job.zones[0].block = block_named(block.name);
    sum += variance_of_minutes(setup(job, papers({"P400"})), "block " + std::string(block.name));
  }
  EXPECT_NEAR(duty_variance(), sum / std::ssize(block_table), 1e-12);
}

}  // namespace
}  // namespace inputs_test
