// When an observation of a journal is a slip, and is set aside.
#pragma once

#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// An observation that lies this many times its spread from what all others let expect is set aside.
inline constexpr double outlier_line = 5;

inline constexpr Source outlier_source{
    Basis::assumption,
    "beyond five spreads, a slip of the pen is likelier than a day like any other"};

}  // namespace levigate
