// The work behind stack/block.hpp: defines what it declares.
#pragma once

#include <limits>
#include <string>
#include <string_view>

#include "levigate/stack/block.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/detail/work/filled.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/block_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Block block_named(std::string_view name) {
  return detail::filled<Block>(detail::profile_named(block_table, name, "block"), block_columns);
}

}  // namespace levigate
