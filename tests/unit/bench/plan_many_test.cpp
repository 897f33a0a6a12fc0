// Many jobs at once: what plan() says of each, in order, whatever the number of threads.
#include <gtest/gtest.h>

#include <string>
#include <variant>
#include <vector>

#include "levigate/bench/plan_many.hpp"
#include "levigate/io/json.hpp"
#include "levigate/plan/plan.hpp"

namespace plan_many_test {

using namespace levigate;

Job demo_job() { return load_job(LEVIGATE_DATA_DIR "/demo/job.json"); }
Stack demo_stack() { return load_stack(LEVIGATE_DATA_DIR "/demo/stack.json"); }

/// Six jobs, of which the third cannot be used and the fifth has no plan.
std::vector<Job> six() {
  std::vector<Job> jobs(6, demo_job());
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    jobs[i].name = "piece " + std::to_string(i);
    jobs[i].zones[0].area_cm2 += 10.0 * static_cast<double>(i);
  }
  jobs[2].zones[0].area_cm2 = -1;
  jobs[4].target.size_um = 0.01;
  return jobs;
}

std::vector<std::string> texts(const std::vector<PlanOrError>& results) {
  std::vector<std::string> result;
  for (const PlanOrError& one : results) {
    const auto* error = std::get_if<Error>(&one);
    result.push_back(error ? error->what() : to_json(std::get<PlanOnBench>(one).plan));
  }
  return result;
}

TEST(PlanMany, SaysWhatPlanSaysOfEachInOrder) {
  const std::vector<Job> jobs = six();
  const std::vector<PlanOrError> results = plan_many(jobs, demo_stack(), {.threads = 2});
  std::vector<std::string> alone;
  for (const Job& job : jobs) {
    try {
      alone.push_back(to_json(plan(job, demo_stack())));
    } catch (const OutOfRange& error) {
      alone.push_back(error.what());
    }
  }
  EXPECT_EQ(texts(results), alone);
  EXPECT_EQ(std::get<Error>(results[2]).code(), ErrorCode::out_of_range);
  EXPECT_EQ(std::get<Error>(results[2]).quantity(), "area_cm2");
  EXPECT_FALSE(std::get<PlanOnBench>(results[4]).plan.found);
  EXPECT_EQ(std::get<PlanOnBench>(results[5]).bench.job(), jobs[5]);
}

TEST(PlanMany, TheNumberOfThreadsChangesNothing) {
  const std::vector<std::string> one = texts(plan_many(six(), demo_stack(), {.threads = 1}));
  EXPECT_EQ(texts(plan_many(six(), demo_stack(), {.threads = 5})), one);
  EXPECT_EQ(texts(plan_many(six(), demo_stack())), one);
}

TEST(PlanMany, RulesStandForThoseOfEachJob) {
  Rules rules = demo_job().rules;
  rules.change_minutes = 60;
  std::vector<Job> jobs = six();
  const auto results = texts(plan_many(jobs, demo_stack(), {.rules = rules}));
  for (Job& job : jobs) job.rules = rules;
  EXPECT_EQ(results, texts(plan_many(jobs, demo_stack())));
  EXPECT_NE(results, texts(plan_many(six(), demo_stack())));
}

TEST(PlanMany, ProgressMayStopItAfterTheFirstJobs) {
  std::vector<std::int64_t> told;
  const auto results = plan_many(
      six(), demo_stack(), {.threads = 1, .progress = [&](std::int64_t done, std::int64_t of) {
                              told.push_back(done);
                              EXPECT_EQ(of, 6);
                              return done < 2;
                            }});
  EXPECT_EQ(told, (std::vector<std::int64_t>{1, 2}));
  EXPECT_EQ(results.size(), 2U);
}

TEST(PlanMany, NoJobsGiveNoPlans) { EXPECT_TRUE(plan_many({}, demo_stack()).empty()); }

TEST(PlanMany, AStackOrRulesThatFitNoJobAreThrown) {
  Stack open = demo_stack();
  open.bare_number_by_maker.clear();
  open.bare_number.reset();
  open.sheets[0].label = "600";
  open.sheets[0].system.reset();
  EXPECT_THROW(plan_many(six(), open), AmbiguousLabel);
  EXPECT_THROW(plan_many(six(), demo_stack(), {.rules = Rules{.change_minutes = -1}}), OutOfRange);
  EXPECT_THROW(plan_many(six(), demo_stack(), {.threads = 1025}), OutOfRange);
}

}  // namespace plan_many_test
