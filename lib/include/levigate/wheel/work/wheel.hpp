// The work behind wheel/wheel.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/wheel/wheel.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/detail/work/filled.hpp"
#include "levigate/error.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/speed.hpp"
#include "levigate/wheel/wheel_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Wheel wheel_named(std::string_view name) {
  return detail::filled<Wheel>(detail::profile_named(wheel_table, name, "wheel"), wheel_columns);
}

}  // namespace levigate
