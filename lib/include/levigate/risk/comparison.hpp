// A sequence that one is used to beside the best plan, over the same draws.
#pragma once

#include <cstdint>
#include <optional>

#include "levigate/describe.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/risk/simulation.hpp"

namespace levigate::inline v0 {

/// A sequence taken as given beside the best plan. comparison_card() of text/comparison.hpp shows it.
struct Comparison {
  Plan taken;
  Plan best;
  std::int64_t draws = 0;
  std::uint64_t seed = 0;
  std::optional<PairedMinutes> minutes{};

  friend bool operator==(const Comparison&, const Comparison&) = default;
};

template <std::same_as<Comparison> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Comparison", "A sequence taken as given beside the best plan.",
    member<&Value::taken>("taken", "the sequence, with the rules that it breaks as findings"),
    member<&Value::best>("best", "the best plan, or why there is none"),
    member<&Value::draws>("draws", at_least(0), "that were made, the same for both"),
    member<&Value::seed>("seed", "of the random numbers; the same seed gives the same figures"),
    member<&Value::minutes>(
        "minutes", "of the sequence, and of the best plan as the other; none without one"));

}  // namespace levigate
