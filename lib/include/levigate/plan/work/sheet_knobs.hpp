// The inputs of sheets, and of the paper whose scratches zones carry: backings, compounds, grades.
#pragma once

#include <algorithm>
#include <cstddef>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "levigate/grade/grade.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/knob.hpp"
#include "levigate/plan/work/median_band.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/polish.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/surface/removal.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/compound_table.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The compound of a sheet, to be set.
inline Polish* polish_in(Sheet& sheet) { return std::get_if<Polish>(&sheet.kind); }

/// The compounds that lie on the buff of the profiles, which follows from their grain.
inline std::vector<std::size_t> buffed(const Setup& setup) {
  return positions(setup.stack.sheets, [](const Sheet& sheet) {
    return polish_of(sheet) && sheet.backing == buff_of(*polish_of(sheet));
  });
}

/// Makes grade and buff of these compounds follow from their grain, once that or the size effect was set.
inline void settle(Setup& setup, const std::vector<std::size_t>& compounds) {
  const auto effect = [&](double size_um) {
    return size_effect_with(size_um, setup.model.size_exponent, setup.model.saturation_um);
  };
  for (const std::size_t i : compounds) {
    Polish& polish = *polish_in(setup.stack.sheets[i]);
    polish.worn_um = std::min(polish.worn_um, polish.size_um);
    setup.grades[i].median_um = polish.size_um;
    setup.stack.sheets[i].backing.floor = effect(polish.worn_um) / effect(polish.size_um);
  }
}

/// The zones that carry scratches of which the grade alone is known.
inline std::vector<std::size_t> by_grade_alone(const Job& job) {
  return positions(job.zones, [&](const Zone& zone) {
    const auto carried = carried_in(job, zone);
    return carried && !carried->scratch_um;
  });
}

/// Adds the numbers of backings: of sheets, of buffs with the compounds on them, and of the paper whose scratches zones carry.
inline void add_backings(std::vector<Knob>& result, const Setup& setup) {
  const bool carried = !by_grade_alone(setup.job).empty();
  std::vector<Backing> backings;
  for (const Sheet& sheet : setup.stack.sheets) backings.push_back(sheet.backing);
  if (carried) backings.push_back(setup.carried_backing);
  const std::vector<std::size_t> compounds = buffed(setup);
  std::set<std::string> seen;
  for (const Backing& backing : backings) {
    if (!seen.insert(backing.name).second) continue;
    const auto backed =
        positions(setup.stack.sheets, [&](const Sheet& other) { return other.backing == backing; });
    const bool below = carried && backing == setup.carried_backing;
    const auto all = [backed, below](Setup& s) {
      std::vector<Backing*> places;
      for (const std::size_t i : backed) places.push_back(&s.stack.sheets[i].backing);
      if (below) places.push_back(&s.carried_backing);
      return places;
    };
    const std::string subject = "backing " + backing.name;
    if (backed.empty() || !std::count(compounds.begin(), compounds.end(), backed.front())) {
      add_knobs(result, subject, backing, backing_table, backing.name, backing_columns, all);
      continue;
    }
    const Polish polish = *polish_of(setup.stack.sheets[backed.front()]);
    add_knobs(result, subject, backing, compound_table, polish.name, compound_columns, all);
    const std::size_t grain = result.size();
    add_knobs(result, "compound " + polish.name, polish, compound_table, polish.name,
              compound_columns, [backed](Setup& s) {
                std::vector<Polish*> places;
                for (const std::size_t i : backed) places.push_back(polish_in(s.stack.sheets[i]));
                return places;
              });
    for (std::size_t i = grain; i < result.size(); ++i) {
      result[i].set = [set = result[i].set, backed](Setup& s, double number) {
        set(s, number);
        settle(s, backed);
      };
    }
  }
}

/// Adds the size of a grade and how it spreads.
inline void add_grade(std::vector<Knob>& result, const Grade& grade,
                      std::function<void(Setup&, double)> set_median,
                      std::function<void(Setup&, double)> set_spread) {
  const std::string subject = "grade " + grade.label;
  if (set_median) {
    result.push_back(
        {subject, "median_um", Input::believed, median_band(grade), std::move(set_median)});
  }
  const Spread spread = levigate::spread(grade);
  const double value = spread.log_spread;
  result.push_back({subject,
                    "log_spread",
                    Input::believed,
                    {value, 0.75 * value, 1.25 * value, spread.source},
                    std::move(set_spread)});
}

/// Adds the grades of sheets, but for the size of compounds, and those of which zones carry scratches.
inline void add_grades(std::vector<Knob>& result, const Setup& setup) {
  const std::vector<std::size_t> compounds = buffed(setup);
  for (std::size_t i = 0; i < setup.grades.size(); ++i) {
    std::function<void(Setup&, double)> set_median = [i](Setup& s, double value) {
      s.grades[i].median_um = value;
    };
    if (std::count(compounds.begin(), compounds.end(), i)) set_median = nullptr;
    add_grade(result, setup.grades[i], std::move(set_median),
              [i](Setup& s, double changed) { s.log_spreads[i] = changed; });
  }
  std::map<std::string, std::vector<std::size_t>> carried;
  for (const std::size_t i : by_grade_alone(setup.job))
    carried[carried_in(setup.job, setup.job.zones[i])->grade.label].push_back(i);
  for (const auto& of_label : carried) {
    const std::vector<std::size_t> zones = of_label.second;
    add_grade(
        result, carried_in(setup.job, setup.job.zones[zones.front()])->grade,
        [zones](Setup& s, double value) {
          for (const std::size_t i : zones) {
            Zone& zone = s.job.zones[i];
            zone.carries = carried_in(s.job, zone);
            zone.carries->grade.median_um = value;
          }
        },
        [zones](Setup& s, double changed) {
          for (const std::size_t i : zones) s.carried_log_spreads[i] = changed;
        });
  }
}

}  // namespace detail

}  // namespace levigate
