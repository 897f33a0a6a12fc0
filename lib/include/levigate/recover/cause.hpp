// What a mark tells: which step made it, and how much has to come off until it is gone.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/need.hpp"

namespace levigate::inline v0 {

/// One explanation of a mark.
struct Cause {
  std::size_t step = 0;
  std::string sheet;
  bool stray = false;
  double probability = 0;
  double expected = 0;
  std::vector<double> missed{};

  friend bool operator==(const Cause&, const Cause&) = default;
};

template <std::same_as<Cause> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Cause", "One explanation of a mark.",
    member<&Value::step>("step", "in the order of what was done, from 0"),
    member<&Value::sheet>("sheet", "its id"),
    member<&Value::stray>("stray", "a stray grain under that sheet, not its own grain"),
    member<&Value::probability>("probability", chance_range, "given what was seen"),
    member<&Value::expected>("expected", at_least(0),
                             "such marks that it leaves in the zone on average"),
    member<&Value::missed>("missed", at_least(0),
                           "for each done step: chance that it missed the spot, given this cause"));

/// What a mark tells.
struct Diagnosis {
  Mark mark;
  std::vector<Cause> causes;
  std::vector<Need> needs;
  double shows_um = 0;
  std::vector<std::string> evidence{};

  friend bool operator==(const Diagnosis&, const Diagnosis&) = default;
};

template <std::same_as<Diagnosis> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Diagnosis", "Which step made a mark.", member<&Value::mark>("mark", "as it was seen"),
    member<&Value::causes>("causes",
                           "most likely first, adding up to 1; none where no step explains it"),
    member<&Value::needs>("needs", "how much has to come off, from least to most"),
    member<&Value::shows_um>("shows_um", at_least(0),
                             "width from which a scratch stands out from the finish"),
    member<&Value::evidence>("evidence", "in words"));

}  // namespace levigate
