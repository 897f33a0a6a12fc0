// Where any number comes from, by name: a formula by its function, a profile's number by profile and quantity.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/profile.hpp"
#include "levigate/error.hpp"
#include "levigate/film/edge_table.hpp"
#include "levigate/film/gauge_table.hpp"
#include "levigate/formulas.hpp"
#include "levigate/plan/reliance.hpp"
#include "levigate/sourced.hpp"
#include "levigate/surface/cure_table.hpp"
#include "levigate/surface/defect_table.hpp"

namespace levigate::inline v0 {

/// One number of a profile and what it is called.
struct NamedNumber {
  std::string_view name;      ///< of the profile, as "latex paper"; of a table of one, as "rule"
  std::string_view quantity;  ///< with the unit as suffix, as "modulus_mpa"
  Sourced number;
};

namespace detail {

/// Adds the numbers of a table. A table of one profile, "default", goes by `kind`.
template <typename Profile, std::size_t profiles, typename Fields>
void add_numbers(std::vector<NamedNumber>& all, std::string_view kind,
                 const Profile (&table)[profiles], const Fields& fields) {
  for (const Profile& profile : table) {
    for (const auto& field : fields) {
      all.push_back({profile.name == "default" ? kind : profile.name, field.quantity,
                     profile.*field.sourced});
    }
  }
}

/// A number that no part of a plan's effort takes from its profile by this name.
template <typename Profile>
struct TableField {
  std::string_view quantity;
  Sourced Profile::*sourced;
};

inline constexpr TableField<RuleProfile> step_rule_fields[] = {
    {"max_ratio", &RuleProfile::max_ratio},
    {"min_ratio", &RuleProfile::min_ratio},
};

inline constexpr TableField<CureProfile> cure_fields[] = {
    {"hard_cure_h", &CureProfile::hard_cure_h},
    {"shrink", &CureProfile::shrink},
};

inline constexpr TableField<DefectProfile> defect_fields[] = {
    {"shave_above_um", &DefectProfile::shave_above_um},
    {"tape_um", &DefectProfile::tape_um},
    {"shave_minutes", &DefectProfile::shave_minutes},
    {"mask_minutes", &DefectProfile::mask_minutes},
    {"stroke_mm", &DefectProfile::stroke_mm},
};

inline constexpr TableField<EdgeProfile> edge_fields[] = {
    {"sharp_share", &EdgeProfile::sharp_share},
    {"eased_share", &EdgeProfile::eased_share},
    {"eased_radius_mm", &EdgeProfile::eased_radius_mm},
};

inline constexpr TableField<GaugeProfile> gauge_fields[] = {
    {"fixed_um", &GaugeProfile::fixed_um},
    {"share", &GaugeProfile::share},
};

}  // namespace detail

/// The numbers of all profiles, but those of wheels and compounds.
inline std::vector<NamedNumber> named_numbers() {
  std::vector<NamedNumber> all;
  detail::add_numbers(all, "coating", coating_table, detail::coating_fields);
  detail::add_numbers(all, "cure", cure_table, detail::cure_fields);
  detail::add_numbers(all, "backing", backing_table, detail::backing_fields);
  detail::add_numbers(all, "block", block_table, detail::block_fields);
  detail::add_numbers(all, "rule", rule_table, detail::step_rule_fields);
  detail::add_numbers(all, "rule", rule_table, detail::rule_fields);
  detail::add_numbers(all, "model", model_table, detail::model_fields);
  detail::add_numbers(all, "defect", defect_table, detail::defect_fields);
  detail::add_numbers(all, "edge", edge_table, detail::edge_fields);
  detail::add_numbers(all, "gauge", gauge_table, detail::gauge_fields);
  return all;
}

/// The formula of a function.
/// Throws: BadInput where none is held for it, naming the nearest.
inline Formula source(std::string_view function) {
  if (const auto found = formula_named(function)) return *found;
  std::vector<std::string_view> known;
  for (const Formula& formula : formulas) known.push_back(formula.function);
  throw BadInput(detail::unknown_name_text("function", function, known));
}

/// The value, band and source of a number: of a coating, its cure, a backing, block or gauge by the name of
/// the profile; of a "rule", "model", "edge" or "defect".
/// Throws: BadInput where there is no such profile or it has no such quantity, naming the nearest.
inline Sourced source(std::string_view name, std::string_view quantity) {
  std::vector<std::string_view> names, quantities;
  for (const NamedNumber& one : named_numbers()) {
    if (std::find(names.begin(), names.end(), one.name) == names.end()) names.push_back(one.name);
    if (one.name != name) continue;
    if (one.quantity == quantity) return one.number;
    quantities.push_back(one.quantity);
  }
  if (quantities.empty()) throw BadInput(detail::unknown_name_text("profile", name, names));
  throw BadInput(
      detail::unknown_name_text("quantity of " + std::string(name), quantity, quantities));
}

}  // namespace levigate
