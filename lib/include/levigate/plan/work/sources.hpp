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
#include "levigate/film/gun_table.hpp"
#include "levigate/film/usual_film_table.hpp"
#include "levigate/formulas.hpp"
#include "levigate/named_number.hpp"
#include "levigate/plan/handling_table.hpp"
#include "levigate/plan/search_table.hpp"
#include "levigate/sourced.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/machine_table.hpp"
#include "levigate/stack/rule_table.hpp"
#include "levigate/stack/sheet_size_table.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/defect_table.hpp"
#include "levigate/surface/model_table.hpp"
#include "levigate/surface/peel_height_table.hpp"
#include "levigate/surface/peel_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::vector<NamedNumber> named_numbers() {
  std::vector<NamedNumber> all;
  detail::add_numbers(all, "coating", coating_table, coating_columns);
  detail::add_numbers(all, "backing", backing_table, backing_columns);
  detail::add_numbers(all, "block", block_table, block_columns);
  detail::add_numbers(all, "machine", machine_table, machine_columns);
  detail::add_numbers(all, "handling", handling_table, handling_columns);
  detail::add_numbers(all, "rule", rule_table, rule_columns);
  detail::add_numbers(all, "model", model_table, model_columns);
  detail::add_numbers(all, "search", search_table, search_columns);
  detail::add_numbers(all, "defect", defect_table, defect_columns);
  detail::add_numbers(all, "sheet", sheet_size_table, sheet_size_columns);
  detail::add_numbers(all, "edge", edge_table, edge_columns);
  detail::add_numbers(all, "gauge", gauge_table, gauge_columns);
  detail::add_numbers(all, "peel", peel_table, peel_columns);
  detail::add_numbers(all, "peel", peel_height_table, peel_height_columns);
  detail::add_numbers(all, "gun", gun_table, gun_columns);
  detail::add_numbers(all, "film", usual_film_table, usual_film_columns);
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
