// Sentences on how far one grade stands for another.
#pragma once

#include <cmath>
#include <string>

#include "levigate/detail/text.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string sentence_of(const Equivalent& found) {
  const double percent = 100.0 * std::abs(found.size_ratio - 1.0);
  std::string text = found.grade.label + " is the nearest to " + found.given.label + ": ";
  text += percent < 0.5 ? "the same median"
                        : fixed(percent, 0) + " % " + (found.size_ratio > 1 ? "coarser" : "finer");
  if (found.within_tolerance) {
    text += *found.within_tolerance ? ", within" : ", beyond";
    text += " the tolerance of the medians";
  } else {
    text += ", tolerance of the medians not known";
  }
  text += "; " + fixed(100.0 * found.overlap, 0) + " % of the grain in common";
  if (found.grade.basis() == Basis::extrapolated) text += "; its size is extrapolated";
  if (found.given.basis() == Basis::extrapolated) text += "; the given size is extrapolated";
  return text;
}

}  // namespace detail

}  // namespace levigate
