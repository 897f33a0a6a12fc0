// A coat that is not cured is not worked yet: how long it still has to stand.
#pragma once

#include <string>

#include "levigate/describe.hpp"

namespace levigate::inline v0 {

/// How long a coat still has to stand before the first step.
struct CureWait {
  std::string not_before;
  double wait_h = 0;
  double age_h = 0;
  double hard_cure_h = 0;

  friend bool operator==(const CureWait&, const CureWait&) = default;
};

template <std::same_as<CureWait> Value>
inline constexpr auto described<Value> = describe<Value>(
    "CureWait", "How long a coat still has to stand before the first step.",
    member<&Value::not_before>("not_before",
                               "date and time of RFC 3339; empty where the job has no age_at"),
    member<&Value::wait_h>("wait_h", at_least(0), "from age_h on"),
    member<&Value::age_h>("age_h", at_least(0), "of the last coat, as the job tells it"),
    member<&Value::hard_cure_h>("hard_cure_h", at_least(0), "age of full cure"));

}  // namespace levigate
