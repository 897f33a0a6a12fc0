// The planner against enumeration on random jobs: best plan of every objective, the whole trade-off, and where there is no
// plan the reason. The enumeration adds up the published formulas itself and shares only the surface layer with the planner.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <random>

#include "levigate/plan/plan.hpp"

namespace {

using namespace levigate;

class Random {
 public:
  explicit Random(unsigned seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_()) / 4294967296.0;
  }
  std::size_t below(std::size_t end) { return engine_() % end; }
  bool chance(double p) { return between(0, 1) < p; }

 private:
  std::mt19937 engine_;
};

Job random_job(Random& random) {
  Job job;
  job.name = "random";
  const bool solid = random.chance(0.1);
  job.coating = coating_named(solid ? "acrylic sheet" : "two-part urethane");
  const char* const blocks[] = {"hard block", "cork block", "rubber block", "small hard block"};
  for (std::size_t i = 0, zones = 1 + random.below(3); i < zones; ++i) {
    Zone zone{.name = "zone " + std::to_string(i),
              .area_cm2 = random.between(50, 1500),
              .block = block_named(blocks[random.below(4)]),
              .film = std::nullopt,
              .peel_um = random.between(0, 40),
              .peel_wavelength_mm = random.between(1, 8)};
    zone.levelled = !random.chance(0.25);
    if (!solid) zone.film = Film{random.between(25, 110), random.between(1, 9)};
    job.zones.push_back(zone);
  }
  if (random.chance(0.5)) {
    const char* const grades[] = {"P220", "P320", "P400", "P600", "CAMI 400", "P1500"};
    job.scratched_by = grade(grades[random.below(6)]);
  }
  if (random.chance(0.25)) {
    job.target.gloss_gu = random.between(1, 80);
  } else {
    job.target.size_um = std::floor(random.between(5, 16));
  }
  job.rules.max_ratio = random.between(1.3, 2.4);
  job.rules.min_ratio = random.between(1.0, 1.25);
  job.rules.overcut = random.between(1.0, 1.5);
  job.prefer = static_cast<Objective>(random.below(4));
  return job;
}

Stack random_stack(Random& random) {
  Stack stack;
  const char* const backings[] = {"latex paper", "film", "cloth", "foam-backed"};
  for (std::size_t i = 0, sheets = 1 + random.below(9); i < sheets; ++i) {
    Sheet sheet;
    sheet.id = "s" + std::to_string(i);
    sheet.label = "own";
    // Whole micrometres, so that equal sizes and equal ratios come about.
    sheet.size_um = std::floor(std::exp(random.between(std::log(4.0), std::log(45.0))));
    sheet.backing = backing_named(backings[random.below(4)]);
    if (random.chance(0.1)) sheet.block = block_named("foam pad");
    sheet.width_mm = 115;
    sheet.height_mm = 140;
    if (*sheet.size_um < 14 && random.chance(0.6)) {  // a compound
      sheet.worn_um = *sheet.size_um * random.between(0.6, 1);
      sheet.coarsest_scratch_um = random.between(0.2, 2.5);
      sheet.wear_share = random.between(0.1, 1);
    }
    if (random.chance(0.4)) sheet.on_hand = std::floor(random.between(0, 6));
    if (random.chance(0.7)) sheet.price = std::floor(random.between(0, 4));
    stack.sheets.push_back(sheet);
  }
  return stack;
}

/// One way through the drawer with its sums and with how far it is from keeping each rule.
struct Way {
  std::vector<std::int64_t> key;  ///< minutes [ms], cost, steps, then the sheets: ties go by it
  double film = 0;                ///< of the worst zone
  std::vector<std::int64_t> depth_pm;
  double longest_ratio = 0;
  double shortest_ratio = std::numeric_limits<double>::infinity();
  double excess_um = -std::numeric_limits<double>::infinity();
  std::int64_t micro_short = 0;
  double too_deep_um = 0;  ///< of scratches for the compounds they meet
  bool compound = false;   ///< whether there is one
};

/// The formulas of one sheet in one zone, put together anew.
struct Work {
  Block tool;
  double scratch_um, gloss_gu, rate;
};

Work work_of(const Job& job, const Sheet& sheet, const Zone& zone, double size_um, double spread) {
  const Block tool = sheet.block.value_or(zone.block);
  const double pressure_kpa = tool.force_n / tool.area_cm2 * 10;
  const Contact touch =
      contact({sheet.worn_um.value_or(size_um), spread, sheet.backing.tip_spread,
               sheet.backing.modulus_mpa, pressure_kpa, job.coating.hardness_mpa});
  const Backing& b = sheet.backing;
  const double x = b.clean_every_m / b.fade_m;
  const double share = b.floor + (1 - b.floor) * (1 - std::exp(-x)) / x;
  const double fresh = sheet.wear_share * job.coating.wear_coefficient *
                       std::min(1.0, std::sqrt(size_um / 100)) * (pressure_kpa / 1000) /
                       job.coating.hardness_mpa * 1e6;
  return {tool, touch.depth_um(job.rules.scratch_quantile),
          gloss_gu(job.coating.refractive_index, 60, 0.544 * touch.groove_depth_um()),
          fresh * share};
}

class Enumeration {
 public:
  Enumeration(const Job& job, const Stack& stack) : job_(job), stack_(stack) {
    for (const Sheet& sheet : stack.sheets) {
      auto& row = work_.emplace_back();
      for (const Zone& zone : job.zones)
        row.push_back(work_of(job, sheet, zone, *sheet.size_um, 0.20));
    }
    for (const Zone& zone : job.zones) {
      if (job.scratched_by) {
        Sheet paper;
        paper.backing = backing_named("latex paper");
        start_.push_back(
            work_of(job, paper, zone, job.scratched_by->median_um, log_spread(*job.scratched_by))
                .scratch_um);
      }
      budget_.push_back(std::numeric_limits<double>::infinity());
      if (zone.film) {
        budget_.back() = std::max(
            1e-6, std::floor(1e6 * depth_budget_um({zone.film->mean_um, zone.film->sd_um,
                                                    job.rules.removed_cv, job.rules.reserve_um,
                                                    std::max(1.0, zone.area_cm2),
                                                    job.rules.cut_through_limit})) /
                      1e6);
      }
    }
    for (unsigned subset = 1; subset < 1U << stack.sheets.size(); ++subset) add(subset);
  }

  const std::vector<Way>& ways() const { return ways_; }

 private:
  double size(std::size_t sheet) const { return *stack_.sheets[sheet].size_um; }
  /// Size of the grain once it has done its work.
  double left_um(std::size_t sheet) const {
    return stack_.sheets[sheet].worn_um.value_or(size(sheet));
  }
  bool meets_target(std::size_t sheet) const {
    if (job_.target.size_um) return size(sheet) <= *job_.target.size_um;
    return std::all_of(work_[sheet].begin(), work_[sheet].end(),
                       [&](const Work& work) { return work.gloss_gu >= *job_.target.gloss_gu; });
  }

  /// A zone that is not levelled is not touched by the first sheet on a sprayed coat.
  double scratch_um(const std::vector<std::size_t>& sheets, std::size_t i, std::size_t z) const {
    const bool untouched = i == 0 && !job_.zones[z].levelled && !job_.scratched_by;
    return untouched ? 0.0 : work_[sheets[i]][z].scratch_um;
  }

  void add(unsigned subset) {
    std::vector<std::size_t> sheets;
    for (std::size_t i = 0; i < stack_.sheets.size(); ++i) {
      if (subset >> i & 1U) sheets.push_back(i);
    }
    std::stable_sort(sheets.begin(), sheets.end(),
                     [&](auto a, auto b) { return size(a) > size(b); });
    Way way;
    way.depth_pm.assign(job_.zones.size(), 0);
    std::int64_t ms = 0, cost = 0;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
      const std::size_t sheet = sheets[i];
      if (meets_target(sheet) != (i + 1 == sheets.size())) return;
      if (i > 0 || job_.scratched_by) {
        const double from = i > 0 ? left_um(sheets[i - 1]) : job_.scratched_by->median_um;
        if (from <= size(sheet)) return;
        if (!stack_.sheets[sheet].coarsest_scratch_um) {  // a compound may be any amount finer
          way.longest_ratio = std::max(way.longest_ratio, from / size(sheet));
        }
        way.shortest_ratio = std::min(way.shortest_ratio, from / size(sheet));
      }
      if (const auto reach_um = stack_.sheets[sheet].coarsest_scratch_um) {
        if (i == 0 && !job_.scratched_by) return;  // a compound does not level
        way.compound = true;
        for (std::size_t z = 0; z < job_.zones.size(); ++z) {
          const double found_um = i == 0 ? start_[z] : scratch_um(sheets, i - 1, z);
          way.too_deep_um = std::max(way.too_deep_um, found_um - *reach_um);
        }
      }
      double minutes = job_.rules.change_minutes, used = 0;
      for (std::size_t z = 0; z < job_.zones.size(); ++z) {
        const Zone& zone = job_.zones[z];
        const Work& work = work_[sheet][z];
        const Block& tool = work.tool;
        double removal = 0;
        if (i > 0) {
          removal = scratch_um(sheets, i - 1, z) * job_.rules.overcut;
        } else if (job_.scratched_by) {
          removal = start_[z] * job_.rules.overcut;
        } else if (zone.levelled) {
          removal = levelling_removal_um({zone.peel_um, zone.peel_wavelength_mm, tool.modulus_mpa,
                                          tool.force_n / tool.area_cm2 * 10,
                                          job_.rules.residual_peel_um});
        }
        const double travel = removal / work.rate * zone.area_cm2 / tool.area_cm2;
        minutes += travel / tool.speed_m_s / tool.duty / 60;
        used += travel / stack_.sheets[sheet].backing.life_m * tool.area_cm2 * tool.wrap /
                (stack_.sheets[sheet].width_mm * stack_.sheets[sheet].height_mm / 100);
        way.depth_pm[z] += std::llround(removal * 1e6);
        const double depth =
            static_cast<double>(way.depth_pm[z] + std::llround(scratch_um(sheets, i, z) * 1e6)) /
            1e6;
        way.excess_um = std::max(way.excess_um, depth - budget_[z]);
      }
      ms += std::llround(minutes * 60000);
      cost += std::llround(used * stack_.sheets[sheet].price.value_or(0) * 10000);
      if (const auto on_hand = stack_.sheets[sheet].on_hand) {
        way.micro_short +=
            std::max<std::int64_t>(0, std::llround(used * 1e6) - std::llround(*on_hand * 1e6));
      }
    }
    for (std::size_t z = 0; z < job_.zones.size(); ++z) {
      way.depth_pm[z] += std::llround(scratch_um(sheets, sheets.size() - 1, z) * 1e6);
      const double whole = std::isfinite(budget_[z]) ? budget_[z] * 1e6 : 1e9;
      way.film = std::max(way.film, static_cast<double>(way.depth_pm[z]) / whole);
    }
    way.key = {ms, cost, static_cast<std::int64_t>(sheets.size())};
    for (const std::size_t sheet : sheets) way.key.push_back(static_cast<std::int64_t>(sheet));
    ways_.push_back(way);
  }

  const Job& job_;
  const Stack& stack_;
  std::vector<std::vector<Work>> work_;
  std::vector<double> start_, budget_;
  std::vector<Way> ways_;
};

/// Which rules a way keeps.
bool keeps(const Way& way, double min_ratio, double max_ratio, bool film, bool paper,
           double deeper_um = 0) {
  return way.too_deep_um <= deeper_um && way.longest_ratio <= max_ratio &&
         way.shortest_ratio >= min_ratio && (!film || way.excess_um <= 0) &&
         (!paper || way.micro_short == 0);
}

auto order(const Way& way) {
  return std::tuple(way.key[0], way.film, way.key[1], way.key[2],
                    std::vector(way.key.begin() + 3, way.key.end()));
}

auto order_by(Objective objective, const Way& way) {
  const double first = objective == Objective::film    ? way.film
                       : objective == Objective::cost  ? static_cast<double>(way.key[1])
                       : objective == Objective::steps ? static_cast<double>(way.key[2])
                                                       : static_cast<double>(way.key[0]);
  return std::pair(first, order(way));
}

std::vector<std::int64_t> key_of(const Plan& plan) {
  std::vector<std::int64_t> key{plan.exact.milliseconds, plan.exact.cost,
                                static_cast<std::int64_t>(plan.exact.steps())};
  for (const std::size_t sheet : plan.exact.sheets) key.push_back(static_cast<std::int64_t>(sheet));
  return key;
}

std::vector<std::vector<std::int64_t>> front_of(const std::vector<Way>& kept) {
  std::vector<const Way*> front;
  for (const Way& way : kept) {
    const bool beaten = std::any_of(kept.begin(), kept.end(), [&](const Way& other) {
      const bool no_worse =
          other.key[0] <= way.key[0] && other.film <= way.film && other.key[1] <= way.key[1];
      const bool equal =
          other.key[0] == way.key[0] && other.film == way.film && other.key[1] == way.key[1];
      return no_worse && (!equal || order(other) < order(way));
    });
    if (!beaten) front.push_back(&way);
  }
  std::sort(front.begin(), front.end(),
            [](const Way* a, const Way* b) { return order(*a) < order(*b); });
  std::vector<std::vector<std::int64_t>> keys;
  for (const Way* way : front) keys.push_back(way->key);
  return keys;
}

/// Least value of a measure over the ways that keep the other rules.
template <typename Keeps, typename Measure>
std::optional<double> least(const std::vector<Way>& ways, Keeps kept, Measure measure) {
  std::optional<double> result;
  for (const Way& way : ways) {
    if (kept(way)) result = std::min(result.value_or(measure(way)), measure(way));
  }
  return result;
}

/// Where no single limit is to blame, each is told with the other two lifted, if it still stands in the way then.
void expect_each(const Why& why, const std::vector<Way>& ways, const Rules& rules, int round) {
  constexpr double any = std::numeric_limits<double>::infinity();
  const auto free = [&](const Way& w) { return keeps(w, 1, any, false, false, any); };
  const auto ratio = least(
      ways, [&](const Way& w) { return keeps(w, rules.min_ratio, any, false, false, any); },
      [](const Way& w) { return w.longest_ratio; });
  const auto deeper = least(ways, free, [](const Way& w) { return w.too_deep_um; });
  const auto film = least(ways, free, [](const Way& w) { return w.excess_um; });
  const auto paper =
      least(ways, free, [](const Way& w) { return static_cast<double>(w.micro_short) / 1e6; });
  int told = 0;
  ASSERT_EQ(why.smallest_max_ratio.has_value(), ratio && *ratio > rules.max_ratio) << round;
  if (why.smallest_max_ratio) {
    ASSERT_DOUBLE_EQ(*why.smallest_max_ratio, *ratio) << round;
    ++told;
  }
  ASSERT_EQ(why.too_deep_um.has_value(), deeper.value() > 0) << round << " " << why.message;
  if (why.too_deep_um) {
    ASSERT_NEAR(*why.too_deep_um, *deeper, 1e-12) << round;
    ++told;
  }
  if (film.value() > 0) {
    ASSERT_NEAR(why.film_short_um.value(), *film, 2e-6) << round << " " << why.message;
    ++told;
  }
  double missing = 0;
  for (const PaperShort& p : why.paper) missing += p.needed - p.on_hand;
  ASSERT_NEAR(missing, paper.value(), 1e-5) << round << " " << why.message;
  told += why.paper.empty() ? 0 : 1;
  const bool each_way =
      why.message.find("each way breaks more than one limit") != std::string::npos;
  ASSERT_EQ(told + (why.largest_min_ratio ? 1 : 0) == 0, each_way) << round << " " << why.message;
}

void expect_reason(const Why& why, const std::vector<Way>& ways, const Rules& rules, int round) {
  const double low = rules.min_ratio, high = rules.max_ratio;
  constexpr double any = std::numeric_limits<double>::infinity();
  const auto ratio = least(
      ways, [&](const Way& w) { return keeps(w, low, any, true, true); },
      [](const Way& w) { return w.longest_ratio; });
  const auto film = least(
      ways, [&](const Way& w) { return keeps(w, low, high, false, true); },
      [](const Way& w) { return w.excess_um; });
  const auto paper = least(
      ways, [&](const Way& w) { return keeps(w, low, high, true, false); },
      [](const Way& w) { return static_cast<double>(w.micro_short) / 1e6; });
  const auto nearer = least(
      ways, [&](const Way& w) { return keeps(w, 1, high, true, true); },
      [](const Way& w) { return -w.shortest_ratio; });
  const auto deeper = least(
      ways, [&](const Way& w) { return keeps(w, low, high, true, true, any); },
      [](const Way& w) { return w.too_deep_um; });
  if (ratio) {
    ASSERT_EQ(why.blocked_by, Blocker::ratio) << round << " " << why.message;
    ASSERT_DOUBLE_EQ(why.smallest_max_ratio.value(), *ratio) << round << " " << why.message;
    ASSERT_FALSE(why.gaps.empty()) << round;
    for (const Gap& gap : why.gaps) ASSERT_GT(gap.ratio, high) << round;
  } else if (nearer) {
    ASSERT_EQ(why.blocked_by, Blocker::ratio) << round << " " << why.message;
    ASSERT_DOUBLE_EQ(why.largest_min_ratio.value(), -*nearer) << round << " " << why.message;
  } else if (deeper) {
    ASSERT_EQ(why.blocked_by, Blocker::scratch) << round << " " << why.message;
  } else if (film) {
    ASSERT_EQ(why.blocked_by, Blocker::film) << round << " " << why.message;
  } else if (paper) {
    ASSERT_EQ(why.blocked_by, Blocker::paper) << round << " " << why.message;
  } else if (ways.empty()) {
    ASSERT_EQ(why.blocked_by, Blocker::target) << round << " " << why.message;
    return;
  } else {
    ASSERT_EQ(why.blocked_by, Blocker::several) << round << " " << why.message;
    expect_each(why, ways, rules, round);
    return;
  }
  if (deeper) {
    ASSERT_NEAR(why.too_deep_um.value(), *deeper, 1e-12) << round << " " << why.message;
  }
  if (film) {
    ASSERT_NEAR(why.film_short_um.value(), *film, 2e-6) << round << " " << why.message;
  }
  if (paper) {
    double missing = 0;
    for (const PaperShort& p : why.paper) missing += p.needed - p.on_hand;
    ASSERT_NEAR(missing, *paper, 1e-5) << round << " " << why.message;
  }
}

TEST(PlanOracle, EqualsEnumerationOnRandomJobs) {
  Random random(20261125);
  int solved = 0, with_compound = 0;
  std::map<Blocker, int> blocked;
  for (int round = 0; round < 5000; ++round) {
    const Job job = random_job(random);
    const Stack stack = random_stack(random);
    const Enumeration enumeration(job, stack);
    std::vector<Way> kept;
    for (const Way& way : enumeration.ways()) {
      if (keeps(way, job.rules.min_ratio, job.rules.max_ratio, true, true)) kept.push_back(way);
    }
    const Plan plan = levigate::plan(job, stack);
    ASSERT_EQ(plan.found, !kept.empty()) << round << (plan.why ? plan.why->message : "");
    if (!plan.found) {
      ++blocked[plan.why->blocked_by];
      ASSERT_NO_FATAL_FAILURE(expect_reason(*plan.why, enumeration.ways(), job.rules, round));
      continue;
    }
    ++solved;
    with_compound +=
        std::any_of(kept.begin(), kept.end(), [](const Way& w) { return w.compound; }) ? 1 : 0;
    const auto best = std::min_element(kept.begin(), kept.end(), [&](const Way& a, const Way& b) {
      return order_by(job.prefer, a) < order_by(job.prefer, b);
    });
    ASSERT_EQ(key_of(plan), best->key) << round;
    ASSERT_EQ(plan.exact.depth_pm, best->depth_pm) << round;
    std::vector<std::vector<std::int64_t>> front;
    for (const Plan& point : plan.tradeoff) front.push_back(key_of(point));
    ASSERT_EQ(front, front_of(kept)) << round;
  }
  EXPECT_GT(solved, 1000);
  EXPECT_GT(with_compound, 500);
  for (const Blocker blocker : {Blocker::target, Blocker::ratio, Blocker::scratch, Blocker::film,
                                Blocker::paper, Blocker::several}) {
    EXPECT_GT(blocked[blocker], 20) << to_string(blocker);
    RecordProperty("blocked_by_" + std::string(to_string(blocker)), blocked[blocker]);
  }
}

}  // namespace
