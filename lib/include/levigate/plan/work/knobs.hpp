// The inputs that a sequence hangs on: each with its band and source, and how to set it to another value.
#pragma once

#include <cstddef>
#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/grade/grade.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/rules.hpp"
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

namespace levigate::inline v0 {

namespace detail {

/// Where a number of a profile stands in the table and in the value made from it.
template <typename Profile, typename Value>
struct ProfileField {
  std::string_view quantity;
  Sourced Profile::*sourced;
  double Value::*value;
};

inline constexpr ProfileField<CoatingProfile, Coating> coating_fields[] = {
    {"hardness_mpa", &CoatingProfile::hardness_mpa, &Coating::hardness_mpa},
    {"wear_coefficient", &CoatingProfile::wear_coefficient, &Coating::wear_coefficient},
    {"refractive_index", &CoatingProfile::refractive_index, &Coating::refractive_index},
};

inline constexpr ProfileField<BackingProfile, Backing> backing_fields[] = {
    {"tip_spread", &BackingProfile::tip_spread, &Backing::tip_spread},
    {"modulus_mpa", &BackingProfile::modulus_mpa, &Backing::modulus_mpa},
    {"life_m", &BackingProfile::life_m, &Backing::life_m},
    {"clean_every_m", &BackingProfile::clean_every_m, &Backing::clean_every_m},
    {"fade_m", &BackingProfile::fade_m, &Backing::fade_m},
    {"floor", &BackingProfile::floor, &Backing::floor},
};

inline constexpr ProfileField<BlockProfile, Block> block_fields[] = {
    {"modulus_mpa", &BlockProfile::modulus_mpa, &Block::modulus_mpa},
    {"area_cm2", &BlockProfile::area_cm2, &Block::area_cm2},
    {"force_n", &BlockProfile::force_n, &Block::force_n},
    {"speed_m_s", &BlockProfile::speed_m_s, &Block::speed_m_s},
    {"duty", &BlockProfile::duty, &Block::duty},
    {"wrap", &BlockProfile::wrap, &Block::wrap},
};

inline constexpr ProfileField<RuleProfile, Rules> rule_fields[] = {
    {"overcut", &RuleProfile::overcut, &Rules::overcut},
    {"scratch_quantile", &RuleProfile::scratch_quantile, &Rules::scratch_quantile},
    {"residual_peel_um", &RuleProfile::residual_peel_um, &Rules::residual_peel_um},
    {"change_minutes", &RuleProfile::change_minutes, &Rules::change_minutes},
    {"reserve_um", &RuleProfile::reserve_um, &Rules::reserve_um},
    {"removed_cv", &RuleProfile::removed_cv, &Rules::removed_cv},
    {"cut_through_limit", &RuleProfile::cut_through_limit, &Rules::cut_through_limit},
};

inline constexpr ProfileField<ModelProfile, Model> model_fields[] = {
    {"flank_deg", &ModelProfile::flank_deg, &Model::flank_deg},
    {"packing", &ModelProfile::packing, &Model::packing},
    {"size_exponent", &ModelProfile::size_exponent, &Model::size_exponent},
};

/// A number given by the user: its band is not known.
inline Sourced given(double value) {
  return {value, value, value, {Basis::user, "given by the user"}};
}

/// The table's number where the value in use is the table's, else one given by the user.
template <typename Profile, std::size_t count, typename Value>
Sourced traced(const Profile (&table)[count], std::string_view name,
               const ProfileField<Profile, Value>& field, double in_use) {
  for (const Profile& profile : table) {
    if (profile.name == name && (profile.*field.sourced).value == in_use)
      return profile.*field.sourced;
  }
  return given(in_use);
}

/// One input together with how to set it to another value everywhere it stands.
struct Knob {
  std::string subject;
  std::string quantity;
  Sourced input;
  std::function<void(Setup&, double)> set;
};

/// The band of a grade's median: its tolerance where known; else what the two published CAMI series differ by (3 %), or
/// for an extrapolation what the printed grades leave open (about 12 %).
inline Sourced median_band(const Grade& grade) {
  Sourced band = given(grade.median_um);
  band.source = grade.median_source;
  double half_um = grade.median_um * (grade.basis() == Basis::extrapolated ? 0.12 : 0.03);
  if (grade.basis() == Basis::user) half_um = 0;
  if (grade.tolerance_um) half_um = *grade.tolerance_um;
  band.low -= half_um;
  band.high += half_um;
  return band;
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

/// The setup of the sheets of a sequence alone, in its order.
inline Setup setup_of(const Setup& all, const std::vector<std::size_t>& sheets) {
  Setup result{all.job, {all.stack.bare_number, {}}, {}, {}, all.model, {}, all.factors};
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

/// Every input of a setup: of the coating, of each backing and block by name, of rules, model and grades.
inline std::vector<Knob> knobs(const Setup& setup) {
  std::vector<Knob> result;
  for (const auto& field : coating_fields) {
    const Coating& coating = setup.job.coating;
    result.push_back({"coating " + coating.name, std::string(field.quantity),
                      traced(coating_table, coating.name, field, coating.*field.value),
                      [field](Setup& s, double value) { s.job.coating.*field.value = value; }});
  }

  std::set<std::string> seen;
  for (const Sheet& sheet : setup.stack.sheets) {
    const Backing backing = sheet.backing;
    if (!seen.insert(backing.name).second) continue;
    const auto backed =
        positions(setup.stack.sheets, [&](const Sheet& other) { return other.backing == backing; });
    for (const auto& field : backing_fields) {
      result.push_back({"backing " + backing.name, std::string(field.quantity),
                        traced(backing_table, backing.name, field, backing.*field.value),
                        [field, backed](Setup& s, double value) {
                          for (const std::size_t i : backed)
                            s.stack.sheets[i].backing.*field.value = value;
                        }});
    }
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
    for (const auto& field : block_fields) {
      result.push_back({"block " + block.name, std::string(field.quantity),
                        traced(block_table, block.name, field, block.*field.value),
                        [field, zones, sheets](Setup& s, double value) {
                          for (const std::size_t i : zones)
                            s.job.zones[i].block.*field.value = value;
                          for (const std::size_t i : sheets)
                            (*own_block(s.stack.sheets[i])).*field.value = value;
                        }});
    }
  }

  for (const auto& field : rule_fields) {
    result.push_back({"rule", std::string(field.quantity),
                      traced(rule_table, "default", field, setup.job.rules.*field.value),
                      [field](Setup& s, double value) { s.job.rules.*field.value = value; }});
  }
  for (const auto& field : model_fields) {
    result.push_back({"model", std::string(field.quantity),
                      traced(model_table, "default", field, setup.model.*field.value),
                      [field](Setup& s, double value) { s.model.*field.value = value; }});
  }
  for (std::size_t i = 0; i < setup.grades.size(); ++i) {
    result.push_back({"grade " + setup.grades[i].label, "median_um", median_band(setup.grades[i]),
                      [i](Setup& s, double value) { s.grades[i].median_um = value; }});
    const Spread spread = levigate::spread(setup.grades[i]);
    const double value = spread.log_spread;
    result.push_back({"grade " + setup.grades[i].label,
                      "log_spread",
                      {value, 0.75 * value, 1.25 * value, spread.source},
                      [i](Setup& s, double changed) { s.log_spreads[i] = changed; }});
  }
  return result;
}

}  // namespace detail

}  // namespace levigate
