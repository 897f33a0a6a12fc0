// The units that a bench sheet shows: metric ones, or those of a shop in the United States.
#pragma once

#include <array>
#include <string_view>

#include "levigate/choices.hpp"

namespace levigate::inline v0 {

/// Units for the reader alone: all that is worked out, and every file, stays metric.
enum class ShownUnits {
  metric,  ///< um, cm2, mm, C, m/min
  us,      ///< mil, in2, in, F, ft/min
};

template <>
inline constexpr auto choices<ShownUnits> = std::to_array({ShownUnits::metric, ShownUnits::us});

constexpr std::string_view to_string(ShownUnits units) noexcept {
  switch (units) {
    case ShownUnits::metric: return "metric";
    case ShownUnits::us: return "us";
  }
  return "";
}

}  // namespace levigate
