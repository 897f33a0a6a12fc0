// The callback that hears how far long work has come, and may stop it.
#pragma once

#include <cstdint>
#include <functional>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// Told of the draws or jobs done so far and of all. False: stop here.
using Progress = std::function<bool(std::int64_t done, std::int64_t of)>;

}  // namespace levigate
