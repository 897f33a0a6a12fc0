// Pieces planned together against all products of all ways of each through the drawer.
#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <tuple>
#include <vector>

#include "levigate/plan/work/joint.hpp"
#include "levigate/plan/work/search.hpp"
#include "levigate/plan/work/workings.hpp"
#include "property/enumeration.hpp"

namespace together_oracle_test {
namespace {

using namespace enumeration;

using Ways = std::vector<Way>;
using Choice = std::vector<const Way*>;

/// Calls visit(choice) for every product of the ways.
template <typename Visit>
void each_product(const std::vector<Ways>& pieces, Choice& choice, const Visit& visit) {
  if (choice.size() == pieces.size()) {
    visit(choice);
    return;
  }
  for (const Way& way : pieces[choice.size()]) {
    choice.push_back(&way);
    each_product(pieces, choice, visit);
    choice.pop_back();
  }
}

bool paper_does(const Choice& choice, const Stack& stack) {
  for (std::size_t sheet = 0; sheet < stack.sheets.size(); ++sheet) {
    std::int64_t used = 0;
    for (const Way* way : choice) used += way->micro_used[sheet];
    const std::optional<double>& on_hand = stack.sheets[sheet].on_hand;
    if (on_hand && used > std::llround(*on_hand * 1e6)) return false;
  }
  return true;
}

std::int64_t sum(const Choice& choice, std::size_t at) {
  std::int64_t result = 0;
  for (const Way* way : choice) result += way->key[at];
  return result;
}

/// Film of the pieces, the worst first.
std::vector<double> films(const Choice& choice) {
  std::vector<double> result;
  for (const Way* way : choice) result.push_back(way->film);
  std::sort(result.rbegin(), result.rend());
  return result;
}

/// Minutes, film, cost, fragile steps, steps, then the sheets of the first piece, of the next and so on.
auto ties(const Choice& choice) {
  std::vector<std::vector<std::int64_t>> sheets;
  for (const Way* way : choice) sheets.emplace_back(way->key.begin() + 4, way->key.end());
  return std::tuple(sum(choice, 0), films(choice), sum(choice, 1), sum(choice, 2), sum(choice, 3),
                    sheets);
}

auto order_of(Objective prefer, const Choice& choice) {
  const bool minutes = prefer == Objective::minutes;
  const std::int64_t first = minutes                      ? sum(choice, 2)
                             : prefer == Objective::cost  ? sum(choice, 1)
                             : prefer == Objective::steps ? sum(choice, 3)
                                                          : 0;
  const bool film = minutes || prefer == Objective::film;
  return std::tuple(first, film ? films(choice) : std::vector<double>{}, ties(choice));
}

template <typename Order>
std::optional<Choice> least_of_products(const std::vector<Ways>& pieces, const Stack& stack,
                                        const Order& order) {
  std::optional<Choice> best;
  Choice start;
  each_product(pieces, start, [&](const Choice& choice) {
    if (!paper_does(choice, stack)) return;
    if (!best || order(choice) < order(*best)) best = choice;
  });
  return best;
}

/// The best product; in minutes, of those where each piece takes at most 3 % more than in the quickest.
std::optional<Choice> enumerated(const std::vector<Ways>& pieces, const Stack& stack,
                                 Objective prefer) {
  const std::optional<Choice> quickest = least_of_products(pieces, stack, ties);
  if (!quickest) return std::nullopt;
  std::vector<Ways> near = pieces;
  for (std::size_t i = 0; i < near.size() && prefer == Objective::minutes; ++i) {
    const std::int64_t least = (*quickest)[i]->key[0];
    std::erase_if(near[i], [&](const Way& way) { return way.key[0] > least + least / 100 * 3; });
  }
  const auto best = least_of_products(
      near, stack, [&](const Choice& choice) { return order_of(prefer, choice); });
  Choice result;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    result.push_back(&*std::find_if(pieces[i].begin(), pieces[i].end(),
                                    [&](const Way& way) { return way.key == (*best)[i]->key; }));
  }
  return result;
}

TEST(TogetherOracle, EqualsAllProductsOfAllWaysOnSmallShops) {
  Random random(20261127);
  int solved = 0, changed = 0, starved = 0;
  std::vector<int> of_objective(4, 0);
  for (int round = 0; solved < 250; ++round) {
    Stack stack = random_stack(random, 6);
    for (Sheet& sheet : stack.sheets) {
      if (random.chance(0.8)) sheet.on_hand = random.between(0.2, 2.5);
    }
    const std::size_t count = 2 + random.below(2);
    std::vector<Job> jobs;
    for (std::size_t i = 0; i < count; ++i) {
      jobs.push_back(i > 0 && random.chance(0.3) ? jobs.back() : random_job(random));
      jobs.back().prefer = jobs.front().prefer;
    }
    std::vector<Ways> ways;
    for (const Job& job : jobs) ways.push_back(kept_of(Enumeration(job, stack), job.rules));
    if (std::any_of(ways.begin(), ways.end(), [](const Ways& w) { return w.empty(); })) continue;

    std::vector<Workings> workings;
    for (const Job& job : jobs) workings.push_back(levigate::workings(job, stack));
    std::vector<Sun> suns;
    suns.reserve(count);
    std::vector<PieceInSun> pieces;
    for (const Workings& one : workings) pieces.push_back({one, suns.emplace_back(one)});
    const auto found = best_together(pieces, jobs.front().prefer);
    const auto wanted = enumerated(ways, stack, jobs.front().prefer);
    ASSERT_EQ(found.has_value(), wanted.has_value()) << "round " << round;
    if (!found) {
      ++starved;
      continue;
    }
    ++solved;
    ++of_objective[static_cast<std::size_t>(jobs.front().prefer)];
    bool as_alone = true;
    for (std::size_t i = 0; i < count; ++i) {
      ASSERT_EQ(key_of((*found)[i].sequence), (*wanted)[i]->key)
          << "round " << round << " piece " << i;
      ASSERT_EQ((*found)[i].micro_sheets, (*wanted)[i]->micro_used) << "round " << round;
      as_alone = as_alone && (*wanted)[i]->key == best_of(ways[i], jobs[i].prefer).key;
    }
    changed += as_alone ? 0 : 1;
  }
  EXPECT_GT(changed, 20);
  EXPECT_GT(starved, 20);
  for (const int one : of_objective) EXPECT_GT(one, 10);
  RecordProperty("solved", solved);
  RecordProperty("changed", changed);
  RecordProperty("starved", starved);
}

}  // namespace
}  // namespace together_oracle_test
