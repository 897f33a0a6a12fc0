// The work behind plan/sources.hpp: defines what it declares.
#pragma once

#include <string_view>
#include <vector>

#include "levigate/plan/sources.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/film/edge_table.hpp"
#include "levigate/film/gauge_table.hpp"
#include "levigate/formulas.hpp"
#include "levigate/named_number.hpp"
#include "levigate/plan/work/knobs.hpp"
#include "levigate/sourced.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/rule_table.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/cure_table.hpp"
#include "levigate/surface/defect_table.hpp"
#include "levigate/surface/model_table.hpp"

namespace levigate::inline v0 {

namespace detail {

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

LEVIGATE_WORK std::vector<NamedNumber> named_numbers() {
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

LEVIGATE_WORK Formula source(std::string_view function) {
  if (const auto found = formula_named(function)) return *found;
  std::vector<std::string_view> known;
  for (const Formula& formula : formulas) known.push_back(formula.function);
  throw BadInput(detail::unknown_name_text("function", function, known));
}

LEVIGATE_WORK Sourced source(std::string_view name, std::string_view quantity) {
  return number_named(named_numbers(), name, quantity);
}

}  // namespace levigate
