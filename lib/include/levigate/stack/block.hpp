// What presses and drives the abrasive: a block or a pad, with the hand that moves it.
#pragma once

#include <limits>
#include <string>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/units.hpp"

namespace levigate::inline v0 {

/// A block, or a pad that is its own tool.
struct Block {
  std::string name = "own block";
  double modulus_mpa = 0;
  double area_cm2 = 0;
  double force_n = 0;
  double speed_m_s = 0;
  double duty = 0;
  double wrap = 0;

  double pressure_kpa() const noexcept { return kpa_from_n_per_cm2(force_n, area_cm2); }

  friend bool operator==(const Block&, const Block&) = default;
};

/// Throws: OutOfRange unless the pressure is 0.01 to 1000 kPa.
inline void require_pressure(const Block& block, std::string_view where) {
  detail::require_range(block.pressure_kpa(), 0.01, 1e3, "pressure_kpa (force_n over area_cm2)",
                        "kPa", where);
}

template <std::same_as<Block> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Block", "What presses and drives a sheet.",
        member<&Value::name>("name", "name of the profile, or the user's own").optional(),
        member<&Value::modulus_mpa>("modulus_mpa",
                                    Within{0.001, std::numeric_limits<double>::infinity()},
                                    "modulus of the face that lies on the work")
            .is(Input::believed)
            .with_infinity("rigid"),
        member<&Value::area_cm2>("area_cm2", Within{0.01, 1e5}, "area in contact")
            .is(Input::believed),
        member<&Value::force_n>("force_n", Within{1e-3, 1e5}, "pressing force").is(Input::believed),
        member<&Value::speed_m_s>("speed_m_s", Within{1e-3, 100}, "mean speed while sanding")
            .is(Input::pace),
        member<&Value::duty>("duty", Within{0.01, 1}, "share of the time spent sanding")
            .is(Input::pace),
        member<&Value::wrap>("wrap", Within{0, 100},
                             "area of abrasive that one piece takes, over area_cm2")
            .is(Input::believed))
        .rule(rule_by<&require_pressure>);

/// The block of that name in the profiles.
/// Throws: BadInput where there is none, naming the nearest.
Block block_named(std::string_view name);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/stack/work/block.hpp"
#endif
