// How a simulation is to be run.
#pragma once

#include <cstdint>
#include <optional>

#include "levigate/progress.hpp"

namespace levigate::inline v0 {

/// How many draws, from which seed, on how many threads, and what they leave out.
struct SimulateOptions {
  std::int64_t draws = 1000;  ///< 10 to 1e6
  std::uint64_t seed = 1;
  unsigned threads = 0;  ///< 0: as many as the machine has, 1 to 1024; the result is the same
  /// Minutes worked on the first step already, without the change: draws in which it was done by then are left out, and minutes are
  /// those that it takes yet. None: it is not begun.
  std::optional<double> spent_minutes{};
  bool bands = true;    ///< false: every input as it is given; only film, peel and hand vary
  Progress progress{};  ///< called on the caller's thread alone; false: stop with the draws so far
};

}  // namespace levigate
