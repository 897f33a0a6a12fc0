// A job that is done in part and planned again: what remains is the rest of the same plan, to the millisecond.
#include <gtest/gtest.h>

#include "levigate/plan/work/ladder.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/step.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/recover/present.hpp"
#include "property/enumeration.hpp"

namespace replan_identity_test {
namespace {

using namespace enumeration;

std::vector<std::size_t> part(const std::vector<std::size_t>& sheets, std::size_t from,
                              std::size_t to) {
  const auto at = [&](std::size_t i) { return sheets.begin() + static_cast<std::ptrdiff_t>(i); };
  return {at(from), at(to)};
}

Job after_steps(const Job& job, const Stack& stack, const std::vector<std::size_t>& sheets) {
  std::vector<DoneStep> done;
  for (const std::size_t sheet : sheets) done.push_back({stack.sheets[sheet].id});
  return present(job, stack, done);
}

/// The best sequence where no other is as good in what the job prefers.
std::optional<Sequence> unique_best(const Enumeration& enumeration, const Job& job,
                                    const Workings& workings) {
  const std::vector<Way> kept = kept_of(enumeration, job.rules);
  if (kept.empty()) return std::nullopt;
  const auto value = [&](const Way& way) { return std::get<0>(order_by(job.prefer, way, 0)); };
  const auto least = std::min_element(
      kept.begin(), kept.end(), [&](const Way& a, const Way& b) { return value(a) < value(b); });
  if (std::count_if(kept.begin(), kept.end(),
                    [&](const Way& way) { return value(way) == value(*least); }) > 1) {
    return std::nullopt;
  }
  Sun sun(workings);
  return best(sequences_of(workings, sun), job.prefer);
}

const Way& way_of(const Enumeration& enumeration, const std::vector<std::size_t>& sheets) {
  return *std::find_if(enumeration.ways().begin(), enumeration.ways().end(), [&](const Way& way) {
    return std::equal(
        way.key.begin() + 4, way.key.end(), sheets.begin(), sheets.end(),
        [](std::int64_t a, std::size_t b) { return static_cast<std::size_t>(a) == b; });
  });
}

// A plan that spares film is chosen by shares of budgets, and these are worked out anew. One that spares minutes may be another of
// those that count as equal. The others must come out the same.
// With a little more budget than was left of the old one (see present()) a way may open that was closed before.
TEST(Replan, WhatRemainsIsTheRestOfThePlan) {
  Random random(20261127);
  int jobs = 0, replans = 0, opened = 0, with_edges = 0;
  for (int round = 0; jobs < 250; ++round) {
    Job job = random_job(random);
    const Stack stack = random_stack(random);
    if (job.prefer == Objective::film) job.prefer = Objective::cost;
    if (job.prefer == Objective::minutes) job.prefer = Objective::steps;
    const Workings workings = levigate::workings(job, stack);
    const Enumeration enumeration(job, stack);
    const std::optional<Sequence> whole = unique_best(enumeration, job, workings);
    if (!whole || whole->steps() < 2) continue;
    // Where no zone is to be levelled, the first step of a sprayed job works nothing, and leaves nothing to be seen.
    if (workings.levels && std::none_of(job.zones.begin(), job.zones.end(),
                                        [](const Zone& zone) { return zone.levelled; })) {
      continue;
    }
    ++jobs;
    with_edges += std::any_of(job.zones.begin(), job.zones.end(),
                              [](const Zone& zone) { return !zone.levelled; })
                      ? 1
                      : 0;
    for (std::size_t steps = 1; steps < whole->steps(); ++steps) {
      const std::vector<std::size_t> first = part(whole->sheets, 0, steps);
      const Workings now = levigate::workings(after_steps(job, stack, first), stack);
      Sun sun(now);
      const std::vector<Sequence> found = sequences_of(now, sun);
      ASSERT_FALSE(found.empty()) << round;
      const Sequence& rest = best(found, job.prefer);
      ++replans;
      if (rest.sheets != part(whole->sheets, steps, whole->steps())) {
        // Better than the rest, and closed before: only the film can have opened it.
        std::vector<std::size_t> joined = first;
        joined.insert(joined.end(), rest.sheets.begin(), rest.sheets.end());
        const Way& other = way_of(enumeration, joined);
        EXPECT_TRUE(keeps(other, job.rules.min_ratio, job.rules.max_ratio, false, true)) << round;
        EXPECT_FALSE(keeps(other, job.rules.min_ratio, job.rules.max_ratio, true, true)) << round;
        ++opened;
        continue;
      }
      const Sequence before = summed(workings, first);
      EXPECT_EQ(before.milliseconds + rest.milliseconds, whole->milliseconds) << round;
      EXPECT_EQ(before.cost + rest.cost, whole->cost) << round;
      for (std::size_t zone = 0; zone < job.zones.size(); ++zone) {
        std::int64_t removed_pm = before.depth_pm[zone];
        removed_pm -= std::llround(scratch_left_um(workings, {first.back(), steps == 1}, zone) *
                                   detail::pm_per_um);
        EXPECT_EQ(removed_pm + rest.depth_pm[zone], whole->depth_pm[zone]) << round;
        if (!workings.budget_um[zone]) continue;
        EXPECT_GE(*now.budget_um[zone] + 1e-9,
                  *workings.budget_um[zone] - static_cast<double>(removed_pm) / detail::pm_per_um)
            << round;
      }
    }
    const Job finished = after_steps(job, stack, whole->sheets);
    EXPECT_TRUE(already_done(levigate::workings(finished, stack))) << round;
  }
  EXPECT_GT(replans, 250);
  EXPECT_GT(with_edges, 50);
  EXPECT_LE(opened, replans / 20);
  RecordProperty("replans", replans);
  RecordProperty("opened", opened);
}

}  // namespace
}  // namespace replan_identity_test
