// A coat that is not cured: waiting comes before any work, and the plan is that of the cured coat.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "levigate/detail/moment.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/text/card.hpp"

#include "unit/io/json_workshop.hpp"
#include "unit/workshop.hpp"

namespace not_cured_test {
namespace {

using namespace json_workshop;
using testing::HasSubstr;
using testing::Not;
using workshop::flowing;

Job demo_job(std::optional<double> age_h) {
  Job job = job_from_json(demo_text("job.json"));
  job.age_h = age_h;
  return job;
}
Stack demo_stack() { return stack_from_json(demo_text("stack.json")); }

TEST(ACoatOfFiveHours, GetsNoWorkingCardBeforeItsWait) {
  Job job = demo_job(5);
  job.age_at = "2026-11-26T09:00:00+01:00";
  const Plan found = plan(job, demo_stack());
  ASSERT_TRUE(found.found);
  ASSERT_TRUE(found.wait);
  EXPECT_EQ(found.wait->age_h, 5);
  EXPECT_EQ(found.wait->hard_cure_h, 168);
  EXPECT_EQ(found.wait->wait_h, 163);
  // 163 h are 6 days and 19 hours.
  EXPECT_EQ(found.wait->not_before, "2026-12-03T04:00:00+01:00");
  const std::string text = flowing(card(found));
  const std::size_t waits =
      text.find("Not before Thursday 3 December 2026, 04:00, after 163 h of waiting.");
  ASSERT_NE(waits, std::string::npos) << text;
  const std::string before = text.substr(0, waits);
  for (const char* work : {" min", "steps", "Step ", "take off"}) {
    EXPECT_THAT(before, Not(HasSubstr(work)));
  }
  EXPECT_THAT(text,
              HasSubstr("When it is cured: " + std::to_string(found.steps.size()) + " steps"));
}

TEST(ACoatOfFiveHours, SaysHoursWhereTheJobHasNoClock) {
  const Plan found = plan(demo_job(5.5), demo_stack());
  ASSERT_TRUE(found.wait);
  EXPECT_EQ(found.wait->wait_h, 162.5);
  EXPECT_EQ(found.wait->not_before, "");
  EXPECT_THAT(flowing(card(found)), HasSubstr("Not before 163 h from now."));
}

TEST(ACoatOfFiveHours, WaitsByTheDataSheetOfTheJob) {
  Job job = demo_job(5);
  job.cure = Cure{.hard_cure_h = 24, .shrink = 0, .points = {}};
  EXPECT_EQ(plan(job, demo_stack()).wait->wait_h, 19);
  job.age_h = 24;
  EXPECT_FALSE(plan(job, demo_stack()).wait);
}

TEST(ACoatOfFiveHours, IsTheCuredCoatWithTheFilmThatIsLeftThen) {
  Job job = demo_job(5);
  job.cure = Cure{.hard_cure_h = 168, .shrink = 0.05, .points = {{5, 40}, {168, 150}}};
  Job later = demo_job(std::nullopt);
  const double left = 1 - 0.05 * (1 - 40.0 / 150.0);
  for (Zone& zone : later.zones) zone.film->mean_um *= left;
  const Plan young = plan(job, demo_stack()), cured = plan(later, demo_stack());
  ASSERT_TRUE(young.found && cured.found);
  EXPECT_EQ(young.steps, cured.steps);
  EXPECT_EQ(young.total, cured.total);
  EXPECT_THAT(flowing(card(young)),
              HasSubstr("shrink by up to 3.7 %. The plan counts that as lost"));
}

TEST(ACoatOfFiveHours, SaysTheSameInJson) {
  Job job = demo_job(5);
  job.age_at = "2026-11-26T09:00:00Z";
  const Plan found = plan(job_from_json(to_json(job)), demo_stack());
  const Plan read = plan_from_json(to_json(found));
  EXPECT_EQ(read.wait, found.wait);
  EXPECT_EQ(read.wait->not_before, "2026-12-03T04:00:00Z");
  EXPECT_LT(to_json(found).find("\"wait\""), to_json(found).find("\"steps\""));
  EXPECT_LT(to_json(found).find("\"wait\""), to_json(found).find("\"minutes\""));
}

TEST(ACoatOfFiveHours, NeedsAMomentThatGoesWithAnAge) {
  Job job = demo_job(5);
  job.age_at = "Thursday 14:00";
  EXPECT_THAT([&] { plan(job, demo_stack()); },
              testing::ThrowsMessage<BadInput>(HasSubstr("RFC 3339")));
  job.age_at = "2026-11-26T09:00:00Z";
  job.age_h.reset();
  EXPECT_THAT([&] { plan(job, demo_stack()); },
              testing::ThrowsMessage<BadInput>(HasSubstr("age_h is missing")));
}

TEST(Moment, SomeHoursLaterIsNeverEarly) {
  using detail::moment_after;
  EXPECT_EQ(moment_after("2026-02-28T23:30:00+05:30", 1), "2026-03-01T00:30:00+05:30");
  EXPECT_EQ(moment_after("2028-02-28T23:30:00z", 1), "2028-02-29T00:30:00z");
  EXPECT_EQ(moment_after("2026-12-31T12:00:01Z", 12), "2027-01-01T00:01:00Z");
  EXPECT_EQ(moment_after("2026-12-31T12:00:00.5Z", 12), "2027-01-01T00:01:00Z");
  EXPECT_EQ(moment_after("2026-11-26T09:00:00-03:00", 0.001), "2026-11-26T09:01:00-03:00");
  EXPECT_EQ(moment_after("2026-11-26T09:00:00Z", 0), "2026-11-26T09:00:00Z");
}

TEST(Moment, IsSpokenWithItsDay) {
  EXPECT_EQ(detail::spoken_moment("2026-11-26T14:00:00+01:00"), "Thursday 26 November 2026, 14:00");
  EXPECT_EQ(detail::spoken_moment("2000-02-29T00:05:00Z"), "Tuesday 29 February 2000, 00:05");
}

}  // namespace
}  // namespace not_cured_test
