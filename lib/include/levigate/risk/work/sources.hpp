// The work behind risk/sources.hpp: defines what it declares.
#pragma once

#include <vector>

#include "levigate/risk/sources.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/journal/prior_table.hpp"
#include "levigate/named_number.hpp"
#include "levigate/risk/patch_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::vector<NamedNumber> learning_numbers() {
  std::vector<NamedNumber> all;
  detail::add_numbers(all, "prior", prior_table, prior_columns);
  detail::add_numbers(all, "patch", patch_table, patch_columns);
  return all;
}

}  // namespace levigate
