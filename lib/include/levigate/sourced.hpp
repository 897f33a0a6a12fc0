// A default value together with the band it may lie in and where it comes from.
#pragma once

#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// One number of a profile: the value used, the band within which it is believed, and its source. Low and
/// high stand in the unit of the value.
struct Sourced {
  double value = 0;
  double low = 0;
  double high = 0;
  Source source;
};

}  // namespace levigate
