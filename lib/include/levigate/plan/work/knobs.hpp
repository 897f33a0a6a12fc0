// The inputs that a sequence hangs on: each with its band and source, and how to set it to another value.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <numbers>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/detail/profile.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/gauge_table.hpp"
#include "levigate/film/usual_film_table.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/work/knob.hpp"
#include "levigate/plan/work/levelling_of.hpp"
#include "levigate/plan/work/median_band.hpp"
#include "levigate/plan/work/sheet_knobs.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/source.hpp"
#include "levigate/sourced.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/machine.hpp"
#include "levigate/stack/machine_table.hpp"
#include "levigate/stack/polish.hpp"
#include "levigate/stack/rule_table.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/stack/wheel.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/model.hpp"
#include "levigate/surface/model_table.hpp"
#include "levigate/surface/peel.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/wheel_table.hpp"

namespace levigate::inline v0 {

namespace detail {

/// sqrt(3) standard deviations: half of the range of an even distribution, as a band is one.
inline constexpr double band_sigmas = std::numbers::sqrt3;

/// The band of a film's mean, and what its error rests on.
inline Sourced film_band(const Film& film) {
  Sourced band = given(film.mean_um);
  band.low = std::max(0.0, film.mean_um - band_sigmas * film.mean_se_um);
  band.high = film.mean_um + band_sigmas * film.mean_se_um;
  if (film.how == FilmHow::gauge) {
    band.source = {Basis::computed, "standard error of the readings, and the gauge's accuracy"};
  } else if (film.how != FilmHow::stated) {
    band.source = profile_named(gauge_table, to_string(film.how), "gauge").share.source;
  }
  return band;
}

/// The band of a spread that is taken as usual.
inline Sourced spread_band(const Film& film) {
  const Sourced& usual = usual_film_table[0].film_cv;
  return {film.sd_um, film.sd_um * usual.low / usual.value, film.sd_um * usual.high / usual.value,
          usual.source};
}

/// The band of a height of orange peel that was told so.
inline Sourced peel_band(const Zone& zone, double peel_um) {
  const Sourced& factor = peel_factor(zone.peel_how);
  const double end = std::pow(factor.value, band_sigmas);
  return {peel_um, peel_um / end, peel_um * end, factor.source};
}

/// Adds what a person typed of the zones: film and orange peel.
inline void add_typed(std::vector<Knob>& result, const Job& job) {
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    const Zone& zone = job.zones[i];
    if (zone.film) {
      result.push_back({"zone " + zone.name, "film_um", Input::typed, film_band(*zone.film),
                        [i](Setup& s, double value) { s.job.zones[i].film->mean_um = value; }});
    }
    if (zone.film && zone.film->usual_spread) {
      result.push_back({"zone " + zone.name, "film_sd_um", Input::typed, spread_band(*zone.film),
                        [i](Setup& s, double value) { s.job.zones[i].film->sd_um = value; }});
    }
    if (has_peel_to_level(job, zone)) {
      result.push_back({"zone " + zone.name, "peel_um", Input::typed, peel_band(zone, zone.peel_um),
                        [i](Setup& s, double value) { s.job.zones[i].peel_um = value; }});
    } else if (zone.film && zone.levelled_peel_um > 0) {
      result.push_back({"zone " + zone.name, "levelled_peel_um", Input::typed,
                        peel_band(zone, zone.levelled_peel_um), [i](Setup& s, double value) {
                          set_levelled_peel(s.job, s.job.zones[i], value);
                        }});
    }
  }
}

/// What a learned factor rests on.
inline const Source learned_source{Basis::computed, "learned from journals"};

/// Adds what a shop has learned of the sheets, by backing. A simulation draws it from the shop.
inline void add_learned(std::vector<Knob>& result, const Setup& setup) {
  std::set<std::string> seen;
  for (std::size_t i = 0; i < setup.stack.sheets.size(); ++i) {
    const std::string backing = learned_name(setup.stack.sheets[i]);
    const SheetFactors factors = setup.factors.of(i);
    if (!seen.insert(backing).second) continue;
    const auto all = positions(setup.stack.sheets,
                               [&](const Sheet& sheet) { return learned_name(sheet) == backing; });
    const bool machine = machine_of(setup.stack.sheets[i]);
    const auto add = [&](const std::string& quantity, double value, const LearnedBand& band,
                         auto set) {
      result.push_back({"backing " + backing, quantity, Input::typed,
                        Sourced{value, band.low, band.high, learned_source},
                        [all, set](Setup& s, double changed) {
                          for (const std::size_t sheet : all) set(s.factors, sheet, changed);
                        }});
    };
    if (factors.pace) {
      add("learned_pace", (machine ? 1.0 : setup.factors.duty) * factors.rate, *factors.pace,
          [machine](Factors& f, std::size_t sheet, double pace) {
            f.sheets[sheet].rate = machine ? pace : pace / f.duty;
          });
    }
    if (factors.scratches) {
      add("learned_scratch", factors.scratch, *factors.scratches,
          [](Factors& f, std::size_t sheet, double scratch) { f.sheets[sheet].scratch = scratch; });
    }
  }
}

/// The setup of the sheets of a sequence alone, in its order.
inline Setup setup_of(const Setup& all, const std::vector<std::size_t>& sheets) {
  Setup result{all.job,
               without_sheets(all.stack),
               {},
               {},
               all.model,
               {},
               all.factors,
               all.overcuts,
               all.carried_log_spreads,
               all.carried_backing};
  result.factors.sheets.clear();
  for (const std::size_t sheet : sheets) {
    result.stack.sheets.push_back(all.stack.sheets[sheet]);
    result.grades.push_back(all.grades[sheet]);
    result.stands.push_back(all.stands[sheet]);
    result.log_spreads.push_back(all.log_spreads[sheet]);
    result.factors.sheets.push_back(all.factors.of(sheet));
  }
  return result;
}

/// The block or pad that a sheet is its own tool with; none where that is a wheel or a machine.
inline std::optional<Block> own_block(const Sheet& sheet) {
  const Tool* tool = tool_of(sheet);
  const Block* block = tool ? as_block(*tool) : nullptr;
  return block ? std::optional(*block) : std::nullopt;
}

/// The same, to be set.
inline Block* own_block(Sheet& sheet) {
  return const_cast<Block*>(std::get_if<Block>(tool_of(sheet)));
}

/// The same of a wheel, to be set.
inline Wheel* own_wheel(Sheet& sheet) { return const_cast<Wheel*>(wheel_of(sheet)); }

/// The same of a machine, to be set.
inline Machine* own_machine(Sheet& sheet) { return const_cast<Machine*>(machine_of(sheet)); }

/// The same everywhere: those of these sheets.
template <auto own>
auto all_of(const std::vector<std::size_t>& sheets) {
  return [sheets](Setup& s) {
    std::vector<decltype(own(s.stack.sheets[0]))> all;
    for (const std::size_t i : sheets) all.push_back(own(s.stack.sheets[i]));
    return all;
  };
}

static_assert(says_inputs<Coating>(coating_columns) && says_inputs<Backing>(backing_columns) &&
                  says_inputs<Block>(block_columns) && says_inputs<Rules>(rule_columns) &&
                  says_inputs<Model>(model_columns) && says_inputs<Wheel>(wheel_columns) &&
                  says_inputs<Machine>(machine_columns) && says_inputs<Polish>(compound_columns),
              "a line of these descriptions wants is(Input::...)");

/// Every input of a setup: of the coating, of each backing and block by name, of rules, model, grades and zones.
inline std::vector<Knob> knobs(const Setup& setup) {
  std::vector<Knob> result;
  const Coating& coating = setup.job.coating;
  add_knobs(result, "coating " + coating.name, coating, coating_table, coating.name,
            coating_columns, [](Setup& s) { return std::vector{&s.job.coating}; });

  add_backings(result, setup);

  std::vector<Tool> tools;
  for (const Zone& zone : setup.job.zones) tools.push_back(zone.block);
  for (const Sheet& sheet : setup.stack.sheets) {
    if (const Tool* tool = tool_of(sheet)) tools.push_back(*tool);
  }
  std::set<std::string> seen;
  for (const Tool& tool : tools) {
    const Block block = face_of(tool);
    if (!seen.insert(block.name).second) continue;
    if (const Wheel* wheel = as_wheel(tool)) {
      const auto sheets = positions(setup.stack.sheets, [&](const Sheet& sheet) {
        return wheel_of(sheet) && *wheel_of(sheet) == *wheel;
      });
      add_knobs(result, "wheel " + wheel->name, *wheel, wheel_table, wheel->name, wheel_columns,
                all_of<&own_wheel>(sheets));
      continue;
    }
    if (const Machine* machine = as_machine(tool)) {
      const auto sheets = positions(setup.stack.sheets, [&](const Sheet& sheet) {
        return machine_of(sheet) && *machine_of(sheet) == *machine;
      });
      add_knobs(result, "machine " + machine->name, *machine, machine_table, machine->name,
                machine_columns, all_of<&own_machine>(sheets));
      continue;
    }
    const auto zones =
        positions(setup.job.zones, [&](const Zone& zone) { return zone.block == block; });
    const auto sheets = positions(setup.stack.sheets,
                                  [&](const Sheet& sheet) { return own_block(sheet) == block; });
    add_knobs(result, "block " + block.name, block, block_table, block.name, block_columns,
              [zones, sheets](Setup& s) {
                std::vector<Block*> all;
                for (const std::size_t i : zones) all.push_back(&s.job.zones[i].block);
                for (const std::size_t i : sheets) all.push_back(own_block(s.stack.sheets[i]));
                return all;
              });
  }

  // The step-up rule chooses a sequence; one that is taken as given does not hang on it.
  add_knobs(result, "rule", setup.job.rules, rule_table, "default", rule_columns,
            [](Setup& s) { return std::vector{&s.job.rules}; });
  add_knobs(result, "model", setup.model, model_table, "default", model_columns,
            [](Setup& s) { return std::vector{&s.model}; });
  add_grades(result, setup);
  add_typed(result, setup.job);
  add_learned(result, setup);
  return result;
}

}  // namespace detail

}  // namespace levigate
