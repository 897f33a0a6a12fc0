// What a surface stands from a wheel: the band of rim speeds for it, how it takes up heat, how warm it may get.
#pragma once

#include <string_view>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"

namespace levigate::inline v0 {

/// Limits of a surface under a wheel.
struct WheelLimits {
  double speed_low_m_s = 0;
  double speed_high_m_s = 0;
  double effusivity = 0;
  double rise_k = 0;

  friend bool operator==(const WheelLimits&, const WheelLimits&) = default;
};

/// Throws: OutOfRange unless the ends of the band are in order.
inline void require_band(const WheelLimits& limits, std::string_view where) {
  detail::require_range(limits.speed_low_m_s, 1e-3, limits.speed_high_m_s,
                        "speed_low_m_s (up to speed_high_m_s)", "m/s", where);
}

template <std::same_as<WheelLimits> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "WheelLimits", "Limits of a surface at a wheel.",
        member<&Value::speed_low_m_s>("speed_low_m_s", Within{1e-3, 100},
                                      "least rim speed that works"),
        member<&Value::speed_high_m_s>("speed_high_m_s", Within{1e-3, 100}, "highest rim speed"),
        member<&Value::effusivity>("effusivity", Within{1, 1e5}, "thermal, of the surface")
            .in_unit("J/(m2 K s^0.5)"),
        member<&Value::rise_k>("rise_k", Within{0.1, 2000}, "highest rise above room temperature"))
        .rule(rule_by<&require_band>);

}  // namespace levigate
