// A factor that journals taught, with its band.
#pragma once

#include <cstddef>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// A factor on what is computed. It is as likely below its median as above, and nine times in ten between low and high.
struct LearnedFactor {
  double factor = 1;             ///< median, 0.01 to 100
  double low = 1;                ///< 5 % are below it; above 0, at most factor
  double high = 1;               ///< 5 % are above it; from factor on
  std::size_t observations = 0;  ///< behind it

  friend bool operator==(const LearnedFactor&, const LearnedFactor&) = default;
};

}  // namespace levigate
