// The work behind stack/backing.hpp: defines what it declares.
#pragma once

#include <limits>
#include <string>
#include <string_view>

#include "levigate/stack/backing.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/detail/work/filled.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/backing_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Backing backing_named(std::string_view name) {
  return detail::filled<Backing>(detail::profile_named(backing_table, name, "backing"),
                                 backing_columns);
}

}  // namespace levigate
