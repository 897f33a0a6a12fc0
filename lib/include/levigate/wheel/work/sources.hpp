// The work behind wheel/sources.hpp: defines what it declares.
#pragma once

#include <vector>

#include "levigate/wheel/sources.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/named_number.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/limit_table.hpp"
#include "levigate/wheel/wheel_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::vector<NamedNumber> wheel_numbers() {
  std::vector<NamedNumber> all;
  detail::add_numbers(all, "wheel", wheel_table, wheel_columns);
  detail::add_numbers(all, "compound", compound_table, compound_columns);
  detail::add_numbers(all, "surface", limit_table, limit_columns);
  return all;
}

}  // namespace levigate
