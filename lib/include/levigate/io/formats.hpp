// Names of the JSON formats, each with its version.
#pragma once

#include <string_view>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

inline constexpr std::string_view stack_format = "levigate.stack/1";

inline constexpr std::string_view job_format = "levigate.job/1";

inline constexpr std::string_view plan_format = "levigate.plan/1";

inline constexpr std::string_view journal_format = "levigate.journal/1";

inline constexpr std::string_view shop_format = "levigate.shop/1";

inline constexpr std::string_view way_back_format = "levigate.way_back/1";

inline constexpr std::string_view simulation_format = "levigate.simulation/1";

inline constexpr std::string_view spray_format = "levigate.spray/1";

inline constexpr std::string_view calibration_format = "levigate.calibration/1";

inline constexpr std::string_view together_format = "levigate.together/1";
inline constexpr std::string_view buy_format = "levigate.buy/1";

inline constexpr std::string_view comparison_format = "levigate.comparison/1";
inline constexpr std::string_view when_done_format = "levigate.when_done/1";

}  // namespace levigate
