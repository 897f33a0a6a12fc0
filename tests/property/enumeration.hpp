// Random jobs and drawers, and every way through a drawer by enumeration. It adds up the published formulas itself and shares
// only the surface layer with the planner.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

#include "levigate/film/budget.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/plan/plan.hpp"
#include "levigate/plan/work/sun.hpp"
#include "levigate/plan/work/sunlight.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/surface/levelling.hpp"
#include "levigate/surface/sheen.hpp"
#include "property/random.hpp"

namespace enumeration {

using namespace levigate;

using random_numbers::Random;

inline Job random_job(Random& random) {
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

inline Stack random_stack(Random& random, std::size_t most = 9) {
  Stack stack;
  const char* const backings[] = {"latex paper", "film", "cloth", "foam-backed"};
  for (std::size_t i = 0, sheets = 1 + random.below(most); i < sheets; ++i) {
    Sheet sheet;
    sheet.id = "s" + std::to_string(i);
    sheet.label = "own";
    // Whole micrometres, so that equal sizes and equal ratios come about.
    const double size_um = std::floor(std::exp(random.between(std::log(4.0), std::log(45.0))));
    sheet.backing = backing_named(backings[random.below(4)]);
    std::optional<Tool> tool;
    if (random.chance(0.1)) tool = block_named("foam pad");
    sheet.width_mm = 115;
    sheet.height_mm = 140;
    if (size_um < 14 && random.chance(0.6)) {
      Polish polish{.size_um = size_um, .reach = {}, .tool = tool};
      polish.worn_um = size_um * random.between(0.6, 1);
      polish.reach = ScratchReach{random.between(0.2, 2.5)};
      polish.wear_share = random.between(0.1, 1);
      sheet.kind = polish;
    } else {
      sheet.size_um = size_um;
      if (tool) sheet.kind = Pad{*tool};
    }
    if (random.chance(0.4)) sheet.on_hand = std::floor(random.between(0, 3));
    if (random.chance(0.7)) sheet.price = std::floor(random.between(0, 4));
    stack.sheets.push_back(sheet);
  }
  return stack;
}

/// One way through the drawer with its sums and with how far it is from keeping each rule.
struct Way {
  /// Expected minutes [ms], cost, fragile steps, steps, then the sheets: ties go by it.
  std::vector<std::int64_t> key;
  double film = 0;  ///< of the worst zone
  std::vector<std::int64_t> depth_pm;
  double longest_ratio = 0;
  double shortest_ratio = std::numeric_limits<double>::infinity();
  double excess_um = -std::numeric_limits<double>::infinity();
  std::int64_t micro_short = 0;
  std::vector<std::int64_t> micro_used;  ///< of each sheet of the stack
  double too_deep_um = 0;                ///< of scratches for the compounds they meet
  bool compound = false;                 ///< whether there is one
  int passed_before = 0;                 ///< zones that a later sheet took up
  int stands = 0;                        ///< zones that none did
  bool as_sprayed = false;               ///< leaves a zone so
};

/// Size of the grain of a random sheet.
inline double size_of(const Sheet& sheet) {
  const Polish* polish = polish_of(sheet);
  return polish ? polish->size_um : *sheet.size_um;
}

/// Size of that grain once it has done its work.
inline double left_of(const Sheet& sheet) {
  const Polish* polish = polish_of(sheet);
  return polish ? polish->worn_um : *sheet.size_um;
}

/// The formulas of one sheet in one zone, put together anew.
struct Work {
  Block tool;
  double scratch_um, rq_um, gloss_gu, rate;
};

/// What a meter reads at 60 degrees, mean of both lays.
inline double reading_gu(const Job& job, double rq_um) {
  double sum = 0;
  for (const Lay lay : {Lay::across, Lay::along})
    sum += meter_reading_gu({job.coating.refractive_index, 60, rq_um, 11, lay});
  return sum / 2;
}

inline Work work_of(const Job& job, const Sheet& sheet, const Zone& zone, double size_um,
                    double left_um, double spread) {
  const Block tool = tool_of(sheet) ? std::get<Block>(*tool_of(sheet)) : zone.block;
  const double pressure_kpa = tool.force_n / tool.area_cm2 * 10;
  const Contact touch =
      contact({left_um, spread, sheet.backing.tip_spread, sheet.backing.modulus_mpa, pressure_kpa,
               job.coating.hardness_mpa});
  const Backing& b = sheet.backing;
  const double x = b.clean_every_m / b.fade_m;
  const double share = b.floor + (1 - b.floor) * (1 - std::exp(-x)) / x;
  const double flank = 11 * std::numbers::pi / 180;
  const double wear_coefficient = job.coating.wear_coefficient.value_or(
      2 / std::numbers::pi * job.coating.cutting_efficiency * std::tan(flank));
  const double wear_share = polish_of(sheet) ? polish_of(sheet)->wear_share : 1;
  const double fresh = wear_share * wear_coefficient * std::min(1.0, std::sqrt(size_um / 100)) *
                       (pressure_kpa / 1000) / job.coating.hardness_mpa * 1e6;
  const double rq_um = 0.468 * touch.groove_depth_um();
  return {tool, touch.depth_um(job.rules.scratch_quantile), rq_um, reading_gu(job, rq_um),
          fresh * share};
}

/// Grain, scratches and gloss of a zone on its way; without a size as sprayed.
struct State {
  std::optional<double> size_um;
  double left_um = 0;  ///< of the grain once it has done its work
  double scratch_um = 0;
  double gloss_gu = 0;
  bool in_step = false;  ///< worked by a sheet of the sequence
};

class Enumeration {
 public:
  Enumeration(const Job& job, const Stack& stack) : job_(job), stack_(stack) {
    for (const Sheet& sheet : stack.sheets) {
      auto& row = work_.emplace_back();
      for (const Zone& zone : job.zones)
        row.push_back(work_of(job, sheet, zone, size_of(sheet), left_of(sheet), 0.20));
    }
    for (const Zone& zone : job.zones) {
      start_.push_back(start_of(zone));
      levels_ = levels_ || (!start_.back().size_um && zone.levelled);
      coarsest_um_ = std::max(coarsest_um_, start_.back().left_um);
      budget_.push_back(std::numeric_limits<double>::infinity());
      if (zone.film) {
        budget_.back() = std::max(1e-6, std::floor(1e6 * budget_um(zone)) / 1e6);
      }
    }
    levels_ = levels_ || coarsest_um_ == 0;
    for (unsigned subset = 1; subset < 1U << stack.sheets.size(); ++subset) add(subset);
  }

  const std::vector<Way>& ways() const { return ways_; }

  /// Whether every zone meets the target before the first step.
  bool done() const {
    return std::all_of(start_.begin(), start_.end(),
                       [&](const State& s) { return s.size_um && at_target(s); });
  }

 private:
  /// The least budget of a zone over its own tool and the pads that could level it: peel is judged by eye.
  double budget_um(const Zone& zone) const {
    std::vector<Block> tools{zone.block};
    for (const Sheet& sheet : stack_.sheets) {
      if (tool_of(sheet) && !polish_of(sheet)) tools.push_back(std::get<Block>(*tool_of(sheet)));
    }
    const bool peeled = !start_.back().size_um && zone.levelled;
    double least = std::numeric_limits<double>::infinity();
    for (const Block& tool : tools) {
      const double pressure_kpa = tool.force_n / tool.area_cm2 * 10;
      BudgetInput input{zone.film->mean_um,           zone.film->sd_um,
                        job_.rules.removed_cv,        job_.rules.reserve_um,
                        std::max(1.0, zone.area_cm2), job_.rules.cut_through_limit};
      if (peeled) {
        input.common = {.peel_um = zone.peel_um,
                        .peel_factor = 1.4,
                        .critical_um = zone.peel_wavelength_mm * pressure_kpa /
                                       (std::numbers::pi * tool.modulus_mpa),
                        .residual_um = job_.rules.residual_peel_um};
        const double levelled_um =
            levelling_removal_um({zone.peel_um, zone.peel_wavelength_mm, tool.modulus_mpa,
                                  pressure_kpa, job_.rules.residual_peel_um});
        const bool own = tool == zone.block;
        if (!own && levelled_um > zone.film->mean_um - job_.rules.reserve_um) continue;
      }
      least = std::min(least, depth_budget_um(input));
    }
    return least;
  }

  State start_of(const Zone& zone) const {
    if (!zone.carries && !job_.scratched_by) return {};
    const Grade& grade = zone.carries ? zone.carries->grade : *job_.scratched_by;
    Sheet paper;
    paper.backing = backing_named("latex paper");
    const double left_um =
        zone.carries ? zone.carries->worn_um.value_or(grade.median_um) : grade.median_um;
    const Work work = work_of(job_, paper, zone, grade.median_um, left_um, log_spread(grade));
    State state{grade.median_um, left_um, work.scratch_um, 0, false};
    double rq_um = work.rq_um;
    if (zone.carries && zone.carries->scratch_um) {
      state.scratch_um = *zone.carries->scratch_um;
      rq_um *= state.scratch_um / work.scratch_um;
    }
    if (zone.carries && zone.carries->rq_um) rq_um = *zone.carries->rq_um;
    state.gloss_gu = reading_gu(job_, rq_um);
    return state;
  }
  double size(std::size_t sheet) const { return size_of(stack_.sheets[sheet]); }
  /// Size of the grain once it has done its work.
  double left_um(std::size_t sheet) const { return left_of(stack_.sheets[sheet]); }
  State state_after(std::size_t sheet, std::size_t z) const {
    return {size(sheet), left_um(sheet), work_[sheet][z].scratch_um, work_[sheet][z].gloss_gu,
            true};
  }
  bool at_target(const State& state) const {
    return job_.target.size_um ? *state.size_um <= *job_.target.size_um
                               : state.gloss_gu >= *job_.target.gloss_gu;
  }
  /// A zone that no sheet worked counts as it stands; one as sprayed as the sheet would leave it.
  bool meets_target(std::size_t sheet, const std::vector<State>& states) const {
    for (std::size_t z = 0; z < states.size(); ++z) {
      const bool stands = states[z].size_um && !states[z].in_step;
      if (!at_target(stands ? states[z] : state_after(sheet, z))) return false;
    }
    return true;
  }

  /// Whether a step works a zone. The levelling step keeps off edges, and no sheet works a zone that it is not finer than by
  /// min_ratio, unless it must: with nothing to level, some zone is to be worked, and the coarsest needs it most.
  bool works(std::size_t sheet, std::size_t z, const State& state, bool first) const {
    if (state.in_step) return true;
    if (!state.size_um) return !first || !levels_ || job_.zones[z].levelled;
    if (!levels_ && state.left_um == coarsest_um_) return true;
    return state.left_um > size(sheet) &&
           state.left_um / size(sheet) >= job_.rules.min_ratio * (1 - 1e-12);
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
    way.micro_used.assign(stack_.sheets.size(), 0);
    std::int64_t ms = 0, cost = 0;
    std::vector<State> states = start_;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
      const std::size_t sheet = sheets[i];
      const Polish* compound = polish_of(stack_.sheets[sheet]);
      if (compound && i == 0 && levels_) return;  // a compound does not level
      way.compound = way.compound || compound != nullptr;
      std::vector<double> from;
      if (i > 0) from.push_back(left_um(sheets[i - 1]));
      double minutes = job_.rules.change_minutes, used = 0;
      for (std::size_t z = 0; z < job_.zones.size(); ++z) {
        const Zone& zone = job_.zones[z];
        const Work& work = work_[sheet][z];
        const Block& tool = work.tool;
        State& state = states[z];
        const bool works_it = works(sheet, z, state, i == 0);
        double removal = 0;
        if (works_it && (state.size_um || state.in_step)) {
          from.push_back(state.left_um);
          if (compound) {
            way.too_deep_um = std::max(
                way.too_deep_um,
                state.scratch_um - std::get<ScratchReach>(compound->reach).coarsest_scratch_um);
          }
          removal = state.scratch_um * *job_.rules.overcut;
          way.passed_before += !state.in_step && i > 0 ? 1 : 0;
        } else if (works_it && i == 0 && zone.levelled) {
          removal = levelling_removal_um({zone.peel_um, zone.peel_wavelength_mm, tool.modulus_mpa,
                                          tool.force_n / tool.area_cm2 * 10,
                                          job_.rules.residual_peel_um});
        }
        if (works_it) state = state_after(sheet, z);
        const double travel = removal / work.rate * zone.area_cm2 / tool.area_cm2;
        minutes += travel / tool.speed_m_s / tool.duty / 60;
        used += travel / stack_.sheets[sheet].backing.life_m * tool.area_cm2 * tool.wrap /
                (stack_.sheets[sheet].width_mm * stack_.sheets[sheet].height_mm / 100);
        way.depth_pm[z] += std::llround(removal * 1e6);
        const double depth =
            static_cast<double>(way.depth_pm[z] + std::llround(state.scratch_um * 1e6)) / 1e6;
        way.excess_um = std::max(way.excess_um, depth - budget_[z]);
      }
      for (const double from_um : from) {
        if (from_um <= size(sheet)) return;
        if (!compound)  // a compound may be any amount finer
          way.longest_ratio = std::max(way.longest_ratio, from_um / size(sheet));
        way.shortest_ratio = std::min(way.shortest_ratio, from_um / size(sheet));
      }
      const bool last = i + 1 == sheets.size();
      const bool leaves_some = std::any_of(states.begin(), states.end(),
                                           [](const State& state) { return !state.size_um; });
      if (meets_target(sheet, states) ? !last && !leaves_some : last) return;
      ms += std::llround(minutes * 60000);
      cost += std::llround(used * stack_.sheets[sheet].price.value_or(0) * 10000);
      way.micro_used[sheet] = std::llround(used * 1e6);
      if (const auto on_hand = stack_.sheets[sheet].on_hand) {
        way.micro_short +=
            std::max<std::int64_t>(0, std::llround(used * 1e6) - std::llround(*on_hand * 1e6));
      }
    }
    for (std::size_t z = 0; z < job_.zones.size(); ++z) {
      way.depth_pm[z] += std::llround(states[z].scratch_um * 1e6);
      way.stands += states[z].in_step ? 0 : 1;
      way.as_sprayed = way.as_sprayed || !states[z].size_um;
      const double whole = std::isfinite(budget_[z]) ? budget_[z] * 1e6 : 1e9;
      way.film = std::max(way.film, static_cast<double>(way.depth_pm[z]) / whole);
    }
    const Sequence in_sun = summed_in_sun(workings_, sun_, sheets);
    way.key = {ms + in_sun.back_milliseconds, cost, in_sun.fragile,
               static_cast<std::int64_t>(sheets.size())};
    for (const std::size_t sheet : sheets) way.key.push_back(static_cast<std::int64_t>(sheet));
    ways_.push_back(way);
  }

  const Job& job_;
  const Stack& stack_;
  // What the sun shows of a way is the library's own: it is held to a simulation of spots in Python.
  Workings workings_ = workings_without_budgets(setup(job_, stack_));
  Sun sun_{workings_};
  std::vector<std::vector<Work>> work_;
  std::vector<State> start_;
  std::vector<double> budget_;
  bool levels_ = false;
  double coarsest_um_ = 0;
  std::vector<Way> ways_;
};

/// Which rules a way keeps.
inline bool keeps(const Way& way, double min_ratio, double max_ratio, bool film, bool paper,
                  double deeper_um = 0) {
  return way.too_deep_um <= deeper_um && way.longest_ratio <= max_ratio &&
         way.shortest_ratio >= min_ratio && (!film || way.excess_um <= 0) &&
         (!paper || way.micro_short == 0);
}

/// The ways that keep all rules. One that leaves a zone as sprayed counts only where there is no other.
inline std::vector<Way> kept_of(const Enumeration& enumeration, const Rules& rules) {
  std::vector<Way> kept;
  for (const Way& way : enumeration.ways()) {
    if (keeps(way, rules.min_ratio, rules.max_ratio, true, true)) kept.push_back(way);
  }
  const bool others =
      std::any_of(kept.begin(), kept.end(), [](const Way& way) { return !way.as_sprayed; });
  if (others) std::erase_if(kept, [](const Way& way) { return way.as_sprayed; });
  return kept;
}

inline auto order(const Way& way) {
  return std::tuple(way.key[0], way.film, way.key[1], way.key[2],
                    std::vector(way.key.begin() + 3, way.key.end()));
}

/// `near`: minutes up to which ways count as equal in minutes.
inline auto order_by(Objective objective, const Way& way, std::int64_t near) {
  const bool minutes = objective == Objective::minutes;
  const double first = objective == Objective::film    ? way.film
                       : objective == Objective::cost  ? static_cast<double>(way.key[1])
                       : objective == Objective::steps ? static_cast<double>(way.key[3])
                                                       : (way.key[0] > near ? 1.0 : 0.0);
  return std::tuple(first, minutes ? way.key[2] : 0, minutes ? way.film : 0.0, order(way));
}

/// The best of these ways.
inline const Way& best_of(const std::vector<Way>& ways, Objective objective) {
  const auto quickest = std::min_element(
      ways.begin(), ways.end(), [](const Way& a, const Way& b) { return a.key[0] < b.key[0]; });
  const std::int64_t near = quickest->key[0] + quickest->key[0] / 100 * 3;
  return *std::min_element(ways.begin(), ways.end(), [&](const Way& a, const Way& b) {
    return order_by(objective, a, near) < order_by(objective, b, near);
  });
}

inline std::vector<std::int64_t> key_of(const Sequence& sequence) {
  std::vector<std::int64_t> key{sequence.expected_milliseconds(), sequence.cost, sequence.fragile,
                                static_cast<std::int64_t>(sequence.steps())};
  for (const std::size_t sheet : sequence.sheets) key.push_back(static_cast<std::int64_t>(sheet));
  return key;
}

inline std::vector<std::vector<std::int64_t>> front_of(const std::vector<Way>& kept) {
  std::vector<const Way*> front;
  for (const Way& way : kept) {
    const bool beaten = std::any_of(kept.begin(), kept.end(), [&](const Way& other) {
      const bool no_worse = other.key[0] <= way.key[0] && other.film <= way.film &&
                            other.key[1] <= way.key[1] && other.key[2] <= way.key[2];
      const bool equal = other.key[0] == way.key[0] && other.film == way.film &&
                         other.key[1] == way.key[1] && other.key[2] == way.key[2];
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

}  // namespace enumeration
