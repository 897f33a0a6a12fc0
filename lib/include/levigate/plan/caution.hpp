// The cautions that belong to the work.
// They are reminders: the product's data sheet, local codes and licensed practice come first.
#pragma once

#include <string>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/plan/job.hpp"

namespace levigate::inline v0 {

/// One caution.
struct Caution {
  std::string topic;
  std::string text;

  friend bool operator==(const Caution&, const Caution&) = default;
};

template <std::same_as<Caution> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Caution", "A reminder; data sheet, local codes and licensed practice stand above it.",
    member<&Value::topic>("topic", "in a word"), member<&Value::text>("text", "in words"));

/// The cautions for a job, most serious first.
/// Source: common practice; exposure limits are those of the authorities and are not restated here
std::vector<Caution> cautions(const Job& job);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/plan/work/caution.hpp"
#endif
