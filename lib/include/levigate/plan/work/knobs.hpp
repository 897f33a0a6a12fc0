// The inputs that a sequence hangs on: each with its band and source, and how to set it to another value.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <numbers>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/detail/profile.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/gauge_table.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/work/levelling_of.hpp"
#include "levigate/plan/work/median_band.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/source.hpp"
#include "levigate/sourced.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/rule_table.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/model.hpp"
#include "levigate/surface/model_table.hpp"
#include "levigate/surface/peel.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The table's number where the value in use is the table's, else one given by the user.
template <typename Row, std::size_t count>
Sourced traced(const Row (&table)[count], std::string_view name, const TableField<Row>& column,
               double in_use) {
  for (const Row& row : table) {
    const Sourced* number = row.name == name ? column.number(row) : nullptr;
    if (number && number->value == in_use) return *number;
  }
  return given(in_use);
}

/// Whether a description says of every number in a table what input it is.
template <typename Value, typename Row, std::size_t columns>
constexpr bool says_inputs(const TableField<Row> (&fields)[columns]) {
  for (const TableField<Row>& field : fields) {
    for (const Member& member : described<Value>.members) {
      if (member.name == field.quantity && member.input == Input::unsaid) return false;
    }
  }
  return true;
}

/// One input together with how to set it to another value everywhere it stands.
struct Knob {
  std::string subject;
  std::string quantity;
  Input kind = Input::believed;
  Sourced input;
  std::function<void(Setup&, double)> set;
};

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

/// Positions of the values that a test holds for. They stay right when the values are changed, as a comparison would not.
template <typename Value, typename Test>
std::vector<std::size_t> positions(const std::vector<Value>& values, Test test) {
  std::vector<std::size_t> result;
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (test(values[i])) result.push_back(i);
  }
  return result;
}

/// What a learned factor rests on.
inline const Source learned_source{Basis::computed, "learned from journals"};

/// Adds what a shop has learned of the sheets, by backing. A simulation draws it from the shop.
inline void add_learned(std::vector<Knob>& result, const Setup& setup) {
  std::set<std::string> seen;
  for (std::size_t i = 0; i < setup.stack.sheets.size(); ++i) {
    const std::string& backing = setup.stack.sheets[i].backing.name;
    const SheetFactors factors = setup.factors.of(i);
    if (!seen.insert(backing).second) continue;
    const auto all = positions(setup.stack.sheets,
                               [&](const Sheet& sheet) { return sheet.backing.name == backing; });
    const auto add = [&](const std::string& quantity, double value, const LearnedBand& band,
                         auto set) {
      result.push_back({"backing " + backing, quantity, Input::typed,
                        Sourced{value, band.low, band.high, learned_source},
                        [all, set](Setup& s, double changed) {
                          for (const std::size_t sheet : all) set(s.factors, sheet, changed);
                        }});
    };
    if (factors.pace) {
      add("learned_pace", setup.factors.duty * factors.rate, *factors.pace,
          [](Factors& f, std::size_t sheet, double pace) { f.sheets[sheet].rate = pace / f.duty; });
    }
    if (factors.scratches) {
      add("learned_scratch", factors.scratch, *factors.scratches,
          [](Factors& f, std::size_t sheet, double scratch) { f.sheets[sheet].scratch = scratch; });
    }
  }
}

/// The setup of the sheets of a sequence alone, in its order.
inline Setup setup_of(const Setup& all, const std::vector<std::size_t>& sheets) {
  Setup result{all.job,     {all.stack.bare_number, {}}, {}, {}, all.model, {}, all.factors,
               all.overcuts};
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

/// The block or pad that a sheet is its own tool with; none where that is a wheel, whose numbers have no band here.
inline std::optional<Block> own_block(const Sheet& sheet) {
  const Tool* tool = tool_of(sheet);
  return tool && !as_wheel(*tool) ? std::optional(std::get<Block>(*tool)) : std::nullopt;
}

/// The same, to be set.
inline Block* own_block(Sheet& sheet) {
  return const_cast<Block*>(std::get_if<Block>(tool_of(sheet)));
}

static_assert(says_inputs<Coating>(coating_columns) && says_inputs<Backing>(backing_columns) &&
                  says_inputs<Block>(block_columns) && says_inputs<Rules>(rule_columns) &&
                  says_inputs<Model>(model_columns),
              "a line of these descriptions wants is(Input::...)");

/// Adds an input for each column of a table that is a number of a value, in the order of the table. `all` gives where the value
/// stands in a setup, each place of it.
template <typename Value, typename Row, std::size_t rows, std::size_t columns, typename All>
void add_knobs(std::vector<Knob>& result, const std::string& subject, const Value& value,
               const Row (&table)[rows], std::string_view name,
               const TableField<Row> (&fields)[columns], All all) {
  for (const TableField<Row>& field : fields) {
    const Member* member = description_of<Value>().find(field.quantity);
    const bool of_step =
        std::is_same_v<Value, Rules> && description_of<StepRule>().find(field.quantity);
    if (!member || of_step) continue;
    const double in_use = member->kind->number(member->in(&value));
    result.push_back({subject, std::string(field.quantity), member->input,
                      traced(table, name, field, in_use),
                      [member, all](Setup& setup, double number) {
                        for (Value* one : all(setup))
                          member->kind->set_number(member->in_mutable(one), number);
                      }});
  }
}

/// Every input of a setup: of the coating, of each backing and block by name, of rules, model, grades and zones.
inline std::vector<Knob> knobs(const Setup& setup) {
  std::vector<Knob> result;
  const Coating& coating = setup.job.coating;
  add_knobs(result, "coating " + coating.name, coating, coating_table, coating.name,
            coating_columns, [](Setup& s) { return std::vector{&s.job.coating}; });

  std::set<std::string> seen;
  for (const Sheet& sheet : setup.stack.sheets) {
    const Backing backing = sheet.backing;
    if (!seen.insert(backing.name).second) continue;
    const auto backed =
        positions(setup.stack.sheets, [&](const Sheet& other) { return other.backing == backing; });
    add_knobs(result, "backing " + backing.name, backing, backing_table, backing.name,
              backing_columns, [backed](Setup& s) {
                std::vector<Backing*> all;
                for (const std::size_t i : backed) all.push_back(&s.stack.sheets[i].backing);
                return all;
              });
  }

  std::vector<Tool> tools;
  for (const Zone& zone : setup.job.zones) tools.push_back(zone.block);
  for (const Sheet& sheet : setup.stack.sheets) {
    if (const Tool* tool = tool_of(sheet)) tools.push_back(*tool);
  }
  seen.clear();
  for (const Tool& tool : tools) {
    const Block block = face_of(tool);
    if (!seen.insert(block.name).second) continue;
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
  for (std::size_t i = 0; i < setup.grades.size(); ++i) {
    result.push_back({"grade " + setup.grades[i].label, "median_um", Input::believed,
                      median_band(setup.grades[i]),
                      [i](Setup& s, double value) { s.grades[i].median_um = value; }});
    const Spread spread = levigate::spread(setup.grades[i]);
    const double value = spread.log_spread;
    result.push_back({"grade " + setup.grades[i].label,
                      "log_spread",
                      Input::believed,
                      {value, 0.75 * value, 1.25 * value, spread.source},
                      [i](Setup& s, double changed) { s.log_spreads[i] = changed; }});
  }
  add_typed(result, setup.job);
  add_learned(result, setup);
  return result;
}

}  // namespace detail

}  // namespace levigate
